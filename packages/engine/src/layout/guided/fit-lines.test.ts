import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../../test/support/small-site.ts";
import { finish } from "../../formula/index.ts";
import type { Site } from "../../site/index.ts";
import { searchLayout, type DrawnLine, type Layout, type LayoutChoice } from "../index.ts";

const flat = smallTerrain(40, 40, () => 1);
const line = (points: DrawnLine["points"], more: Partial<DrawnLine> = {}): DrawnLine => ({
  id: "agreed",
  points,
  plot: null,
  corridor_m: 2,
  ...more,
});
const fit = (site: Site, lines: readonly DrawnLine[], more: Partial<LayoutChoice> = {}): Layout => {
  const input = smallInput(site);
  return finish(searchLayout({ ...input, choice: { ...input.choice, lines, ...more } }));
};
const lengths = (layout: Layout): number[] =>
  layout.parts.map((p) => (p.kind === "module" ? p.length_m : 0)).sort((a, b) => b - a);
const rules = (layout: Layout): string[] => [...new Set(layout.line!.broken.map((b) => b.rule))].sort();

test("a straight line along the lattice is followed without deviation by the fewest parts", () => {
  const layout = fit(smallSite(flat, []), [
    line([
      [5, 5],
      [5, 25],
    ]),
  ]);
  // 20 m by modules of 3, 2 and 1 m: seven is the fewest, six of 3 m and one of 2 m.
  expect(lengths(layout)).toEqual([3, 3, 3, 3, 3, 3, 2]);
  expect(layout.line).toEqual({
    lines: [
      {
        id: "agreed",
        max_deviation_m: 0,
        rms_deviation_m: 0,
        at: [5, 5],
        within_corridor: true,
        not_followed: [],
      },
    ],
    broken: [],
  });
});

test("a straight line on any heading is followed on a lattice of its own heading", () => {
  const layout = fit(smallSite(flat, []), [
    line([
      [5, 5],
      [17, 21],
    ]),
  ]);
  expect(layout.heading_deg).toBeCloseTo((Math.atan2(12, 16) * 180) / Math.PI, 9);
  expect(lengths(layout)).toEqual([3, 3, 3, 3, 3, 3, 2]);
  expect(layout.line!.lines[0]!.max_deviation_m).toBeLessThan(1e-9);
});

test("an L along the lattice takes exactly one platform, which turns", () => {
  const layout = fit(smallSite(flat, []), [
    line([
      [5, 5],
      [5, 15],
      [20, 15],
    ]),
  ]);
  const platforms = layout.parts.filter((p) => p.kind === "platform");
  expect(platforms.map((p) => [p.x, p.y, p.use])).toEqual([[5, 15, "turning"]]);
  expect(layout.line!.lines[0]).toMatchObject({
    max_deviation_m: 0,
    within_corridor: true,
    not_followed: [],
  });
  expect(layout.line!.broken).toEqual([]);
});

test("a corner of 60 degrees cannot be made: it is said, with what was built instead", () => {
  const corner: [number, number] = [5, 20];
  const far: [number, number] = [5 + 18 * Math.sin(Math.PI / 3), 20 + 18 * Math.cos(Math.PI / 3)];
  const layout = fit(smallSite(flat, []), [line([[5, 5], corner, far])]);
  const mark = layout.line!.broken.find((b) => b.rule === "corner")!;
  expect(mark).toMatchObject({ part_or_joint: "agreed", place: corner });
  expect(mark.message).toContain("turns by 60 degrees");
  expect(mark.message).toMatch(/Nearest that can be built: (steps over \d|one platform)/);
  const [figures] = layout.line!.lines;
  expect(figures!.max_deviation_m).toBeGreaterThan(0.3);
  expect(figures!.within_corridor).toBe(true);
  expect(figures!.not_followed).toEqual([]);
});

test("what an agreed line breaks is fitted all the same, and every broken rule is marked", () => {
  const wall = zone("terns", "closed", 0, 12, 40, 14);
  const layout = fit(smallSite(flat, [], [wall]), [
    line([
      [5, 5],
      [5, 25],
    ]),
  ]);
  expect(layout.line!.lines[0]!.not_followed).toEqual([]);
  expect(rules(layout)).toEqual(["shut-zone"]);
  const across = layout.parts.filter(
    (p) => p.outline[0]![0]!.some(([, y]) => y > 12) && p.outline[0]![0]!.some(([, y]) => y < 14),
  );
  const marked = layout.line!.broken.map((b) => b.part_or_joint);
  for (const part of across) expect(marked).toContain(part.id);
});

