// Limits are those of the rule profiles: each has its source beside it in data/src/rules, and the ones that public pages
// print are held against those pages in engine/test/published/rules.test.ts. Here only what the checks make of them.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stoutKit, straightLayout } from "../../test/support/straight-walkway.ts";
import { zone } from "../../test/support/small-site.ts";
import type { Kit } from "../kit/index.ts";
import type { Layout } from "../layout/index.ts";
import type { Plan } from "../plan/document.ts";

import { FT, IN, ground, check, byId, statusOf, useOf, decked } from "../../test/support/rule-setup.ts";

describe("edges by the height of the fall", () => {
  const rail = (profile: string, fall_m: number): string =>
    statusOf(check({ profile, layout: decked(fall_m) }), "edge.rail");

  test.each([
    ["building-guard", 30 * IN, "pass"],
    ["building-guard", 30 * IN + 0.001, "fail"],
    ["osha-workplace", 4 * FT - 0.001, "pass"],
    ["osha-workplace", 4 * FT, "fail"],
    ["staff-access", 4 * FT - 0.001, "pass"],
    ["staff-access", 4 * FT, "fail"],
    ["nz-structures", 0.999, "pass"],
    ["nz-structures", 1, "fail"],
  ] as const)("%s at %d m: %s", (profile, fall, status) => expect(rail(profile, fall)).toBe(status));

  test.each([
    [1.5, "pass"],
    [1.501, "fail"],
  ] as const)("New Zealand consent at %d m: %s", (fall, status) =>
    expect(statusOf(check({ profile: "nz-structures", layout: decked(fall) }), "edge.consent")).toBe(status),
  );

  test("the fall is to the bed of a creek beside the deck, not to the ground at the joints", () => {
    const terrain = ground((x, y) => (y > 0.6 && x > 2 && x < 4 ? -0.5 : 1));
    const results = check({ site: { terrain }, layout: decked(0.5) });
    const broken = byId(results, "edge.rail.broken")!;
    expect(broken.status === "fail" && broken.demand).toBeCloseTo(2, 5);
    expect(broken.parts).toEqual(["M0", "M1"]);
  });

  test("unknown ground within reach is not a pass; a fall that is too deep already is a failure all the same", () => {
    const holes = ground((x, y) => (y > 0.6 ? NaN : 1));
    expect(statusOf(check({ site: { terrain: holes }, layout: decked(0.5) }), "edge.rail")).toBe(
      "cannot-check",
    );
    expect(statusOf(check({ site: { terrain: holes }, layout: decked(2) }), "edge.rail")).toBe("fail");
  });

  test("no rail: a curb must be there; 12 in of fall go without for staff, none do on a trail bridge", () => {
    const bare: Kit = { ...stoutKit, deck: { ...stoutKit.deck, upturn_mm: 0 } as Kit["deck"], curb: null };
    const curb = (profile: string, fall: number, kit: Kit): string =>
      statusOf(check({ profile, layout: decked(fall), plan: { kit } }), "edge.curb");
    expect(curb("staff-access", 12 * IN, bare)).toBe("not-applicable");
    expect(curb("staff-access", 12 * IN + 0.001, bare)).toBe("fail");
    expect(curb("staff-access", 0.5, stoutKit)).toBe("pass");
    expect(curb("trail-structures", 0.2, bare)).toBe("fail");
    expect(curb("trail-structures", 0.2, stoutKit)).toBe("pass");
    expect(curb("ada-route", 0.2, stoutKit)).toBe("fail");
  });

  test("a higher deck never comes nearer to the rule", () => {
    const height = fc.double({ min: 0.2, max: 3, noNaN: true });
    const use = (fall: number): number =>
      Math.max(
        ...check({ layout: decked(fall, [3]) })
          .filter((r) => r.id.startsWith("edge.rail"))
          .map(useOf),
      );
    fc.assert(
      fc.property(height, height, (a, b) => {
        expect(use(Math.max(a, b))).toBeGreaterThanOrEqual(use(Math.min(a, b)));
      }),
      { numRuns: 25 },
    );
  });

  test("parts share results: at most one for those that meet the rule and one for those that do not", () => {
    const layout = decked(0.5, [3, 3, 3]);
    const mixed = {
      ...layout,
      joints: layout.joints.map((j, i) => ({ ...j, deck_m: i === 3 ? 2.5 : j.deck_m })),
    };
    const found = check({ layout: mixed }).filter((r) => r.id.startsWith("edge.rail"));
    expect(found.map((r) => [r.status, r.parts])).toEqual([
      ["fail", ["M2"]],
      ["pass", ["M0", "M1"]],
    ]);
  });
});

