import { ProblemError } from "@causey/engine/formula";
import type { Raster } from "@causey/engine/site";
import type { TerrainLook } from "@causey/io/fresh";
import { readWholePlan } from "@causey/runtime/derive";
import { expect, test } from "vitest";
import { blankPlan, newPlanFiles, type NewPlan } from "./new-plan.ts";

const text = `ncols 20\nnrows 20\nxllcorner 0\nyllcorner 0\ncellsize 1\n${"2 ".repeat(20).concat("\n").repeat(20)}`;
const raster: Raster = {
  cols: 20,
  rows: 20,
  x0: 0.5,
  y0: 0.5,
  dx: 1,
  dy: 1,
  values: new Float32Array(400).fill(2),
};
const look: TerrainLook = {
  name: "fen.asc",
  bytes: new TextEncoder().encode(text),
  unit: "m",
  crs: null,
  vertical: null,
  raster,
};
const answered: NewPlan = { ...blankPlan, name: "Fen", system: "local", datum: "Peg 1" };

const placesOf = (asked: NewPlan, terrain: TerrainLook | null): string[] => {
  try {
    newPlanFiles(asked, terrain);
    return [];
  } catch (error) {
    if (error instanceof ProblemError) return error.problems.map((p) => p.place);
    throw error;
  }
};

test("everything that is not answered yet is told at once", () => {
  expect(placesOf(blankPlan, null)).toEqual(["Name of the plan", "Terrain", "Vertical datum"]);
  expect(placesOf(blankPlan, look)).toEqual(["Name of the plan", "Coordinate system", "Vertical datum"]);
  expect(placesOf({ ...answered, ground: "stations" }, null)).toEqual(["Ground at the start", "Start"]);
  expect(placesOf({ ...answered, isStartUnread: true }, look)).toEqual(["Start"]);
});

test("a file that names its system is not asked again", () => {
  const named = { ...look, crs: { code: 27700 } as TerrainLook["crs"] };
  expect(placesOf({ ...answered, system: "" }, named)).toEqual([]);
});

test("what is answered makes a plan that every shell can read, with terrain and without", async () => {
  const withTerrain = await readWholePlan(newPlanFiles({ ...answered, site_name: "Lower fen" }, look));
  if (!withTerrain.ok) throw new Error(withTerrain.problems.map((p) => p.message).join("\n"));
  expect(withTerrain.plan).toMatchObject({ name: "Fen", site_name: "Lower fen", vertical_datum: "Peg 1" });
  const bare = { ...answered, ground: "stations", start: [0, 0], ground_m: 0 } as const;
  const without = await readWholePlan(newPlanFiles(bare, null));
  if (!without.ok) throw new Error(without.problems.map((p) => p.message).join("\n"));
  expect(without.plan.starts).toMatchObject([{ x: 0, y: 0 }]);
  expect(without.plan.survey.stations).toMatchObject([{ ground_m: 0 }]);
});
