import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import { usAsd2018 } from "../codes/index.ts";
import { KG_PER_LB, M_PER_FT, M_PER_IN, N_PER_LBF } from "../units/index.ts";
import type { Frame } from "./frame.ts";
import { checkStringer } from "./stringer-check.ts";
import type { StringerCheck } from "./stringer-model.ts";
import type { CheckResult } from "./types.ts";
import type { WalkDemand } from "./walk-demand.ts";

/*
 * One 12 ft module worked by hand, in inches and pounds, beside the engine.
 *
 * Two 2x6 stringers of Southern Pine No.2, 22 in over all, so their middles lie 20.5 in apart. Clear deck 24 in, so
 * a walker's middle stays within 12 - 2.953 = 9.047 in of the walkway's middle (75 mm from the edge): the nearer
 * stringer takes (10.25 + 9.047) / 20.5 = 0.9413 of the walker. Cross pieces every 24 in. The soaked module weighs
 * 10 kg/m = 6.720 lb/ft, half of it on each stringer: 3.360 lb/ft = 0.2800 lb/in. Two people of 200 lb, 60 in apart.
 *
 * Section 1.5 x 5.5 in: A 8.25, S 7.5625, I 20.797.
 * Strengths, wet: Fb 1000 <= 1150, so CM 1; Emin' 510000 x 0.9 = 459000; lu/d 24/5.5 = 4.36 < 7, so
 *   le 2.06 x 24 = 49.44; RB sqrt(49.44 x 5.5 / 1.5^2) = 10.993; FbE 1.2 x 459000 / 120.85 = 4557.6; F 4.5576;
 *   CL 2.92505 - sqrt(2.92505^2 - 4.79747) = 0.98638; Fb' 986.4 psi. Fv' 175 x 0.97 = 169.75 psi. E' 1.26e6 psi.
 * Bending: 300 lb anywhere gives 282.4 x 144 / 4 = 10166; two people (188.3 / 288) (144 - 30)^2 = 8495; dead
 *   0.28 x 144^2 / 8 = 725.8. Demand 10892 lb in, capacity 986.4 x 7.5625 = 7459 lb in: 1.460, fails.
 * Shear: two people 188.3 (2 - 60/144) = 298.1; 300 lb alone 282.4; dead 0.28 x 72 = 20.2. Demand 318.3 lb,
 *   capacity 2/3 x 169.75 x 8.25 = 933.6 lb: 0.341.
 * Deflection: two people 42 in from the ends, 188.3 x 42 (3 x 144^2 - 4 x 42^2) / (24 x 1.26e6 x 20.797) = 0.6936 in;
 *   300 lb 282.4 x 144^3 / (48 x 1.26e6 x 20.797) = 0.6704 in. Limit 144 / 180 = 0.8 in: 0.867.
 */
const frame: Frame = {
  name: "12 ft module",
  span_m: 12 * M_PER_FT,
  positions_m: [-10.25 * M_PER_IN, 10.25 * M_PER_IN],
  size: "2x6",
  lumber: { species: "southern-pine", grade: "no2", incised: false },
  clear_width_m: 24 * M_PER_IN,
  brace_m: 24 * M_PER_IN,
  has_boards: false,
  dead_kg_m: 10,
};
const twoPeople: WalkDemand = {
  name: "Weekly readings",
  people: 2,
  person_kg: 200 * KG_PER_LB,
  spacing_mm: 60 * 25.4,
  cart: null,
};
const context = { tables, code: usAsd2018, units: "us" } as const;

type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
function judged(check: StringerCheck, f: Frame = frame, demand: WalkDemand = twoPeople): Judged {
  const result = checkStringer(
    check,
    f,
    [demand],
    { kind: "module", suffix: "12ft", parts: ["M1"] },
    context,
  );
  if (result.status !== "pass" && result.status !== "fail") throw new Error(JSON.stringify(result));
  return result;
}
const near = (value: number, expected: number, share = 0.002): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

