import { defineFormula } from "../formula/index.ts";
import type { Series } from "./series.ts";
import { turningPoints, type TurningPoint } from "./turning-points.ts";

/** Means of the highs and lows of one record: of the record's own months, not of a 19-year epoch. */
export interface MeanLevels {
  readonly highs: number;
  readonly lows: number;
  readonly mhw_m: number | null;
  readonly mlw_m: number | null;
  readonly mhhw_m: number | null;
  readonly mllw_m: number | null;
  /** Mean of the readings; null for turning points. */
  readonly msl_m: number | null;
  readonly highest_m: number | null;
  readonly lowest_m: number | null;
  readonly days: number;
  readonly cautions: readonly string[];
}

const TIDAL_DAY_S = 24.8412 * 3600;
const DAY_S = 86_400;
/** Below this a mean is one of a few tides. */
const SHORT_DAYS = 180;
/** Lows within this of each other at the record's floor are the sensor's, not the water's [m]. */
const FLOOR_M = 0.005;

/**
 * Mean high and low waters of a record, with what makes them doubtful: short records, gaps, and lows that bottom out.
 * A mean of some months stands off the 19-year datum by about 0.1 m (docs/methods/water.md).
 */
export function meanLevels(series: Series): MeanLevels {
  const points = turningPoints(series);
  const highs = points.filter((p) => p.high);
  const lows = points.filter((p) => !p.high);
  const days = coveredDays(series);
  const mean = (list: readonly TurningPoint[]): number | null =>
    list.length === 0 ? null : list.reduce((sum, p) => sum + p.z_m, 0) / list.length;
  const isFloored = bottomsOut(lows);
  return {
    highs: highs.length,
    lows: lows.length,
    mhw_m: mean(highs),
    mlw_m: isFloored ? null : mean(lows),
    mhhw_m: mean(ofTidalDays(highs, (a, b) => a.z_m > b.z_m)),
    mllw_m: isFloored ? null : mean(ofTidalDays(lows, (a, b) => a.z_m < b.z_m)),
    msl_m:
      series.kind === "readings" && series.z_m.length > 0
        ? series.z_m.reduce((sum, z) => sum + z, 0) / series.z_m.length
        : null,
    highest_m: extreme(series.z_m, Math.max),
    lowest_m: extreme(series.z_m, Math.min),
    days,
    cautions: [
      ...(days < SHORT_DAYS
        ? [
            `The record covers ${days.toFixed(0)} days: means of so few tides stand off the long mean by a decimetre.`,
          ]
        : []),
      ...(series.gaps.length > 0
        ? [`${series.gaps.length} gaps are left out; no high or low is read across one.`]
        : []),
      ...(isFloored
        ? [
            "The lows stop at one level: the sensor fell dry or a sill holds the water, so no low-water mean is given.",
          ]
        : []),
    ],
  };
}

const extreme = (z: Float64Array, pick: (a: number, b: number) => number): number | null =>
  z.length === 0 ? null : z.reduce((a, b) => pick(a, b));

function coveredDays({ t_s, gaps }: Series): number {
  if (t_s.length < 2) return 0;
  const missing = gaps.reduce((sum, g) => sum + g.to_s - g.from_s, 0);
  return (t_s.at(-1)! - t_s[0]! - missing) / DAY_S;
}

/** The better one of each tidal day; a day with one counts that one. */
function ofTidalDays(
  points: readonly TurningPoint[],
  isBetter: (a: TurningPoint, b: TurningPoint) => boolean,
): TurningPoint[] {
  const best = new Map<number, TurningPoint>();
  const first = points[0]?.t_s ?? 0;
  for (const p of points) {
    const day = Math.floor((p.t_s - first + TIDAL_DAY_S / 4) / TIDAL_DAY_S);
    const known = best.get(day);
    if (!known || isBetter(p, known)) best.set(day, p);
  }
  return [...best.values()];
}

/** More than a third of the lows within half a centimetre of the lowest one. */
function bottomsOut(lows: readonly TurningPoint[]): boolean {
  if (lows.length < 10) return false;
  const floor = lows.reduce((a, p) => Math.min(a, p.z_m), Infinity);
  return lows.filter((p) => p.z_m < floor + FLOOR_M).length > lows.length / 3;
}

const datums = {
  id: "noaa-datums",
  title: "Tidal datum definitions, NOAA datum sheet",
  status: "seen",
} as const;

/** Mean range of tide. */
export const meanRange = defineFormula(
  {
    id: "water.mean-range",
    title: "Mean range of tide",
    symbol: "MN",
    unit: "m",
    text: "MHW - MLW",
    inputs: { MHW: "m", MLW: "m" },
    validity: "Both means over the same epoch.",
    source: datums,
  },
  ({ MHW, MLW }) => MHW - MLW,
);

/** Mean tide level. */
export const meanTideLevel = defineFormula(
  {
    id: "water.mean-tide-level",
    title: "Mean tide level",
    symbol: "MTL",
    unit: "m",
    text: "(MHW + MLW) / 2",
    inputs: { MHW: "m", MLW: "m" },
    validity: "Both means over the same epoch.",
    source: datums,
  },
  ({ MHW, MLW }) => (MHW + MLW) / 2,
);
