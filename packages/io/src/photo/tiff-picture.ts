import type { Findings } from "../problem/index.ts";
import { blocksOf, readLayout, readPlace, TAG, TiffDirectory, type TiffLayout } from "../terrain/index.ts";
import type { World } from "./world-file.ts";

/** Pixels of a picture that are read at most: unpacked piece by piece, or by the browser in 400 MB. */
export const MAX_PIXELS = 100_000_000;

export interface TiffPicture {
  readonly layout: TiffLayout;
  /** Null when the file does not say where it lies. */
  readonly world: World | null;
  readonly crs: number | null;
  /** Value of every colour where there is no picture. */
  readonly nodata: number | null;
}

const RULES = { most: MAX_PIXELS, sampleOf: readColours };

export const isTiff = ([a, b, c, d]: Uint8Array): boolean =>
  (a === 0x49 && b === 0x49 && (c === 42 || c === 43) && d === 0) ||
  (a === 0x4d && b === 0x4d && c === 0 && (d === 42 || d === 43));

/** Reads how a GeoTIFF picture is stored and where it lies: grey, RGB or RGB with alpha, 8 bits a colour. */
export function readTiffPicture(found: Findings, bytes: Uint8Array): TiffPicture {
  const directory = new TiffDirectory(found, bytes);
  const layout = readLayout(found, directory, bytes, RULES);
  const nodata = Number.parseFloat(directory.text(TAG.gdal_nodata, 200) ?? "");
  const isPlaced =
    directory.has(TAG.transformation) || (directory.has(TAG.pixel_scale) && directory.has(TAG.tiepoints));
  const rest = { layout, nodata: Number.isFinite(nodata) ? nodata : null };
  if (!isPlaced) return { ...rest, world: null, crs: null };
  const { x0, y0, dx, dy, crs } = readPlace(found, directory, layout, "m");
  found.throwIfErrors();
  return { ...rest, world: [dx, 0, 0, -dy, x0, y0 + (layout.rows - 1) * dy], crs };
}

function readColours(
  found: Findings,
  directory: TiffDirectory,
): { readonly kind: "uint"; readonly sample_bytes: 1 | 3 | 4; readonly planes: 1 | 3 } {
  const samples = directory.number(TAG.samples, 1);
  const [bits, meaning] = [directory.number(TAG.bits, 1), directory.number(TAG.photometric, 1)];
  const isColour = (samples === 3 || samples === 4) && meaning === 2;
  const isGrey = samples === 1 && meaning === 1;
  const isByBand = samples > 1 && directory.number(TAG.planar, 1) === 2;
  if (
    !(isColour || isGrey) ||
    bits !== 8 ||
    directory.number(TAG.format, 1) !== 1 ||
    (isByBand && samples !== 3)
  )
    found.stop({
      code: "photo-type",
      place: "colours",
      value: `${samples} bands of ${bits} bits`,
      message:
        "The picture is not stored as grey, red-green-blue or red-green-blue with alpha in 8 bits a colour.",
      mend: "Export it as RGB in 8 bits, pixel by pixel, packed with DEFLATE or LZW; or as JPEG or PNG with a world file.",
    });
  if (isByBand) return { kind: "uint", sample_bytes: 1, planes: 3 };
  return { kind: "uint", sample_bytes: samples as 1 | 3 | 4, planes: 1 };
}

export interface Pixels {
  readonly cols: number;
  readonly rows: number;
  /** Red, green, blue, alpha; rows from north to south. */
  readonly rgba: Uint8ClampedArray<ArrayBuffer>;
}

/**
 * The picture in so few pixels that neither side has more than `most`: each is the mean of the pixels under it. Works
 * block by block, so that a large picture is never held unpacked as a whole.
 */