describe("a 12 ft module worked by hand (strengths of NDS Supplement Table 4B, factors of NDS 2018)", () => {
  test("bending: 10892 lb in against 7459 lb in", () => {
    const r = judged("bending");
    near(r.demand / N_PER_LBF / M_PER_IN, 10_892);
    near(r.capacity / N_PER_LBF / M_PER_IN, 7459);
    near(r.utilisation, 1.46);
    expect(r.status).toBe("fail");
    expect(r.governs).toBe("one load of 300 lb anywhere");
  });

  test("shear: 318.3 lb against 933.6 lb", () => {
    const r = judged("shear");
    near(r.demand / N_PER_LBF, 318.3);
    near(r.capacity / N_PER_LBF, 933.6);
    expect(r.status).toBe("pass");
    expect(r.governs).toBe("Weekly readings: 2 people in file");
  });

  test("deflection: 0.6936 in against 0.8 in", () => {
    const r = judged("deflection");
    near(r.demand / M_PER_IN, 0.6936);
    near(r.capacity / M_PER_IN, 0.8);
    expect(r.status).toBe("pass");
  });

  test("backwards: it carries a single load of (7459 - 725.8) x 4 / 144 / 0.9413 = 198.7 lb, so not a person of 200 lb", () => {
    const { backwards } = judged("bending");
    expect(backwards.carries).toBe(
      "Carries less than one person: one load of at most 199 lb; not one load of 300 lb anywhere.",
    );
    expect(backwards.change).toBe("Would pass with 2x8 stringers, or a support at the middle (span 6 ft).");
  });

  test("backwards: the changes that are named do pass", () => {
    expect(judged("bending", { ...frame, size: "2x8" }).status).toBe("pass");
    expect(judged("bending", { ...frame, span_m: frame.span_m / 2 }).status).toBe("pass");
    expect(
      judged("bending", { ...frame, positions_m: [-10.25 * M_PER_IN, 0, 10.25 * M_PER_IN] }).status,
    ).toBe("fail");
  });

  test("a passing check names no change", () => expect(judged("shear").backwards.change).toBeNull());

  test("the working shows each step with its source and is marked as resting on memory", () => {
    const r = judged("bending");
    const ids = r.working.map((s) => s.id);
    for (const id of [
      "structure.stringer-shares",
      "us-asd-2018.reference.fb",
      "us-asd-2018.beam-stability",
      "beam.moving-loads",
      "check.moment-capacity",
    ])
      expect(ids).toContain(id);
    expect(r.working.every((s) => s.source.title.length > 0)).toBe(true);
    expect(r.from_memory).toBe(true);
    expect(r.working.at(-1)!.value).toBe(r.capacity);
  });
});

test("backwards: the ladder of carts, and what a cart without walkers is told", () => {
  const cart = {
    name: "Light cart",
    empty_kg: 20,
    load_kg: 50,
    wet_kg: 0,
    width_mm: null,
    length_mm: null,
    track_mm: 480,
    axle_distance_mm: 0,
    axles: 1,
    wheel_width_mm: 50,
    wheel_contact_mm: 60,
  } as const;
  const stout: Frame = { ...frame, size: "2x8" };
  expect(judged("bending", stout, { ...twoPeople, cart }).backwards.carries).toBe(
    "Carries at least 6 people in file (200 lb each, 5 ft apart); Light cart with its load and at least 3 people; one load of 300 lb anywhere.",
  );
  expect(judged("bending", frame, { ...twoPeople, people: 0, cart }).backwards.carries).toBe(
    "Carries Light cart with its load; not one load of 300 lb anywhere.",
  );
  const weak: Frame = { ...frame, size: "2x4" };
  expect(judged("bending", weak, { ...twoPeople, cart }).backwards.carries).toMatch(
    /not the Light cart empty with 1 person/,
  );
});

test("a cart that is wider than the deck cannot be checked, and the answer says by how much", () => {
  const cart = {
    name: "Wide cart",
    empty_kg: 20,
    load_kg: 50,
    wet_kg: 0,
    width_mm: null,
    length_mm: null,
    track_mm: 700,
    axle_distance_mm: 0,
    axles: 1,
    wheel_width_mm: 50,
    wheel_contact_mm: 60,
  } as const;
  const label = { kind: "module", suffix: "12ft", parts: [] } as const;
  const r = checkStringer("bending", frame, [{ ...twoPeople, cart }], label, context);
  expect(r.status).toBe("cannot-check");
  expect(r.status === "cannot-check" && r.missing[0]).toMatch(
    /Wide cart: its wheels need 2 ft 5 1\/2 in, clear are 2 ft/,
  );
});

test("an unknown grade cannot be checked, and the answer lists the known ones", () => {
  const odd: Frame = { ...frame, lumber: { ...frame.lumber, grade: "No. 2" } };
  const r = checkStringer(
    "bending",
    odd,
    [twoPeople],
    { kind: "module", suffix: "12ft", parts: [] },
    context,
  );
  expect(r.status === "cannot-check" && r.missing.join()).toMatch(
    /grade: "No. 2" is not in the tables.*no1, no2, no3/,
  );
});

test("three stringers at 24 in or less under boards count as repetitive, under mesh they do not", () => {
  const three: Frame = { ...frame, positions_m: [-0.5, 0, 0.5] };
  const mesh = judged("bending", three).capacity;
  const boards = judged("bending", { ...three, has_boards: true }).capacity;
  expect(boards / mesh).toBeGreaterThan(1.1);
  const wide: Frame = { ...three, positions_m: [-0.7, 0, 0.7] };
  expect(judged("bending", { ...wide, has_boards: true }).capacity).toBeCloseTo(mesh, 6);
});

test("the free length between cross pieces stands in the working of bending, before the factor that it gives", () => {
  const symbols = judged("bending").working.map((s) => s.symbol);
  const brace = judged("bending").working.find((s) => s.id === "check.brace");
  expect(brace).toMatchObject({ value: 24 * M_PER_IN, unit: "m" });
  expect(symbols.indexOf("lu")).toBeLessThan(symbols.indexOf("CL"));
  expect(judged("shear").working.some((s) => s.id === "check.brace")).toBe(false);
});
