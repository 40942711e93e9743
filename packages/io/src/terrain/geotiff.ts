import type { Findings } from "../problem/index.ts";
import type { FileGrid } from "./grid.ts";
import { readCells, type CellMeaning } from "./tiff-cells.ts";
import { TAG, TiffDirectory } from "./tiff-directory.ts";
import { readPlace } from "./tiff-geo.ts";
import { readLayout, type TiffLayout } from "./tiff-layout.ts";

export interface GeoTiffRead {
  readonly grid: FileGrid;
  /** EPSG codes that the file names. */
  readonly crs: number | null;
  readonly vertical: number | null;
}

/**
 * Reads the first image of a GeoTIFF or BigTIFF file: one band, strips or tiles, no compression, LZW, DEFLATE,
 * PackBits or ZSTD, any predictor. The directory is read by this program itself, because every number in it must be
 * checked before it is believed.
 */
export async function readGeoTiff(
  found: Findings,
  bytes: Uint8Array,
  unit: "m" | "ft",
): Promise<GeoTiffRead> {
  const directory = new TiffDirectory(found, bytes);
  const layout = readLayout(found, directory, bytes);
  const place = readPlace(found, directory, layout, unit);
  const meaning = readMeaning(found, directory, layout);
  found.throwIfErrors();
  const values = await readCells(found, bytes, layout, directory.little, meaning);
  const { x0, y0, dx, dy } = place;
  const grid = {
    cols: layout.cols,
    rows: layout.rows,
    x0,
    y0,
    dx,
    dy,
    values,
    declare: (v: number) => `set ${v} as the no-data value of the GeoTIFF (its tag GDAL_NODATA)`,
  };
  return { grid, crs: place.crs, vertical: place.vertical };
}

function readMeaning(found: Findings, directory: TiffDirectory, layout: TiffLayout): CellMeaning {
  const xml = directory.text(TAG.gdal_metadata, 1_000_000) ?? "";
  return {
    nodata: readNodata(found, directory, layout),
    scale: metadataNumber(xml, "scale") ?? 1,
    offset: metadataNumber(xml, "offset") ?? 0,
  };
}

/** The no-data value as the cells hold it: 32-bit cells have rounded it. */
function readNodata(found: Findings, directory: TiffDirectory, layout: TiffLayout): number | null {
  const text = directory.text(TAG.gdal_nodata, 200)?.trim() ?? "";
  if (text === "" || /^[-+]?nan$/i.test(text)) return null;
  const value = Number(text);
  if (Number.isNaN(value))
    found.error({
      code: "terrain-nodata",
      place: `tag ${TAG.gdal_nodata}`,
      value: text,
      message: "The no-data value that the file declares is not a number.",
      mend: "Export the terrain again with a number as its no-data value.",
    });
  return layout.kind === "float" && layout.sample_bytes === 4 ? Math.fround(value) : value;
}

/** Heights stored as whole centimetres carry a scale in their metadata; without it they would be 100 times too high. */
function metadataNumber(xml: string, role: "scale" | "offset"): number | null {
  const item = new RegExp(`<Item [^>]{0,200}role="${role}"[^>]{0,200}>([^<]{1,40})<`).exec(xml)?.[1];
  const value = item === undefined ? NaN : Number(item);
  return Number.isFinite(value) ? value : null;
}
