import * as fc from "fast-check";
import { expect, test } from "vitest";
import { groundAt } from "../site/index.ts";
import { stationSurface, type Station } from "./index.ts";

const at = (x: number, y: number, ground_m: number): Station => ({
  id: `${x}-${y}`,
  x,
  y,
  ground_m,
  probe_m: null,
  water_m: null,
  date: null,
});

test("along the line straight from height to height, level across it, unknown beyond the reach", () => {
  const r = stationSurface([at(0, 0, 1), at(20, 0, 3)], 0.5, 4);
  expect(groundAt(r, 5, 0)).toBeCloseTo(1.5, 6);
  expect(groundAt(r, 5, 3)).toBeCloseTo(1.5, 6);
  expect(groundAt(r, 5, -3.5)).toBeCloseTo(1.5, 6);
  expect(groundAt(r, -3, 0)).toBeCloseTo(1, 6);
  expect(groundAt(r, 5, 4.6)).toBeNaN();
  expect(groundAt(r, -4.6, 0)).toBeNaN();
});

test("three stations near each other: the plane through them inside", () => {
  const plane = (x: number, y: number): number => 1 + 0.1 * x - 0.05 * y;
  const places = [
    [0, 0],
    [6, 0],
    [0, 6],
  ] as const;
  const r = stationSurface(
    places.map(([x, y]) => at(x, y, plane(x, y))),
    0.5,
    5,
  );
  for (const [x, y] of [
    [1, 1],
    [2, 3],
    [3, 2.5],
  ] as const)
    expect(groundAt(r, x, y)).toBeCloseTo(plane(x, y), 5);
});

test("stations far apart: nothing is known between legs of a line, only along them", () => {
  const r = stationSurface([at(0, 0, 1), at(60, 0, 2), at(60, 60, 3)], 1, 5);
  expect(groundAt(r, 30, 30)).toBeNaN();
  expect(groundAt(r, 30, 2)).toBeCloseTo(1.5, 6);
  expect(groundAt(r, 58, 30)).toBeCloseTo(2.5, 6);
});

test("one station is a disc of its height", () => {
  const r = stationSurface([at(10, 10, 0.7)], 0.5, 3);
  expect(groundAt(r, 10, 12.5)).toBeCloseTo(0.7, 6);
  expect(groundAt(r, 10, 13.6)).toBeNaN();
});

test("property: ground lies within the heights of the stations, and each is known where it stands", () => {
  const station = fc.tuple(
    fc.integer({ min: 0, max: 40 }),
    fc.integer({ min: 0, max: 40 }),
    fc.integer({ min: -20, max: 60 }),
  );
  fc.assert(
    fc.property(
      fc.uniqueArray(station, { minLength: 1, maxLength: 12, selector: ([x, y]) => `${x} ${y}` }),
      (list) => {
        const stations = list.map(([x, y, z]) => at(x, y, z / 10));
        const r = stationSurface(stations, 1, 3);
        const heights = stations.map((s) => s.ground_m);
        const known = [...r.values].filter((v) => !Number.isNaN(v));
        expect(Math.min(...known)).toBeGreaterThanOrEqual(Math.min(...heights) - 1e-5);
        expect(Math.max(...known)).toBeLessThanOrEqual(Math.max(...heights) + 1e-5);
        for (const s of stations) expect(groundAt(r, s.x, s.y)).not.toBeNaN();
      },
    ),
  );
});

test("no stations and a reach of nothing are refused", () => {
  expect(() => stationSurface([], 1, 3)).toThrow("no-stations");
  expect(() => stationSurface([at(0, 0, 1)], 1, 0)).toThrow("reach");
});
