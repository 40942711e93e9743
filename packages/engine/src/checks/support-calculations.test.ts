import { tables } from "@causey/data/tables";
import { expect, test } from "vitest";
import { N_PER_LBF } from "../units/index.ts";
import { checkCalculations } from "./index.ts";

const answer = (id: string, input: Record<string, unknown>) =>
  checkCalculations
    .find((c) => c.id === id)!
    .run({ code: "us-asd-2018", species: "southern-pine", grade: "no2", incised: false, ...input } as never, {
      tables,
    });
const run = (id: string, input: Record<string, unknown>) => {
  const found = answer(id, input);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.outputs as unknown as { results: { id: string; status: string; utilisation?: number }[] };
};
const IN = 25.4;
const beam = {
  size: "2x6",
  lay: "flat",
  carrier_from_mm: [-10.25 * IN, 8.75 * IN],
  carrier_to_mm: [-8.75 * IN, 10.25 * IN],
  load_at_mm: [-11.25 * IN, 11.25 * IN],
  dead_n: [50 * N_PER_LBF, 50 * N_PER_LBF],
  live_n: [500 * N_PER_LBF, 500 * N_PER_LBF],
};

test("check.support-beam: the sill of the hand calculation, 962.5 of 2371.9 lb in and 550 of 933.6 lb", () => {
  const { results } = run("check.support-beam", beam);
  expect(results.map((r) => r.id)).toEqual(["bending", "shear"]);
  expect(results[0]!.utilisation).toBeCloseTo(962.5 / 2371.9, 3);
  expect(results[1]!.utilisation).toBeCloseTo(550 / 933.6, 3);
});

test("check.support-beam: every fault of the lists at once, each with its place", () => {
  const found = answer("check.support-beam", { ...beam, carrier_to_mm: [1], dead_n: [-1, 0] });
  if (found.ok) throw new Error("should be refused");
  expect(found.problems.map((p) => p.place)).toEqual(["carrier_to_mm", "dead_n"]);
});

test("check.catch-board: 1600 of 2892.1 lb in, as by hand", () => {
  const { results } = run("check.catch-board", {
    size: "2x8",
    bay_mm: 20 * IN,
    stringer_thickness_mm: 1.5 * IN,
    screw: "screw-10x3",
    screws_per_end: 2,
    dead_n: 20 * N_PER_LBF,
    live_n: 300 * N_PER_LBF,
  });
  expect(results[0]!.utilisation).toBeCloseTo(1600 / 2892.1, 3);
  expect(results.map((r) => r.id)).toEqual(["bending", "shear", "screws"]);
});

test("check.board-hold: 45 of 20.28 lb, as by hand", () => {
  const { results } = run("check.board-hold", {
    size: "2x6",
    stringer: "2x8",
    length_mm: 30 * IN,
    bearings: 2,
    screw: "nail-8d",
    screws_per_bearing: 2,
    beyond_mm: 3 * IN,
    next_mm: 20 * IN,
    water_kg_m3: 1010,
    people: 1,
    person_kg: 80,
    spacing_mm: 1500,
  });
  expect(results[0]!.utilisation).toBeCloseTo(45 / 20.28, 2);
});
