import { expect, test } from "vitest";
import {
  plotAt,
  smallFacts,
  smallInput,
  smallSite,
  smallTerrain,
  zone,
} from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import { metres, qty } from "../units/index.ts";
import { entryRamps, rampGrade, rampLength, type RampInput } from "./ramps.ts";
import { searchNetwork } from "./search.ts";

const ramp = { lengths_mm: [3600, 1200, 2400], max_grade: 0.12 };

/** A way that heads north from (5, 5) on ground that lies at 1 m there and rises or falls to the south. */
function inputOn(southward: number, more: Partial<RampInput> = {}): RampInput {
  const terrain = smallTerrain(30, 30, (_, y) => (y >= 5 ? 1 : 1 + (5 - y) * southward));
  const input = smallInput(smallSite(terrain, [plotAt("p", 5, 18)]));
  const { site, facts, laying } = input;
  return { layout: finish(searchNetwork(input)), site, facts, laying, ramp, ...more };
}

test("the shortest body that keeps the grade is laid before the first joint (hand arithmetic)", () => {
  const input = inputOn(0);
  const first = input.layout.joints[0]!;
  const rise = first.deck_m - 1;
  // Lowest sleeper 0.09 m and module 0.15 m deep: a deck 0.24 m above the ground.
  expect(rise).toBeCloseTo(0.24, 9);
  const [entry] = entryRamps(input);
  // 0.24 / sqrt(1.2^2 - 0.24^2) = 0.204 is too steep; 0.24 / sqrt(2.4^2 - 0.24^2) = 0.1005 is not.
  expect(entry).toMatchObject({
    start: "start",
    joint: "J1",
    length_m: 2.4,
    keeps_grade: true,
    allowed: true,
  });
  expect(entry!.grade).toBeCloseTo(0.1005, 4);
  expect(entry!.step_m).toBeCloseTo(0.24, 9);
  const run = Math.sqrt(2.4 ** 2 - 0.24 ** 2);
  expect([entry!.foot!.x, entry!.foot!.y]).toEqual([expect.closeTo(5, 9), expect.closeTo(5 - run, 6)]);
  const ys = entry!.outline[0]![0]!.map((p) => p[1]);
  expect([Math.min(...ys), Math.max(...ys)]).toEqual([expect.closeTo(5 - run, 6), expect.closeTo(5, 6)]);
});

test("ground that falls away before the start asks for a longer body, and ground that rises for a shorter one", () => {
  expect(entryRamps(inputOn(-0.04))[0]).toMatchObject({ length_m: 3.6, keeps_grade: true });
  expect(entryRamps(inputOn(0.1))[0]).toMatchObject({ length_m: 1.2, keeps_grade: true });
  const falling = entryRamps(inputOn(-0.04))[0]!;
  // The foot lies on the ground: deck less rise is the terrain's height there.
  expect(falling.foot!.ground_m).toBeCloseTo(1 - 0.04 * (5 - falling.foot!.y), 6);
});

test("where no body keeps the grade the flattest is laid, and said to be too steep", () => {
  const [entry] = entryRamps(inputOn(0, { ramp: { lengths_mm: [900, 1200], max_grade: 0.08 } }));
  expect(entry).toMatchObject({ length_m: 1.2, keeps_grade: false });
  expect(entry!.grade!).toBeGreaterThan(0.08);
});

test("without a ramp in the kit the step is stated, and nothing is laid", () => {
  expect(entryRamps(inputOn(0, { ramp: null }))).toEqual([
    {
      start: "start",
      joint: "J1",
      heading_deg: 0,
      step_m: expect.closeTo(0.24, 9),
      length_m: null,
      grade: null,
      keeps_grade: null,
      foot: null,
      outline: [],
      allowed: null,
      because: null,
    },
  ]);
});

test("a ramp in a closed area, its buffer, or a keep-off circle is laid but not allowed", () => {
  const input = inputOn(0);
  const shut = zone("nest", "closed", 0, 0, 4, 4, { buffer_m: 0.5 });
  const within = { ...input, site: { ...input.site, zones: [shut] } };
  // The ramp is 0.6 m wide about x = 5: its edge at 4.7 lies 0.7 m from the area.
  expect(entryRamps(within)[0]).toMatchObject({ allowed: true });
  const wider = { ...input, site: { ...input.site, zones: [{ ...shut, buffer_m: 0.75 }] } };
  expect(entryRamps(wider)[0]).toMatchObject({ allowed: false, because: expect.stringContaining("buffer") });
  const plot = { ...input, site: { ...input.site, plots: [plotAt("trap", 5.9, 4, 0.7)] } };
  expect(entryRamps(plot)[0]).toMatchObject({ allowed: false, because: expect.stringContaining("trap") });
});

test("a start at the edge of the terrain has no ground for a ramp, and that is said", () => {
  const terrain = smallTerrain(30, 30, () => 1);
  const base = smallInput(smallSite(terrain, [plotAt("p", 5, 18)], [], { x: 5, y: 0.3 }));
  const { site, laying } = base;
  const layout = finish(searchNetwork(base));
  expect(layout.reached).toHaveLength(1);
  const [entry] = entryRamps({ layout, site, facts: smallFacts, laying, ramp });
  expect(entry).toMatchObject({ length_m: null, allowed: false, because: expect.stringContaining("known") });
});

test("the least body for a rise and a grade has that grade", () => {
  const L = rampLength({ r: metres(0.24), g: qty(0.08, "1") });
  expect(rampGrade({ r: metres(0.24), L })).toBeCloseTo(0.08, 12);
});
