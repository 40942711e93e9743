import { applyEdit, type Edit } from "@causey/engine/plan";
import type { Raster, Zone } from "@causey/engine/site";
import { expect, test } from "vitest";
import { samplePlan, square } from "../../../engine/test/plan/sample-plan.ts";
import { siteFaults } from "./index.ts";

/** 100 m x 60 m at 1 m a cell, with one cell without data around (90, 50). */
const terrain: Raster = {
  cols: 100,
  rows: 60,
  x0: 0.5,
  y0: 0.5,
  dx: 1,
  dy: 1,
  values: Float32Array.from({ length: 6000 }, (_, i) => (i === 50 * 100 + 90 ? NaN : 2)),
};
const zone = (x: number, y: number, change: Partial<Zone> = {}): Zone => ({
  ...square("new", "new zone", x, y),
  ...change,
});
const bowTie = [
  [
    [
      [10, 10],
      [20, 20],
      [20, 10],
      [10, 20],
    ],
  ],
] as const;

const cases: readonly (readonly [string, Edit, readonly string[]])[] = [
  ["a plot on the terrain", { type: "move-plot", plot: "p1", x: 30, y: 30 }, []],
  ["a plot off the terrain", { type: "move-plot", plot: "p1", x: 130, y: 30 }, ["place-off-terrain"]],
  ["a plot on unknown ground", { type: "move-plot", plot: "p1", x: 90.2, y: 50.2 }, ["place-on-nodata"]],
  ["a start off the terrain", { type: "move-start", start: "gate", x: -9, y: 5 }, ["place-off-terrain"]],
  ["an area closed beside the plots", { type: "add-zone", zone: zone(10, 10, { use: "closed" }) }, []],
  [
    "an area closed over a plot",
    { type: "add-zone", zone: zone(55, 15, { use: "closed" }) },
    ["place-in-shut-zone"],
  ],
  ["a pool over the start", { type: "add-zone", zone: zone(0, 0, { use: "pool" }) }, ["start-in-water"]],
  [
    "an outline that crosses itself",
    { type: "add-zone", zone: zone(0, 0, { polygons: bowTie }) },
    [expect.any(String)],
  ],
  [
    "a closure with a first day only",
    { type: "add-zone", zone: zone(10, 10, { use: "seasonal-closure", from: "10-01" }) },
    [expect.any(String)],
  ],
  ["a new name, which moves nothing", { type: "rename", name: "North path" }, []],
];

test.each(cases)("%s", async (_title, edit, codes) => {
  const result = applyEdit(samplePlan(), edit);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const faults = await siteFaults(result.plan, edit, terrain);
  expect(faults.map((f) => f.code)).toEqual(codes);
});

test("a site in a national grid is read in that grid", async () => {
  const plan = samplePlan({ crs: { epsg: 27700 } });
  const edit: Edit = { type: "add-zone", zone: zone(10, 10, { use: "closed" }) };
  expect(await siteFaults({ ...plan, zones: [edit.zone] }, edit, terrain)).toEqual([]);
});
