import type { Findings } from "../problem/index.ts";
import { MAX_CELLS, checkSize } from "./grid.ts";
import { TAG, type TiffDirectory } from "./tiff-directory.ts";

export type SampleKind = "uint" | "int" | "float";

/** How the cells lie in the file: strips are tiles as wide as the image. */
export interface TiffLayout {
  readonly cols: number;
  readonly rows: number;
  readonly kind: SampleKind;
  /** Bytes of one cell; in a picture those of all its colours. */
  readonly sample_bytes: 1 | 2 | 3 | 4 | 8;
  readonly compression: number;
  readonly predictor: number;
  readonly block_cols: number;
  readonly block_rows: number;
  readonly blocks_across: number;
  readonly blocks_down: number;
  readonly tiled: boolean;
  /** 1, or one plane of blocks after another for each colour of a picture. */
  readonly planes: number;
  readonly offsets: readonly number[];
  readonly byte_counts: readonly number[];
}

/** Compressions by their TIFF number; the others are refused by name. */
const READ = new Set([1, 5, 8, 32946, 32773, 50000]);
const REFUSED: Readonly<Record<number, string>> = {
  6: "JPEG",
  7: "JPEG",
  34887: "LERC",
  50001: "WebP",
  34925: "LZMA",
};

/** What the cells may be: heights, or the colours of a picture. */
export interface CellRules {
  /** Cells that are read at most. */
  readonly most: number;
  readonly sampleOf: (
    found: Findings,
    directory: TiffDirectory,
  ) => Pick<TiffLayout, "kind" | "sample_bytes" | "planes">;
}

/**
 * Reads and checks how the image is stored. Throws `ProblemError` when sizes are too large, when blocks are missing or
 * lie outside the file, and when they together claim more bytes than the file has: before any of them is read.
 */
export function readLayout(
  found: Findings,
  directory: TiffDirectory,
  bytes: Uint8Array,
  { most, sampleOf }: CellRules = { most: MAX_CELLS, sampleOf: readSample },
): TiffLayout {
  const cols = directory.number(TAG.width, 0);
  const rows = directory.number(TAG.height, 0);
  checkSize(found, "image size", cols, rows, most);
  const sample = sampleOf(found, directory);
  const compression = readCompression(found, directory);
  const tiled = directory.has(TAG.tile_offsets);
  const block_cols = tiled ? directory.number(TAG.tile_width, 0) : cols;
  const block_rows = tiled
    ? directory.number(TAG.tile_height, 0)
    : Math.min(directory.number(TAG.rows_per_strip, rows), rows);
  const blocks_across = Math.ceil(cols / block_cols);
  const blocks_down = Math.ceil(rows / block_rows);
  const area = blocks_across * block_cols * blocks_down * block_rows;
  if (!Number.isSafeInteger(area) || area <= 0 || area > 4 * most)
    refuse(
      found,
      "block size",
      `${block_cols} x ${block_rows}`,
      "The strips or tiles of the file have an impossible size.",
    );
  const blocks = blocks_across * blocks_down * sample.planes;
  const layout = {
    cols,
    rows,
    ...sample,
    compression,
    predictor: readPredictor(found, directory, sample),
    block_cols,
    block_rows,
    blocks_across,
    blocks_down,
    tiled,
    offsets: directory.numbers(tiled ? TAG.tile_offsets : TAG.strip_offsets, blocks) ?? [],
    byte_counts: directory.numbers(tiled ? TAG.tile_bytes : TAG.strip_bytes, blocks) ?? [],
  };
  checkBlocks(found, layout, blocks, bytes.length);
  return layout;
}

