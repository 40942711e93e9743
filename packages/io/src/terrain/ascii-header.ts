import type { Findings } from "../problem/index.ts";

export interface AsciiHeader {
  readonly cols: number;
  readonly rows: number;
  readonly x: number;
  readonly y: number;
  readonly x_is_corner: boolean;
  readonly y_is_corner: boolean;
  readonly dx: number;
  readonly dy: number;
  readonly nodata: number | null;
  /** Byte and line at which the values begin. */
  readonly end: number;
  readonly endLine: number;
}

const KEYS = [
  "ncols",
  "nrows",
  "xllcorner",
  "xllcenter",
  "yllcorner",
  "yllcenter",
  "cellsize",
  "dx",
  "dy",
  "nodata_value",
];
const LONGEST_LINE = 200;
const MOST_LINES = 20;

/** Reads the header lines; throws `ProblemError` with all their faults and line numbers. */
export function readHeader(found: Findings, bytes: Uint8Array): AsciiHeader {
  const fields = new Map<string, number>();
  let at = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  let line = 1;
  for (; line <= MOST_LINES; line++) {
    const end = lineEnd(bytes, at);
    const text = latin(bytes.subarray(at, Math.min(end, at + LONGEST_LINE))).trim();
    if (/^([-+.\d]|nan)/i.test(text) || at >= bytes.length) break;
    if (text !== "" && !readField(found, fields, line, text) && line === 1) notAGrid(found, text);
    at = afterLineEnd(bytes, end);
  }
  return finish(found, fields, at, line);
}

/** Returns false for a line whose key no ASCII grid has. */
function readField(found: Findings, fields: Map<string, number>, line: number, text: string): boolean {
  const [key = "", value = "", ...rest] = text.split(/\s+/);
  const name = key.toLowerCase();
  if (!KEYS.includes(name)) {
    headerFault(
      found,
      line,
      text,
      "This line is not part of an ASCII grid's header",
      `Known lines: ${KEYS.join(", ")}.`,
    );
    return false;
  }
  const number = /^nan$/i.test(value) && name === "nodata_value" ? NaN : Number(value || "x");
  if (rest.length > 0 || (Number.isNaN(number) && !/^nan$/i.test(value)) || Math.abs(number) === Infinity)
    headerFault(
      found,
      line,
      text,
      `"${name}" is not a number`,
      "Write one number with a decimal point after the key.",
    );
  else if (fields.has(name))
    headerFault(found, line, text, `"${name}" is given twice`, "Keep one of the two lines.");
  else fields.set(name, number);
  return true;
}

const headerFault = (found: Findings, line: number, value: string, message: string, mend: string): void =>
  found.error({ code: "terrain-header", place: `line ${line}`, value, message: `${message}.`, mend });

const notAGrid = (found: Findings, text: string): never =>
  found.stop({
    code: "terrain-format",
    place: "line 1",
    value: text,
    message: "This is neither a GeoTIFF nor an ESRI ASCII grid.",
    mend: "Give the terrain as GeoTIFF (.tif) or as ESRI ASCII grid (.asc).",
  });

function finish(
  found: Findings,
  fields: ReadonlyMap<string, number>,
  end: number,
  endLine: number,
): AsciiHeader {
  const need = (...names: string[]): number => {
    const given = names.filter((n) => fields.has(n));
    if (given.length === 1) return fields.get(given[0]!)!;
    const what = names.map((n) => `"${n}"`).join(" or ");
    headerFault(
      found,
      endLine,
      given.join(", ") || "(nothing)",
      given.length === 0 ? `The header lacks ${what}` : `The header gives both ${what}`,
      given.length === 0 ? `Add the line ${what} with its number.` : "Keep one of the two lines.",
    );
    return NaN;
  };
  const twoSizes = fields.has("dx") || fields.has("dy");
  const header = {
    cols: need("ncols"),
    rows: need("nrows"),
    x: need("xllcorner", "xllcenter"),
    y: need("yllcorner", "yllcenter"),
    x_is_corner: fields.has("xllcorner"),
    y_is_corner: fields.has("yllcorner"),
    dx: twoSizes ? need("dx", "cellsize") : need("cellsize"),
    dy: twoSizes ? need("dy", "cellsize") : need("cellsize"),
    nodata: fields.get("nodata_value") ?? null,
    end,
    endLine,
  };
  found.throwIfErrors();
  return header;
}

const LF = 10;
const CR = 13;

function lineEnd(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length && bytes[at] !== LF && bytes[at] !== CR) at += 1;
  return at;
}

const afterLineEnd = (bytes: Uint8Array, end: number): number =>
  end + (bytes[end] === CR && bytes[end + 1] === LF ? 2 : 1);

/** Header keys and numbers are plain ASCII; anything else shows up as a fault with its line. */
const latin = (bytes: Uint8Array): string => String.fromCharCode(...bytes);
