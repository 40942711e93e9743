import { deflateSync } from "node:zlib";
import { lzwEncode, packBitsEncode, zstdStore } from "./packers.ts";

export interface TiffTag {
  readonly tag: number;
  /** 2 text, 3 short, 4 long, 12 double, 16 long8. */
  readonly type: 2 | 3 | 4 | 12 | 16;
  readonly values: readonly number[] | string;
  /** A count that lies about the values. */
  readonly claimed?: number;
}

export interface TiffOptions {
  readonly little?: boolean;
  readonly big?: boolean;
  readonly kind?: "uint" | "int" | "float";
  readonly bits?: 8 | 16 | 32 | 64;
  readonly compression?: "none" | "lzw" | "deflate" | "packbits" | "zstd";
  readonly predictor?: 1 | 2 | 3;
  readonly tile?: readonly [width: number, height: number];
  readonly rows_per_strip?: number;
  /** Tags to add or to put in the place of those that are written. */
  readonly tags?: readonly TiffTag[];
  /** Tags to leave out. */
  readonly without?: readonly number[];
}

const COMPRESSION = { none: 1, lzw: 5, deflate: 8, packbits: 32773, zstd: 50000 } as const;

/** GeoTIFF keys for a projected system: place of the grid, and whether a pixel is a point. */
export const geoTags = (
  west: number,
  north: number,
  dx: number,
  dy: number,
  epsg: number | null,
  isPoint = false,
): TiffTag[] => [
  { tag: 33550, type: 12, values: [dx, dy, 0] },
  { tag: 33922, type: 12, values: [0, 0, 0, west, north, 0] },
  {
    tag: 34735,
    type: 3,
    values:
      epsg === null
        ? [1, 1, 0, 1, 1025, 0, 1, isPoint ? 2 : 1]
        : [1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, isPoint ? 2 : 1, 3072, 0, 1, epsg],
  },
];

export const nodataTag = (text: string): TiffTag => ({ tag: 42113, type: 2, values: `${text}\0` });

/** A TIFF file of one band, written by hand so that every number in it can be made to lie. Values: north row first. */
export function writeTiff(
  cols: number,
  rows: number,
  values: ArrayLike<number>,
  o: TiffOptions = {},
): Uint8Array {
  const blocks = packBlocks(cols, rows, values, o);
  const {
    little = true,
    big = false,
    kind = "float",
    bits = 32,
    compression = "none",
    predictor = 1,
    tile,
  } = o;
  const head = big ? 16 : 8;
  const offsets: number[] = [];
  let at = head;
  for (const block of blocks) {
    offsets.push(at);
    at += block.length;
  }
  const own: TiffTag[] = [
    { tag: 256, type: 4, values: [cols] },
    { tag: 257, type: 4, values: [rows] },
    { tag: 258, type: 3, values: [bits] },
    { tag: 259, type: 3, values: [COMPRESSION[compression]] },
    { tag: 262, type: 3, values: [1] },
    { tag: 277, type: 3, values: [1] },
    { tag: 317, type: 3, values: [predictor] },
    { tag: 339, type: 3, values: [{ uint: 1, int: 2, float: 3 }[kind]] },
    ...(tile
      ? ([
          { tag: 322, type: 4, values: [tile[0]] },
          { tag: 323, type: 4, values: [tile[1]] },
          { tag: 324, type: 4, values: offsets },
          { tag: 325, type: 4, values: blocks.map((b) => b.length) },
        ] as const)
      : ([
          { tag: 273, type: 4, values: offsets },
          { tag: 278, type: 4, values: [o.rows_per_strip ?? rows] },
          { tag: 279, type: 4, values: blocks.map((b) => b.length) },
        ] as const)),
  ];
  const given = o.tags ?? [];
  const tags = [...own.filter((t) => !given.some((g) => g.tag === t.tag)), ...given]
    .filter((t) => !(o.without ?? []).includes(t.tag))
    .sort((a, b) => a.tag - b.tag);
  return assemble(tags, blocks, at, little, big);
}

const TYPE_BYTES = { 2: 1, 3: 2, 4: 4, 12: 8, 16: 8 } as const;

