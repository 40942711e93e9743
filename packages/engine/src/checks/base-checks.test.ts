import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tables } from "@causey/data/tables";
import { onFloats, onPiles } from "../../test/support/deck-kits.ts";
import { designCode } from "../codes/index.ts";
import { pascals } from "../units/index.ts";
import type { BearingDemand } from "./bearing-check.ts";
import { checkFloats, type FloatJoint } from "./float.ts";
import type { GroundStrength } from "./ground-strength.ts";
import type { CheckContext } from "./input.ts";
import { ladderOf } from "./ladder.ts";
import { checkScrewPiles, pileCapacity, type PileJoint } from "./screw-pile.ts";
import type { CheckResult } from "./types.ts";
import { casesOf } from "./walk-demand.ts";

const code = designCode("us-asd-2018");
if (!code.ok) throw new Error("no code");
const context: CheckContext = { tables, code: code.value, units: "metric" };
const visits = [{ name: "v", people: 2, person_kg: 95, spacing_mm: 1500, cart: null }];
const demand: BearingDemand = {
  cases: casesOf(visits, "metric"),
  rungs: ladderOf(visits, "metric"),
  safety: 2,
};
const label = { id: "J1", name: "joint J1", parts: ["J1"] };
const strength = (kpa: number): GroundStrength => ({
  su: pascals(kpa * 1000),
  source: { id: "t", title: "as given", status: "project" },
  how: "as given",
});
const judged = (r: CheckResult | undefined) => {
  if (r?.status !== "pass" && r?.status !== "fail") throw new Error(`not judged: ${r?.status}`);
  return r;
};

describe("screw piles (individual bearing, 9 su A of each helix; shaft left out)", () => {
  const joint: PileJoint = {
    left_m: 2.4,
    right_m: 2.4,
    dead_kg: 100,
    support: onPiles,
    clear_width_m: 0.6,
    piles: onPiles.piles!,
    depth_m: 1.8,
  };
  const area = (Math.PI / 4) * (0.2 ** 2 - 0.0603 ** 2);

  test("capacity by hand: 9 x 10 kPa x ring / 2, as deep as 2.5 helices or more", () => {
    expect(pileCapacity(joint.piles, 1.8, strength(10).su, 2)).toBeCloseTo((9 * 10_000 * area) / 2, 6);
    const shallow = (6 * 10_000 * (1 + (0.2 * 0.2) / 0.2) * area) / 2;
    expect(pileCapacity(joint.piles, 0.2, strength(10).su, 2)).toBeCloseTo(shallow, 6);
    const two = { ...joint.piles, helices: 2 };
    expect(pileCapacity(two, 1.8, strength(10).su, 2)).toBeCloseTo(9 * 10_000 * area, 6);
  });

  test("the outer pile under 300 lb at the edge (by hand): half the load and its moment over the distance", () => {
    const one: BearingDemand = { ...demand, cases: demand.cases.slice(-1) };
    const pressed = judged(checkScrewPiles(joint, strength(10), one, label, context)[0]);
    const P = 1334.4664845;
    const dead = 100 * 9.80665;
    const moment = P * (0.3 - 0.075);
    expect(pressed.demand).toBeCloseTo((P + dead) / 2 + moment / 0.6096, 4);
    const pulled = judged(checkScrewPiles(joint, strength(10), one, label, context)[1]);
    expect(pulled.demand).toBeCloseTo(Math.max(0, moment / 0.6096 - (P + dead) / 2), 6);
    const close = { ...joint, dead_kg: 0, clear_width_m: 1.2 };
    const lifted = judged(checkScrewPiles(close, strength(10), one, label, context)[1]);
    expect(lifted.demand).toBeCloseTo((P * (0.6 - 0.075)) / 0.6096 - P / 2, 4);
  });

  test("depth: five helix diameters; every result asks for an engineer; unknown ground cannot be checked", () => {
    const all = checkScrewPiles(joint, strength(10), demand, label, context);
    expect(judged(all[2])).toMatchObject({ status: "pass", demand: 1, capacity: 1.8 });
    expect(
      judged(checkScrewPiles({ ...joint, depth_m: 0.8 }, strength(10), demand, label, context)[2]).status,
    ).toBe("fail");
    for (const r of all) expect(r.caution).toMatch(/engineer must look/);
    const unknown = checkScrewPiles(joint, null, demand, label, context);
    expect(unknown.map((r) => r.status)).toEqual(["cannot-check", "cannot-check", "pass"]);
  });

  test("the helix that is named passes", () => {
    const r = judged(checkScrewPiles(joint, strength(4), demand, label, context)[0]);
    expect(r.status).toBe("fail");
    const mm = Number(/a helix of (\d+) mm/.exec(r.backwards.change!)![1]);
    const wider = { ...joint, piles: { ...joint.piles, helix_mm: mm + 1 } };
    expect(judged(checkScrewPiles(wider, strength(4), demand, label, context)[0]).status).toBe("pass");
  });

  test("monotony: stronger ground, a wider helix or a deeper one never holds less", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 40, noNaN: true }),
        fc.double({ min: 0.2, max: 3, noNaN: true }),
        fc.double({ min: 100, max: 350, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        (kpa, depth, helix_mm, by) => {
          const of = (k: number, d: number, h: number): number =>
            pileCapacity({ ...joint.piles, helix_mm: h }, d, strength(k).su, 2);
          const base = of(kpa, depth, helix_mm) - 1e-9;
          expect(of(kpa * by, depth, helix_mm)).toBeGreaterThanOrEqual(base);
          expect(of(kpa, depth * by, helix_mm)).toBeGreaterThanOrEqual(base);
        },
      ),
    );
  });
});

