import { metres } from "../units/index.ts";
import { coveredTime, stretches, type Series } from "./series.ts";
import { greatRange, highInequality, lowInequality, meanRange } from "./tide-relations.ts";
import { turningPoints, type TurningPoint } from "./turning-points.ts";

/** Means of the highs and lows of one record: of the record's own months, not of a 19-year epoch. */
export interface MeanLevels {
  /** Predicted and recorded tides are never in one mean: a series is one or the other. */
  readonly basis: Series["basis"];
  readonly highs: number;
  readonly lows: number;
  readonly mhw_m: number | null;
  readonly mlw_m: number | null;
  readonly mhhw_m: number | null;
  readonly mllw_m: number | null;
  /** Mean range, great diurnal range and the two inequalities; null where one of their levels is not known. */
  readonly mn_m: number | null;
  readonly gt_m: number | null;
  readonly dhq_m: number | null;
  readonly dlq_m: number | null;
  /** Mean of the readings; null for turning points. */
  readonly msl_m: number | null;
  readonly highest_m: number | null;
  readonly lowest_m: number | null;
  readonly days: number;
  readonly cautions: readonly string[];
}

const TIDAL_DAY_S = 24.8412 * 3600;
const DAY_S = 86_400;
/** Two tides a day make 705.8 highs in a year: one every 12.42 hours [s]. */
const HIGH_EVERY_S = TIDAL_DAY_S / 2;
/** Fewer than this share of them is no tide of two a day. */
const FEW_HIGHS = 0.85;
/** Below this a mean is one of a few tides. */
const SHORT_DAYS = 180;
/** Lows within this of each other at the record's floor are the sensor's, not the water's [m]. */
const FLOOR_M = 0.005;
const LEAST_STAY_S = 2 * 3600;
/** Fewer lows than this show no habit. */
const LEAST_LOWS = 10;

/**
 * Mean high and low waters of a record, with what makes them doubtful: short records, gaps, and lows that bottom out.
 * A mean of some months stands off the 19-year datum by about 0.1 m (docs/methods/water.md).
 */
export function meanLevels(series: Series): MeanLevels {
  const points = turningPoints(series);
  const highs = points.filter((p) => p.high);
  const lows = points.filter((p) => !p.high);
  const days = coveredTime(series) / DAY_S;
  const isFloored = bottomsOut(series, lows);
  const [mhw_m, mhhw_m] = [mean(highs), mean(ofTidalDays(highs, (a, b) => a.z_m > b.z_m))];
  const [mlw_m, mllw_m] = isFloored
    ? [null, null]
    : [mean(lows), mean(ofTidalDays(lows, (a, b) => a.z_m < b.z_m))];
  return {
    basis: series.basis,
    highs: highs.length,
    lows: lows.length,
    mhw_m,
    mlw_m,
    mhhw_m,
    mllw_m,
    ...relations(mhhw_m, mhw_m, mlw_m, mllw_m),
    msl_m: series.kind === "readings" ? meanOf(series.z_m) : null,
    highest_m: extreme(series.z_m, Math.max),
    lowest_m: extreme(series.z_m, Math.min),
    days,
    cautions: meanCautions(series, highs.length, days, isFloored),
  };
}

const mean = (list: readonly TurningPoint[]): number | null => meanOf(list.map((p) => p.z_m));

function meanOf(list: ArrayLike<number>): number | null {
  let sum = 0;
  for (let i = 0; i < list.length; i++) sum += list[i]!;
  return list.length === 0 ? null : sum / list.length;
}

type Level = number | null;

function relations(
  mhhw: Level,
  mhw: Level,
  mlw: Level,
  mllw: Level,
): Pick<MeanLevels, "mn_m" | "gt_m" | "dhq_m" | "dlq_m"> {
  const [MHHW, MHW, MLW, MLLW] = [mhhw, mhw, mlw, mllw].map((z) => (z === null ? undefined : metres(z)));
  return {
    mn_m: MHW !== undefined && MLW !== undefined ? meanRange({ MHW, MLW }) : null,
    gt_m: MHHW !== undefined && MLLW !== undefined ? greatRange({ MHHW, MLLW }) : null,
    dhq_m: MHHW !== undefined && MHW !== undefined ? highInequality({ MHHW, MHW }) : null,
    dlq_m: MLW !== undefined && MLLW !== undefined ? lowInequality({ MLW, MLLW }) : null,
  };
}

function meanCautions(series: Series, highs: number, days: number, isFloored: boolean): string[] {
  const expected = (days * DAY_S) / HIGH_EVERY_S;
  return [
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
    ...(days >= SHORT_DAYS / 6 && highs < FEW_HIGHS * expected
      ? [
          `${highs} high waters, where two tides a day would make ${expected.toFixed(0)}: one tide a day, or water that does not follow the tide.`,
        ]
      : []),
  ];
}

const extreme = (z: Float64Array, pick: (a: number, b: number) => number): number | null =>
  z.length === 0 ? null : z.reduce((a, b) => pick(a, b));

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

/**
 * Whether the water stops at one level: on more than a third of the low waters it stays there for two hours or more,
 * which even the flattest tide of 0.1 m range does not. A table of turning points does not show it.
 */
function bottomsOut(series: Series, lows: readonly TurningPoint[]): boolean {
  if (series.kind === "high-low" || lows.length < LEAST_LOWS) return false;
  const { t_s, z_m } = series;
  const floor = lows.reduce((a, p) => Math.min(a, p.z_m), Infinity) + FLOOR_M;
  let stays = 0;
  for (const [first, last] of stretches(series))
    for (let i = first; i <= last; i++) {
      const from = i;
      while (i < last && z_m[i]! < floor && z_m[i + 1]! < floor) i++;
      if (t_s[i]! - t_s[from]! >= LEAST_STAY_S) stays++;
    }
  return stays > lows.length / 3;
}
