import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  checkedPlan,
  checksInput,
  levelSite,
  straightLayout,
  visitOf,
} from "../../test/support/straight-walkway.ts";
import { BLANK_PROOF, type GroundProof } from "../plan/proof-choice.ts";
import type { StrengthReading } from "../site/index.ts";
import { showQuantity } from "../units/index.ts";
import { prove, soilWorth, strengthAt, type CheckResult, type ChecksInput } from "./index.ts";

const layout = straightLayout([2.4384, 2.4384, 2.4384]);
const reading = (x: number, su_kpa: number, depth_m = 0.3, y = 0): StrengthReading => ({
  x,
  y,
  depth_m,
  su_kpa,
  source: "hand vane",
});

interface Told {
  readonly readings?: readonly StrengthReading[];
  readonly su_kpa?: number | null;
  readonly ground?: Partial<GroundProof>;
  readonly person_kg?: number;
}

function inputOf({ readings = [], su_kpa = 8, ground = {}, person_kg = 95 }: Told): ChecksInput {
  const plan = checkedPlan({
    ground: { su_kpa, source: "hand vane", readings: [], safety: 2 },
    visits: [visitOf({ person_kg })],
    proof: { ...BLANK_PROOF, ground: { ...BLANK_PROOF.ground, ...ground } },
  });
  const reached = [{ plot: "p1", joint: "J3", distance_m: 1.2, walk_m: 7.3 }];
  return checksInput({ plan, layout: { ...layout, reached }, site: levelSite({ readings }) });
}
const checksOf = (told: Told): readonly CheckResult[] => prove(inputOf(told)).checks;
const soilOf = (told: Told) => prove(inputOf(told)).soil!;

type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
const judged = (results: readonly CheckResult[], start: string): Judged[] =>
  results.filter((r): r is Judged => r.id.startsWith(start) && "demand" in r);
const suOf = (r: Judged): number => r.working.find((s) => s.id === "ground.strength")!.value;

describe("a transect by hand", () => {
  // Four readings 100 m off and apart, where nothing is alike: ln su = ln 8000 +- 0.3, so the squares add up to 0.36.
  // df = 3 + 4 - 1 = 6, sigma^2 = (3 x 0.4^2 + 0.36) / 6 = 0.14, variance at a joint 0.14 (0.7 + 1/4) = 0.133.
  const readings = [1, -1, 1, -1].map((s, i) => reading(100 * (i + 2), 8 * Math.exp(0.3 * s)));
  const told: Told = { readings, ground: { alike_m: 1 } };
  // Student's t at 95 % with 6 degrees of freedom is 1.943 in every table.
  const low = 8000 * Math.exp(-1.943 * Math.sqrt(0.133));

  test("strength at 5 %, 50 % and 95 % of every joint", () => {
    const { joints, readings_used, readings_left_out } = soilOf(told);
    expect([readings_used, readings_left_out]).toEqual([4, 0]);
    expect(joints.map((j) => j.id)).toEqual(["J0", "J1", "J2", "J3"]);
    expect(joints[1]!.along_m).toBeCloseTo(2.4384, 9);
    for (const j of joints) {
      expect(j.su_low_pa / low).toBeCloseTo(1, 3);
      expect(j.su_median_pa).toBeCloseTo(8000, 6);
      expect(j.su_high_pa / (8000 ** 2 / low)).toBeCloseTo(1, 3);
      // 5 % of the capacity lies lower still: the formula has an error of its own.
      expect(j.capacity_low_pa / j.capacity_median_pa).toBeLessThan(low / 8000);
    }
  });

  test("bearing keeps the strength near by, or the plan's own, with its safety: how strengths scatter is judged apart", () => {
    const [far, without] = [judged(checksOf(told), "bearing."), judged(checksOf({}), "bearing.")];
    expect(far.map((r) => [suOf(r), r.capacity])).toEqual(without.map((r) => [suOf(r), r.capacity]));
    const near = judged(checksOf({ readings: [reading(0, 5), reading(1, 7)] }), "bearing.");
    expect(near.length).toBeGreaterThan(0);
    for (const r of near) {
      expect(suOf(r)).toBe(5000);
      expect(r.capacity / without[0]!.capacity).toBeCloseTo(5 / 8, 9);
    }
    expect(judged(checksOf(told), "settling.chance").length).toBeGreaterThan(0);
  });

  test("readings deeper than 1.5 times the support's outline are left out, and the plan's value stands again", () => {
    const deep = soilOf({ readings: readings.map((r) => ({ ...r, depth_m: 5 })) });
    expect([deep.readings_used, deep.readings_left_out]).toEqual([0, 4]);
    expect(deep.settings[0]).toMatch(/No reading counts/);
  });
});

