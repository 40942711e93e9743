import { DomainError } from "../units/index.ts";

/** Lanczos' series for g = 7 with nine terms (Godfrey's coefficients, from memory; held against SciPy in a test). */
const LANCZOS = [
  0.999_999_999_999_809_9, 676.520_368_121_885_1, -1259.139_216_722_402_8, 771.323_428_777_653_1,
  -176.615_029_162_140_6, 12.507_343_278_686_905, -0.138_571_095_265_720_12, 9.984_369_578_019_572e-6,
  1.505_632_735_149_311_6e-7,
] as const;
const G = 7;
const HALF_LN_TWO_PI = 0.5 * Math.log(2 * Math.PI);

/** Natural logarithm of the gamma function. x > 0. Relative error about 1e-15 of the larger of 1 and the value. */
export function logGamma(x: number): number {
  if (!(x > 0 && x < Infinity)) throw new DomainError("log-gamma", { x });
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  const sum = LANCZOS.reduce((total, c, i) => total + (i === 0 ? c : c / (z + i)), 0);
  const base = z + G + 0.5;
  return HALF_LN_TWO_PI + (z + 0.5) * Math.log(base) - base + Math.log(sum);
}

/** What Stirling's formula leaves out of ln gamma. x >= 10. */
function stirlingRest(x: number): number {
  const y = 1 / (x * x);
  return (
    (1 / 12 - y * (1 / 360 - y * (1 / 1260 - y * (1 / 1680 - y * (1 / 1188 - (y * 691) / 360_360))))) / x
  );
}

/**
 * Natural logarithm of the beta function. a, b > 0.
 *
 * For large arguments the three gammas nearly cancel: Stirling's rests are subtracted instead, so that the tails keep
 * their digits.
 */
export function logBeta(a: number, b: number): number {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (large < 10) return logGamma(small) + logGamma(large) - logGamma(small + large);
  const rest = stirlingRest(large) - stirlingRest(small + large);
  const share = small / (small + large);
  const power = (large - 0.5) * Math.log1p(-share);
  if (small < 10) return logGamma(small) + rest + small - small * Math.log(small + large) + power;
  return (
    HALF_LN_TWO_PI + stirlingRest(small) + rest - 0.5 * Math.log(small) + small * Math.log(share) + power
  );
}
