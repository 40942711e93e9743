import fc from "fast-check";
import { expect, test } from "vitest";
import {
  plotAt,
  sleeper,
  smallFacts,
  smallInput,
  smallSite,
  smallTerrain,
  zone,
} from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import {
  isInside,
  ruledArea,
  segmentDistance,
  signedDistance,
  type Point,
  type Polygons,
  type Ring,
  type Zone,
} from "../site/index.ts";
import { isArrival } from "./arrival.ts";
import type { SearchInput } from "./search-input.ts";
import { searchNetwork } from "./search.ts";
import type { Layout } from "./types.ts";

const flat = smallTerrain(30, 30, () => 1);
const search = (input: SearchInput): Layout => finish(searchNetwork(input));

/** Least distance between two outlines, 0 when they meet; written out edge by edge. */
function apart(a: Ring, b: Ring): number {
  if (a.some(([x, y]) => isInside([[b]], x, y)) || b.some(([x, y]) => isInside([[a]], x, y))) return 0;
  const edges = (ring: Ring): [Point, Point][] => ring.map((p, i) => [p, ring[(i + 1) % ring.length]!]);
  const near = (points: Ring, to: Ring): number =>
    Math.min(...points.flatMap(([x, y]) => edges(to).map(([p, q]) => segmentDistance(x, y, p, q))));
  return Math.min(near(a, b), near(b, a));
}

const outlines = (layout: Layout): Ring[] =>
  [...layout.parts.map((p) => p.outline), ...layout.joints.map((j) => j.feet)].flatMap((polygons) =>
    polygons.map((rings) => rings[0]!),
  );
const ringOf = (z: Zone): Ring => z.polygons[0]![0]!;

test("property: no part and no foot enters the buffer of a closed area, whatever its width and the heading", () => {
  let reached = 0;
  fc.assert(
    fc.property(
      fc.double({ min: 0.1, max: 4, noNaN: true }),
      fc.integer({ min: 0, max: 89 }),
      fc.integer({ min: 8, max: 16 }),
      (buffer_m, heading, y) => {
        const nest = zone("nest", "closed", 4, y, 8, y + 2, { buffer_m });
        const base = smallInput(smallSite(flat, [plotAt("p", 6, 26)], [nest]));
        const layout = search({ ...base, choice: { ...base.choice, first_heading_deg: heading } });
        if (layout.reached.length > 0) reached++;
        for (const ring of outlines(layout))
          expect(apart(ring, ringOf(nest))).toBeGreaterThanOrEqual(buffer_m - 1e-6);
      },
    ),
    { numRuns: 40 },
  );
  expect(reached).toBeGreaterThan(20);
});

test("a buffer of a channel keeps feet off its banks, but the channel is still bridged", () => {
  const creek = zone("creek", "channel", -1, 12.2, 31, 13, { buffer_m: 0.6 });
  const layout = search(smallInput(smallSite(flat, [plotAt("p", 5, 22)], [creek])));
  expect(layout.reached).toHaveLength(1);
  expect(layout.parts.some((p) => p.bridges.includes("creek"))).toBe(true);
  for (const feet of layout.joints.map((j) => j.feet[0]![0]!))
    expect(apart(feet, ringOf(creek))).toBeGreaterThanOrEqual(0.6 - 1e-6);
});

test("a seasonal closure's buffer binds on its days only", () => {
  const terns = zone("terns", "seasonal-closure", -1, 12, 31, 13, {
    from: "04-15",
    to: "08-31",
    buffer_m: 2,
  });
  const site = smallSite(flat, [plotAt("p", 5, 10)], [terns]);
  expect(search(smallInput(site)).reached).toHaveLength(1);
  const nesting = smallInput(site, { laying: { from: "2026-08-20", to: "2026-09-02" } });
  expect(outlines(search(nesting)).every((ring) => apart(ring, ringOf(terns)) >= 2 - 1e-6)).toBe(true);
});

test("property: a buffered outline lies at the buffer's distance from the zone, never nearer, 3 mm beyond at most", () => {
  const hole: Ring = [
    [4, 4],
    [16, 4],
    [16, 14],
    [4, 14],
  ];
  const polygons: Polygons = [[ringOf(zone("z", "closed", 0, 0, 20, 18)), hole]];
  fc.assert(
    fc.property(fc.double({ min: 0.05, max: 4, noNaN: true }), (buffer_m) => {
      const area = ruledArea({ ...zone("z", "closed", 0, 0, 1, 1, { buffer_m }), polygons });
      expect(area[0]).toHaveLength(2);
      for (const ring of area.flat())
        for (let i = 0; i < ring.length; i++) {
          const [a, b] = [ring[i]!, ring[(i + 1) % ring.length]!];
          for (const t of [0, 0.5]) {
            const d = signedDistance(polygons, a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t);
            expect(d).toBeGreaterThanOrEqual(buffer_m - 1e-4);
            expect(d).toBeLessThanOrEqual(buffer_m + 0.003);
          }
        }
    }),
  );
});

for (const [side, dx, dy] of [
  ["north", 0, 1],
  ["east", 1, 0],
  ["south", 0, -1],
  ["west", -1, 0],
] as const)
  test(`a plot that must be reached from the ${side} is, on every heading`, () => {
    for (const heading of [0, 20, 45, 70]) {
      const plot = { ...plotAt("p", 16, 17), arrive_from: side };
      const base = smallInput(smallSite(flat, [plot]));
      const layout = search({ ...base, choice: { ...base.choice, first_heading_deg: heading } });
      const joint = layout.joints.find((j) => j.id === layout.reached[0]!.joint)!;
      const [east, north] = [joint.x - plot.x, joint.y - plot.y];
      // The quarter around the side: the cosine to its direction is at least that of 45 degrees.
      expect((east * dx + north * dy) / Math.hypot(east, north)).toBeGreaterThanOrEqual(Math.SQRT1_2 - 1e-9);
    }
  });

test("the four sides share out every place of the ring around a plot", () => {
  for (let k = 0.5; k < 360; k += 7) {
    const [x, y] = [1.5 * Math.sin((k * Math.PI) / 180), 1.5 * Math.cos((k * Math.PI) / 180)];
    const from = (["north", "east", "south", "west"] as const).filter((arrive_from) =>
      isArrival({ ...plotAt("p", 0, 0), arrive_from }, x, y),
    );
    const quarter = Math.floor(((k + 45) % 360) / 90);
    expect(from).toEqual([["north", "east", "south", "west"][quarter]]);
  }
});

test("no part and no foot enters a keep-off circle, even where feet are wider than the walkway", () => {
  const wide = { ...sleeper, feet: [{ along_mm: 100, across_mm: 1800, offset_across_mm: 0 }] };
  for (const heading of [0, 25, 50]) {
    const plots = [plotAt("a", 8, 14, 1.5), plotAt("b", 16, 20, 1), plotAt("c", 5, 22, 2)];
    const base = smallInput(smallSite(flat, plots), { facts: { ...smallFacts, supports: [wide] } });
    const layout = search({ ...base, choice: { ...base.choice, first_heading_deg: heading } });
    expect(layout.reached.length).toBeGreaterThan(1);
    for (const plot of plots)
      for (const ring of outlines(layout))
        expect(signedDistance([[ring]], plot.x, plot.y)).toBeGreaterThanOrEqual(plot.keep_off_m - 1e-9);
  }
});
