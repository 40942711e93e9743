import fc from "fast-check";
import type { Plot } from "@causey/engine/site";
import { expect, test } from "vitest";
import { freshPlace } from "./fresh-place.ts";

const start = (x: number, y: number) => ({ id: "S", name: "S", x, y });
const plot = (x: number, y: number): Plot => ({ id: "P", name: "P", x, y, keep_off_m: 1.5, reach_m: 2 });
const terrain = [100, 200, 200, 320] as const;

test("the middle of the terrain is taken where it is clear", () => {
  expect(freshPlace({ starts: [start(105, 205)], plots: [] }, terrain)).toEqual({ x: 150, y: 260 });
});

test("without a terrain it keeps clear of the start it begins at", () => {
  const at = freshPlace({ starts: [start(5, 5)], plots: [] }, null);
  expect(Math.hypot(at.x - 5, at.y - 5)).toBeCloseTo(8, 9);
});

test("property: no start and no plot is shut in, and on a terrain with room the place lies on it", () => {
  const at = fc.record({
    x: fc.double({ min: 100, max: 200, noNaN: true }),
    y: fc.double({ min: 200, max: 320, noNaN: true }),
  });
  fc.assert(
    fc.property(at, fc.array(at, { maxLength: 12 }), fc.boolean(), (s, others, known) => {
      const place = freshPlace(
        { starts: [start(s.x, s.y)], plots: others.map((o) => plot(o.x, o.y)) },
        known ? terrain : null,
      );
      expect(Math.hypot(place.x - s.x, place.y - s.y)).toBeGreaterThanOrEqual(8 - 1e-9);
      for (const o of others)
        expect(Math.hypot(place.x - o.x, place.y - o.y)).toBeGreaterThanOrEqual(9.5 - 1e-9);
      if (known) {
        expect(place.x).toBeGreaterThanOrEqual(100);
        expect(place.x).toBeLessThanOrEqual(200);
        expect(place.y).toBeGreaterThanOrEqual(200);
        expect(place.y).toBeLessThanOrEqual(320);
      }
    }),
  );
});