describe("grade and steps", () => {
  const sloped = (rises: readonly number[], length = 3): Layout => {
    const layout = straightLayout(rises.map(() => length));
    let up = 0;
    const heights = [0, ...rises.map((r) => (up += r))];
    return { ...layout, joints: layout.joints.map((j, i) => ({ ...j, deck_m: 1.4 + heights[i]! })) };
  };
  test("1:9 for 20 ft fails by the band's length, and its rests at the walkway's own ends are there", () => {
    const length = 10 * FT;
    const results = check({ profile: "aba-trail", layout: sloped([length / 9, length / 9], length) });
    expect(statusOf(results, "grade.aba.run-8")).toBe("fail");
    expect(statusOf(results, "grade.steepest")).toBe("pass");
    expect(statusOf(results, "grade.rests")).toBe("pass");
    expect(statusOf(results, "grade.share")).toBe("fail");
  });
  test("level parts meet every rule of grade; the step onto the deck does not on an accessible trail", () => {
    const results = check({ profile: "aba-trail" });
    expect(statusOf(results, "grade.steepest")).toBe("pass");
    expect(statusOf(results, "grade.step")).toBe("fail");
    expect(statusOf(results, "grade.cross-slope")).toBe("not-applicable");
    expect(statusOf(check({}), "grade.step")).toBe("");
  });
  test("a ramp in the kit takes the place of the step and counts as a part", () => {
    const kit: Kit = { ...stoutKit, ramp: { lengths_mm: [2000, 6000], max_grade: 1 / 12 } };
    const results = check({ profile: "aba-trail", plan: { kit } });
    expect(statusOf(results, "grade.step")).toBe("not-applicable");
    expect(byId(results, "grade.steepest.met")?.parts).toContain("J0");
  });
  test("an accessible route: 12 in of ramp need handrails, 6 in do not", () => {
    const ramp = (rise: number): string =>
      statusOf(check({ profile: "ada-route", layout: sloped([rise], 3.6576) }), "grade.handrail");
    expect(ramp(12 * IN)).toBe("fail");
    expect(ramp(6 * IN)).toBe("");
    expect(ramp(0.1829 * 1.001)).toBe("fail");
  });
});

describe("distance from a creek's bank", () => {
  // A creek from x 4 to 7, its bed 1.2 m under the marsh; joints at 0, 3, 6 and so on.
  const creek = [zone("creek", "channel", 4, -8, 7, 8)];
  const terrain = ground((x) => (x >= 4 && x <= 7 ? -0.2 : 1));
  const at = (x: number): Layout => {
    const layout = straightLayout([3]);
    const feet = [
      [
        [
          [x - 0.1, -0.3],
          [x + 0.1, -0.3],
          [x + 0.1, 0.3],
          [x - 0.1, 0.3],
        ],
      ],
    ] as const;
    return {
      ...layout,
      joints: layout.joints.map((j, i) => ({ ...j, x: i === 0 ? x : -4.5, feet: i === 0 ? feet : [] })),
    };
  };
  const result = (x: number, overrides: Plan["rules"]["overrides"] = []) =>
    check({ site: { zones: creek, terrain }, layout: at(x), overrides });

  test("as far off as the bank is high: 1.2 m from the foot to the edge", () => {
    const met = byId(result(2.7), "setback.bank.met")!;
    expect(met.status === "pass" && [met.demand, met.capacity]).toEqual([1.2, 1.2]);
    expect(byId(result(2.75), "setback.bank.broken")?.parts).toEqual(["J0"]);
  });
  test("a foot in the channel is not met", () =>
    expect(useOf(byId(result(5), "setback.bank.broken"))).toBeGreaterThan(1));
  test("the factor is the project's to change, with a reason, and the result says so", () => {
    const own = {
      rule: "common.bank-setback",
      value: 0.5,
      reason: "rock under the turf",
      by: "A. Warden",
      date: "2027-01-05",
    };
    const met = byId(result(3.2, [own]), "setback.bank.met")!;
    expect(met.status === "pass" && met.demand).toBe(0.6);
    expect(met.rule.at).toContain("rock under the turf");
    expect(met.rule.status).toBe("project");
  });
  test("no channel, nothing to hold; an unknown bed is not a pass", () => {
    expect(statusOf(check({}), "setback.bank")).toBe("not-applicable");
    const holes = ground((x) => (x >= 5 && x <= 7 ? NaN : 1));
    const found = check({ site: { zones: creek, terrain: holes }, layout: at(2.7) });
    expect(statusOf(found, "setback.bank")).toContain("cannot-check");
  });
});

describe("tipping", () => {
  test("by hand: 95 kg at the edge of a 24 in deck 0.49 m up, on a crate, one 12 ft module", () => {
    const W = 95 * 9.80665;
    const edge = (9 + 5.5 / 2) * IN;
    const tips = W * (0.3048 - edge) + 0.1 * W * 0.49;
    const rho = ((62.4 * 0.55) / (1 + 0.009 * 0.55 * 19)) * 1.19 * 16.018463;
    const dead = (0.024 * 3.6576 * rho + 1.9 * 3.6576) / 2 + 0.03 * rho;
    const holds = (dead * 9.80665 * edge) / 1.5;
    const found = byId(check({ layout: straightLayout([3.6576]) }), "tipping.edge.met")!;
    expect(found.status === "pass" && found.demand).toBeCloseTo(tips, 6);
    expect(found.status === "pass" && found.capacity / holds).toBeCloseTo(1, 3);
  });
  test("a taller support tips sooner; far stakes hold it, and without their ground's strength it cannot be checked", () => {
    const tall = straightLayout([3.6576]);
    const layout = { ...tall, joints: tall.joints.map((j) => ({ ...j, deck_m: 2.4 })) };
    const found = byId(check({ layout }), "tipping.edge.met")!;
    expect(found.status === "pass" && found.backwards.carries).toContain("far stakes");
    const ground = { su_kpa: null, source: "not measured", readings: [], safety: 2 };
    expect(statusOf(check({ layout, plan: { ground } }), "tipping.edge")).toBe("cannot-check");
    const loose: Kit = { ...stoutKit, supports: stoutKit.supports.map((k) => ({ ...k, anchor: null })) };
    expect(statusOf(check({ layout, plan: { kit: loose } }), "tipping.edge")).toBe("fail");
  });
});
