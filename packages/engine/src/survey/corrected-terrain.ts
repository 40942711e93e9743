import { recordValue, type Trace } from "../formula/index.ts";
import type { Raster, Zone } from "../site/index.ts";
import { isInside } from "../site/index.ts";
import { metres } from "../units/index.ts";
import { cellsInside } from "./cells-inside.ts";
import type { TerrainBias } from "./evidence.ts";
import { heightBandWithBias, statedHeightBand } from "./formulas.ts";
import { surveyMethod } from "./sources.ts";
import { biasOfShots, habitatsOf, LEAST_SHOTS, shotsByGround, terrainBias } from "./terrain-bias.ts";
import type { CheckShot, Survey } from "./types.ts";

export interface CorrectedTerrain {
  /** The raster itself when nothing was corrected. */
  readonly raster: Raster;
  /** Half width at 95 % on every height of the raster [m]; null = not known. */
  readonly band_m: number | null;
  /** What was done and what the band rests on, in a sentence or two. */
  readonly note: string;
  readonly bias: TerrainBias;
  /** Taken off every height inside the habitats (everywhere when there is none) [m]; 0 = nothing was done. */
  readonly lowered_m: number;
}

/**
 * Terrain lowered by the bias that the check shots show, where the survey asks for it, and the band that remains.
 *
 * Lowered inside the habitats alone, everywhere when there is none; a negative bias raises. Fewer than three shots
 * correct nothing. Without correction the bias is part of the band. Where shots outside the habitats show a wider
 * band, that one counts for all ground. Without enough shots the maker's stated accuracy gives the band, and without
 * that it is null.
 */
export function correctedTerrain(
  raster: Raster,
  survey: Survey,
  zones: readonly Zone[],
  trace?: Trace,
): CorrectedTerrain {
  const bias = terrainBias(raster, survey.check_shots, zones, trace);
  if (bias.n < LEAST_SHOTS || bias.median_m === null || bias.band_m === null)
    return { raster, bias, lowered_m: 0, ...statedBand(survey, bias, trace) };
  const where = habitatsOf(zones).length > 0 ? "inside the habitats" : "everywhere";
  const others = shotsByGround(survey.check_shots, zones).elsewhere;
  const spread = `${bias.n} check shots ${where}`;
  if (!survey.correct_terrain) {
    const left = heightBandWithBias({ b: metres(bias.median_m), k: metres(bias.band_m) }, trace);
    return {
      raster,
      bias,
      lowered_m: 0,
      band_m: widerBand(raster, left, others, trace),
      note: `The terrain reads ${highOrLow(bias.median_m)} (median of ${spread}) and was not corrected: the band holds this too.`,
    };
  }
  return {
    raster: lowered(raster, zones, bias.median_m),
    bias,
    lowered_m: bias.median_m,
    band_m: widerBand(raster, bias.band_m, others, trace),
    note: `The terrain reads ${highOrLow(bias.median_m)} (median of ${spread}); this was taken off ${where}.`,
  };
}

const highOrLow = (m: number): string => `${Math.abs(m).toFixed(3)} m ${m < 0 ? "low" : "high"}`;

/** Outside the habitats nothing is corrected, so the bias there is part of the band; the wider one counts for all. */
function widerBand(raster: Raster, inside_m: number, others: readonly CheckShot[], trace?: Trace): number {
  const working: Trace = [];
  const { band_m, median_m } = biasOfShots(raster, others, [], working);
  if (band_m === null || median_m === null) return inside_m;
  const outside_m = heightBandWithBias({ b: metres(median_m), k: metres(band_m) }, working);
  const wider = Math.max(inside_m, outside_m);
  trace?.push(...working.map((step) => ({ ...step, note: "shots outside the habitats" })));
  recordValue(trace, {
    id: "survey.band",
    title: "Band on the site's heights",
    symbol: "K",
    value: metres(wider),
    unit: "m",
    source: surveyMethod,
    how: "the wider of the bands inside and outside the habitats",
  });
  return wider;
}

function statedBand(
  survey: Survey,
  bias: TerrainBias,
  trace?: Trace,
): Pick<CorrectedTerrain, "band_m" | "note"> {
  const shots = `${bias.n === 0 ? "No" : `Only ${bias.n}`} check shot${bias.n === 1 ? "" : "s"} on this ground`;
  const few = `${shots}: the terrain's bias is not known; take at least ${LEAST_SHOTS}.`;
  if (survey.accuracy_m === null)
    return { band_m: null, note: `${few} Its accuracy is not stated either: heights have no band.` };
  return {
    band_m: statedHeightBand({ s: metres(survey.accuracy_m) }, trace),
    note: `${few} The band is what the maker states, for open firm ground.`,
  };
}

function lowered(raster: Raster, zones: readonly Zone[], by_m: number): Raster {
  const habitats = habitatsOf(zones).map((z) => z.polygons);
  const inside = habitats.length === 0 ? null : cellsInside(raster, habitats);
  const values = raster.values.map((v, i) => (inside === null || inside[i] === 1 ? v - by_m : v));
  return { ...raster, values };
}

/**
 * Habitats without a single check shot in them: lidar in dense grass and reed reads the leaves, and nothing here tells
 * by how much. Only for terrain that was measured from the air.
 */
export const habitatsWithoutShots = (zones: readonly Zone[], shots: readonly CheckShot[]): readonly Zone[] =>
  habitatsOf(zones).filter((z) => !shots.some((s) => isInside(z.polygons, s.x, s.y)));
