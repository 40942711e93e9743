import fc from "fast-check";
import { expect, test } from "vitest";
import { plotAt, smallInput, smallSite, smallTerrain, zone } from "../../../test/support/small-site.ts";
import { finish } from "../../formula/index.ts";
import {
  refitFrom,
  searchLayout,
  type Joint,
  type LaidJoint,
  type Layout,
  type SearchInput,
} from "../index.ts";

const flat = smallTerrain(40, 40, () => 1);
const straight = smallInput(smallSite(flat, [plotAt("p", 5, 34)]));
const two = smallInput(smallSite(flat, [plotAt("p", 12, 34), plotAt("q", 26, 20)]));
const planned = (input: SearchInput): Layout => finish(searchLayout(input));
const refit = (layout: Layout, laid: readonly LaidJoint[], input: SearchInput): Layout =>
  finish(refitFrom(layout, laid, input));

const read = (j: Joint, dx = 0, dy = 0, dz: number | null = 0): LaidJoint => ({
  joint: j.id,
  x: j.x + dx,
  y: j.y + dy,
  deck_m: dz === null ? null : j.deck_m + dz,
  date: "2026-09-03",
});
const shapes = (layout: Layout): string[] =>
  layout.parts.map((p) => `${p.id} ${p.kind === "module" ? p.length_m : p.use} ${p.from}`);

test("property: joints shifted within the slop give the same parts, and the rest stays where it was planned", () => {
  const layout = planned(two);
  const shift = fc.double({ min: -0.0249, max: 0.0249, noNaN: true });
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: layout.joints.length }),
      fc.array(fc.tuple(shift, shift, shift), { minLength: 60, maxLength: 60 }),
      (count, shifts) => {
        const laid = layout.joints.slice(0, count).map((j, n) => read(j, ...shifts[n]!));
        const now = refit(layout, laid, two);
        expect(shapes(now)).toEqual(shapes(layout));
        expect(now.as_laid!.refitted).toEqual([]);
        expect(now.as_laid!.joints.every((d) => d.within_slop)).toBe(true);
        expect(now.reached.map((r) => r.plot)).toEqual(layout.reached.map((r) => r.plot));
        now.joints.forEach((j, n) => {
          const own = laid.find((l) => l.joint === j.id);
          const was = layout.joints[n]!;
          if (own) expect([j.x, j.y]).toEqual([expect.closeTo(own.x, 9), expect.closeTo(own.y, 9)]);
          else expect(Math.hypot(j.x - was.x, j.y - was.y)).toBeLessThan(0.1);
        });
      },
    ),
    { numRuns: 40, seed: 17 },
  );
});

test("deviations are told along and across the way", () => {
  const layout = planned(straight);
  const now = refit(layout, [read(layout.joints[0]!), read(layout.joints[1]!, 0.02, -0.01, 0.005)], straight);
  // The way heads north: along is northward, across is eastward.
  expect(now.as_laid!.joints[1]).toEqual({
    joint: layout.joints[1]!.id,
    dx_m: expect.closeTo(0.02, 9),
    dy_m: expect.closeTo(-0.01, 9),
    along_m: expect.closeTo(-0.01, 9),
    across_m: expect.closeTo(0.02, 9),
    dz_m: expect.closeTo(0.005, 9),
    within_slop: true,
  });
  expect(now.as_laid!.kept).toEqual([layout.parts[0]!.id]);
});

