import { cholesky, lowerTimes, randomStream } from "../statistics/index.ts";
import { DomainError } from "../units/index.ts";
import { chanceOver, logSpreadAt, type BandJoint } from "./strength-band.ts";
import type { StrengthField } from "./strength-field.ts";
import type { StrengthSettings } from "./strength-settings.ts";

/** The joints of a walkway taken together. */
export interface Together {
  /** Chance that at least one joint's load exceeds its capacity, simulated, and the standard error of the simulation. */
  readonly any: number;
  readonly any_error: number;
  /** Number of joints that do, on average: the sum of their chances, no simulation in it. */
  readonly expected: number;
  readonly trials: number;
  readonly seed: number;
  /** Joints without a load, which are left out. */
  readonly left_out: number;
}

/**
 * Simulates the joints together: weak ground at one joint goes with weak ground at the next.
 *
 * Each trial draws the variance (scaled inverse chi-square), the strengths (normal, correlated along the line, by
 * Cholesky) and for every joint an error of the bearing formula of its own. The same seed gives the same figures. Null
 * where no joint has a load.
 */
export function jointsTogether(
  field: StrengthField,
  joints: readonly BandJoint[],
  settings: StrengthSettings,
  trials: number,
  seed: number,
): Together | null {
  if (joints.length !== field.places.length) throw new DomainError("joints-of-another-field");
  if (!(Number.isInteger(trials) && trials > 0)) throw new DomainError("trials", { trials });
  const loaded = joints.flatMap((j, i) => (j.pressure_pa === null || j.pressure_pa <= 0 ? [] : [i]));
  const left_out = joints.filter((j) => j.pressure_pa === null).length;
  if (left_out === joints.length) return null;
  const limits = loaded.map((i) => Math.log(joints[i]!.pressure_pa! / joints[i]!.factor));
  const lower = cholesky(field.shape, 1e-9);
  const random = randomStream(seed);
  const z = new Float64Array(joints.length);
  let hits = 0;
  for (let trial = 0; trial < trials; trial++) {
    const spread = field.sigma * Math.sqrt(field.df / random.chiSquare(field.df));
    for (let i = 0; i < z.length; i++) z[i] = random.normal();
    const strengths = lowerTimes(lower, z);
    let isHit = false;
    loaded.forEach((i, k) => {
      const log = field.mean[i]! + spread * strengths[i]! + settings.model_sd * random.normal();
      if (log < limits[k]!) isHit = true;
    });
    if (isHit) hits++;
  }
  const any = hits / trials;
  const expected = loaded.reduce((sum, i) => {
    const { pressure_pa, factor } = joints[i]!;
    return sum + chanceOver(pressure_pa!, factor, logSpreadAt(field, i, settings));
  }, 0);
  return { any, any_error: Math.sqrt((any * (1 - any)) / trials), expected, trials, seed, left_out };
}
