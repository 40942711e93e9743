import type { LayerBudget } from "../layer-form/index.ts";
import type { Findings } from "../problem/index.ts";

const HEADER = 100;
const FILE_CODE = 9994;

/** What a shape type is made of; the variants with heights (+10) and measures (+20) begin with the same bytes. */
export type ShapeFamily = "none" | "point" | "line" | "area" | "points";
const FAMILIES: Readonly<Record<number, ShapeFamily>> = {
  0: "none",
  1: "point",
  3: "line",
  5: "area",
  8: "points",
};

const familyOf = (type: number): ShapeFamily | undefined =>
  type === 0 ? "none" : type >= 0 && type < 30 && type % 10 !== 0 ? FAMILIES[type % 10] : undefined;

export interface ShpFacts {
  readonly family: ShapeFamily;
  readonly records: number;
}

const MEND = "Export the shapefile again; a copy that was cut off on its way looks like this.";

/**
 * Holds every length and count of a .shp file against its bytes before a shape is read: the package that reads the
 * shapes believes them (ESRI Shapefile Technical Description, July 1998, pages 3 to 20). Throws `ProblemError`.
 */
export function checkShp(found: Findings, file: string, bytes: Uint8Array, budget: LayerBudget): ShpFacts {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  checkHeader(found, file, view, "shp");
  const type = view.getInt32(32, true);
  const family = familyOf(type);
  if (family === undefined)
    return found.stop({
      code: "shp-type",
      place: file,
      value: type,
      message: `The shapes are of type ${type}, which is not read (points, lines and areas are).`,
      mend: "Convert the layer to points, lines or polygons in your mapping program.",
    });
  const left = { features: budget.features, positions: budget.positions };
  let records = 0;
  let at = HEADER;
  while (at < bytes.length) {
    records += 1;
    if (--left.features < 0)
      lie(found, file, at, `${records} records`, "The file holds more shapes than are read");
    if (at + 12 > bytes.length) lie(found, file, at, "end of file", `Record ${records} is cut off`);
    const length = view.getInt32(at + 4, false) * 2;
    if (length < 4 || at + 8 + length > bytes.length)
      lie(found, file, at + 4, `${length} bytes`, `Record ${records} claims more or less than there is`);
    checkRecord(found, file, view, at + 8, length, { number: records, type, family }, left);
    at += 8 + length;
  }
  return { family, records };
}

/** The 100 bytes that .shp and .shx share: the sign and the length of the file in words of two bytes. */
export function checkHeader(found: Findings, file: string, view: DataView, what: "shp" | "shx"): void {
  if (view.byteLength < HEADER || view.getInt32(0, false) !== FILE_CODE)
    lie(found, file, 0, `${view.byteLength} bytes`, `This is not a .${what} file, or it is cut off`);
  const claimed = view.getInt32(24, false) * 2;
  if (claimed !== view.byteLength)
    lie(
      found,
      file,
      24,
      `${claimed} bytes`,
      `The file says that it is ${claimed} bytes long, but it is ${view.byteLength}`,
    );
}

interface RecordFacts {
  readonly number: number;
  readonly type: number;
  readonly family: ShapeFamily;
}

function checkRecord(
  found: Findings,
  file: string,
  view: DataView,
  at: number,
  length: number,
  record: RecordFacts,
  left: LayerBudget,
): void {
  const type = view.getInt32(at, true);
  if (type === 0) return;
  const fail = (value: string, what: string): never =>
    lie(found, file, at, value, `Record ${record.number} ${what}`);
  if (type !== record.type) fail(`type ${type}`, `is of another type than the file (${record.type})`);
  if (record.family === "point") {
    if (length < 20) fail(`${length} bytes`, "is too short for a point");
    left.positions -= 1;
    return;
  }
  const isPoints = record.family === "points";
  if (length < (isPoints ? 40 : 44)) fail(`${length} bytes`, "is too short for its counts");
  const parts = isPoints ? 0 : view.getInt32(at + 36, true);
  const points = view.getInt32(at + (isPoints ? 36 : 40), true);
  const room = length - (isPoints ? 40 : 44);
  if (parts < 0 || points < 0 || parts * 4 + points * 16 > room)
    fail(`${parts} parts, ${points} points`, "claims more parts or points than it holds");
  left.positions -= points;
  if (left.positions < 0) fail(`${points} points`, "comes after more positions than are read from one file");
  checkParts(view, at + 44, parts, points, fail);
}

/** Each part begins where the one before it ends; the first at 0. */
function checkParts(
  view: DataView,
  at: number,
  parts: number,
  points: number,
  fail: (value: string, what: string) => never,
): void {
  let before = 0;
  for (let i = 0; i < parts; i++) {
    const start = view.getInt32(at + 4 * i, true);
    if ((i === 0 && start !== 0) || start < before || start > points)
      fail(`part ${i + 1} at point ${start}`, "has parts that do not follow one another");
    before = start;
  }
}

const lie = (found: Findings, file: string, at: number, value: string, message: string): never =>
  found.stop({ code: "shp", place: `${file}, byte ${at}`, value, message: `${message}.`, mend: MEND });
