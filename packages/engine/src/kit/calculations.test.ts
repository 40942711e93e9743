import { describe, expect, test } from "vitest";
import { commonPracticeKit } from "../../test/support/common-practice-kit.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import type { Json, JsonObject } from "../formula/index.ts";
import { kitCalculations } from "./calculations.ts";
import { readKit } from "./kit-shape.ts";

const json = (v: unknown): Json => JSON.parse(JSON.stringify(v)) as Json;
const kit = json(commonPracticeKit) as JsonObject;
const run = (id: string, input: JsonObject) =>
  kitCalculations.find((c) => c.id === id)!.run(input, { tables: yardTables });

describe("kit.module", () => {
  test("gives pieces, counted things, timber volume and mesh mass (by hand: common practice, no source)", () => {
    const result = run("kit.module", { kit, length_mm: 2438.4 });
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const { pieces, counted, timber_m3, mesh_kg } = result.outputs;
    expect(pieces).toHaveLength(13);
    expect(counted).toHaveLength(3);
    const inches3 = 2 * 1.5 * 3.5 * 96 + 19 * 1.5 * (3 * 3.5 + 5.5 + 9.25);
    expect(timber_m3).toBeCloseTo(inches3 * 0.0254 ** 3, 9);
    expect(mesh_kg).toBeCloseTo(2.4384 * 0.762 * 2.8, 9);
  });

  test("refuses a length that the kit has not, and a kit with faults, naming the place", () => {
    const wrong = run("kit.module", { kit, length_mm: 2000 });
    expect(wrong.ok ? [] : wrong.problems.map((p) => p.place)).toEqual(["length_mm"]);
    const faulty = run("kit.module", { kit: { ...kit, joint_gap_mm: 12.7 }, length_mm: 2438.4 });
    expect(faulty.ok ? [] : faulty.problems.map((p) => p.place)).toContain("kit.joint_gap_mm");
    const shapeless = run("kit.module", { kit: { id: 3 }, length_mm: 2438.4 });
    expect(shapeless.ok ? [] : shapeless.problems.map((p) => p.place)).toContain("kit.id");
  });
});

test("kit.drawing gives three views and a place for each of the 20 + 8 screws and clips of an 8 ft module", () => {
  const result = run("kit.drawing", { kit, length_mm: 2438.4 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  const { plan, side, end, screws, chains } = result.outputs;
  for (const view of [plan, side, end]) expect(view).toHaveLength(13);
  expect(screws).toHaveLength(20 + 8);
  expect((chains as readonly { id: string }[]).map((c) => c.id)).toContain("catch-board");
  expect(run("kit.drawing", { kit, length_mm: 1 }).ok).toBe(false);
});

test("kit.geometry gives the lattice and the measures in millimetres", () => {
  const result = run("kit.geometry", { kit });
  expect(result.ok && result.outputs).toMatchObject({
    lattice_mm: 304.8,
    pitches_mm: [3657.6, 2438.4, 1219.2],
    platform_pitch_mm: 1828.8,
    module_depth_mm: 95.7,
    deck_width_mm: 609.6,
  });
});

test("kit.problems lists the faults of a kit that can be read", () => {
  const result = run("kit.problems", { kit: { ...kit, supports: [] } });
  expect(result.ok && JSON.stringify(result.outputs)).toContain("no support kind");
});

describe("readKit", () => {
  test("gives the kit back when all fields are there", () => {
    expect(readKit(kit)).toEqual({ kit });
  });

  test.each([
    ["a list", [] as Json, "kit"],
    ["text in place of a number", { ...kit, joint_gap_mm: "1/2 in" }, "kit.joint_gap_mm"],
    ["a word outside the list", { ...kit, deck: { kind: "grating" } }, "kit.deck.kind"],
    ["an unknown field", { ...kit, colour: "green" }, "kit.colour"],
    ["a length that is no number", { ...kit, lengths_mm: [1, null] }, "kit.lengths_mm[1]"],
    ["a hostile key", JSON.parse(`{"__proto__": {"id": "x"}}`) as Json, "kit.__proto__"],
  ])("names the place of %s", (_title, value, place) => {
    const read = readKit(value);
    expect("problems" in read && read.problems.map((p) => p.place)).toContain(place);
  });
});
