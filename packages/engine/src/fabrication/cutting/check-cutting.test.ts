import { describe, expect, test } from "vitest";
import type { CuttingProblem } from "../types.ts";
import { buildModel, stepsPerMillimetre } from "./build-model.ts";
import { checkCutting } from "./check-cutting.ts";

const sound: CuttingProblem = {
  kerf_mm: 3,
  stock: [{ length_mm: 3658, price: 9.5 }],
  pieces: [{ length_mm: 483, count: 60 }],
};
const places = (problem: CuttingProblem): string[] => checkCutting(problem).map((p) => p.place);

describe("check of a cutting problem", () => {
  test("a sound problem has no faults; no pieces need no stock", () => {
    expect(checkCutting(sound)).toEqual([]);
    expect(checkCutting({ kerf_mm: 0, stock: [], pieces: [] })).toEqual([]);
  });

  test("all faults come at once, each with its place", () => {
    expect(
      places({
        kerf_mm: -1,
        stock: [
          { length_mm: 3657.6, price: -2 },
          { length_mm: 3048, price: NaN, available: 1.5 },
        ],
        pieces: [
          { length_mm: 0, count: 0 },
          { length_mm: 482.6, count: 2 },
        ],
      }),
    ).toEqual([
      "kerf_mm",
      "stock[0].length_mm",
      "stock[0].price",
      "stock[1].price",
      "stock[1].available",
      "pieces[0].length_mm",
      "pieces[0].count",
      "pieces[1].length_mm",
    ]);
  });

  test("a piece longer than every stick to be had is named, and the longest stick with it", () => {
    const stock = [
      { length_mm: 4877, price: 13, available: 0 },
      { length_mm: 3658, price: 9.5 },
    ];
    const [fault, ...others] = checkCutting({
      ...sound,
      stock,
      pieces: [{ length_mm: 3659, count: 1 }, ...sound.pieces],
    });
    expect(others).toEqual([]);
    expect(fault).toMatchObject({ place: "pieces[0].length_mm", value: "3659" });
    expect(fault!.message).toContain("3658 mm");
  });

  test("no stock, and too much of everything", () => {
    expect(places({ ...sound, stock: [] })).toEqual(["stock"]);
    expect(places({ ...sound, pieces: Array.from({ length: 1001 }, () => sound.pieces[0]!) })).toEqual([
      "pieces",
    ]);
    const many = [
      { length_mm: 100, count: 600_000 },
      { length_mm: 200, count: 600_000 },
    ];
    expect(places({ ...sound, pieces: many })).toEqual(["pieces"]);
  });
});

describe("steps", () => {
  test("inches in millimetres are tenths, sixteenths of an inch ten-thousandths", () => {
    expect(stepsPerMillimetre([3658, 483, 3])).toBe(1);
    expect(stepsPerMillimetre([3657.6, 482.6])).toBe(10);
    expect(stepsPerMillimetre([3657.6, 1.5875])).toBe(10_000);
  });

  test("the order of rows does not show in the model", () => {
    const stock = [
      { length_mm: 3658, price: 9.5 },
      { length_mm: 2438, price: 6.1, available: 4 },
    ];
    const pieces = [
      { length_mm: 483, count: 20 },
      { length_mm: 1200, count: 3 },
      { length_mm: 483, count: 7 },
    ];
    const built = buildModel({ kerf_mm: 3, stock, pieces });
    const turned = buildModel({ kerf_mm: 3, stock: stock.toReversed(), pieces: pieces.toReversed() });
    expect(JSON.stringify(turned)).toBe(JSON.stringify(built));
    expect("model" in built && built.model.demand).toEqual([3, 27]);
  });

  test("lengths without a coarse common step are refused with a way out", () => {
    const built = buildModel({
      kerf_mm: 3,
      stock: [{ length_mm: 6000, price: 9 }],
      pieces: [
        { length_mm: 435.428571, count: 7 },
        { length_mm: 600.1, count: 4 },
      ],
    });
    expect(built).toMatchObject([{ place: "pieces", mend: expect.stringContaining("whole millimetres") }]);
  });
});
