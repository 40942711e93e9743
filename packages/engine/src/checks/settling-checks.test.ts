import { describe, expect, test } from "vitest";
import { halfWidth, halfWidths } from "../ground/index.ts";
import { commonPracticeKit } from "../../test/support/common-practice-kit.ts";
import { checkedPlan, checksInput, straightLayout } from "../../test/support/straight-walkway.ts";
import { BLANK_PROOF, type GroundProof } from "../plan/proof-choice.ts";
import { stanceOf } from "./bearing.ts";
import { edgeFeet } from "./foot-loads.ts";
import { runChecks, type CheckResult } from "./index.ts";

function checksOf(ground: Partial<GroundProof>, rules?: string): readonly CheckResult[] {
  const plain = checkedPlan();
  const plan = checkedPlan({
    proof: { ...BLANK_PROOF, ground: { ...BLANK_PROOF.ground, ...ground } },
    rules: { ...plain.rules, ...(rules === undefined ? {} : { profile: rules }) },
  });
  const reached = [{ plot: "p1", joint: "J3", distance_m: 1.2, walk_m: 7.3 }];
  return runChecks(checksInput({ plan, layout: { ...straightLayout([2.4384, 2.4384, 2.4384]), reached } }));
}
type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
function judged(results: readonly CheckResult[], start: string): Judged {
  const r = results.find((c) => c.id.startsWith(start))!;
  if (r.status !== "pass" && r.status !== "fail") throw new Error(JSON.stringify(r));
  return r;
}
const step = (r: Judged, id: string): number => r.working.find((s) => s.id === id)!.value;

test("outer feet by hand: 1334 N at 0.230 m and 60 kg on two feet at 9 in are 1632 N and 291 N", () => {
  const joint = {
    left_m: 2.4384,
    right_m: 2.4384,
    dead_kg: 60,
    support: commonPracticeKit.supports[0]!,
    clear_width_m: 0.6096,
  };
  const feet = edgeFeet(stanceOf(joint), { N: 1334.5, m: 306.6 });
  expect(feet.pressed.load_n).toBeCloseTo(1632, 0);
  expect(feet.other.load_n).toBeCloseTo(290.8, 0);
  // Far enough off the middle the other foot would pull: it lifts.
  expect(edgeFeet(stanceOf(joint), { N: 1334.5, m: 900 }).other.load_n).toBe(0);
});

describe("sinkage and tilt on a told terrain (Bekker, kc 5.27 and kphi 1515.04 of Wong's sandy loam at 15 %, n 0.7)", () => {
  const checks = checksOf({ sinkage: "sandy-loam-15" });
  const r = judged(checks, "settling.sinkage.J0");

  test("the movement is the sinkage under the pressure of the bearing check less that without the load", () => {
    const p = step(r, "ground.foot-pressure");
    expect(p).toBeCloseTo(judged(checks, "bearing.J0").demand, 6);
    // Feet 24 x 5.5 in: the smaller side is 0.1397 m.
    const deep = (p / (5270 / 0.1397 + 1_515_040)) ** (1 / 0.7);
    expect(step(r, "ground.sinkage.depth")).toBeCloseTo(deep, 9);
    expect(r.demand).toBeGreaterThan(0);
    expect(r.demand).toBeLessThan(deep);
  });

  const tiltOf = (sinkage: string, rules: string): CheckResult =>
    checksOf({ sinkage }, rules).find((c) => c.id === "settling.tilt.J0")!;

  test("a cross slope under the profile's 1:48 passes, one over it fails", () => {
    const [firm, soft] = [tiltOf("sandy-loam-15", "aba-trail"), tiltOf("snow-sweden", "aba-trail")];
    expect([firm.status, soft.status]).toEqual(["pass", "fail"]);
    for (const t of [firm, soft]) expect("capacity" in t && t.capacity).toBeCloseTo(1 / 48, 4);
    // Down at the pressed foot, up at the other, 2 x 9 in apart.
    const working = "working" in soft ? soft.working : [];
    expect(working.find((w) => w.id === "check.sinkage.slope")!.value).toBeCloseTo(
      "demand" in soft ? soft.demand : 0,
      4,
    );
  });

  test("a profile without such a rule tells the slope in words", () => {
    const t = tiltOf("sandy-loam-15", "staff-access");
    expect(t.status === "not-applicable" && t.because).toMatch(
      /(leans 1:\d+|stays level) .* no rule on cross slope/,
    );
  });
});

