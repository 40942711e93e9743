import { coveredTime, gapTime, isoMinute, type Series } from "./series.ts";
import { MOST_DAYS, dryDays, type StationDays } from "./dry-days.ts";
import { levelFindings, type LevelFinding } from "./level-findings.ts";
import { residualsOf, type Residuals } from "./residuals.ts";
import type { WaterLevel } from "./types.ts";
import { wetShares } from "./wet-shares.ts";
import { HOURS_PER_YEAR, coversYear, wetTime } from "./wet-time.ts";

/** Share of the covered time that a height is under water. */
export interface WetShare {
  readonly share: number;
  /** With the height at the upper and at the lower end of its band; null where the band is not known. */
  readonly low: number | null;
  readonly high: number | null;
  /** The share as hours of a mean year; null for a record that does not cover one. */
  readonly hours_per_year: number | null;
}

export interface JointWetness {
  readonly joint: string;
  readonly ground: WetShare;
  readonly deck: WetShare;
}

/** The lowest ground of the line, which is wet first. */
export interface LowestGround {
  readonly joint: string;
  readonly ground_m: number;
  readonly longest_dry_h: number;
  readonly longest_wet_h: number;
  /** How often the water came over it. */
  readonly floods: number;
}

/** How wet the walkway is, by the plan's record or tide table. */
export interface WaterResults {
  readonly findings: readonly LevelFinding[];
  /** Null: there is no record, so hours under water cannot be told. */
  readonly record: {
    readonly kind: Series["kind"];
    readonly basis: Series["basis"];
    /** ISO times in UTC, first and last level. */
    readonly from: string;
    readonly to: string;
    readonly covered_h: number;
    readonly gap_h: number;
    readonly gaps: number;
    readonly attribution: string;
    /** How the clock of the file was read. */
    readonly zone_note: string;
  } | null;
  readonly joints: readonly JointWetness[];
  readonly lowest: LowestGround | null;
  /** Longest time that the lowest ground of the line stays dry [h]; null = cannot be told. */
  readonly longest_dry_h: number | null;
  /** Dry hours and safe windows at every joint in the days of laying that the record covers, `MOST_DAYS` at most. */
  readonly days: readonly StationDays[];
  /** Recorded less predicted; null where there is no second series, or the two share no time. */
  readonly residuals: Residuals | null;
  readonly cautions: readonly string[];
}

export interface WetnessInput {
  readonly levels: readonly WaterLevel[];
  readonly series: Series | null;
  readonly joints: readonly {
    readonly id: string;
    readonly ground_m: number;
    readonly deck_m: number;
    /** Lowest ground on the way to it; its own ground where it is left out. */
    readonly way_m?: number;
  }[];
  /** Half width of the band on every height [m]; null = not known. */
  readonly height_band_m: number | null;
  /** The plan's vertical datum, to hold the levels' own against it. */
  readonly datum?: string;
  /** A prediction for a record, or a record for a prediction, on the same datum. */
  readonly compare?: Series | null;
  /** ISO days, both inclusive, for which dry hours are told. */
  readonly laying?: { readonly from: string; readonly to: string };
}

/** Hours under water of ground and deck at every joint, and what is odd about the levels. */
export function wetness(input: WetnessInput): WaterResults {
  const { levels, series, joints, height_band_m: band } = input;
  const findings = levelFindings(levels, series, input.datum ?? null);
  if (series === null || coveredTime(series) <= 0)
    return {
      findings,
      record: null,
      joints: [],
      lowest: null,
      longest_dry_h: null,
      days: [],
      residuals: null,
      cautions: [
        series === null
          ? "Hours under water cannot be told: no record and no tide table is given."
          : "Hours under water cannot be told: no two levels of the record lie close enough together to read between them.",
      ],
    };
  const share = sharesOf(series, joints, band);
  const lowest = lowestOf(series, joints);
  const days = daysOf(input, series);
  const residuals = residualsBetween(series, input.compare ?? null);
  return {
    findings,
    record: recordOf(series),
    joints: joints.map((j) => ({ joint: j.id, ground: share(j.ground_m), deck: share(j.deck_m) })),
    lowest,
    longest_dry_h: lowest?.longest_dry_h ?? null,
    days,
    residuals,
    cautions: [
      ...cautionsOf(series, band),
      ...dayCautions(input, days),
      ...residualCautions(input.compare ?? null, residuals),
    ],
  };
}

