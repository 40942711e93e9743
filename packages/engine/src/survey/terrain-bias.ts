import { recordValue, type Trace } from "../formula/index.ts";
import { groundAt, isInside, type Raster, type Zone } from "../site/index.ts";
import { metres, qty } from "../units/index.ts";
import type { ShotResidual, TerrainBias } from "./evidence.ts";
import { heightBand } from "./formulas.ts";
import { surveyMethod } from "./sources.ts";
import { mean, median, robustDeviation, sampleDeviation } from "./statistics.ts";
import { studentHalfWidth } from "./student-t.ts";
import type { CheckShot } from "./types.ts";

/** Fewest check shots that tell a bias and a spread. */
export const LEAST_SHOTS = 3;
/** A residual further from the median than this many robust deviations is listed. */
export const OUTLIER_SIGMAS = 3;
/** Below this spread nothing is an outlier: heights are not told more finely [m]. */
export const LEAST_SIGMA_M = 0.001;

/** Habitats: the zones in which plants may hide the ground from above. */
export const habitatsOf = (zones: readonly Zone[]): readonly Zone[] =>
  zones.filter((z) => z.use === "habitat");

/** Shots inside the habitats, and the others; all count where there is no habitat. */
export function shotsByGround(
  shots: readonly CheckShot[],
  zones: readonly Zone[],
): { readonly counted: readonly CheckShot[]; readonly elsewhere: readonly CheckShot[] } {
  const habitats = habitatsOf(zones);
  if (habitats.length === 0) return { counted: shots, elsewhere: [] };
  const isOn = (s: CheckShot): boolean => habitats.some((z) => isInside(z.polygons, s.x, s.y));
  return { counted: shots.filter(isOn), elsewhere: shots.filter((s) => !isOn(s)) };
}

/**
 * Bias of a terrain against heights taken on the ground itself, inside the habitats; everywhere when there is none.
 *
 * raster  [m above the site datum]; shots on the same datum and system
 * Terrain at a shot is bilinear (`groundAt`). The centre is the median. The band is a prediction interval with
 * Student's t. Outliers are listed and still count, so that a band is never narrowed by taking away what does not fit.
 */
export function terrainBias(
  raster: Raster,
  check_shots: readonly CheckShot[],
  zones: readonly Zone[],
  trace?: Trace,
): TerrainBias {
  const { counted, elsewhere } = shotsByGround(check_shots, zones);
  return biasOfShots(raster, counted, elsewhere, trace);
}

/** Bias of the shots given, whatever they stand on. */
export function biasOfShots(
  raster: Raster,
  shots: readonly CheckShot[],
  elsewhere: readonly CheckShot[] = [],
  trace?: Trace,
): TerrainBias {
  const pairs = shots.map((shot) => ({ shot, terrain_m: groundAt(raster, shot.x, shot.y) }));
  return {
    ...biasOfPairs(
      pairs.filter((p) => !Number.isNaN(p.terrain_m)),
      trace,
    ),
    elsewhere: elsewhere.map((s) => s.id),
    off_terrain: pairs.filter((p) => Number.isNaN(p.terrain_m)).map((p) => p.shot.id),
  };
}

/** A check shot and the terrain's own height there [m]. */
export interface ShotOnTerrain {
  readonly shot: CheckShot;
  readonly terrain_m: number;
}

/** Bias of terrain heights that are known at every shot. */
export function biasOfPairs(pairs: readonly ShotOnTerrain[], trace?: Trace): TerrainBias {
  const residuals = pairs.map(({ shot: { id, x, y, z_m }, terrain_m }) => ({
    id,
    x,
    y,
    residual_m: terrain_m - z_m,
  }));
  const values = residuals.map((r) => r.residual_m);
  const n = values.length;
  const centre = n === 0 ? null : median(values);
  const sd = sampleDeviation(values);
  const shots = pairs.map((p) => p.shot);
  return {
    n,
    median_m: centre,
    mean_m: n === 0 ? null : mean(values),
    sd_m: sd,
    band_m: sd === null || centre === null ? null : bandOf(shots, centre, sd, trace),
    residuals,
    outliers: outliersOf(residuals),
    elsewhere: [],
    off_terrain: [],
  };
}

function bandOf(shots: readonly CheckShot[], centre_m: number, sd_m: number, trace?: Trace): number | null {
  const n = shots.length;
  if (n < LEAST_SHOTS) return null;
  const note = `${n} check shots`;
  const value = (symbol: string, title: string, v: number, how: string): void =>
    recordValue(trace, {
      id: `survey.bias.${symbol}`,
      title,
      symbol,
      value: metres(v),
      unit: "m",
      source: surveyMethod,
      how,
      note,
    });
  const a = claimedAccuracy(shots);
  value("b", "Terrain less check shot, middle value", centre_m, "median of the residuals");
  value("s", "Spread of the residuals", sd_m, "standard deviation, divisor n - 1");
  value("a", "Accuracy that the shots claim", a, "root mean square of those that state one");
  const t = studentHalfWidth(0.95, n - 1);
  return heightBand({ t: qty(t, "1"), s: metres(sd_m), a: metres(a), n: qty(n, "1") }, trace);
}

/** Root mean square of the accuracies that are stated; 0 when none is, for then only the spread is known [m]. */
function claimedAccuracy(shots: readonly CheckShot[]): number {
  const stated = shots.map((s) => s.accuracy_m).filter((a) => a !== null);
  return stated.length === 0 ? 0 : Math.sqrt(mean(stated.map((a) => a ** 2)));
}

function outliersOf(residuals: readonly ShotResidual[]): readonly ShotResidual[] {
  if (residuals.length < LEAST_SHOTS) return [];
  const values = residuals.map((r) => r.residual_m);
  const centre = median(values);
  const sigma = Math.max(LEAST_SIGMA_M, robustDeviation(values, centre));
  return residuals.filter((r) => Math.abs(r.residual_m - centre) > OUTLIER_SIGMAS * sigma);
}
