import { DomainError } from "../units/index.ts";

/**
 * Chance that Student's t lies within -t..t, by the finite series for whole degrees of freedom.
 *
 * t   >= 0
 * df  degrees of freedom, whole, >= 1
 * Source: Abramowitz and Stegun, 26.7.3 (odd) and 26.7.4 (even), from memory; held against printed tables in a test.
 */
export function studentWithin(t: number, df: number): number {
  if (!(Number.isInteger(df) && df >= 1 && t >= 0)) throw new DomainError("student-t", { t, df });
  const angle = Math.atan(t / Math.sqrt(df));
  const cos2 = Math.cos(angle) ** 2;
  const isOdd = df % 2 === 1;
  let term = isOdd ? Math.cos(angle) : 1;
  let sum = df === 1 ? 0 : term;
  for (let k = isOdd ? 3 : 2; k <= df - 2; k += 2) {
    term *= (cos2 * (k - 1)) / k;
    sum += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}

/** Half width, in standard errors, that holds the given share (0..1) of Student's t with `df` degrees of freedom. */
export function studentHalfWidth(share: number, df: number): number {
  if (!(share > 0 && share < 1)) throw new DomainError("student-t-share", { share });
  let low = 0;
  let high = 1;
  while (studentWithin(high, df) < share) high *= 2;
  while (high - low > 1e-12 * high) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (studentWithin(middle, df) < share) low = middle;
    else high = middle;
  }
  return high;
}