test("inside its corridor the line gives way to a closed area", () => {
  const islet = zone("nest", "closed", 4.5, 13, 6, 15);
  const layout = fit(smallSite(flat, [], [islet]), [
    line(
      [
        [5, 5],
        [5, 30],
      ],
      { corridor_m: 5 },
    ),
  ]);
  expect(layout.line!.broken).toEqual([]);
  expect(layout.line!.lines[0]!.within_corridor).toBe(true);
  expect(layout.line!.lines[0]!.max_deviation_m).toBeGreaterThan(0.8);
});

test("a bank too steep for the deck still gets heights, and the rule is marked", () => {
  const bank = smallTerrain(40, 40, (_, y) => (y < 15 ? 1 : 3.5));
  const layout = fit(smallSite(bank, []), [
    line([
      [5, 5],
      [5, 25],
    ]),
  ]);
  expect(layout.joints.every((j) => Number.isFinite(j.deck_m))).toBe(true);
  expect(rules(layout)).toContain("grade");
  expect(layout.line!.lines[0]!.not_followed).toEqual([]);
});

test("a line to a plot counts only when a joint lies within the usual reach", () => {
  const plot = plotAt("p", 5, 20);
  const there = fit(smallSite(flat, [plot]), [
    line(
      [
        [5, 5],
        [5, 20],
      ],
      { plot: "p" },
    ),
  ]);
  expect(there.reached.map((r) => r.plot)).toEqual(["p"]);
  expect(there.branches[0]!.to_plot).toBe("p");
  expect(there.line!.broken).toEqual([]);
  const short = fit(smallSite(flat, [plot]), [
    line(
      [
        [5, 5],
        [5, 12],
      ],
      { plot: "p", corridor_m: 1 },
    ),
  ]);
  expect(short.reached).toEqual([]);
  expect(rules(short)).toContain("reached");
  expect(short.unreached[0]!.because).toContain("agreed");
});

test("a later line begins on a platform of an earlier one, nearest to where it was drawn", () => {
  const layout = fit(smallSite(flat, []), [
    line([
      [5, 5],
      [5, 30],
    ]),
    line(
      [
        [6, 17],
        [25, 17],
      ],
      { id: "spur" },
    ),
  ]);
  const platforms = layout.parts.filter((p) => p.kind === "platform");
  expect(platforms.map((p) => [p.x, p.y, p.use])).toEqual([[5, 17, "turning"]]);
  expect(layout.branches.map((b) => b.from)).toEqual(["start", platforms[0]!.id]);
  expect(layout.line!.lines.map((l) => l.max_deviation_m)).toEqual([0, 0]);
  expect(layout.line!.broken).toEqual([]);
});

test("places to pass are put along a drawn line, and where there is no room that is marked", () => {
  const lines = [
    line(
      [
        [5, 5],
        [5, 30],
      ],
      { corridor_m: 0.5 },
    ),
  ];
  const open = fit(smallSite(flat, []), lines, { passing_every_m: 9 });
  const platforms = open.parts.filter((p) => p.kind === "platform");
  expect(platforms.map((p) => p.use)).toEqual(["passing", "passing"]);
  expect(open.line!.broken).toEqual([]);
  const walls = [zone("w", "closed", 0, 8, 4.02, 24), zone("e", "closed", 5.98, 8, 40, 24)];
  const lane = fit(smallSite(flat, [], walls), lines, { passing_every_m: 9 });
  expect(rules(lane)).toEqual(["passing"]);
  expect(lane.line!.broken[0]!.message).toContain("without a place to pass; at most 9.0 m");
});

test("the same input gives the same layout, byte for byte", () => {
  const bumps = smallTerrain(40, 40, (x, y) => 1 + 0.1 * Math.sin(x / 3) * Math.cos(y / 4));
  const lines = [
    line([
      [5, 5],
      [9, 16],
      [24, 21],
    ]),
    line(
      [
        [9, 15],
        [8, 30],
      ],
      { id: "spur" },
    ),
  ];
  const once = JSON.stringify(fit(smallSite(bumps, []), lines));
  expect(JSON.stringify(fit(smallSite(bumps, []), lines))).toBe(once);
});