function readSample(
  found: Findings,
  directory: TiffDirectory,
): { readonly kind: SampleKind; readonly sample_bytes: 1 | 2 | 4 | 8; readonly planes: 1 } {
  const samples = directory.number(TAG.samples, 1);
  if (samples !== 1)
    found.stop({
      code: "terrain-bands",
      place: "bands",
      value: `${samples} bands`,
      message: `The file holds ${samples} bands: it is a picture or a stack, not one grid of heights.`,
      mend: "Export the band of ground heights alone.",
    });
  const kind = (["uint", "int", "float"] as const)[directory.number(TAG.format, 1) - 1];
  const bits = directory.number(TAG.bits, 1);
  const known = kind === "float" ? [32, 64] : kind === undefined ? [] : [8, 16, 32];
  if (kind === undefined || !known.includes(bits))
    return found.stop({
      code: "terrain-type",
      place: "cell type",
      value: `${bits} bits, sample format ${directory.number(TAG.format, 1)}`,
      message: "Heights of this cell type are not read.",
      mend: "Export the terrain with 32-bit or 64-bit floating point cells, or with whole numbers of 8, 16 or 32 bits.",
    });
  return { kind, sample_bytes: (bits / 8) as 1 | 2 | 4 | 8, planes: 1 };
}

function readCompression(found: Findings, directory: TiffDirectory): number {
  const compression = directory.number(TAG.compression, 1);
  if (READ.has(compression)) return compression;
  return found.stop({
    code: "terrain-compression",
    place: "compression",
    value: REFUSED[compression] ?? `compression ${compression}`,
    message: `The file is compressed with ${REFUSED[compression] ?? `an unknown method (${compression})`}, which is not read.`,
    mend: "Export the terrain with DEFLATE, LZW, ZSTD or no compression.",
  });
}

function readPredictor(
  found: Findings,
  directory: TiffDirectory,
  sample: { readonly kind: SampleKind },
): number {
  const predictor = directory.number(TAG.predictor, 1);
  if (predictor === 1 || predictor === 2 || (predictor === 3 && sample.kind === "float")) return predictor;
  return refuse(
    found,
    "predictor",
    String(predictor),
    "The file uses a predictor that its cell type cannot have.",
  );
}

function checkBlocks(found: Findings, layout: TiffLayout, blocks: number, size: number): void {
  const { offsets, byte_counts } = layout;
  if (offsets.length !== blocks || byte_counts.length !== blocks)
    refuse(
      found,
      "blocks",
      `${offsets.length} offsets, ${byte_counts.length} lengths`,
      `The image needs ${blocks} strips or tiles, but the file lists ${Math.min(offsets.length, byte_counts.length)}.`,
    );
  let total = 0;
  for (let i = 0; i < blocks; i++) {
    const [at, length] = [offsets[i]!, byte_counts[i]!];
    total += length;
    if (length > 0 && at + length > size) return truncated(found, i, blocks, at, length, size);
    const needed = layout.block_cols * blockRows(layout, i) * layout.sample_bytes;
    if (layout.compression === 1 && length > 0 && length < needed)
      refuse(
        found,
        `block ${i + 1}`,
        `${length} bytes`,
        `Block ${i + 1} needs ${needed} bytes for its cells, but has ${length}.`,
      );
  }
  if (total > size)
    refuse(
      found,
      "blocks",
      `${total} bytes`,
      `The blocks claim ${total} bytes together, but the file has ${size}.`,
    );
}

/** Rows that a block must hold: the last strip is short, a tile never is. */
export function blockRows(layout: TiffLayout, index: number): number {
  if (layout.tiled) return layout.block_rows;
  return Math.min(
    layout.block_rows,
    layout.rows - (Math.floor(index / layout.blocks_across) % layout.blocks_down) * layout.block_rows,
  );
}

function truncated(
  found: Findings,
  i: number,
  blocks: number,
  at: number,
  length: number,
  size: number,
): void {
  found.stop({
    code: "terrain-truncated",
    place: `byte ${size}`,
    value: `block ${i + 1} of ${blocks}: bytes ${at} to ${at + length}`,
    message: `The file ends at byte ${size}, but block ${i + 1} of ${blocks} should reach to byte ${at + length}.`,
    mend: "Copy or export the file again; it is cut off or damaged.",
  });
}

const refuse = (found: Findings, place: string, value: string, message: string): never =>
  found.stop({
    code: "terrain-tiff",
    place,
    value,
    message,
    mend: "Export the terrain again as a single-band GeoTIFF; this file is damaged.",
  });