const strengths = fc.array(fc.double({ min: 2, max: 20, noNaN: true }), { minLength: 1, maxLength: 5 });
const line = (kpa: readonly number[]): StrengthReading[] => kpa.map((v, i) => reading(1.7 * i - 2, v));
const chances = (told: Told): number[] => soilOf(told).joints.map((j) => j.chance);

describe("what more load, stronger ground and more readings do", () => {
  test("more load never lowers a chance", () => {
    const check = (kpa: readonly number[], kg: number): void => {
      const light = chances({ readings: line(kpa), person_kg: kg });
      chances({ readings: line(kpa), person_kg: kg * 1.4 }).forEach((c, i) =>
        expect(c).toBeGreaterThanOrEqual(light[i]! - 1e-12),
      );
    };
    fc.assert(fc.property(strengths, fc.integer({ min: 50, max: 150 }), check), { numRuns: 12 });
  });

  test("readings that are all stronger by one share never raise a chance", () => {
    const check = (kpa: readonly number[], by: number): void => {
      const weak = chances({ readings: line(kpa) });
      chances({ readings: line(kpa.map((v) => v * by)) }).forEach((c, i) =>
        expect(c).toBeLessThanOrEqual(weak[i]! + 1e-12),
      );
    };
    fc.assert(fc.property(strengths, fc.double({ min: 1, max: 3, noNaN: true }), check), { numRuns: 12 });
  });

  test("another reading that says the same narrows the band at its joint", () => {
    const ratio = (kpa: readonly number[]): number => {
      const { su_high_pa, su_low_pa } = soilOf({ readings: line(kpa) }).joints[0]!;
      return su_high_pa / su_low_pa;
    };
    const ratios = [[8], [8, 8], [8, 8, 8], [8, 8, 8, 8]].map(ratio);
    for (let i = 1; i < ratios.length; i++) expect(ratios[i]).toBeLessThan(ratios[i - 1]!);
  });

  test("bearing is never held against more than the lowest reading near or the plan's value, mat or none", () => {
    const check = (kpa: readonly number[], root_mat_m: number | null): void => {
      const input = inputOf({ readings: line(kpa), ground: { root_mat_m } });
      for (const r of judged(prove(input).checks, "bearing.")) {
        const own = r.parts.map((id) => input.layout.joints.find((j) => j.id === id)!);
        const before = own.map((j) => strengthAt(j.x, j.y, input.site.readings, input.plan.ground)!.su);
        expect(suOf(r)).toBeLessThanOrEqual(Math.max(...before) + 1e-9);
      }
    };
    fc.assert(fc.property(strengths, fc.constantFrom(null, 0.1, 0.4), check), { numRuns: 12 });
  });
});

test("a chance over the accepted one fails, names the pressure that would pass, and that pressure does", () => {
  const told: Told = { readings: [reading(0, 2.2), reading(4, 2), reading(7, 1.8)] };
  const failed = judged(checksOf(told), "settling.chance.").filter((r) => r.status === "fail");
  expect(failed.length).toBeGreaterThan(0);
  for (const r of failed) {
    expect(r.demand).toBeGreaterThan(0.05);
    expect(r.capacity).toBe(0.05);
    expect(r.backwards.change).toMatch(/Would pass with at most .* larger feet.*More readings at J\d/);
  }
  expect(
    judged(checksOf({ ...told, ground: { chance: 0.999 } }), "settling.chance.").every(
      (r) => r.status === "pass",
    ),
  ).toBe(true);
  const { joints, any_fails_chance } = soilOf(told);
  expect(any_fails_chance).toBeGreaterThanOrEqual(Math.max(...joints.map((j) => j.chance)));
  expect(any_fails_chance).toBeLessThanOrEqual(
    Math.min(
      1,
      joints.reduce((s, j) => s + j.chance, 0),
    ),
  );
});