describe("floats (Archimedes, metacentre)", () => {
  const joint: FloatJoint = {
    left_m: 2.4,
    right_m: 2.4,
    dead_kg: 120,
    support: onFloats,
    clear_width_m: 0.6,
    floats: { ...onFloats.floats!, height_mm: 600 },
    timber_m: 0.127,
    module_m: 0.13,
    ground_m: -1,
    height_m: 0.8,
    water_kg_m3: 1000,
  };
  const low = { name: "Mean low water", z_m: -0.5, datum: "site" };
  const floatLabel = { ...label, anchored: true };
  const single: BearingDemand = { ...demand, cases: demand.cases.slice(-1) };
  const A = 2 * 0.9 * 0.6;
  const J = (2 * 0.9 * 0.6 ** 3) / 12 + 0.9 * 0.6 * 2 * 0.6 ** 2;
  const live = 1334.4664845 / 9.80665;
  const T = (120 + live) / (1000 * A);
  const KM = T / 2 + J / (A * T);
  const h = 0.6 + 0.127;
  const KG = (120 * h + live * (h + 0.13 + 1)) / (120 + live);

  test("freeboard of the low edge under 300 lb at the edge of the deck (by hand)", () => {
    const r = judged(checkFloats(joint, low, single, floatLabel, context)[0]);
    const slope = (1334.4664845 * 0.225) / ((120 + live) * 9.80665 * (KM - KG));
    expect(r.demand).toBeCloseTo(0.1, 9);
    expect(r.capacity).toBeCloseTo(0.6 - T - 0.9 * slope, 6);
  });

  test("stability: centre of gravity against the metacentre (by hand); floats under the middle tip", () => {
    const r = judged(checkFloats(joint, low, single, floatLabel, context)[1]);
    expect(r.capacity).toBeCloseTo(KM, 6);
    expect(r.demand).toBeCloseTo(KG, 6);
    const narrow = onFloats.feet.map((f) => ({
      ...f,
      across_mm: 150,
      offset_across_mm: f.offset_across_mm / 6,
    }));
    const tippy = { ...joint, support: { ...onFloats, feet: narrow } };
    const all = checkFloats(tippy, low, single, floatLabel, context);
    expect(judged(all[1]).status).toBe("fail");
    expect(judged(all[0])).toMatchObject({ status: "fail", capacity: 0 });
  });

  test("aground at low water, and the level at which the deck stands as drawn (by hand)", () => {
    const r = judged(checkFloats(joint, low, single, floatLabel, context)[2]);
    const dry = 120 / (1000 * A);
    expect(r.demand).toBeCloseTo(dry, 9);
    expect(r.capacity).toBeCloseTo(0.5, 9);
    expect(r.backwards.carries).toContain(`${(-1 + 0.8 - 0.127 - 0.6 + dry).toFixed(2)} m on site`);
    const shallow = judged(checkFloats(joint, { ...low, z_m: -0.95 }, single, floatLabel, context)[2]);
    expect(shallow.status).toBe("fail");
    const unknown = checkFloats(joint, { missing: "a low water level" }, single, floatLabel, context)[2]!;
    expect(unknown.status === "cannot-check" && unknown.missing).toEqual(["a low water level"]);
  });

  test("anchors are never taken for granted", () => {
    const of = (anchored: boolean): string => {
      const r = checkFloats(joint, low, single, { ...label, anchored }, context)[3]!;
      return r.status === "cannot-check" ? r.missing[0]! : r.status;
    };
    expect(of(true)).toMatch(/pull of current/);
    expect(of(false)).toMatch(/anchors: the recipe has none/);
  });

  test("monotony: more people never raise the freeboard, wider set floats never lower it", () => {
    const free = (people: number, by: number): number => {
      const v = [{ ...visits[0]!, people }];
      const all = { ...demand, cases: casesOf(v, "metric"), rungs: ladderOf(v, "metric") };
      const feet = onFloats.feet.map((f) => ({ ...f, offset_across_mm: f.offset_across_mm * by }));
      const set = { ...joint, support: { ...onFloats, feet } };
      return judged(checkFloats(set, low, all, floatLabel, context)[0]).capacity;
    };
    for (const n of [1, 2, 3]) expect(free(n + 1, 1)).toBeLessThanOrEqual(free(n, 1) + 1e-12);
    expect(free(2, 1.2)).toBeGreaterThanOrEqual(free(2, 1));
  });
});
