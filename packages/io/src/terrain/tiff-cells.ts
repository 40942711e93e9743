import type { Findings } from "../problem/index.ts";
import { BlockFault, decodeBlock, mostUnpacked } from "./tiff-decode.ts";
import { blockRows, type TiffLayout } from "./tiff-layout.ts";

/** What turns a stored number into a height: no-data value, scale and offset of the file. */
export interface CellMeaning {
  readonly nodata: number | null;
  readonly scale: number;
  readonly offset: number;
}

/**
 * All cells of the image, row by row from SOUTH to north, NaN = no data. Blocks that the file leaves out (length 0)
 * hold no data. Throws `ProblemError` for a block that cannot be unpacked, with its number and byte offset.
 */
export async function readCells(
  found: Findings,
  bytes: Uint8Array,
  layout: TiffLayout,
  little: boolean,
  meaning: CellMeaning,
): Promise<Float32Array> {
  checkPromise(found, layout);
  const values = new Float32Array(layout.cols * layout.rows).fill(NaN);
  for (let i = 0; i < layout.offsets.length; i++) {
    if (layout.byte_counts[i] === 0) continue;
    const block = await unpack(found, bytes, layout, i);
    const order = undoPredictor(block, layout, little);
    copyBlock(
      values,
      new DataView(block.buffer, block.byteOffset, block.byteLength),
      layout,
      i,
      order,
      meaning,
    );
  }
  return values;
}

/** @see readCells: the same checks and the same unpacking, block by block, for the pixels of a picture. */
export const blocksOf = {
  check: (found: Findings, layout: TiffLayout): void => checkPromise(found, layout),
  unpack: (found: Findings, bytes: Uint8Array, layout: TiffLayout, block: number): Promise<Uint8Array> =>
    unpack(found, bytes, layout, block),
};

/** A few packed bytes cannot hold millions of cells: refused before memory is taken for the cells. */
function checkPromise(found: Findings, layout: TiffLayout): void {
  const packed = layout.byte_counts.reduce((sum, n) => sum + n, 0);
  const needed = layout.byte_counts.reduce((sum, n, i) => sum + (n > 0 ? blockBytes(layout, i) : 0), 0);
  if (
    packed > 0 &&
    layout.byte_counts.every(
      (n, i) => n === 0 || mostUnpacked(layout.compression, n) >= blockBytes(layout, i),
    )
  )
    return;
  found.stop({
    code: "terrain-truncated",
    place: "blocks",
    value: `${packed} bytes for ${layout.cols} x ${layout.rows} cells`,
    message:
      packed === 0
        ? "The file lists its blocks as empty: it holds no height at all."
        : `The blocks of the file hold ${packed} bytes, which cannot unpack to the ${needed} bytes of its cells.`,
    mend: "Copy or export the file again; it is cut off or damaged.",
  });
}

const blockBytes = (layout: TiffLayout, i: number): number =>
  layout.block_cols * layout.sample_bytes * blockRows(layout, i);

async function unpack(
  found: Findings,
  bytes: Uint8Array,
  layout: TiffLayout,
  i: number,
): Promise<Uint8Array> {
  const at = layout.offsets[i]!;
  const data = bytes.subarray(at, at + layout.byte_counts[i]!);
  const needed = blockBytes(layout, i);
  try {
    const most = layout.block_cols * layout.sample_bytes * layout.block_rows;
    const block = await decodeBlock(layout.compression, data, most);
    if (block.length < needed)
      throw new BlockFault(`unpacks to ${block.length} of the ${needed} bytes it must hold`);
    return layout.compression === 1 && layout.predictor !== 1 ? block.slice() : block;
  } catch (fault) {
    if (!(fault instanceof BlockFault)) throw fault;
    return found.stop({
      code: "terrain-block",
      place: `byte ${at}, block ${i + 1} of ${layout.offsets.length}`,
      value: `${data.length} bytes`,
      message: `Block ${i + 1} of the file ${fault.message}.`,
      mend: "Copy or export the file again; it is cut off or damaged.",
    });
  }
}

/**
 * Takes back the predictor (TIFF 6.0 section 14, and its floating point kind) in place. Returns whether the samples
 * are little-endian afterwards: the floating point predictor always leaves big-endian ones.
 */
function undoPredictor(block: Uint8Array, layout: TiffLayout, little: boolean): boolean {
  const row_bytes = layout.block_cols * layout.sample_bytes;
  if (layout.predictor === 1) return little;
  const view = new DataView(block.buffer, block.byteOffset, block.byteLength);
  for (let at = 0; at + row_bytes <= block.length; at += row_bytes)
    if (layout.predictor === 3) undoFloatRow(block.subarray(at, at + row_bytes), layout.sample_bytes);
    else sumRow(view, at, layout, little);
  return layout.predictor === 3 ? false : little;
}

/** Each sample is stored as its difference from the one to its left, in whole numbers of its size. */
function sumRow(view: DataView, at: number, layout: TiffLayout, little: boolean): void {
  const size = layout.sample_bytes;
  const end = at + layout.block_cols * size;
  for (let p = at + size; p < end; p += size)
    if (size === 1) view.setUint8(p, view.getUint8(p) + view.getUint8(p - 1));
    else if (size === 2) view.setUint16(p, view.getUint16(p, little) + view.getUint16(p - 2, little), little);
    else if (size === 4) view.setUint32(p, view.getUint32(p, little) + view.getUint32(p - 4, little), little);
    else view.setBigUint64(p, view.getBigUint64(p, little) + view.getBigUint64(p - 8, little), little);
}

/** Bytes are summed along the row, then gathered: all first bytes of the samples, all second ones, and so on. */
function undoFloatRow(row: Uint8Array, size: number): void {
  for (let i = 1; i < row.length; i++) row[i] = row[i]! + row[i - 1]!;
  const planes = row.slice();
  const cols = row.length / size;
  for (let c = 0; c < cols; c++) for (let b = 0; b < size; b++) row[c * size + b] = planes[b * cols + c]!;
}

function copyBlock(
  values: Float32Array,
  view: DataView,
  layout: TiffLayout,
  index: number,
  little: boolean,
  meaning: CellMeaning,
): void {
  const { cols, rows, block_cols, block_rows, blocks_across, sample_bytes } = layout;
  const left = (index % blocks_across) * block_cols;
  const top = Math.floor(index / blocks_across) * block_rows;
  const right = Math.min(block_cols, cols - left);
  const bottom = Math.min(block_rows, rows - top);
  const read = reader(view, layout, little);
  const { nodata, scale, offset } = meaning;
  for (let r = 0; r < bottom; r++)
    for (let c = 0; c < right; c++) {
      const v = read((r * block_cols + c) * sample_bytes);
      values[(rows - 1 - top - r) * cols + left + c] = v === nodata ? NaN : v * scale + offset;
    }
}

function reader(view: DataView, layout: TiffLayout, little: boolean): (at: number) => number {
  const size = layout.sample_bytes;
  if (layout.kind === "float")
    return size === 4 ? (at) => view.getFloat32(at, little) : (at) => view.getFloat64(at, little);
  if (layout.kind === "uint")
    return size === 1
      ? (at) => view.getUint8(at)
      : size === 2
        ? (at) => view.getUint16(at, little)
        : (at) => view.getUint32(at, little);
  return size === 1
    ? (at) => view.getInt8(at)
    : size === 2
      ? (at) => view.getInt16(at, little)
      : (at) => view.getInt32(at, little);
}
