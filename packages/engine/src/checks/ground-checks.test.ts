import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import { usAsd2018 } from "../codes/index.ts";
import { KG_PER_LB, M_PER_IN, pascals, qty } from "../units/index.ts";
import { commonPracticeKit } from "../../test/support/common-practice-kit.ts";
import { checkBearing } from "./bearing-check.ts";
import { strengthAt, type GroundStrength } from "./ground-strength.ts";
import { ladderOf } from "./ladder.ts";
import { carrierLimit, checkLifting } from "./lifting.ts";
import { checkSeatLength } from "./seat.ts";
import type { CheckResult } from "./types.ts";
import { checkUplift, type AfloatPart, type Hold } from "./uplift.ts";
import { casesOf, type WalkDemand } from "./walk-demand.ts";

const context = { tables, code: usAsd2018, units: "us" } as const;
const onePerson: WalkDemand = { name: "visit", people: 1, person_kg: 90, spacing_mm: 1500, cart: null };
const strength = (kPa: number): GroundStrength => ({
  su: pascals(kPa * 1000),
  source: { id: "vane", title: "hand vane", status: "project" },
  how: "as given",
});

type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
function judged(result: CheckResult): Judged {
  if (result.status !== "pass" && result.status !== "fail") throw new Error(JSON.stringify(result));
  return result;
}
const near = (value: number, expected: number, share = 0.002): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

describe("bearing of the ground (Skempton, net, worked by hand)", () => {
  const joint = {
    left_m: 2.4384,
    right_m: 2.4384,
    dead_kg: 60,
    support: commonPracticeKit.supports[0]!,
    clear_width_m: 24 * M_PER_IN,
  };
  const demand = { cases: casesOf([onePerson], "us"), rungs: ladderOf([onePerson], "us"), safety: 2 };
  const label = { id: "J1", name: "joint J1", parts: ["J1"] };

  test("two feet 24 x 5.5 in at 9 in: 1334 N at 0.230 m off the middle and 60 kg press 19.17 kPa of 20.92 allowed", () => {
    // Outer foot: (1334.5 + 588.4)/2 + 306.6 x 0.2286/(2 x 0.2286^2) = 961.4 + 670.7 = 1632 N on 0.08516 m2.
    const r = judged(checkBearing(joint, strength(8), demand, label, context));
    near(r.demand, 19_165);
    near(r.capacity, (5 * 8000 * (1 + (0.2 * 5.5) / 24)) / 2);
    expect(r.status).toBe("pass");
  });

  test("weaker ground fails; the larger foot that is named passes", () => {
    const r = judged(checkBearing(joint, strength(6), demand, label, context));
    expect(r.status).toBe("fail");
    const [, along] = /feet (.+) along by/.exec(r.backwards.change!)!;
    const [ft, inch] = /(\d+) ft(?: (\d+) in)?/
      .exec(along!)!
      .slice(1)
      .map((v) => Number(v ?? 0));
    const feet = joint.support.feet.map((f) => ({ ...f, along_mm: (ft! * 12 + inch!) * 25.4 }));
    const larger = { ...joint, support: { ...joint.support, feet } };
    expect(judged(checkBearing(larger, strength(6), demand, label, context)).status).toBe("pass");
  });

  test("a single foot bears on its effective length only (Meyerhof, from memory)", () => {
    const foot = { along_mm: 90, across_mm: 900, offset_across_mm: 0 };
    const one = { ...joint, support: { ...joint.support, feet: [foot] } };
    const r = judged(checkBearing(one, strength(8), demand, label, context));
    const e = (1334.47 * 0.2298) / (1334.47 + 60 * 9.80665);
    near(r.demand, (1334.47 + 60 * 9.80665) / (0.09 * (0.9 - 2 * e)));
  });

  test("unknown strength cannot be checked, and the answer says what to measure", () => {
    const r = checkBearing(joint, null, demand, label, context);
    expect(r.status === "cannot-check" && r.missing[0]).toMatch(/undrained strength.*within 15 m/);
  });

  test("the lowest reading within 15 m counts, else the plan's value, else nothing", () => {
    const readings = [
      { x: 0, y: 0, depth_m: 0.2, su_kpa: 12, source: "vane" },
      { x: 10, y: 0, depth_m: 0.8, su_kpa: 5, source: "vane" },
      { x: 15.1, y: 0, depth_m: 0.2, su_kpa: 2, source: "vane" },
    ];
    const ground = { su_kpa: 7, source: "report", readings: [], safety: 2 };
    expect(strengthAt(0, 0, readings, ground)?.su).toBe(5000);
    expect(strengthAt(0, 40, readings, ground)?.su).toBe(7000);
    expect(strengthAt(0, 40, readings, { ...ground, su_kpa: null })).toBeNull();
  });
});

