import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkCalculations } from "../../src/checks/index.ts";
import { codeCalculations } from "../../src/codes/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";

const run = (id: string, input: JsonObject) =>
  [...codeCalculations, ...checkCalculations].find((c) => c.id === id)!.run(input, { tables });

const joist = {
  code: "us-asd-2018",
  species: "southern-pine",
  grade: "no2",
  size: "2x8",
  spacing_mm: 406.4,
  live_pa: 1915.2,
  dead_pa: 478.8,
  wet: true,
  incised: false,
  repetitive: true,
  live_limit: 360,
} as const;

test("the example of the span table: 2x8 Southern Pine at 16 in spans 3607 mm to the nearest inch, bending governs", () => {
  const outcome = run("timber.joist-span", joist);
  expect(outcome.ok && outcome.outputs["governs"]).toBe("bending");
  expect(outcome.ok && Math.round((outcome.outputs["span_mm"] as number) / 25.4) * 25.4).toBeCloseTo(
    3606.8,
    1,
  );
});

test("every unknown word of a timber input is a problem that lists the known ones, all at once", () => {
  const outcome = run("timber.joist-span", { ...joist, code: "us-asd-2017" });
  expect(outcome).toMatchObject({ ok: false, problems: [{ place: "code", value: "us-asd-2017" }] });
  const two = run("timber.joist-span", { ...joist, species: "balsa", size: "2x9" });
  const problems = two.ok ? [] : two.problems;
  expect(problems.map((p) => p.place)).toEqual(["species", "size"]);
  expect(problems[0]!.mend).toMatch(/southern-pine, |, southern-pine/);
  expect(problems[1]!.mend).toContain("2x8");
  const grade = run("timber.joist-span", { ...joist, species: "northern-species", grade: "ss" });
  expect(grade).toMatchObject({ ok: false, problems: [{ place: "grade", mend: "Use one of: no1, no2." }] });
  const thick = run("timber.joist-span", { ...joist, size: "6x6" });
  expect(thick).toMatchObject({ ok: false, problems: [{ place: "size" }] });
  const odd = run("timber.joist-span", { ...joist, colour: "green" });
  expect(odd).toMatchObject({ ok: false, problems: [{ place: "colour" }] });
});

test("more load, wider spacing or a stricter limit never lengthens a joist", () => {
  const spanOf = (input: JsonObject): number => {
    const outcome = run("timber.joist-span", input);
    if (!outcome.ok) throw new Error("no span");
    return outcome.outputs["span_mm"] as number;
  };
  const load = fc.double({ min: 200, max: 8000, noNaN: true });
  fc.assert(
    fc.property(
      fc.constantFrom(...tables.grades),
      fc.constantFrom("2x4", "2x6", "2x8", "2x12"),
      load,
      load,
      (g, size, live, dead) => {
        const input = { ...joist, species: g.species, grade: g.grade, size, live_pa: live, dead_pa: dead };
        const span = spanOf(input);
        const limit = span * (1 + 1e-12);
        expect(spanOf({ ...input, live_pa: live * 1.2 })).toBeLessThanOrEqual(limit);
        expect(spanOf({ ...input, dead_pa: dead * 1.2 })).toBeLessThanOrEqual(limit);
        expect(spanOf({ ...input, spacing_mm: 610 })).toBeLessThanOrEqual(limit);
        expect(spanOf({ ...input, live_limit: 480 })).toBeLessThanOrEqual(limit);
      },
    ),
    { numRuns: 60, seed: 3 },
  );
});

const stringer = {
  code: "us-asd-2018",
  species: "southern-pine",
  grade: "no2",
  incised: false,
  size: "2x8",
  stringers: 2,
  overall_mm: 560,
  clear_width_mm: 600,
  span_mm: 3600,
  cross_piece_spacing_mm: 600,
  boards: false,
  dead_kg_per_m: 10,
  people: 2,
  person_kg: 95,
  spacing_mm: 1500,
  cart_empty_kg: 24,
  cart_load_kg: 68,
  cart_axles: 1,
  cart_axle_distance_mm: 0,
  cart_track_mm: 480,
  cart_wheel_width_mm: 50,
  cart_wheel_contact_mm: 90,
} as const;

