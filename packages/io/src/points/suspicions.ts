import { looksLikeEllipsoidHeights, quantileOfSorted } from "@causey/engine/survey";
import { quote, type Findings } from "../problem/index.ts";
import { eachFeetRow } from "./feet-rows.ts";
import { ListedLines } from "./listed-lines.ts";
import type { PointOptions, PointTable } from "./types.ts";
import { unitWords } from "./units.ts";

/** Every point of a site in this small a square: degrees, for no site is so small [m]. */
const SMALLEST_SITE_M = 1;
/** Known heights may lie this far outside the heights of the points [m]. */
const NEAR_KNOWN_M = 2;

const extent = (values: Float64Array): readonly [number, number] => {
  let [low, high] = [Infinity, -Infinity];
  for (const v of values) [low, high] = [Math.min(low, v), Math.max(high, v)];
  return [low, high];
};

const LATITUDE = /^(lat|latitude|lat_?dd|y_?lat|breite)$/i;
const LONGITUDE = /^(lon|long|lng|longitude|lon_?dd|x_?lon|l[aä]nge)$/i;

/** Columns whose heads say degrees while metres stand in them, and the other way round. */
export function checkDegrees(found: Findings, points: PointTable, { columns }: PointOptions): void {
  const [west, east] = extent(points.x);
  const [south, north] = extent(points.y);
  const heads = `columns ${quote(columns.x)} and ${quote(columns.y)}`;
  const couldBeDegrees = west >= -180 && east <= 360 && south >= -90 && north <= 90;
  const isTiny = east - west < SMALLEST_SITE_M && north - south < SMALLEST_SITE_M;
  const namesDegrees = [columns.x, columns.y].some(
    (c) => LATITUDE.test(c.trim()) || LONGITUDE.test(c.trim()),
  );
  if (points.x.length > 1 && couldBeDegrees && isTiny && (namesDegrees || east > west || north > south))
    found.error({
      code: "points-degrees",
      place: heads,
      value: `${west} to ${east}, ${south} to ${north}`,
      message: `All points lie within ${SMALLEST_SITE_M} m of each other: the ${heads} most likely hold degrees of longitude and latitude.`,
      mend: "Export the points in the plan's own system, in metres or feet, and name those columns.",
    });
  else if (namesDegrees && !couldBeDegrees)
    found.warn({
      code: "points-heads-degrees",
      place: heads,
      value: `${points.x[0]}, ${points.y[0]}`,
      message: `The ${heads} are named as degrees but hold lengths, too large for degrees. They were taken as x (east) and y (north), in this order.`,
      mend: "Check on the map that the points lie where they should and that east and north are not exchanged.",
    });
}

/** Heights that are all, or here and there, in the other unit. */
export function checkFeet(found: Findings, points: PointTable, options: PointOptions): void {
  const known = options.known_heights_m ?? [];
  if (options.unit === "m" && known.length > 0 && looksLikeFeet(points.z, known))
    found.error({
      code: "points-feet",
      place: `column ${quote(options.columns.z)}`,
      value: `median ${middleOf(points.z).toFixed(2)}`,
      message:
        "The heights lie far from every height known at the site when read as metres, and near one when read as feet.",
      mend: "Choose feet as the unit of the file; if positions are in metres and heights in feet, bring both to one unit.",
    });
  const rows = new ListedLines();
  eachFeetRow(points, options.unit !== "m", (row) =>
    rows.add(points.lines[row]!, points.ids?.at(row) ?? null),
  );
  if (rows.count > 0)
    found.warn({
      code: "points-feet-rows",
      place: rows.text,
      value: `${rows.count} heights`,
      message: `${rows.count === 1 ? "One height is" : `${rows.count} heights are`} about 3.28 times ${
        options.unit === "m" ? "larger" : "smaller"
      } than those around, which fits ${options.unit === "m" ? "feet" : "metres"} in a file of ${unitWords[options.unit]}.`,
      mend: "Check them against the field book; they were read as they stand.",
    });
}

const middleOf = (z: Float64Array): number => quantileOfSorted(Float64Array.from(z).sort(), 0.5);

function looksLikeFeet(z: Float64Array, known: readonly number[]): boolean {
  const sorted = Float64Array.from(z).sort();
  const [low, high] = [quantileOfSorted(sorted, 0.05), quantileOfSorted(sorted, 0.95)];
  const gap = (factor: number): number =>
    Math.min(...known.map((k) => Math.max(0, low * factor - k, k - high * factor)));
  return gap(1) > NEAR_KNOWN_M && gap(0.3048) < NEAR_KNOWN_M / 2;
}

/** Refuses heights that look like heights above the ellipsoid; only warns when the file is but looked into. */
export function checkEllipsoid(
  found: Findings,
  heights_m: ArrayLike<number>,
  place: string,
  known_m: readonly number[],
  asGround: boolean,
): void {
  const verdict = looksLikeEllipsoidHeights(heights_m, known_m);
  if (verdict === null || !verdict.looksIt) return;
  found[asGround ? "error" : "warn"]({
    code: "ellipsoid-heights",
    place,
    value: `median ${verdict.median_m.toFixed(2)} m`,
    message: `The heights look like heights above the ellipsoid, as satellite receivers give them, not above the plan's datum (${verdict.rule}). As ground they would put the site far under water or far above it.`,
    mend: "Have them brought onto the plan's datum with the geoid model of the country (height less geoid height), and export again. If the ground truly lies there, enter a mark or check shot of this height in the survey.",
  });
}

/** Heights of exactly 0 among others near 0 may be ground or nothing. */
export function warnOfZeros(found: Findings, zeros: number, total: number, column: string): void {
  if (zeros < 2 || zeros < 0.05 * total) return;
  found.warn({
    code: "heights-zero",
    place: `column ${quote(column)}`,
    value: `${zeros} heights of exactly 0`,
    message: `${zeros} of ${total} heights are exactly 0: a true 0, or a sign for "not read".`,
    mend: "They were taken as ground. If they mean nothing, empty these cells.",
  });
}

/** A point at 0, 0 apart from all others may be the origin of a local grid or have no coordinates. */
export const warnOfOrigin = (found: Findings): void =>
  found.warn({
    code: "points-origin",
    place: "position 0, 0",
    value: "0, 0",
    message: "One point lies at 0, 0, apart from all others: a true place, or a row without coordinates.",
    mend: "It was taken as a place. If its coordinates are missing, empty these cells.",
  });
