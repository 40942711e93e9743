// Golden values: NumPy 2.4.6 (numpy.linalg.cholesky and solve).
import * as fc from "fast-check";
import { expect, test } from "vitest";
import {
  cholesky,
  chiSquareShares,
  dot,
  effectiveNumber,
  forward,
  lowerTimes,
  normalBelow,
  normalNodes,
  randomStream,
  solve,
  square,
  weightedSpread,
} from "./index.ts";

const sample = [4, 1.5, -0.3, 1.5, 3, 0.7, -0.3, 0.7, 2];
const matrix = square(3, (i, j) => sample[i * 3 + j]!);

test("Cholesky's triangle and a solution as NumPy 2.4.6 finds them", () => {
  const lower = cholesky(matrix);
  const golden = [
    2.0, 0.0, 0.0, 0.75, 1.5612494995995996, 0.0, -0.15, 0.5204164998665332, 1.3063945294843617,
  ];
  golden.forEach((v, i) => expect(lower.values[i]).toBeCloseTo(v, 14));
  const golden_x = [1.0685096153846154, -1.7295673076923077, 2.265625];
  [...solve(lower, [1, -2, 3])].forEach((v, i) => expect(v).toBeCloseTo(golden_x[i]!, 14));
});

test("the triangle gives the matrix back, and solving undoes multiplying", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 16, maxLength: 16 }),
      (v) => {
        const a = square(
          4,
          (i, j) => [0, 1, 2, 3].reduce((s, k) => s + v[i * 4 + k]! * v[j * 4 + k]!, 0) + (i === j ? 0.5 : 0),
        );
        const lower = cholesky(a);
        for (let i = 0; i < 4; i++) {
          const row = lower.values.subarray(i * 4, i * 4 + 4);
          for (let j = 0; j < 4; j++)
            expect(dot(row, lower.values.subarray(j * 4, j * 4 + 4))).toBeCloseTo(a.values[i * 4 + j]!, 9);
        }
        const z = [1, -2, 0.5, 3];
        [...forward(lower, lowerTimes(lower, z))].forEach((x, i) => expect(x).toBeCloseTo(z[i]!, 8));
      },
    ),
  );
});

test("two rows that say the same are borne with slack and refused without; a matrix that is not positive always", () => {
  const same = square(2, () => 1);
  expect(() => cholesky(same)).toThrow("not-positive-definite");
  expect([...cholesky(same, 1e-12).values]).toEqual([1, 0, 1, 0]);
  expect(() =>
    cholesky(
      square(2, (i, j) => (i === j ? 1 : 2)),
      1e-12,
    ),
  ).toThrow("not-positive-definite");
});

test("one seed gives one stream, another seed another; the draws have their distributions' moments and quartiles", () => {
  const first = (seed: number): number[] => {
    const s = randomStream(seed);
    return [s.uniform(), s.uniform(), s.normal(), s.chiSquare(3)];
  };
  expect(first(7)).toEqual(first(7));
  expect(first(7)).not.toEqual(first(8));
  expect(first(1)).not.toEqual(first(1 + 2 ** 32));
  const stream = randomStream(11);
  const count = 40_000;
  const share = (draw: () => number): number => {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += draw();
    return sum / count;
  };
  const within = 4 * Math.sqrt(0.25 / count);
  expect(Math.abs(share(stream.uniform) - 0.5)).toBeLessThan(within);
  for (const z of [-1.5, 0, 0.8])
    expect(Math.abs(share(() => (stream.normal() < z ? 1 : 0)) - normalBelow(z))).toBeLessThan(within);
  for (const [df, x] of [
    [0.7, 0.2],
    [1, 0.5],
    [4.5, 3],
    [30, 33],
  ] as const)
    expect(
      Math.abs(share(() => (stream.chiSquare(df) < x ? 1 : 0)) - chiSquareShares(x, df).below),
    ).toBeLessThan(within);
});

test("weights: equal ones count all, one alone counts one, scaling them changes nothing", () => {
  expect(effectiveNumber([2, 2, 2, 2])).toBeCloseTo(4, 12);
  expect(effectiveNumber([1, 1e-200])).toBe(1);
  const values = [1, 2, 4];
  const plain = weightedSpread(values, [1, 1, 1]);
  expect(plain.mean).toBeCloseTo(7 / 3, 12);
  expect(plain.sd).toBeCloseTo(Math.sqrt(7 / 3), 12);
  expect(weightedSpread(values, [5, 5, 5])).toEqual(plain);
  expect(weightedSpread(values, [0, 3, 0])).toEqual({ mean: 2, sd: null, effective: 1 });
  expect(() => effectiveNumber([0, 0])).toThrow("no-weight");
});

test("the normal nodes carry the moments and the moment-generating function of the bell", () => {
  const nodes = normalNodes(0.5);
  const mean = (f: (z: number) => number): number => nodes.reduce((s, n) => s + n.share * f(n.z), 0);
  expect(mean(() => 1)).toBeCloseTo(1, 14);
  expect(mean((z) => z * z)).toBeCloseTo(1, 10);
  expect(mean((z) => Math.exp(z / 2))).toBeCloseTo(Math.exp(1 / 8), 10);
});