test("a joint half a metre off is told, what is laid stays, and the rest is fitted on from it in its heading", () => {
  const layout = planned(straight);
  const [a, b, c] = layout.joints as [Joint, Joint, Joint];
  const now = refit(layout, [read(a), read(b), read(c, 0.5, 0.1)], straight);
  const report = now.as_laid!;
  expect(report.joints.map((d) => d.within_slop)).toEqual([true, true, false]);
  expect(report.kept).toEqual(layout.parts.slice(0, 2).map((p) => p.id));
  expect(report.refitted).toEqual(layout.parts.slice(2).map((p) => p.id));
  expect(shapes(now).slice(0, 2)).toEqual(shapes(layout).slice(0, 2));
  const heading = (Math.atan2(c.x + 0.5 - b.x, c.y + 0.1 - b.y) * 180) / Math.PI;
  expect(now.parts[1]!.heading_deg).toBeCloseTo(heading, 9);
  // All further parts lie on the lattice through the joint as it lies, turned as the last laid part is.
  for (const part of now.parts.slice(2)) {
    const off = (((part.heading_deg - heading) % 90) + 90) % 90;
    expect(Math.min(off, 90 - off)).toBeLessThan(1e-6);
  }
  expect(now.parts[2]!.from).toBe(c.id);
  const known = new Set(now.joints.map((j) => j.id));
  expect(known.size).toBe(now.joints.length);
  expect(now.parts.every((p) => known.has(p.from))).toBe(true);
  expect(now.reached.map((r) => r.plot)).toEqual(["p"]);
  // Joints beyond have tags that no joint had before.
  const tags = new Set(layout.joints.map((j) => j.id));
  expect(now.joints.slice(3).every((j) => !tags.has(j.id))).toBe(true);
  expect(now.line).toBeNull();
});

test("laid off its place on one branch, the other branch stays as planned", () => {
  const layout = planned(two);
  const branch = layout.branches[1]!;
  const first = layout.parts.find((p) => p.id === branch.parts[0])!;
  if (first.kind !== "module") throw new Error("the branch begins with a module");
  const platform = layout.parts.find((p) => p.id === branch.from)!;
  const laid = [platform.from, first.from, first.to].map((id) => layout.joints.find((j) => j.id === id)!);
  const now = refit(layout, [read(laid[0]!), read(laid[1]!), read(laid[2]!, 0.3, 0.3)], two);
  const trunk = layout.branches[0]!.parts;
  expect(now.branches[0]).toEqual(layout.branches[0]);
  expect(shapes(now).filter((s) => trunk.includes(s.split(" ")[0]!))).toEqual(
    shapes(layout).filter((s) => trunk.includes(s.split(" ")[0]!)),
  );
  expect(now.as_laid!.refitted).toEqual(branch.parts.slice(1));
  expect(now.reached.map((r) => r.plot).sort()).toEqual(["p", "q"]);
  expect(now.branches.map((b) => b.id)).toEqual(layout.branches.map((b) => b.id));
});

test("unknown tags are named, unread joints on the way are blended, the latest reading counts", () => {
  const layout = planned(straight);
  const third = layout.joints[2]!;
  const readings = [
    { ...read(third, 5, 5), date: "2026-09-01" },
    read(third, 0.02, 0),
    read(layout.joints[0]!),
    { ...read(third), joint: "J99" },
  ];
  const now = refit(layout, readings, straight);
  expect(now.as_laid!.unknown).toEqual(["J99"]);
  expect(now.as_laid!.joints.map((d) => d.joint)).toEqual(["J1", "J3"]);
  expect(now.joints[1]!.x - layout.joints[1]!.x).toBeCloseTo(0.01, 6);
  expect(now.notes.join(" ")).toContain("J2");
  expect(now.as_laid!.kept).toHaveLength(2);
});

test("what lies and breaks a rule is marked", () => {
  const nest = zone("nest", "closed", 6, 6, 8, 9);
  const near = smallInput(smallSite(flat, [plotAt("p", 5, 34)], [nest]));
  const layout = planned(near);
  const now = refit(layout, [read(layout.joints[0]!), read(layout.joints[1]!, 0.8, 0)], near);
  expect(layout.line).toBeNull();
  expect(now.line!.broken.map((b) => `${b.rule} ${b.part_or_joint}`)).toContain("shut-zone A1");
});

test("the plan's own list of laid joints is read, and the same input gives the same bytes", () => {
  const layout = planned(straight);
  const as_laid = [read(layout.joints[0]!), read(layout.joints[1]!, 0.4, 0)];
  const input = { ...straight, choice: { ...straight.choice, as_laid } };
  const once = planned(input);
  expect(once.as_laid!.joints).toHaveLength(2);
  expect(JSON.stringify(once)).toBe(JSON.stringify(refit(layout, as_laid, input)));
  expect(JSON.stringify(planned(input))).toBe(JSON.stringify(once));
});
