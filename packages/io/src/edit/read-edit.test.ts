import { ProblemError, type Json } from "@causey/engine/formula";
import type { Edit } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { samplePlan, square } from "../../../engine/test/plan/sample-plan.ts";
import { readEdit } from "./index.ts";

const plan = samplePlan();
const cart = {
  name: "Cart",
  empty_kg: 20,
  load_kg: 100,
  wet_kg: 0,
  width_mm: null,
  length_mm: null,
  track_mm: 450,
  axle_distance_mm: 0,
  axles: 1,
  wheel_width_mm: 40,
  wheel_contact_mm: 60,
} as const;
const closure = {
  ...square("t", "terns", 0, 0),
  use: "seasonal-closure",
  from: "04-15",
  to: "08-31",
} as const;

const edits: readonly Edit[] = [
  { type: "move-plot", plot: "p1", x: 1.5, y: -2 },
  { type: "move-start", start: "gate", x: 0, y: 0 },
  { type: "set-plot-reach", plot: "p1", keep_off_m: 0, reach_m: 1 },
  { type: "add-zone", zone: closure },
  { type: "add-zone", zone: square("s", "sedge", 0, 0), at: 0 },
  { type: "remove-zone", zone: "sedge" },
  { type: "set-weights", weights: plan.layout.weights },
  { type: "set-layout", layout: plan.layout },
  { type: "set-visit", visit: { ...plan.visits[0]!, cart } },
  { type: "set-kit", kit: plan.kit },
  { type: "set-units", units: "us" },
  { type: "rename", name: "Østre vad" },
];

test.each(edits.map((edit) => [edit.type, edit] as const))("%s is read as it was written", (_type, edit) => {
  expect(readEdit(JSON.parse(JSON.stringify(edit)) as Json)).toEqual(edit);
});

const places = (value: unknown): readonly string[] => {
  try {
    readEdit(value as Json);
  } catch (error) {
    if (error instanceof ProblemError) return error.problems.map((p) => p.place);
    throw error;
  }
  return [];
};

const hostile: readonly (readonly [string, unknown, readonly string[]])[] = [
  ["nothing", undefined, ["edit"]],
  ["a list", [], ["edit"]],
  ["no type", { plot: "p1" }, ["type"]],
  ["an unknown type", { type: "constructor" }, ["type"]],
  ["a type that is no text", { type: 3 }, ["type"]],
  ["a key too many", { type: "remove-zone", zone: "a", all: true }, ["document"]],
  ["text for a number", { type: "move-plot", plot: "p1", x: "1", y: 2 }, ["x"]],
  ["what is not finite", { type: "move-plot", plot: "p1", x: NaN, y: Infinity }, ["x", "y"]],
  ["a name of two lines", { type: "rename", name: "a\nb" }, ["name"]],
  ["half a position in the list", { type: "add-zone", zone: closure, at: 0.5 }, ["at"]],
  [
    "a zone with three faults",
    { type: "add-zone", zone: { ...closure, use: "lava", from: "13-01", polygons: [[[[0, 0, 0]]]] } },
    ["zone.use", "zone.polygons[0][0][0]", "zone.from"],
  ],
  [
    "a kit with a fault deep inside",
    { type: "set-kit", kit: { ...plan.kit, stringers: { ...plan.kit.stringers, count: 4 } } },
    ["kit.stringers.count"],
  ],
];
test.each(hostile)("%s is refused by its place", (_title, value, expected) => {
  expect([...places(value)].sort()).toEqual([...expected].sort());
});

test("an unknown kind of edit is answered with those that are known", () => {
  expect(() => readEdit({ type: "paint" })).toThrow(ProblemError);
  try {
    readEdit({ type: "paint" });
  } catch (error) {
    const [problem] = (error as ProblemError).problems;
    for (const edit of edits) expect(problem?.mend).toContain(edit.type);
  }
});
