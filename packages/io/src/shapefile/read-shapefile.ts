import type { JsonObject } from "@causey/engine/formula";
import type { PlanFiles } from "../files/index.ts";
import {
  LayerBuilder,
  layerName,
  type LayerBudget,
  type Positions,
  type VectorLayer,
} from "../layer-form/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { checkHeader, checkShp, type ShapeFamily, type ShpFacts } from "./check-shp.ts";
import { NEST_STEPS, nestRings, type NestBudget } from "./nest-rings.ts";
import { parseShapes } from "./parse-shapes.ts";
import { readDbf } from "./read-dbf.ts";

/** Longest .prj and .cpg that are read [bytes]: real ones hold a few hundred characters. */
const SIDE_FILE_BYTES = 20_000;

/** Names of the .shp files among the files of an archive. */
export const shapefilesIn = (files: PlanFiles): readonly string[] =>
  [...files.keys()].filter((name) => /\.shp$/i.test(name));

/**
 * Reads one shapefile from the files of an archive: the .shp, and beside it .dbf (attributes), .prj (system), .cpg
 * (encoding of the attributes) and .shx (index), in any mixture of capitals. Coordinates stay as they are. What is
 * missing is a warning that says what follows from it; files that contradict one another throw `ProblemError`.
 */
export function readShapefile(
  found: Findings,
  files: PlanFiles,
  shp: string,
  budget: LayerBudget,
): VectorLayer {
  const side = (ending: string): readonly [string, Uint8Array] | null =>
    [...files].find(([name]) => name.toLowerCase() === `${shp.slice(0, -4)}.${ending}`.toLowerCase()) ?? null;
  const bytes = files.get(shp)!;
  const facts = checkShp(found, shp, bytes, budget);
  checkIndex(found, shp, side("shx"), facts);
  const rows = readRows(found, shp, side("dbf"), side("cpg"), facts);
  const builder = new LayerBuilder(found, layerName(shp), budget);
  const nest = { steps: NEST_STEPS };
  let deleted = 0;
  shapesOf(bytes, facts.family).forEach((shape, i) => {
    const row = rows === null ? {} : rows[i]!;
    if (row === null) deleted += 1;
    else builder.add(null, row, facts.family === "area" ? areaOf(found, shp, i, shape, nest) : shape);
  });
  if (deleted > 0)
    found.warn({
      code: "dbf-deleted",
      place: shp,
      value: deleted,
      message: `${deleted} features are marked as deleted in the table and were left out.`,
      mend: "Repack the layer in your mapping program if they should be there.",
    });
  return builder.layer(found.file, readPrj(found, shp, side("prj")));
}

/**
 * The shapes in two dimensions. Areas are read as lines and nested by our own hand, for the package drops holes that
 * turn the wrong way round; the first bytes of a shape are the same with and without heights and measures.
 */
function shapesOf(bytes: Uint8Array, family: ShapeFamily): readonly (object | null)[] {
  if (family === "none") return [];
  const flat = bytes.slice();
  const type = { point: 1, line: 3, area: 3, points: 8 }[family];
  new DataView(flat.buffer).setInt32(32, type, true);
  return parseShapes(flat);
}

function areaOf(
  found: Findings,
  shp: string,
  index: number,
  shape: object | null,
  nest: NestBudget,
): object | null {
  if (shape === null) return null;
  const { type, coordinates } = shape as { type: string; coordinates: Positions | readonly Positions[] };
  const rings = (type === "LineString" ? [coordinates] : coordinates) as readonly Positions[];
  const polygons = nestRings(
    rings.filter((ring) => ring.length > 0),
    nest,
  );
  if (polygons !== null)
    return polygons.length === 0 ? null : { type: "MultiPolygon", coordinates: polygons };
  return found.stop({
    code: "shp-rings",
    place: `${shp}, shape ${index + 1}`,
    value: `${rings.length} rings`,
    message: "The rings are too many or too intricate to tell outlines from holes.",
    mend: "Simplify the areas in your mapping program, or keep those that touch the site.",
  });
}

type SideFile = readonly [name: string, bytes: Uint8Array] | null;

function checkIndex(found: Findings, shp: string, shx: SideFile, facts: ShpFacts): void {
  if (shx === null) {
    found.warn({
      code: "shx-missing",
      place: shp,
      message: "The index (.shx) of the shapefile is missing: the shapes were read one after another.",
      mend: "Other programs may need it; export the shapefile with all its files.",
    });
    return;
  }
  const [name, bytes] = shx;
  checkHeader(found, name, new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength), "shx");
  const count = (bytes.length - 100) / 8;
  if (count !== facts.records) unlike(found, name, `${count} shapes`, `${facts.records}`);
}

const unlike = (found: Findings, name: string, value: string, shapes: string): never =>
  found.stop({
    code: "shp-files",
    place: name,
    value,
    message: `The files of the shapefile do not belong together: ${name} is for ${value}, the .shp holds ${shapes}.`,
    mend: "Pack the files of one export together.",
  });

function readRows(
  found: Findings,
  shp: string,
  dbf: SideFile,
  cpg: SideFile,
  facts: ShpFacts,
): readonly (JsonObject | null)[] | null {
  if (dbf === null) {
    found.warn({
      code: "dbf-missing",
      place: shp,
      message:
        "The table (.dbf) of the shapefile is missing: its features have no names and no other attributes.",
      mend: "Pack the .dbf file into the archive too.",
    });
    return null;
  }
  const encoding = cpg === null ? null : asciiOf(cpg[1]).trim();
  const rows = readDbf(found, dbf[0], dbf[1], encoding);
  if (rows.length !== facts.records) unlike(found, dbf[0], `${rows.length} shapes`, `${facts.records}`);
  return rows;
}

function readPrj(found: Findings, shp: string, prj: SideFile): VectorLayer["crs"] {
  const text = prj === null ? "" : asciiOf(prj[1]).trim();
  if (text !== "") return { wkt: text };
  found.warn({
    code: "prj-missing",
    place: shp,
    message: `The shapefile ${quote(layerName(shp))} does not say in which coordinate system it is: its .prj file is missing or empty.`,
    mend: "Pack the .prj file into the archive too, or say which system it is by its EPSG code.",
  });
  return null;
}

const asciiOf = (bytes: Uint8Array): string => new TextDecoder().decode(bytes.subarray(0, SIDE_FILE_BYTES));
