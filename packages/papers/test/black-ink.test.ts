import type { Zone } from "@causey/engine/site";
import fc from "fast-check";
import { expect, test } from "vitest";
import { waterStroke } from "../src/drawings/plan-ground.ts";
import { zoneSymbols } from "../src/drawings/zone-look.ts";
import { inks } from "../src/scene/inks.ts";
import { hatched, type Point } from "../src/scene/index.ts";

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function contrastOnWhite(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const v = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 1.05 / (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05);
}

test("WCAG 2.2, 1.4.3: every ink that writes words has a contrast of 4.5 on white", () => {
  expect(contrastOnWhite("#000000")).toBeCloseTo(21, 6);
  expect(contrastOnWhite("#767676")).toBeCloseTo(4.54, 2);
  const words = Object.entries(inks).filter(([ink]) => ink !== "rule" && ink !== "warning");
  for (const [ink, colour] of words) expect(contrastOnWhite(colour), ink).toBeGreaterThanOrEqual(4.5);
});

const uses: readonly Zone["use"][] = [
  "habitat",
  "habitat",
  "habitat",
  "closed",
  "seasonal-closure",
  "buffer",
  "soft-ground",
  "channel",
  "pool",
  "parcel",
];

test("without colour every symbol of the legend still differs in hatch or dashes", () => {
  const zones = uses.map((use, i): Zone => ({
    id: `z${i}`,
    name: `Z${i}`,
    use,
    polygons: [],
    hidden: false,
    source: "",
  }));
  const marks = zoneSymbols(zones).map(({ look }) => JSON.stringify([look.hatch ?? null, look.dash ?? null]));
  expect(marks.length).toBe(10);
  expect(new Set(marks).size).toBe(marks.length);
});

test("the lines of the first four water levels differ in their dashes", () => {
  expect(new Set([0, 1, 2, 3].map((n) => JSON.stringify(waterStroke(n).dash))).size).toBe(4);
});

test("a hatch stays inside its area and out of its hole, its lines one gap apart", () => {
  const square = (at: number, size: number): Point[] => [
    [at, at],
    [at + size, at],
    [at + size, at + size],
    [at, at + size],
  ];
  fc.assert(
    fc.property(
      fc.integer({ min: -90, max: 90 }),
      fc.double({ min: 0.8, max: 4, noNaN: true }),
      (angle_deg, gap) => {
        const [hatch] = hatched([square(0, 30), square(10, 10)], { ink: "ink", angle_deg, gap, width: 0.1 });
        const lines = hatch!.lines;
        let total = 0;
        for (const [a, b] of lines as [Point, Point][]) {
          const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
          expect(x > -1e-6 && x < 30 + 1e-6 && y > -1e-6 && y < 30 + 1e-6).toBe(true);
          expect(x > 10 + 1e-6 && x < 20 - 1e-6 && y > 10 + 1e-6 && y < 20 - 1e-6).toBe(false);
          total += Math.hypot(b[0] - a[0], b[1] - a[1]);
        }
        // Length times gap is the area, but for the first and last line.
        expect(Math.abs(total * gap - 800)).toBeLessThan(2 * 43 * gap);
      },
    ),
  );
});
