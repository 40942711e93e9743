import { crc32 } from "../../src/archive/crc.ts";

/** An entry whose every number can be made to lie. */
export interface CraftedEntry {
  readonly name: string;
  readonly data: Uint8Array;
  readonly packed?: Uint8Array;
  readonly method?: number;
  readonly flags?: number;
  readonly crc?: number;
  readonly size?: number;
  /** Points at the local header of another entry. */
  readonly sharesWith?: number;
}

/** A zip archive (APPNOTE 6.3.10) put together by hand. */
export function craftZip(entries: readonly CraftedEntry[]): Uint8Array {
  const parts: Uint8Array[] = [];
  const offsets: number[] = [];
  let at = 0;
  const add = (bytes: Uint8Array): void => {
    parts.push(bytes);
    at += bytes.length;
  };
  for (const e of entries) {
    offsets.push(e.sharesWith === undefined ? at : offsets[e.sharesWith]!);
    if (e.sharesWith !== undefined) continue;
    add(header(e, 0x04034b50, null));
    add(e.packed ?? e.data);
  }
  const start = at;
  entries.forEach((e, i) => add(header(e, 0x02014b50, offsets[i]!)));
  add(
    numbers(
      [0x06054b50, 4],
      [0, 2],
      [0, 2],
      [entries.length, 2],
      [entries.length, 2],
      [at - start, 4],
      [start, 4],
      [0, 2],
    ),
  );
  const out = new Uint8Array(at);
  let to = 0;
  for (const p of parts) {
    out.set(p, to);
    to += p.length;
  }
  return out;
}

function header(e: CraftedEntry, sign: number, offset: number | null): Uint8Array {
  const name = new TextEncoder().encode(e.name);
  const packed = e.packed ?? e.data;
  const shared = [
    [20, 2],
    [e.flags ?? 0x800, 2],
    [e.method ?? 0, 2],
    [0, 4],
    [e.crc ?? crc32(e.data), 4],
    [packed.length, 4],
    [e.size ?? e.data.length, 4],
    [name.length, 2],
    [0, 2],
  ] as const;
  const head =
    offset === null
      ? numbers([sign, 4], ...shared)
      : numbers([sign, 4], [20, 2], ...shared, [0, 2], [0, 2], [0, 2], [0, 4], [offset, 4]);
  return Uint8Array.from([...head, ...name]);
}

function numbers(...fields: readonly (readonly [value: number, bytes: number])[]): Uint8Array {
  return Uint8Array.from(
    fields.flatMap(([v, n]) => Array.from({ length: n }, (_, i) => Math.floor(v / 256 ** i) & 255)),
  );
}