export async function tiffPixels(
  found: Findings,
  bytes: Uint8Array,
  { layout, nodata }: TiffPicture,
  most: number,
): Promise<Pixels> {
  blocksOf.check(found, layout);
  const k = Math.max(1, Math.ceil(Math.max(layout.cols, layout.rows) / most));
  const [cols, rows] = [Math.ceil(layout.cols / k), Math.ceil(layout.rows / k)];
  const sums = new Uint32Array(cols * rows * 4);
  for (let i = 0; i < layout.offsets.length; i++) {
    if (layout.byte_counts[i] === 0) continue;
    const block = await blocksOf.unpack(found, bytes, layout, i);
    if (layout.predictor === 2) undoDifferences(block, layout);
    if (layout.planes === 3) addPlaneBlock(sums, cols, k, block, layout, i);
    else addBlock(sums, cols, k, block, layout, i, nodata);
  }
  return { cols, rows, rgba: meansOf(sums, layout, k, cols, rows) };
}

function undoDifferences(block: Uint8Array, { block_cols, sample_bytes }: TiffLayout): void {
  const width = block_cols * sample_bytes;
  for (let at = 0; at + width <= block.length; at += width)
    for (let p = at + sample_bytes; p < at + width; p++) block[p] = block[p]! + block[p - sample_bytes]!;
}

function addBlock(
  sums: Uint32Array,
  out_cols: number,
  k: number,
  block: Uint8Array,
  layout: TiffLayout,
  index: number,
  nodata: number | null,
): void {
  const { cols, rows, block_cols, block_rows, blocks_across, sample_bytes: n } = layout;
  const left = (index % blocks_across) * block_cols;
  const top = Math.floor(index / blocks_across) * block_rows;
  const [right, bottom] = [Math.min(block_cols, cols - left), Math.min(block_rows, rows - top)];
  for (let r = 0; r < bottom; r++)
    for (let c = 0; c < right; c++) {
      const from = (r * block_cols + c) * n;
      const [red, green, blue] =
        n === 1
          ? [block[from]!, block[from]!, block[from]!]
          : [block[from]!, block[from + 1]!, block[from + 2]!];
      const isClear =
        n === 4 ? block[from + 3]! < 128 : red === nodata && green === nodata && blue === nodata;
      if (isClear) continue;
      const to = (Math.floor((top + r) / k) * out_cols + Math.floor((left + c) / k)) * 4;
      sums[to] = sums[to]! + red;
      sums[to + 1] = sums[to + 1]! + green;
      sums[to + 2] = sums[to + 2]! + blue;
      sums[to + 3] = sums[to + 3]! + 1;
    }
}

/** A block of one colour of a picture that is stored band by band. */
function addPlaneBlock(
  sums: Uint32Array,
  out_cols: number,
  k: number,
  block: Uint8Array,
  { cols, rows, block_cols, block_rows, blocks_across, blocks_down }: TiffLayout,
  index: number,
): void {
  const plane = Math.floor(index / (blocks_across * blocks_down));
  const left = (index % blocks_across) * block_cols;
  const top = (Math.floor(index / blocks_across) % blocks_down) * block_rows;
  const [right, bottom] = [Math.min(block_cols, cols - left), Math.min(block_rows, rows - top)];
  for (let r = 0; r < bottom; r++)
    for (let c = 0; c < right; c++) {
      const to = (Math.floor((top + r) / k) * out_cols + Math.floor((left + c) / k)) * 4;
      sums[to + plane] = sums[to + plane]! + block[r * block_cols + c]!;
      if (plane === 0) sums[to + 3] = sums[to + 3]! + 1;
    }
}

function meansOf(
  sums: Uint32Array,
  layout: TiffLayout,
  k: number,
  cols: number,
  rows: number,
): Uint8ClampedArray<ArrayBuffer> {
  const rgba = new Uint8ClampedArray(cols * rows * 4);
  for (let p = 0; p < cols * rows; p++) {
    const n = sums[4 * p + 3]!;
    if (n === 0) continue;
    const wide = Math.min(k, layout.cols - (p % cols) * k);
    const tall = Math.min(k, layout.rows - Math.floor(p / cols) * k);
    for (let c = 0; c < 3; c++) rgba[4 * p + c] = sums[4 * p + c]! / n;
    rgba[4 * p + 3] = (255 * n) / (wide * tall);
  }
  return rgba;
}
