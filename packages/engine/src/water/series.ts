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
  /** How the file's clock was read. */
  readonly zone_note: string;
}

/** Readings farther apart than this many steps have a gap between them. */
const GAP_STEPS = 1.5;
/** Turning points farther apart than this have one missing between them: a day has two highs, or one [s]. */
const TURN_GAP_S = 1.5 * 12.4206 * 3600;

/** Builds a series and finds its gaps. Throws `DomainError` unless times ascend and every number is finite. */
export function makeSeries(
  parts: Pick<Series, "kind" | "basis" | "t_s" | "z_m"> & {
    readonly attribution?: string;
    readonly zone_note?: string;
  },
): Series {
  const { t_s, z_m, kind } = parts;
  if (t_s.length !== z_m.length) throw new DomainError("series-lengths", { t: t_s.length, z: z_m.length });
  for (let i = 0; i < t_s.length; i++)
    if (!Number.isFinite(t_s[i]!) || !Number.isFinite(z_m[i]!) || (i > 0 && t_s[i]! <= t_s[i - 1]!))
      throw new DomainError("series-order", { at: i });
  const usual = usualStep(t_s);
  const step_s = kind === "readings" ? usual : null;
  const most = step_s === null ? TURN_GAP_S : step_s * GAP_STEPS;
  const missing = kind === "high-low" ? missingTurns(parts, usual) : new Set<number>();
  const gaps: Gap[] = [];
  for (let i = 1; i < t_s.length; i++)
    if (t_s[i]! - t_s[i - 1]! > most || missing.has(i)) gaps.push({ from_s: t_s[i - 1]!, to_s: t_s[i]! });
  return {
    ...parts,
    attribution: parts.attribution ?? "",
    zone_note: parts.zone_note ?? "",
    step_s,
    gaps,
  };
}

/** The middle of all time steps; null for fewer than two readings. */
function usualStep(t_s: Float64Array): number | null {
  if (t_s.length < 2) return null;
  const steps = new Float64Array(t_s.length - 1);
  for (let i = 0; i < steps.length; i++) steps[i] = t_s[i + 1]! - t_s[i]!;
  return steps.sort()[steps.length >> 1]!;
}

/** Places of a table at which the level rises twice or falls twice in a row: there it does not turn. */
export function unturned(z_m: Float64Array): number[] {
  const places: number[] = [];
  for (let i = 1; i + 1 < z_m.length; i++)
    if ((z_m[i]! - z_m[i - 1]!) * (z_m[i + 1]! - z_m[i]!) >= 0) places.push(i);
  return places;
}

/** A row left out of a table makes two highs neighbours, a double step apart: half a cosine would keep the flood up. */
function missingTurns({ t_s, z_m }: Pick<Series, "t_s" | "z_m">, usual: number | null): Set<number> {
  const found = new Set<number>();
  for (const i of unturned(z_m)) {
    const isEarlier = t_s[i]! - t_s[i - 1]! >= t_s[i + 1]! - t_s[i]!;
    const end = isEarlier ? i : i + 1;
    if (t_s[end]! - t_s[end - 1]! > GAP_STEPS * usual!) found.add(end);
  }
  return found;
}

/** First and last index of each stretch between gaps, in order; a stretch may be one reading alone. */
export function* stretches({ t_s, gaps }: Series): Generator<readonly [number, number], void> {
  let first = 0;
  let next = 0;
  for (let i = 0; i < t_s.length; i++) {
    const isCut = next < gaps.length && gaps[next]!.from_s === t_s[i]!;
    if (!isCut && i + 1 < t_s.length) continue;
    yield [first, i];
    if (isCut) next++;
    first = i + 1;
  }
}

/** Time that gaps leave out [s]. */
export const gapTime = ({ gaps }: Series): number => gaps.reduce((sum, g) => sum + g.to_s - g.from_s, 0);

/** Time from the first level to the last, gaps left out [s]. */
export const coveredTime = (series: Series): number =>
  series.t_s.length < 2 ? 0 : series.t_s.at(-1)! - series.t_s[0]! - gapTime(series);

/** ISO time to the minute, in UTC. */
export const isoMinute = (t_s: number): string => `${new Date(t_s * 1000).toISOString().slice(0, 16)}Z`;
