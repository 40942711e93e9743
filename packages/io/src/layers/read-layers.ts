import type { Problem } from "@causey/engine/formula";
import { readArchive } from "../archive/index.ts";
import type { PlanFiles } from "../files/index.ts";
import { isSqlite, readGeoPackage, type SqliteHook } from "../geopackage/index.ts";
import { LAYER_LIMITS, layerBudget, type LayerBudget, type VectorLayer } from "../layer-form/index.ts";
import { readGpx, readKml } from "../markup/index.ts";
import { Findings } from "../problem/index.ts";
import { readShapefile, shapefilesIn } from "../shapefile/index.ts";
import { readGeoJson } from "./read-geojson.ts";

export interface LayersRead {
  readonly layers: readonly VectorLayer[];
  readonly warnings: readonly Problem[];
}

type Format = "zip" | "geopackage" | "kml" | "gpx" | "geojson" | "bare-shp" | "tiff" | "unknown";

/**
 * Reads the vector layers of one file, whatever its ending says: GeoJSON, KML, GPX, GeoPackage, or a zip archive with
 * shapefiles or any of these inside (.kmz too). Formats are told apart by content. Coordinates stay as they are; each
 * layer says in which system they are, or that the file does not say (`placeLayer` then asks).
 *
 * name    file name, for messages and for the layer's name
 * sqlite  where a browser finds SQLite, which is loaded for GeoPackages only
 * Throws `ProblemError` with every problem found.
 */
export async function readLayers(
  name: string,
  bytes: Uint8Array,
  sqlite: SqliteHook = {},
): Promise<LayersRead> {
  const found = new Findings(name);
  const budget = layerBudget();
  const format = formatOf(bytes);
  const layers =
    format === "zip"
      ? await readZip(found, readArchive(bytes, name), budget, sqlite)
      : await readOne(found, name, bytes, format, budget, sqlite);
  found.throwIfErrors();
  if (layers.every((l) => l.features.length === 0))
    found.warn({
      code: "no-features",
      place: "file",
      value: `${layers.length} layers`,
      message: "The file holds no feature with a shape.",
      mend: "Check that the right layer was exported.",
    });
  return { layers, warnings: found.warnings };
}

function formatOf(bytes: Uint8Array): Format {
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5)) return "zip";
  if (isSqlite(bytes)) return "geopackage";
  if (bytes[0] === 0 && bytes[1] === 0 && bytes[2] === 0x27 && bytes[3] === 0x0a) return "bare-shp";
  if (isTiff(bytes)) return "tiff";
  const head = headText(bytes.subarray(0, 4096));
  if (/^\s*[{[]/.test(head)) return "geojson";
  if (!/^\s*</.test(head)) return "unknown";
  if (/<(\w+:)?gpx[\s>]/i.test(head)) return "gpx";
  return /<(\w+:)?kml[\s>]/i.test(head) ? "kml" : "unknown";
}

const headText = (bytes: Uint8Array): string => {
  const label = bytes[0] === 0xff ? "utf-16le" : bytes[0] === 0xfe ? "utf-16be" : "utf-8";
  return new TextDecoder(label).decode(bytes).replace(/^\ufeff/, "");
};

async function readOne(
  found: Findings,
  name: string,
  bytes: Uint8Array,
  format: Format,
  budget: LayerBudget,
  sqlite: SqliteHook,
): Promise<readonly VectorLayer[]> {
  switch (format) {
    case "geopackage":
      return readGeoPackage(found, bytes, budget, sqlite);
    case "gpx":
      return readGpx(found, name, bytes, budget);
    case "kml":
      return [readKml(found, name, bytes, budget)];
    case "geojson":
      return [readGeoJson(found, name, bytes, budget)];
    default:
      return refuse(found, name, format);
  }
}

/** "II" or "MM", then 42, or 43 for BigTIFF. */
const isTiff = (b: Uint8Array): boolean =>
  (b[0] === 0x49 && b[1] === 0x49 && (b[2] === 42 || b[2] === 43) && b[3] === 0) ||
  (b[0] === 0x4d && b[1] === 0x4d && b[2] === 0 && (b[3] === 42 || b[3] === 43));

const WANTED = "Give a zipped shapefile, a GeoPackage, or a KML, KMZ, GPX or GeoJSON file.";

/** Why a file of this format holds no layer, and what to do. */
const REFUSED: Readonly<Partial<Record<Format, readonly [message: string, mend: string]>>> = {
  "bare-shp": [
    "A .shp file alone has neither names nor a coordinate system.",
    "Pack it with its .dbf, .shx and .prj files into one .zip.",
  ],
  zip: ["An archive inside an archive is not read.", WANTED],
  tiff: [
    "This is a picture or a grid of cells (TIFF), not outlines: a mask of an area is one too.",
    "Turn it into outlines in your mapping program (raster to polygons) and export those; heights come in as the terrain of the plan.",
  ],
};

function refuse(found: Findings, name: string, format: Format): never {
  const [message, mend] = REFUSED[format] ?? ["The file is none of the formats that are read.", WANTED];
  const code = format === "bare-shp" ? "shp-alone" : "vector-format";
  return found.stop({ code, place: name, message, mend });
}

const READABLE = /\.(shp|kml|gpx|geojson|json|gpkg)$/i;

async function readZip(
  found: Findings,
  files: PlanFiles,
  budget: LayerBudget,
  sqlite: SqliteHook,
): Promise<readonly VectorLayer[]> {
  const names = [...files.keys()].filter((name) => READABLE.test(name)).sort();
  if (names.length === 0 || names.length > LAYER_LIMITS.layers)
    found.stop({
      code: "archive-layers",
      place: "all files",
      value: `${names.length} of ${files.size} files`,
      message:
        names.length === 0
          ? "The archive holds no shapefile (.shp) and no other vector file."
          : `The archive holds more than the ${LAYER_LIMITS.layers} layers that are read.`,
      mend: "Pack the files of the layers that touch the site (.shp, .dbf, .shx, .prj) into one .zip.",
    });
  const shapefiles = new Set(shapefilesIn(files));
  const layers: VectorLayer[] = [];
  for (const name of names) {
    const bytes = files.get(name)!;
    if (shapefiles.has(name)) layers.push(readShapefile(found, files, name, budget));
    else layers.push(...(await readOne(found, name, bytes, formatOf(bytes), budget, sqlite)));
  }
  return layers;
}
