import * as fc from "fast-check";
import { expect, test } from "vitest";
import { isInside, rowCrossings, type Polygons } from "./index.ts";

const place = fc.tuple(
  fc.double({ min: -20, max: 20, noNaN: true }),
  fc.double({ min: -20, max: 20, noNaN: true }),
);
const ring = fc.array(place, { minLength: 3, maxLength: 9 });
const shapes: fc.Arbitrary<Polygons> = fc.array(fc.array(ring, { minLength: 1, maxLength: 3 }), {
  maxLength: 3,
});

test("a place is inside when an odd number of its row's crossings lie west of it, as the even-odd rule says", () => {
  fc.assert(
    fc.property(shapes, place, (polygons, [x, y]) => {
      const passed = rowCrossings(polygons, y).filter((c) => c <= x).length;
      expect(passed % 2 === 1).toBe(isInside(polygons, x, y));
    }),
  );
});

test("a row through a square with a square hole is entered and left twice (hand)", () => {
  const square = (a: number, b: number): [number, number][] => [
    [a, a],
    [b, a],
    [b, b],
    [a, b],
  ];
  expect(rowCrossings([[square(0, 10), square(4, 6)]], 5)).toEqual([0, 4, 6, 10]);
  expect(rowCrossings([[square(0, 10), square(4, 6)]], 2)).toEqual([0, 10]);
  expect(rowCrossings([[square(0, 10)]], 11)).toEqual([]);
});