describe("staying put under water (project rule: 1.5 on the gross upward force)", () => {
  const hold = (su: number | null): Hold => ({
    stakes: 0.5,
    size: "2x2",
    embedment_m: 0.6096,
    strength: su === null ? null : strength(su),
  });
  const part = (change: Partial<AfloatPart> = {}): AfloatPart => ({
    gravity: qty(0.55, "1"),
    mass: { timber_m3: 0.12, other_kg: 5 },
    holds: [hold(8), hold(8)],
    water_kg_m3: 1010,
    depth_m: 0.7,
    ...change,
  });
  const label = { id: "M1", name: "M1", parts: ["M1"], level: "Storm of record" };

  test("0.12 m3 of pine and 5 kg of steel: 1.5 x 1194.9 N against two half stakes and 0.9 of 753 N", () => {
    const r = judged(checkUplift(part(), label, context));
    near(r.demand, 1.5 * 1010 * 9.80665 * (0.12 + 5 / 7850));
    const weight = 9.80665 * (0.12 * ((1000 * 0.55 * 1.19) / (1 + 0.009 * 0.55 * 19)) + 5);
    near(weight, 753, 0.005);
    const stake = 8000 * 4 * 0.0381 * (0.6096 - 0.2);
    near(r.capacity, 0.9 * weight + stake, 1e-6);
    expect(r.status).toBe("fail");
  });

  test("the named number of stakes passes", () => {
    const r = judged(checkUplift(part(), label, context));
    const stakes = Number(/(\d+) stakes at each support/.exec(r.backwards.change!)![1]);
    const more = part().holds.map((h) => ({ ...h, stakes: stakes / 2 }));
    expect(judged(checkUplift(part({ holds: more }), label, context)).status).toBe("pass");
  });

  test("the own weight is not counted twice: without stakes, wood that floats fails by more than 1.5", () => {
    const r = judged(checkUplift(part({ holds: [] }), label, context));
    expect(r.utilisation).toBeGreaterThan(1.5);
    expect(r.backwards.change).toMatch(/Needs stakes that hold/);
  });

  test("stakes in ground of unknown strength cannot be checked; a dry site or a low level does not apply", () => {
    expect(checkUplift(part({ holds: [hold(8), hold(null)] }), label, context).status).toBe("cannot-check");
    expect(checkUplift(part({ depth_m: null }), label, context).status).toBe("not-applicable");
    const low = checkUplift(part({ depth_m: -0.3048 }), label, context);
    expect(low.status === "not-applicable" && low.because).toBe(
      "Storm of record stays 1 ft under its underside",
    );
  });
});

describe("lifting", () => {
  test("one carrier, hands at 18 in, travel 18 in, reach 12 in, poor grip: 32.0 lb (NIOSH 94-110, computed)", () => {
    near(carrierLimit() / KG_PER_LB, 32, 0.002);
  });

  test("40 kg needs 3 carriers, and two are told what they may lift", () => {
    const mass = { timber_m3: 0, other_kg: 40 };
    const r = judged(
      checkLifting(mass, qty(0.55, "1"), "new", { id: "M", name: "module", parts: [] }, 2, context),
    );
    expect(r.status).toBe("fail");
    expect(r.backwards).toEqual({
      carries: "2 carriers may lift 64 lb together; each 32 lb.",
      change: "Needs 3 carriers, or parts taken off before it is lifted.",
    });
    expect(r.caution).toMatch(/does not cover mud.*team lifts/);
  });

  test("soaked timber is heavier than new", () => {
    const of = (state: "new" | "soaked") =>
      judged(
        checkLifting(
          { timber_m3: 0.05, other_kg: 0 },
          qty(0.55, "1"),
          state,
          { id: "M", name: "m", parts: [] },
          2,
          context,
        ),
      ).demand;
    near(of("new"), 0.05 * 598.5);
    near(of("soaked"), (0.05 * 1000 * 0.55 * 1.75) / (1 + 0.27 * 0.55));
  });
});

describe("seats (least seat of 1-1/2 in from AWC DCA 6, from memory; slop of 1/2 in; shrinkage 4.5 % across, 0.12 % along)", () => {
  const label = { id: "sill", where: "on the sill", parts: [] };
  const part = { length_m: 144 * M_PER_IN, grade: 0 };
  const sill = (width_in: number) =>
    ({ on: "sill", width_m: width_in * M_PER_IN, gap_m: 0, ...part }) as const;
  /* 3.5 / 2 - 0.5 - 3.5 x 0.045 / 2 - 144 x 0.0012 / 2 = 1.08485 in; wide enough: 2 (1.5 + 0.5 + 0.0864) / 0.955 = 4.3694 in */
  test("half of a sill 3-1/2 in wide is 1-3/4 in: too short by slop and shrinkage; the wider sill that is named passes", () => {
    const r = judged(checkSeatLength(sill(3.5), label, context));
    near(r.capacity / M_PER_IN, 1.08485);
    expect(r.status).toBe("fail");
    expect(r.backwards.change).toBe("Would pass with a sill 4 3/8 in wide along the walkway.");
    expect(judged(checkSeatLength(sill(4.375), label, context)).status).toBe("pass");
    expect(judged(checkSeatLength(sill(4.36), label, context)).status).toBe("fail");
  });
  /* 4 - 0.5 - 0.5 - 4 x 0.045 - 0.0864 = 2.7336 in; at 1 in 10 less 144 (1 - 0.995037) / 2 = 0.3573 in */
  test("a catch board keeps its projection less the joint gap, slop and shrinkage, and on a slope less still", () => {
    const seat = { on: "catch-board", projection_m: 4 * M_PER_IN, gap_m: 0.5 * M_PER_IN, ...part } as const;
    near(judged(checkSeatLength(seat, label, context)).capacity / M_PER_IN, 2.7336);
    near(
      judged(checkSeatLength({ ...seat, grade: 0.1 }, label, context)).capacity / M_PER_IN,
      2.7336 - 0.3573,
    );
  });
});