test("weak mud under a strong mat: pressing through it governs; the mat never gives credit", () => {
  // The near reading lies in the mat, the mud was read farther off than 15 m.
  const readings = [reading(0, 25, 0.1), reading(40, 2, 0.35), reading(44, 2.1, 0.35)];
  const at = (root_mat_m: number | null): Judged =>
    judged(checksOf({ readings, su_kpa: null, ground: { root_mat_m, alike_m: 100 } }), "bearing.J0")[0]!;
  const [mat, thick] = [at(0.2), at(0.3)];
  expect(mat.working.some((s) => s.id === "ground.bearing.punching")).toBe(true);
  expect(suOf(mat)).toBe(25_000);
  const plain = mat.working.find((s) => s.id === "ground.bearing.skempton")!.value;
  expect(mat.capacity * 2).toBeLessThan(plain);
  expect(thick.capacity).toBeGreaterThan(mat.capacity);
  const onlyMat = checksOf({ readings: [reading(0, 25, 0.1)], su_kpa: null, ground: { root_mat_m: 0.2 } });
  const unknown = onlyMat.find((r) => r.id === "bearing.J0")!;
  expect(unknown.status === "cannot-check" && unknown.missing[0]).toMatch(/mud under the root mat/);
});

describe("what is not told cannot be checked", () => {
  test("no strength anywhere: no soil, one chance for all joints, no foot to compare", () => {
    const { checks, soil } = prove(inputOf({ su_kpa: null }));
    expect(soil).toBeNull();
    expect(soilWorth(inputOf({ su_kpa: null }))).toEqual([]);
    for (const id of ["settling.chance", "settling.beside"]) {
      const r = checks.find((c) => c.id === id)!;
      expect(r.parts).toEqual(["J0", "J1", "J2", "J3"]);
      expect(r.status === "cannot-check" && r.missing[0]).toMatch(/undrained strength/);
    }
  });

  test("no row of sinkage, no soft layer: one result each for all joints, which says what is missing", () => {
    const checks = checksOf({});
    for (const [id, words] of [
      ["settling.sinkage", /pressure and sinkage/],
      ["settling.time", /soft layer/],
    ] as const) {
      const some = checks.filter((c) => c.id.startsWith(id));
      expect(some.map((c) => [c.status, c.parts.length])).toEqual([["cannot-check", 4]]);
      expect(some[0]!.status === "cannot-check" && some[0]!.missing[0]).toMatch(words);
    }
    expect(checks.some((c) => c.id.startsWith("settling.tilt"))).toBe(false);
  });

  test("a sensitive plot without a row of sinkage cannot be checked; an unreached one says so", () => {
    const checks = checksOf({ ground: { sensitive_plots: ["p1", "p9"] } });
    const missing = (id: string) => {
      const r = checks.find((c) => c.id === id)!;
      return r.status === "cannot-check" ? r.missing[0] : r.status;
    };
    expect(missing("plot.movement.p1")).toMatch(/pressure and sinkage/);
    expect(missing("plot.movement.p9")).toMatch(/reaches this plot/);
  });

  test("ground that gives way almost at once has no sinkage to speak of", () => {
    const r = checksOf({ ground: { sinkage: "heavy-clay-40" } }).find((c) => c.id === "settling.sinkage")!;
    expect(r.status === "not-applicable" && r.because).toMatch(/use the bearing capacity/);
  });
});

test("a foot beside the walkway against Skempton's capacity of the weakest ground, by hand, for comparison only", () => {
  const r = checksOf({ ground: { sinkage: "sandy-loam-32" } }).find((c) => c.id === "settling.beside")!;
  const because = r.status === "not-applicable" ? r.because : r.status;
  const show = (pa: number): string => showQuantity(pa, "Pa", "us");
  // 5 su (1 + 0.2 B / L) of 8 kPa under a sole of 52 x 250 mm: 41.7 kPa.
  expect(because).toContain(
    `${show(60_000)} to ${show(80_000)} and the ground carries ${show(41_664)} under it`,
  );
  expect(because).toMatch(/A foot beside the walkway breaks in\..* mm deep/);
});

test("the weakest joints are ranked by what a reading there is worth, at most twelve of them, in words and figures", () => {
  const long = straightLayout(Array.from({ length: 20 }, () => 2.4384));
  const worth = soilWorth({ ...inputOf({ readings: [reading(0, 5), reading(30, 2.5)] }), layout: long });
  expect(worth).toHaveLength(12);
  for (const w of worth) {
    expect(w.ratio_two).toBeLessThan(w.ratio_one);
    expect(w.ratio_one).toBeLessThan(w.ratio_now);
    expect(w.words).toMatch(/One reading here would narrow the band/);
  }
  const gains = worth.map((w) => w.risk_now - w.risk_one);
  expect(gains).toEqual(gains.toSorted((a, b) => b - a));
});
