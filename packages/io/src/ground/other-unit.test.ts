import { expect, test } from "vitest";
import type { TerrainChoice } from "@causey/engine/plan";
import type { Raster } from "@causey/engine/site";
import type { CheckShot } from "@causey/engine/survey";
import { isHelpful } from "../../test/support/problems.ts";
import { Findings } from "../problem/index.ts";
import { checkOtherUnit } from "./other-unit.ts";

const FT = 0.3048;
const heights = (i: number): number => 1.2 + 0.1 * (i % 7);
const raster = (factor: number): Raster => ({
  cols: 10,
  rows: 10,
  x0: 0,
  y0: 0,
  dx: 1,
  dy: 1,
  values: Float32Array.from({ length: 100 }, (_, i) => heights(i % 10) * factor),
});
const shots = (n: number, off = 0): readonly CheckShot[] =>
  Array.from({ length: n }, (_, i) => ({
    id: `C${i}`,
    x: i + 1,
    y: 4,
    z_m: heights(i + 1) + off,
    accuracy_m: null,
    date: null,
  }));
const grid = (unit: "m" | "ft"): Extract<TerrainChoice, { kind: "grid" }> => ({
  kind: "grid",
  file: "t.tif",
  unit,
  datum: "d",
});

const codes = (factor: number, unit: "m" | "ft", some: readonly CheckShot[]): string[] => {
  const found = new Findings("t.tif");
  checkOtherUnit(found, raster(factor), grid(unit), some);
  expect(found.all.every(isHelpful)).toBe(true);
  return found.all.map((p) => p.code);
};

test("feet read as metres, and metres read as feet, are told by three check shots", () => {
  expect(codes(1 / FT, "m", shots(3))).toEqual(["terrain-other-unit"]);
  expect(codes(FT, "ft", shots(3))).toEqual(["terrain-other-unit"]);
});

test("heights in the unit that is said are let pass, also when they read high in grass", () => {
  expect(codes(1, "m", shots(8))).toEqual([]);
  expect(codes(1, "m", shots(8, -0.6))).toEqual([]);
  expect(codes(1, "ft", shots(8))).toEqual([]);
});

test("two check shots, or none on known ground, prove nothing", () => {
  expect(codes(1 / FT, "m", shots(2))).toEqual([]);
  expect(
    codes(
      1 / FT,
      "m",
      shots(4).map((s) => ({ ...s, x: s.x + 500 })),
    ),
  ).toEqual([]);
});
