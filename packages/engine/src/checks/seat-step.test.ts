import { describe, expect, test } from "vitest";
import { checkedPlan, checksInput, stoutKit, visitOf } from "../../test/support/straight-walkway.ts";
import type { Kit } from "../kit/index.ts";
import type { Plan } from "../plan/document.ts";
import { metres, qty } from "../units/index.ts";
import { runChecks } from "./index.ts";
import { moduleShrinkage, seatsApart, slopeShortening, tiltStep } from "./seat-formulas.ts";
import type { CheckResult } from "./types.ts";

/*
 * Plain ends on a 2x6 sill laid flat, joint gap 12.7 mm: seats (139.7 - 12.7) / 2 = 63.5 mm, their middles 76.2 mm
 * apart. One end of feet 609.6 mm long settles by 25 mm: 25 x 76.2 / 609.6 = 3.125 mm. Feet 234.95 mm long:
 * 8.108 mm, over 4 mm; it takes 25 x 76.2 / 4 = 476.25 mm of foot.
 */
const step = (plan: Partial<Plan>): CheckResult =>
  runChecks(checksInput({ plan: checkedPlan(plan) })).find((r) => r.id === "seat.step")!;
type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
const judged = (r: CheckResult): Judged => {
  if (r.status !== "pass" && r.status !== "fail") throw new Error(JSON.stringify(r));
  return r;
};
const plain = (along_mm: number): Kit => ({
  ...stoutKit,
  joint_gap_mm: 12.7,
  end: { kind: "plain" },
  supports: stoutKit.supports.map((s) => ({ ...s, feet: s.feet.map((f) => ({ ...f, along_mm })) })),
});

describe("step at a joint, by hand", () => {
  test("feet of 609.6 mm: 3.125 mm against 4 mm in metric plans and 1/2 in in US ones", () => {
    const metric = judged(step({ kit: plain(609.6), units: "metric" }));
    expect(metric.demand).toBeCloseTo(0.003125, 9);
    expect(metric.capacity).toBe(0.004);
    expect(metric.backwards.carries).toContain("1 in 28.8");
    expect(judged(step({ kit: plain(609.6), units: "us" })).capacity).toBe(0.0127);
  });
  test("feet of 234.95 mm: 8.108 mm fails; the foot that is named passes", () => {
    const short = judged(step({ kit: plain(234.95), units: "metric" }));
    expect(short.demand).toBeCloseTo(0.0081081, 6);
    expect(short.status).toBe("fail");
    expect(short.backwards.change).toContain("476 mm");
    expect(step({ kit: plain(476.3), units: "metric" }).status).toBe("pass");
  });
  test("without a cart nothing is said of wheels", () => {
    const r = judged(step({ kit: plain(609.6), units: "metric", visits: [visitOf({ cart: null })] }));
    expect(r.backwards.carries).not.toContain("wheel");
  });
  test("on catch boards both decks go down together", () => expect(step({}).status).toBe("not-applicable"));
});

test("the plan's own step rule stands before the common limit", () => {
  const rules = { profile: "aba-trail", overrides: [] };
  const found = step({
    kit: plain(609.6),
    units: "metric",
    rules: { ...checkedPlan().rules, ...rules } as never,
  });
  expect(judged(found).capacity).toBeCloseTo(0.0127, 9);
});

test("what a slope takes off a seat: 3.6576 m at 1 in 10 loses 9.076 mm at either end (L (1 - cos) / 2)", () => {
  expect(slopeShortening({ L: metres(3.6576), i: qty(0.1, "1") })).toBeCloseTo(0.009076, 6);
  expect(slopeShortening({ L: metres(3.6576), i: qty(0, "1") })).toBe(0);
  expect(moduleShrinkage({ L: metres(3.6576), k_l: qty(0.0012, "1") })).toBeCloseTo(0.00219456, 9);
});

test("a longer foot never makes a higher step, a wider gap never a lower one", () => {
  const h = (gap: number, a: number): number =>
    tiltStep({ s_c: metres(0.025), d: seatsApart({ g: metres(gap), s: metres(0.06) }), a: metres(a) });
  for (const a of [0.1, 0.3, 0.9]) {
    expect(h(0.01, a + 0.1)).toBeLessThan(h(0.01, a));
    expect(h(0.02, a)).toBeGreaterThan(h(0.01, a));
  }
});
