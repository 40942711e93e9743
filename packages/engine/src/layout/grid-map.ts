import type { Problem } from "../formula/index.ts";

/** A map of open and closed cells; x is the column, y the row from the top. */
export interface GridMap {
  readonly width: number;
  readonly height: number;
  /** 1 = open, row by row. */
  readonly open: Uint8Array;
}

const HEADER_LINES = 4;

/** Reads a map in the text form of the public grid-path benchmarks: a header of four lines, then one line a row. */
export function readGridMap(
  text: string,
): { readonly map: GridMap } | { readonly problems: readonly Problem[] } {
  const lines = text.split(/\r?\n/);
  const width = headerNumber(lines, "width");
  const height = headerNumber(lines, "height");
  const problems: Problem[] = [];
  const add = (place: string, value: string, message: string, mend: string): void => {
    problems.push({ code: "grid-map", severity: "error", file: "map_file", place, value, message, mend });
  };
  if (!lines[0]?.startsWith("type"))
    add("line 1", lines[0] ?? "", 'does not begin with "type"', 'Begin with "type octile".');
  if (width === null) add("header", "", "has no whole number after width", 'Write "width 64".');
  if (height === null) add("header", "", "has no whole number after height", 'Write "height 64".');
  if (width === null || height === null) return { problems };
  const rows = lines.slice(HEADER_LINES, HEADER_LINES + height);
  if (rows.length < height)
    add(
      `line ${lines.length}`,
      String(rows.length),
      `ends after ${rows.length} of ${height} rows`,
      "Give every row.",
    );
  rows.forEach((row, y) => {
    if (row.length !== width)
      add(
        `line ${y + HEADER_LINES + 1}`,
        String(row.length),
        `has ${row.length} cells, not ${width}`,
        "Give every row the width of the header.",
      );
  });
  if (problems.length > 0) return { problems };
  const open = new Uint8Array(width * height);
  rows.forEach((row, y) => {
    for (let x = 0; x < width; x++)
      open[y * width + x] = row[x] === "." || row[x] === "G" || row[x] === "S" ? 1 : 0;
  });
  return { map: { width, height, open } };
}

function headerNumber(lines: readonly string[], name: string): number | null {
  const line = lines.slice(0, HEADER_LINES).find((l) => l.startsWith(`${name} `));
  const value = Number(line?.slice(name.length + 1));
  return Number.isInteger(value) && value > 0 && value <= 65_536 ? value : null;
}
