import { isoMinute, type Series } from "./series.ts";
import { levelFindings, type LevelFinding } from "./level-findings.ts";
import type { WaterLevel } from "./types.ts";
import { wetTime } from "./wet-time.ts";

/** Share of the covered time that a height is under water, with the band of the height; null = cannot be told. */
export interface WetShare {
  readonly share: number;
  /** With the height at the upper and at the lower end of its band; null where the band is not known. */
  readonly low: number | null;
  readonly high: number | null;
}

export interface JointWetness {
  readonly joint: string;
  readonly ground: WetShare;
  readonly deck: WetShare;
}

/** How wet the walkway is, by the plan's record or tide table. */
export interface WaterResults {
  readonly findings: readonly LevelFinding[];
  /** Null: there is no record, so hours under water cannot be told. */
  readonly record: {
    readonly basis: "predicted" | "recorded";
    readonly from: string;
    readonly to: string;
    readonly covered_h: number;
    readonly gaps: number;
    readonly attribution: string;
  } | null;
  readonly joints: readonly JointWetness[];
  /** Longest time that the lowest ground of the line stays dry [h]; null = cannot be told. */
  readonly longest_dry_h: number | null;
  readonly cautions: readonly string[];
}

export interface WetnessInput {
  readonly levels: readonly WaterLevel[];
  readonly series: Series | null;
  readonly joints: readonly { readonly id: string; readonly ground_m: number; readonly deck_m: number }[];
  /** Half width of the band on every height [m]; null = not known. */
  readonly height_band_m: number | null;
}

/** Hours under water of ground and deck at every joint, and what is odd about the levels. */
export function wetness({ levels, series, joints, height_band_m: band }: WetnessInput): WaterResults {
  const findings = levelFindings(levels);
  if (series === null || series.t_s.length < 2)
    return {
      findings,
      record: null,
      joints: [],
      longest_dry_h: null,
      cautions: ["Hours under water cannot be told: no record and no tide table is given."],
    };
  const known = new Map<number, number>();
  const at = (z: number): number => {
    const key = Math.round(z * 1000);
    if (!known.has(key)) known.set(key, wetTime(series, key / 1000).wet_share ?? 0);
    return known.get(key)!;
  };
  const share = (z: number): WetShare => ({
    share: at(z),
    low: band === null ? null : at(z + band),
    high: band === null ? null : at(z - band),
  });
  const lowest = joints.reduce((a, j) => Math.min(a, j.ground_m), Infinity);
  const covered = wetTime(series, 0).covered_s;
  return {
    findings,
    record: {
      basis: series.basis,
      from: isoMinute(series.t_s[0]!),
      to: isoMinute(series.t_s.at(-1)!),
      covered_h: covered / 3600,
      gaps: series.gaps.length,
      attribution: series.attribution,
    },
    joints: joints.map((j) => ({ joint: j.id, ground: share(j.ground_m), deck: share(j.deck_m) })),
    longest_dry_h: Number.isFinite(lowest) ? wetTime(series, lowest).longest_dry_s / 3600 : null,
    cautions: cautionsOf(series, band),
  };
}

function cautionsOf(series: Series, band: number | null): string[] {
  return [
    series.basis === "predicted"
      ? "Predicted, no wind: wind, rain and river flow come on top, and a creek far from the gauge runs late."
      : "Recorded in the years named: other years are wetter or drier.",
    ...(series.kind === "high-low"
      ? ["Between high and low water the level is taken along half a cosine."]
      : []),
    ...(band === null
      ? ["How sure the ground's heights are is not known: take check shots, then the shares get a range."]
      : []),
    ...(series.gaps.length > 0 ? [`${series.gaps.length} gaps of the record are left out.`] : []),
  ];
}
