import { quote, type Findings } from "../problem/index.ts";

const EAST = /^(e|east|easting|rechtswert|ostwert|[ex]_?m|east(ing)?[_ ]?\(?m\)?)$/i;
const NORTH = /^(n|north|northing|hochwert|nordwert|[ny]_?m|north(ing)?[_ ]?\(?m\)?)$/i;

/**
 * Refuses columns whose heads say the opposite of what they are named for: a northing read as east puts the site on
 * another shore, and tables that begin with the northing are common.
 */
export function checkExchanged(found: Findings, columns: { readonly x: string; readonly y: string }): void {
  const [x, y] = [columns.x.trim(), columns.y.trim()];
  if (!NORTH.test(x) && !EAST.test(y)) return;
  found.error({
    code: "points-exchanged",
    place: `columns ${quote(columns.x)} and ${quote(columns.y)}`,
    value: `x from ${columns.x}, y from ${columns.y}`,
    message: `The column ${quote(columns.x)} is named for x (east) and ${quote(columns.y)} for y (north), but their heads say that east and north are exchanged.`,
    mend: "Name the column of eastings for x and the column of northings for y. If the heads are wrong, rename them in the file.",
  });
}