function assemble(
  tags: readonly TiffTag[],
  blocks: readonly Uint8Array[],
  ifd: number,
  little: boolean,
  big: boolean,
): Uint8Array {
  const step = big ? 20 : 12;
  const slot = big ? 8 : 4;
  const start = ifd + (ifd & 1);
  const data = (big ? 8 : 2) + tags.length * step + slot;
  const sizes = tags.map((t) => TYPE_BYTES[t.type] * t.values.length);
  const total = start + data + sizes.reduce((sum, s) => sum + (s > slot ? s + (s & 1) : 0), 0);
  const bytes = new Uint8Array(total);
  const view = new DataView(bytes.buffer);
  const offset = (where: number, value: number): void =>
    big ? view.setBigUint64(where, BigInt(value), little) : view.setUint32(where, value, little);
  bytes.set(little ? [0x49, 0x49] : [0x4d, 0x4d]);
  view.setUint16(2, big ? 43 : 42, little);
  if (big) view.setUint16(4, 8, little);
  offset(big ? 8 : 4, start);
  let at = big ? 16 : 8;
  for (const block of blocks) {
    bytes.set(block, at);
    at += block.length;
  }
  if (big) view.setBigUint64(start, BigInt(tags.length), little);
  else view.setUint16(start, tags.length, little);
  let free = start + data;
  tags.forEach((t, i) => {
    const entry = start + (big ? 8 : 2) + i * step;
    view.setUint16(entry, t.tag, little);
    view.setUint16(entry + 2, t.type, little);
    offset(entry + 4, t.claimed ?? t.values.length);
    const field = entry + (big ? 12 : 8);
    const where = sizes[i]! > slot ? free : field;
    if (where === free) {
      offset(field, free);
      free += sizes[i]! + (sizes[i]! & 1);
    }
    writeValues(view, where, t, little);
  });
  return bytes;
}

function writeValues(view: DataView, at: number, t: TiffTag, little: boolean): void {
  const values = typeof t.values === "string" ? [...new TextEncoder().encode(t.values)] : t.values;
  values.forEach((v, i) => {
    const where = at + i * TYPE_BYTES[t.type];
    if (t.type === 2) view.setUint8(where, v);
    else if (t.type === 3) view.setUint16(where, v, little);
    else if (t.type === 4) view.setUint32(where, v, little);
    else if (t.type === 16) view.setBigUint64(where, BigInt(v), little);
    else view.setFloat64(where, v, little);
  });
}

function packBlocks(cols: number, rows: number, values: ArrayLike<number>, o: TiffOptions): Uint8Array[] {
  const [width, height] = o.tile ?? [cols, o.rows_per_strip ?? rows];
  const blocks: Uint8Array[] = [];
  for (let top = 0; top < rows; top += height)
    for (let left = 0; left < cols; left += width) {
      const tall = o.tile ? height : Math.min(height, rows - top);
      blocks.push(pack(rawBlock(cols, rows, values, left, top, width, tall, o), o));
    }
  return blocks;
}

function rawBlock(
  cols: number,
  rows: number,
  values: ArrayLike<number>,
  left: number,
  top: number,
  width: number,
  height: number,
  o: TiffOptions,
): Uint8Array {
  const { kind = "float", bits = 32, predictor = 1 } = o;
  const size = bits / 8;
  const little = predictor === 3 ? false : (o.little ?? true);
  const block = new Uint8Array(width * height * size);
  const view = new DataView(block.buffer);
  const set = setter(view, kind, bits, little);
  for (let r = 0; r < height; r++)
    for (let c = 0; c < width; c++) {
      const inside = top + r < rows && left + c < cols;
      set((r * width + c) * size, inside ? values[(top + r) * cols + left + c]! : 0);
    }
  for (let r = 0; r < height; r++)
    predictRow(block.subarray(r * width * size, (r + 1) * width * size), size, predictor, little);
  return block;
}

function setter(
  view: DataView,
  kind: "uint" | "int" | "float",
  bits: number,
  little: boolean,
): (at: number, v: number) => void {
  if (kind === "float")
    return bits === 32
      ? (at, v) => view.setFloat32(at, v, little)
      : (at, v) => view.setFloat64(at, v, little);
  if (bits === 8) return (at, v) => view.setUint8(at, v);
  return bits === 16 ? (at, v) => view.setUint16(at, v, little) : (at, v) => view.setUint32(at, v, little);
}

/** TIFF 6.0 section 14: each sample less the one to its left; kind 3 first parts the bytes of the samples. */
function predictRow(row: Uint8Array, size: number, predictor: number, little: boolean): void {
  const cols = row.length / size;
  if (predictor === 3) {
    const raw = row.slice();
    for (let c = 0; c < cols; c++) for (let b = 0; b < size; b++) row[b * cols + c] = raw[c * size + b]!;
    for (let i = row.length - 1; i > 0; i--) row[i] = row[i]! - row[i - 1]!;
  }
  if (predictor !== 2) return;
  const view = new DataView(row.buffer, row.byteOffset, row.byteLength);
  for (let c = cols - 1; c > 0; c--) {
    const at = c * size;
    if (size === 1) row[at] = row[at]! - row[at - 1]!;
    else if (size === 2)
      view.setUint16(at, view.getUint16(at, little) - view.getUint16(at - 2, little), little);
    else view.setUint32(at, view.getUint32(at, little) - view.getUint32(at - 4, little), little);
  }
}

function pack(block: Uint8Array, o: TiffOptions): Uint8Array {
  switch (o.compression) {
    case "deflate":
      return new Uint8Array(deflateSync(block));
    case "lzw":
      return lzwEncode(block);
    case "packbits":
      return packBitsEncode(block);
    case "zstd":
      return zstdStore(block);
    default:
      return block;
  }
}
