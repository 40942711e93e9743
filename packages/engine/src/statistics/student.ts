import { DomainError } from "../units/index.ts";
import { logBeta } from "./gamma.ts";
import { incompleteBeta } from "./incomplete-beta.ts";

/** Beyond these degrees of freedom the far tail keeps fewer than twelve digits; far more than any ground is read. */
const MOST_DF = 1e5;

function promise(t: number, df: number): void {
  if (Number.isNaN(t) || !(df > 0 && df <= MOST_DF)) throw new DomainError("student", { t, df });
}

/** Chance that Student's t lies below t. df > 0, need not be whole, to 1e5. The lower tail keeps its relative accuracy. */
export function studentBelow(t: number, df: number): number {
  promise(t, df);
  if (t === Infinity) return 1;
  if (t === -Infinity) return 0;
  const square = t * t;
  const tail = 0.5 * incompleteBeta(df / 2, 0.5, df / (df + square), square / (df + square));
  return t > 0 ? 1 - tail : tail;
}

/** Density of Student's t. df > 0. */
export function studentDensity(t: number, df: number): number {
  promise(t, df);
  const power = (-(df + 1) / 2) * Math.log1p((t * t) / df);
  return Math.exp(power - logBeta(df / 2, 0.5)) / Math.sqrt(df);
}

/** Value below which Student's t lies with chance p, 0 < p < 1. Newton's steps held inside a bracket. */
export function studentQuantile(p: number, df: number): number {
  promise(0, df);
  if (!(p > 0 && p < 1)) throw new DomainError("student-share", { p });
  if (p === 0.5) return 0;
  if (p > 0.5) return -studentQuantile(1 - p, df);
  let low = -1;
  let high = 0;
  while (studentBelow(low, df) > p) [low, high] = [low * 2, low];
  let t = (low + high) / 2;
  for (let i = 0; i < 200; i++) {
    const below = studentBelow(t, df);
    if (below > p) high = t;
    else low = t;
    const next = t - ((Math.log(below) - Math.log(p)) * below) / studentDensity(t, df);
    const step = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(step - t) <= 2e-16 * Math.abs(t)) return step;
    t = step;
  }
  return t;
}