/** Shares of all grounds and decks, each with those at the ends of its band. */
function sharesOf(
  series: Series,
  joints: WetnessInput["joints"],
  band: number | null,
): (z: number) => WetShare {
  const ends = band === null ? [0] : [0, band, -band];
  const heights = joints.flatMap((j) => [j.ground_m, j.deck_m]).flatMap((z) => ends.map((end) => z + end));
  const known = wetShares(series, heights)!;
  const isYear = coversYear(series);
  const at = (z: number): number => known.get(z)!;
  return (z) => ({
    share: at(z),
    low: band === null ? null : at(z + band),
    high: band === null ? null : at(z + -band),
    hours_per_year: isYear ? at(z) * HOURS_PER_YEAR : null,
  });
}

function lowestOf(series: Series, joints: WetnessInput["joints"]): LowestGround | null {
  const [first, ...rest] = joints;
  if (first === undefined) return null;
  const lowest = rest.reduce((a, j) => (j.ground_m < a.ground_m ? j : a), first);
  const { longest_dry_s, longest_wet_s, floods } = wetTime(series, lowest.ground_m);
  return {
    joint: lowest.id,
    ground_m: lowest.ground_m,
    longest_dry_h: longest_dry_s / 3600,
    longest_wet_h: longest_wet_s / 3600,
    floods,
  };
}

const recordOf = (series: Series): WaterResults["record"] => ({
  kind: series.kind,
  basis: series.basis,
  from: isoMinute(series.t_s[0]!),
  to: isoMinute(series.t_s.at(-1)!),
  covered_h: coveredTime(series) / 3600,
  gap_h: gapTime(series) / 3600,
  gaps: series.gaps.length,
  attribution: series.attribution,
  zone_note: series.zone_note,
});

function cautionsOf(series: Series, band: number | null): string[] {
  return [
    series.basis === "predicted"
      ? "Predicted, no wind: wind set-up, rain and river flow come on top, and a creek far from the gauge runs late."
      : "Recorded in the years named: other years are wetter or drier.",
    ...(series.kind === "high-low"
      ? ["Between high and low water the level is taken along half a cosine."]
      : []),
    ...(coversYear(series)
      ? []
      : [
          "The record covers less than a year, or has too many gaps: shares are of its own days, and hours a year cannot be told.",
        ]),
    ...(band === null
      ? ["How sure the ground's heights are is not known: take check shots, then the shares get a range."]
      : []),
    ...(series.gaps.length > 0 ? [`${series.gaps.length} gaps of the record are left out.`] : []),
  ];
}

function daysOf({ joints, laying }: WetnessInput, series: Series): readonly StationDays[] {
  if (laying === undefined) return [];
  const stations = joints.map(({ id, ground_m, way_m = ground_m }) => ({ id, ground_m, way_m }));
  const days = dryDays(series, stations, laying.from, laying.to);
  return days.some((s) => s.days.length > 0) ? days : [];
}

const residualsBetween = (series: Series, compare: Series | null): Residuals | null => {
  if (compare === null || compare.basis === series.basis) return null;
  return series.basis === "recorded" ? residualsOf(series, compare) : residualsOf(compare, series);
};

function dayCautions({ laying, joints }: WetnessInput, days: readonly StationDays[]): string[] {
  if (laying === undefined || joints.length === 0) return [];
  if (days.length === 0)
    return [
      `The record or table does not cover the days of laying (${laying.from} to ${laying.to}): their dry hours cannot be told.`,
    ];
  const asked = (Date.parse(laying.to) - Date.parse(laying.from)) / 86_400_000 + 1;
  return [
    "Dry windows go by the ground at the joints: they leave out daylight, closures, creek beds and ground between the joints, which may be wet earlier.",
    ...(asked > MOST_DAYS
      ? [`Dry hours are told for the first ${MOST_DAYS} of ${asked} days of laying.`]
      : []),
  ];
}

function residualCautions(compare: Series | null, residuals: Residuals | null): string[] {
  if (compare === null)
    return [
      "How far the tide departs from its prediction is not known here: give a record and a prediction of the same months to see it.",
    ];
  if (residuals === null) return ["Record and prediction share too little time to be compared."];
  return [
    "Wind set-up: an onshore wind lifts the water and shifts high and low water; the residuals hold for the weather of the record alone, and a storm goes beyond them.",
  ];
}