test("more load never lowers the utilisation of a stringer", () => {
  const use = (id: string, input: JsonObject): number => {
    const outcome = run(id, input);
    if (!outcome.ok) throw new Error(outcome.problems.map((p) => p.message).join());
    return outcome.outputs["utilisation"] as number;
  };
  const changes = fc.record({
    people: fc.integer({ min: 0, max: 6 }),
    person_kg: fc.double({ min: 50, max: 150, noNaN: true }),
    spacing_mm: fc.double({ min: 500, max: 3000, noNaN: true }),
    span_mm: fc.double({ min: 1000, max: 5000, noNaN: true }),
    stringers: fc.constantFrom(2, 3),
  });
  const check = fc.constantFrom(
    "check.stringer-bending",
    "check.stringer-shear",
    "check.stringer-deflection",
  );
  fc.assert(
    fc.property(check, changes, (id, change) => {
      const input = { ...stringer, ...change };
      const before = use(id, input) * (1 - 1e-3);
      expect(use(id, { ...input, person_kg: change.person_kg * 1.3 })).toBeGreaterThanOrEqual(before);
      expect(use(id, { ...input, cart_load_kg: 150 })).toBeGreaterThanOrEqual(before);
      expect(use(id, { ...input, dead_kg_per_m: 25 })).toBeGreaterThanOrEqual(before);
      expect(use(id, { ...input, people: change.people + 1 })).toBeGreaterThanOrEqual(before);
    }),
    { numRuns: 60, seed: 5 },
  );
});

test("every check is a registered calculation with inputs, outputs, validity and sources", () => {
  const ids = checkCalculations.filter((c) => c.kind === "method").map((c) => c.id);
  expect(ids).toEqual([
    "check.stringer-bending",
    "check.stringer-shear",
    "check.stringer-deflection",
    "check.cross-piece",
    "check.deck",
    "check.seat",
    "check.platform",
    "check.bearing",
    "check.uplift",
    "check.lifting",
    "check.deck-panel",
    "check.screw-pile",
    "check.float",
    "check.support-beam",
    "check.catch-board",
    "check.board-hold",
    "deck.mesh-strand",
    "deck.bar-grating",
    "deck.plywood",
    "people.lift",
  ]);
  for (const c of checkCalculations) {
    expect(c.validity, c.id).not.toBe("");
    expect(c.sources.length, c.id).toBeGreaterThan(0);
  }
});

