import type { TerrainChoice } from "@causey/engine/plan";
import { groundAt, type Raster } from "@causey/engine/site";
import type { CheckShot } from "@causey/engine/survey";
import type { Findings } from "../problem/index.ts";

const M_PER_FT = 0.3048;
/** Fewer shots than this prove nothing; heights that are less off than this are a matter of the survey [m]. */
const LEAST_SHOTS = 3;
const LEAST_OFF_M = 0.5;
/** The other unit must fit so much better. A decision of this project: feet for metres are off by 2.28 of the height. */
const TIMES_BETTER = 5;

const medianOf = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

/**
 * Reports terrain whose heights fit the check shots only when feet are read as metres, or metres as feet: a height
 * column or grid in the other unit than the plan says. Nothing is said without three check shots on known ground.
 */
export function checkOtherUnit(
  found: Findings,
  raster: Raster,
  choice: Exclude<TerrainChoice, { readonly kind: "stations" }>,
  shots: readonly CheckShot[],
): void {
  const pairs = shots
    .map(({ x, y, z_m }) => [groundAt(raster, x, y), z_m] as const)
    .filter(([ground]) => Number.isFinite(ground));
  if (pairs.length < LEAST_SHOTS) return;
  const isMetres = choice.unit === "m";
  const off = (factor: number): number => medianOf(pairs.map(([ground, z]) => Math.abs(ground * factor - z)));
  const [as_read, otherwise] = [off(1), off(isMetres ? M_PER_FT : 1 / M_PER_FT)];
  if (as_read < LEAST_OFF_M || otherwise * TIMES_BETTER > as_read) return;
  const [said, other] = isMetres ? ["metres", "feet"] : ["feet", "metres"];
  found.error({
    code: "terrain-other-unit",
    place: "heights",
    value: `off by ${as_read.toFixed(2)} m in ${said}, ${otherwise.toFixed(2)} m in ${other}`,
    message: `Read in ${said}, the heights miss the ${pairs.length} check shots on this ground by ${as_read.toFixed(2)} m (median); read in ${other}, by ${otherwise.toFixed(2)} m. They are most likely in ${other}.`,
    mend: `Choose ${other} as the unit of the terrain. If positions are in ${said} and heights in ${other}, bring both to one unit.`,
  });
}
