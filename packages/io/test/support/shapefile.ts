import { zipSync } from "fflate";

type Ring = readonly (readonly [number, number])[];
export type ShpShape = readonly [number, number] | readonly Ring[] | null;

/** A shapefile of points (type 1) or of lines and areas (3, 5), byte for byte as the format's description says. */
export function writeShp(type: 1 | 3 | 5, shapes: readonly ShpShape[]): { shp: Uint8Array; shx: Uint8Array } {
  const records = shapes.map((s) => recordOf(type, s));
  const size = 100 + records.reduce((sum, r) => sum + 8 + r.length, 0);
  const shp = new Uint8Array(size);
  const shx = new Uint8Array(100 + 8 * records.length);
  for (const file of [shp, shx]) header(file, type);
  let at = 100;
  records.forEach((record, i) => {
    for (const [view, to, first] of [
      [new DataView(shp.buffer), at, i + 1],
      [new DataView(shx.buffer), 100 + 8 * i, at / 2],
    ] as const) {
      view.setInt32(to, first, false);
      view.setInt32(to + 4, record.length / 2, false);
    }
    shp.set(record, at + 8);
    at += 8 + record.length;
  });
  return { shp, shx };
}

function header(file: Uint8Array, type: number): void {
  const view = new DataView(file.buffer);
  view.setInt32(0, 9994, false);
  view.setInt32(24, file.length / 2, false);
  view.setInt32(28, 1000, true);
  view.setInt32(32, type, true);
}

function recordOf(type: number, shape: ShpShape): Uint8Array {
  if (shape === null) return new Uint8Array(4);
  if (type === 1) return packed([[1, 4], ...(shape as readonly number[]).map((v) => [v, 8] as const)]);
  const rings = shape as readonly Ring[];
  const points = rings.flat();
  let start = 0;
  const starts = rings.map((ring) => [(start += ring.length) - ring.length, 4] as const);
  const edge = (axis: 0 | 1, pick: (a: number, b: number) => number): number =>
    points.map((p) => p[axis]).reduce((a, b) => pick(a, b));
  const box = [edge(0, Math.min), edge(1, Math.min), edge(0, Math.max), edge(1, Math.max)];
  return packed([
    [type, 4],
    ...box.map((v) => [v, 8] as const),
    [rings.length, 4],
    [points.length, 4],
    ...starts,
    ...points.flat().map((v) => [v, 8] as const),
  ]);
}

function packed(fields: readonly (readonly [value: number, bytes: 4 | 8])[]): Uint8Array {
  const out = new Uint8Array(fields.reduce((sum, [, bytes]) => sum + bytes, 0));
  const view = new DataView(out.buffer);
  let at = 0;
  for (const [value, bytes] of fields) {
    if (bytes === 4) view.setInt32(at, value, true);
    else view.setFloat64(at, value, true);
    at += bytes;
  }
  return out;
}

export interface DbfField {
  readonly name: string;
  readonly type: "C" | "N" | "D" | "L";
  readonly length: number;
}

/** A dBASE III table; rows hold the bytes of each field, padded with blanks. `deleted` marks rows by their index. */
export function writeDbf(
  fields: readonly DbfField[],
  rows: readonly (readonly (string | Uint8Array)[])[],
  deleted: readonly number[] = [],
): Uint8Array {
  const start = 33 + 32 * fields.length;
  const width = fields.reduce((sum, f) => sum + f.length, 1);
  const out = new Uint8Array(start + rows.length * width + 1).fill(0x20, start);
  const view = new DataView(out.buffer);
  out.set([3, 99, 1, 1]);
  view.setUint32(4, rows.length, true);
  view.setUint16(8, start, true);
  view.setUint16(10, width, true);
  const bytesOf = (v: string | Uint8Array): Uint8Array =>
    typeof v === "string" ? new TextEncoder().encode(v) : v;
  fields.forEach((f, i) => {
    out.set(bytesOf(f.name), 32 + 32 * i);
    out[32 + 32 * i + 11] = f.type.charCodeAt(0);
    out[32 + 32 * i + 16] = f.length;
  });
  out[start - 1] = 0x0d;
  rows.forEach((row, r) => {
    let at = start + r * width;
    if (deleted.includes(r)) out[at] = 0x2a;
    at += 1;
    fields.forEach((f, i) => {
      out.set(bytesOf(row[i]!).subarray(0, f.length), at);
      at += f.length;
    });
  });
  out[out.length - 1] = 0x1a;
  return out;
}

export const zipOf = (files: Readonly<Record<string, Uint8Array>>): Uint8Array => zipSync({ ...files });