describe("settlement until removal", () => {
  const soft_layer = {
    thickness_m: 1,
    compression: 0.3,
    creep_share: 0.06,
    pressure_kpa: 5,
    source: "oedometer",
  };
  const r = judged(checksOf({ soft_layer }), "settling.time.J0");

  test("H Cc' log10((s0 + ds) / s0) and creep from 30 to 207 days, 5 April to 29 October", () => {
    const ds = step(r, "ground.settlement.spread");
    const primary = 0.3 * Math.log10((5000 + ds) / 5000);
    expect(r.demand).toBeCloseTo(primary + 0.06 * 0.3 * Math.log10(207 / 30), 9);
    expect(r.from_memory).toBe(true);
  });

  test("a layer of no pressure cannot be checked", () => {
    const none = checksOf({ soft_layer: { ...soft_layer, pressure_kpa: 0 } }).find(
      (c) => c.id === "settling.time",
    )!;
    expect(none.status).toBe("cannot-check");
  });
});

describe("a plot that feels who stands on the last support", () => {
  test("soft snow moves it over 1 mm: stand on an independent support; firm sand does not", () => {
    const soft = judged(checksOf({ sinkage: "snow-sweden", sensitive_plots: ["p1"] }), "plot.movement.p1");
    expect(soft.status).toBe("fail");
    expect(soft.capacity).toBe(0.001);
    expect(soft.parts).toEqual(["J3"]);
    expect(soft.backwards.change).toMatch(/independent support/);
    // As around a stiff round foot of the same area, 1.2 m less 9 in from its middle.
    const a = Math.sqrt((0.6096 * 0.1397) / Math.PI);
    const w0 = step(soft, "check.plot.foot");
    expect(soft.demand).toBeCloseTo((2 / Math.PI) * Math.asin(a / (1.2 - 0.2286)) * w0, 9);
    expect(
      judged(checksOf({ sinkage: "lete-sand", sensitive_plots: ["p1"] }), "plot.movement.p1").status,
    ).toBe("pass");
  });

  test("a plot that nobody named does not apply", () => {
    const r = checksOf({ sinkage: "snow-sweden" }).find((c) => c.id === "plot.movement")!;
    expect(r.status === "not-applicable" && r.because).toMatch(/p1/);
  });
});

test("muskeg with a living mat sinks by its own law, from memory", () => {
  const r = judged(checksOf({ sinkage: "petawawa-a" }), "settling.sinkage.J0");
  const p = step(r, "ground.foot-pressure");
  const z = step(r, "ground.muskeg.sinkage");
  // p = kp z + 4 mm z^2 / Dh, kp 290 and mm 51 kN/m3, Dh = 2 a b / (a + b) of 0.6096 x 0.1397 m.
  const Dh = (2 * 0.6096 * 0.1397) / (0.6096 + 0.1397);
  expect(290_000 * z + (4 * 51_000 * z ** 2) / Dh).toBeCloseTo(p, 4);
});

test("half widths of many joints lie within 0.2 % of each worked out in full", () => {
  const spreads = Array.from({ length: 40 }, (_, i) => ({
    mean: i,
    scale: 0.1 + 0.02 * i,
    df: 5,
    model_sd: 0.2,
  }));
  halfWidths(0.95, spreads).forEach((h, i) =>
    expect(Math.abs(h / halfWidth(0.95, spreads[i]!) - 1)).toBeLessThan(0.002),
  );
});
