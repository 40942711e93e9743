import { DomainError } from "../units/index.ts";

const TINY = 1e-300;
const CLOSE = 4e-16;
const MOST_TERMS = 20_000;

/** Value of b0 + a1 / (b1 + a2 / (b2 + ...)) by Lentz's method. `term(i)` gives a_i and b_i for i = 1, 2, ... */
export function continuedFraction(b0: number, term: (i: number) => readonly [a: number, b: number]): number {
  let value = b0 === 0 ? TINY : b0;
  let c = value;
  let d = 0;
  for (let i = 1; i <= MOST_TERMS; i++) {
    const [a, b] = term(i);
    d = b + a * d;
    c = b + a / c;
    if (d === 0) d = TINY;
    if (c === 0) c = TINY;
    d = 1 / d;
    const step = c * d;
    value *= step;
    if (Math.abs(step - 1) <= CLOSE) return value;
  }
  throw new DomainError("continued-fraction-does-not-settle", { b0 });
}
