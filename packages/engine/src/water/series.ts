import { DomainError } from "../units/index.ts";

/** A stretch of time that the record does not cover: never bridged. */
export interface Gap {
  readonly from_s: number;
  readonly to_s: number;
}

/**
 * Water levels over time.
 *
 * t_s  UTC, seconds since 1970-01-01, strictly ascending  [s]
 * z_m  on the plan's vertical datum                        [m]
 * kind "readings": levels one after another; "high-low": turning points alone, half a cosine between them
 */
export interface Series {
  readonly kind: "readings" | "high-low";
  readonly basis: "predicted" | "recorded";
  readonly t_s: Float64Array;
  readonly z_m: Float64Array;
  /** Usual time from one reading to the next; null for turning points. */
  readonly step_s: number | null;
  readonly gaps: readonly Gap[];
  readonly attribution: string;
}

/** Readings farther apart than this many steps have a gap between them. */
const GAP_STEPS = 1.5;
/** Turning points farther apart than this have one missing between them: a day has two highs, or one [s]. */
const TURN_GAP_S = 1.5 * 12.4206 * 3600;

/** Builds a series and finds its gaps. Throws `DomainError` unless times ascend and every number is finite. */
export function makeSeries(
  parts: Pick<Series, "kind" | "basis" | "t_s" | "z_m"> & { readonly attribution?: string },
): Series {
  const { t_s, z_m, kind } = parts;
  if (t_s.length !== z_m.length) throw new DomainError("series-lengths", { t: t_s.length, z: z_m.length });
  for (let i = 0; i < t_s.length; i++)
    if (!Number.isFinite(t_s[i]!) || !Number.isFinite(z_m[i]!) || (i > 0 && t_s[i]! <= t_s[i - 1]!))
      throw new DomainError("series-order", { at: i });
  const step_s = kind === "readings" ? usualStep(t_s) : null;
  const most = step_s === null ? TURN_GAP_S : step_s * GAP_STEPS;
  const gaps: Gap[] = [];
  for (let i = 1; i < t_s.length; i++)
    if (t_s[i]! - t_s[i - 1]! > most) gaps.push({ from_s: t_s[i - 1]!, to_s: t_s[i]! });
  return { ...parts, attribution: parts.attribution ?? "", step_s, gaps };
}

/** The middle of all time steps; null for fewer than two readings. */
function usualStep(t_s: Float64Array): number | null {
  if (t_s.length < 2) return null;
  const steps = new Float64Array(t_s.length - 1);
  for (let i = 0; i < steps.length; i++) steps[i] = t_s[i + 1]! - t_s[i]!;
  return steps.sort()[steps.length >> 1]!;
}

/** Longest step that is no gap [s]. */
export const longestStep = ({ step_s }: Series): number =>
  step_s === null ? TURN_GAP_S : step_s * GAP_STEPS;

/** ISO time to the minute, in UTC. */
export const isoMinute = (t_s: number): string => `${new Date(t_s * 1000).toISOString().slice(0, 16)}Z`;