describe("the checks from the shell", () => {
  const base = { code: "us-asd-2018", units: "us" } as const;
  const visit = { people: 1, person_kg: 90, spacing_mm: 1500 } as const;
  const pine = { species: "southern-pine", grade: "no2", incised: false } as const;
  const results = (id: string, input: JsonObject): readonly JsonObject[] => {
    const outcome = run(id, input);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    return outcome.outputs["results"] as readonly JsonObject[];
  };

  test("cross piece", () => {
    const found = results("check.cross-piece", {
      ...base,
      ...pine,
      ...visit,
      size: "2x6",
      lay: "flat",
      clear_span_mm: 482.6,
      screw: "screw-10x3",
      screws_per_end: 2,
      stringer_thickness_mm: 38.1,
    });
    expect(found.map((r) => [r["id"], r["status"]])).toEqual([
      ["cross-piece.bending", "pass"],
      ["cross-piece.shear", "pass"],
      ["cross-piece.screws", "fail"],
    ]);
  });

  test("deck of boards, and of mesh whose clips cannot be checked; half an input names all that is missing", () => {
    const deck = { ...base, ...pine, ...visit, clear_width_mm: 900 };
    const boards = { size: "2x6", stringer_distance_mm: 400, overall_mm: 850, stringers: 3 };
    expect(results("check.deck", { ...deck, ...boards }).map((r) => r["status"])).toEqual(["pass", "pass"]);
    const mesh = { wire_mm: 5, pitch_mm: 25, yield_mpa: 450, strand_span_mm: 480, clip: "staple" };
    expect(results("check.deck", { ...deck, ...mesh }).map((r) => r["status"])).toEqual([
      "pass",
      "cannot-check",
    ]);
    const outcome = run("check.deck", { ...deck, wire_mm: 5 });
    expect(outcome.ok ? [] : outcome.problems.map((p) => p.place)).toEqual([
      "pitch_mm",
      "yield_mpa",
      "strand_span_mm",
      "clip",
    ]);
  });

  test("seat and platform", () => {
    const { cart_empty_kg: _e, cart_load_kg: _l, ...frame } = stringer;
    const seat = results("check.seat", { ...frame, sill_width_mm: 140, joint_gap_mm: 5 });
    expect(seat.map((r) => r["id"])).toEqual(["seat.length.asked", "seat.bearing.asked"]);
    const platform = results("check.platform", {
      ...frame,
      stringers: 4,
      span_mm: 1800,
      overall_mm: 1800,
      clear_width_mm: 1800,
    });
    expect(platform.map((r) => r["status"])).toEqual(["pass", "pass", "pass"]);
  });

  test("bearing: feet that are no feet are a problem; without a strength it cannot be checked", () => {
    const joint = {
      ...base,
      ...visit,
      left_mm: 2400,
      right_mm: 0,
      dead_kg: 40,
      clear_width_mm: 600,
      safety: 2,
    };
    const foot = { along_mm: 600, across_mm: 140, offset_across_mm: 230 };
    const feet = [foot, { ...foot, offset_across_mm: -230 }];
    expect(results("check.bearing", { ...joint, feet, su_kpa: 10 })[0]!["status"]).toBe("pass");
    expect(results("check.bearing", { ...joint, feet })[0]!["status"]).toBe("cannot-check");
    expect(run("check.bearing", { ...joint, feet: [{ along_mm: 0 }] })).toMatchObject({
      ok: false,
      problems: [{ place: "feet" }],
    });
  });

  test("uplift and lifting", () => {
    const mass = { specific_gravity: 0.55, timber_m3: 0.08, other_kg: 5 };
    const flood = { water_kg_m3: 1025, depth_mm: 500, stake: "2x4", embedment_mm: 1200, su_kpa: 10 };
    const held = results("check.uplift", { ...base, ...mass, ...flood, stakes_per_support: 4 })[0]!;
    const loose = results("check.uplift", { ...base, ...mass, ...flood, stakes_per_support: 0 })[0]!;
    expect([held["status"], loose["status"]]).toEqual(["pass", "fail"]);
    const lift = results("check.lifting", { ...base, ...mass, state: "new", carriers: 2 })[0]!;
    expect(lift["status"]).toBe("fail");
    expect(lift["change"]).toMatch(/Needs 4 carriers/);
  });
});

test("wood screws from the shell: end grain and wet service take 0.67 and 0.7", () => {
  const screws = {
    code: "us-asd-2018",
    screw: "screw-10x3",
    count: 1,
    side_mm: 38.1,
    specific_gravity: 0.5,
    end_grain: false,
    wet: false,
    load_duration: "ten-years",
  } as const;
  const value = (input: JsonObject): number => {
    const outcome = run("timber.screw-lateral", input);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    return outcome.outputs["lateral_n"] as number;
  };
  expect(value({ ...screws, end_grain: true, wet: true }) / value(screws)).toBeCloseTo(0.67 * 0.7, 9);
  expect(value({ ...screws, count: 3 }) / value(screws)).toBeCloseTo(3, 9);
  expect(run("timber.screw-lateral", { ...screws, screw: "nail-8d" })).toMatchObject({ ok: false });
});
