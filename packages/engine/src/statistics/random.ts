import { DomainError } from "../units/index.ts";
import { normalQuantile } from "./normal.ts";

/** Random numbers that are the same for the same seed, on every machine. */
export interface RandomStream {
  /** Evenly spread over 0..1, neither end reached. */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
  /** Chi-square with `df` > 0 degrees of freedom. */
  readonly chiSquare: (df: number) => number;
}

/** A stream from a whole-number seed: sfc32 (Doty-Humphrey's small fast counting generator, from memory). */
export function randomStream(seed: number): RandomStream {
  if (!Number.isSafeInteger(seed)) throw new DomainError("seed", { seed });
  const next = counting(seed);
  const uniform = (): number => {
    const high = next() >>> 5;
    const low = next() >>> 6;
    return (high * 67_108_864 + low + 0.5) / 9_007_199_254_740_992;
  };
  const normal = (): number => normalQuantile(uniform());
  return { uniform, normal, chiSquare: (df) => 2 * gammaDraw(df / 2, uniform, normal) };
}

function counting(seed: number): () => number {
  let a = seed | 0;
  let b = Math.floor(seed / 4_294_967_296) | 0;
  let c = 0x9e37_79b9 | 0;
  let counter = 1;
  const next = (): number => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return sum >>> 0;
  };
  for (let i = 0; i < 15; i++) next();
  return next;
}

/** Gamma with shape a, Marsaglia and Tsang's rejection (from memory; its distribution is held in a test). */
function gammaDraw(shape: number, uniform: () => number, normal: () => number): number {
  if (!(shape > 0)) throw new DomainError("gamma-shape", { shape });
  if (shape < 1) return gammaDraw(shape + 1, uniform, normal) * uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal();
    const v = (1 + c * x) ** 3;
    if (v > 0 && Math.log(uniform()) < (x * x) / 2 + d - d * v + d * Math.log(v)) return d * v;
  }
}
