import { DomainError } from "../units/index.ts";
import { incompleteGamma } from "./incomplete-gamma.ts";

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Chance that a standard normal value lies below z. The lower tail keeps its relative accuracy to -37. */
export function normalBelow(z: number): number {
  if (Number.isNaN(z)) throw new DomainError("normal", { z });
  const { below, above } = incompleteGamma(0.5, (z * z) / 2);
  if (z < 0) return above / 2;
  return 0.5 + below / 2;
}

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / ROOT_TWO_PI;

/** Acklam's rational approximation (relative error 1.2e-9, from memory): only the start of the refinement below. */
const A = [
  -39.696_830_286_653_76, 220.946_098_424_520_5, -275.928_510_446_968_7, 138.357_751_867_269,
  -30.664_798_066_147_16, 2.506_628_277_459_239,
] as const;
const B = [
  -54.476_098_798_224_06, 161.585_836_858_040_9, -155.698_979_859_886_6, 66.801_311_887_719_72,
  -13.280_681_552_885_72, 1,
] as const;
const C = [
  -0.007_784_894_002_430_293, -0.322_396_458_041_136_5, -2.400_758_277_161_838, -2.549_732_539_343_734,
  4.374_664_141_464_968, 2.938_163_982_698_783,
] as const;
const D = [
  0.007_784_695_709_041_462, 0.322_467_129_070_039_8, 2.445_134_137_142_996, 3.754_408_661_907_416, 1,
] as const;
const polynomial = (c: readonly number[], x: number): number => c.reduce((sum, k) => sum * x + k, 0);

function roughQuantile(p: number): number {
  if (p < 0.02425) {
    const q = Math.sqrt(-2 * Math.log(p));
    return polynomial(C, q) / polynomial(D, q);
  }
  const q = p - 0.5;
  return (polynomial(A, q * q) * q) / polynomial(B, q * q);
}

/** Value below which a standard normal variable lies with chance p, 0 < p < 1. Halley's step on the exact lower tail. */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new DomainError("normal-share", { p });
  if (p > 0.5) return -normalQuantile(1 - p);
  let z = roughQuantile(p);
  for (let i = 0; i < 2; i++) {
    const error = (normalBelow(z) - p) / normalDensity(z);
    z -= error / (1 + (z * error) / 2);
  }
  return z;
}
