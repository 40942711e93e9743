import fc from "fast-check";
import { expect, test } from "vitest";
import {
  plotAt,
  sleeper,
  smallFacts,
  smallInput,
  smallSite,
  smallTerrain,
  zone,
} from "../../test/support/small-site.ts";
import { finish } from "../formula/index.ts";
import { metres } from "../units/index.ts";
import type { SearchInput } from "./search-input.ts";
import { searchNetwork } from "./search.ts";
import {
  MOST_SHIFT_M,
  SHIFT_STEP_M,
  layingTolerance,
  seatSlack,
  shiftProbe,
  type ToleranceInput,
} from "./tolerance.ts";

const flat = smallTerrain(30, 30, () => 1);
const ample = { along_m: 1, across_m: 1 };

function toleranceOf(input: SearchInput, slack = ample): ToleranceInput {
  const { site, facts, laying, choice } = input;
  return { layout: finish(searchNetwork(input)), site, facts, laying, choice, slack: () => slack };
}

test("the seat that is left along the way is the corridor, in whole steps of 10 mm", () => {
  const slack = { along_m: seatSlack({ s: metres(0.07), s_min: metres(0.0254) }), across_m: 0.12 };
  for (const t of layingTolerance(toleranceOf(smallInput(smallSite(flat, [plotAt("p", 5, 18)])), slack))) {
    // 70 mm less 25.4 mm leaves 44.6 mm: four steps.
    expect([t.ahead_m, t.back_m, t.right_m, t.left_m].map((v) => v.toFixed(2))).toEqual([
      "0.04",
      "0.04",
      "0.12",
      "0.12",
    ]);
    expect(t.broken_by).toEqual({ ahead: "seat", back: "seat", right: "seat", left: "seat" });
    expect(t.holds_slop).toBe(true);
  }
});

test("a closed area beside the way binds on its side only (hand arithmetic)", () => {
  // The way heads north along x = 5, 0.6 m wide like its sleepers: its east edge is at 5.3, the area begins at 5.437.
  const site = smallSite(flat, [plotAt("p", 5, 18)]);
  const input = toleranceOf(smallInput(site));
  const shut = zone("nest", "closed", 5.437, 7.5, 9, 8.5);
  const [one] = layingTolerance({ ...input, site: { ...site, zones: [shut] } }).filter(
    (t) => t.joint === "J2",
  );
  const joint = input.layout.joints.find((j) => j.id === "J2")!;
  expect(joint.y).toBe(8);
  expect(one!.right_m).toBeCloseTo(0.13, 9);
  expect(one!.broken_by).toMatchObject({ right: "support-stands", left: null });
  expect(one!.left_m).toBe(MOST_SHIFT_M);
});

test("ground that falls too much under a foot stops the support (hand arithmetic)", () => {
  const kind = { ...sleeper, height_max_mm: 300 };
  const facts = { ...smallFacts, supports: [kind] };
  const bank = smallTerrain(30, 30, (x) => (x <= 6 ? 1 : x <= 7 ? 1 - (x - 6) * 0.9 : 0.1));
  const input = toleranceOf(smallInput(smallSite(bank, [plotAt("p", 5, 18)]), { facts }));
  // The foot reaches 0.3 m east of the joint; 0.9 m of fall over a metre makes 0.1 m in 0.111 m: until 5.8 + 0.011.
  const far = {
    ...input,
    layout: { ...input.layout, joints: input.layout.joints.map((j) => ({ ...j, x: 5.6 })) },
  };
  const [t] = layingTolerance({ ...far, layout: { ...far.layout, parts: [], reached: [] } });
  expect(t!.right_m).toBeCloseTo(0.21, 9);
  expect(t!.broken_by.right).toBe("support-stands");
});

test("property: every shift that is told keeps the rules, and one step more on that side breaks one", () => {
  let bound = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 89 }),
      fc.double({ min: 0.02, max: 0.4, noNaN: true }),
      fc.integer({ min: 6, max: 20 }),
      (heading, seat, x) => {
        const ground = smallTerrain(30, 30, (i, j) => 1 + 0.12 * Math.sin(i) * Math.cos(j / 2));
        const zones = [zone("nest", "closed", x, 12, x + 2, 14, { buffer_m: 0.3 })];
        const base = smallInput(smallSite(ground, [plotAt("p", 8, 22), plotAt("q", 20, 18)], zones));
        const input = toleranceOf(
          { ...base, choice: { ...base.choice, first_heading_deg: heading } },
          { along_m: seat, across_m: 0.25 },
        );
        const probe = shiftProbe(input);
        for (const t of layingTolerance(input)) {
          const joint = input.layout.joints.find((j) => j.id === t.joint)!;
          for (const [far, rule, along, across] of [
            [t.ahead_m, t.broken_by.ahead, 1, 0],
            [t.back_m, t.broken_by.back, -1, 0],
            [t.right_m, t.broken_by.right, 0, 1],
            [t.left_m, t.broken_by.left, 0, -1],
          ] as const) {
            for (let d = 0; d <= far + 1e-9; d += SHIFT_STEP_M)
              expect(probe(joint, along * d, across * d)).toBeNull();
            const more = far + SHIFT_STEP_M;
            if (rule === null) expect(far).toBe(MOST_SHIFT_M);
            else {
              expect(probe(joint, along * more, across * more)).toBe(rule);
              bound++;
            }
          }
        }
      },
    ),
    { numRuns: 20 },
  );
  expect(bound).toBeGreaterThan(100);
});

test("a joint that hardly reaches its plot may not shift out of reach, and slop is held on every side at once", () => {
  const site = smallSite(flat, [plotAt("p", 5, 18, 0.5, 2)]);
  const input = toleranceOf(smallInput(site));
  const last = input.layout.reached[0]!.joint;
  const near = { ...site, plots: [plotAt("p", 5, 18, 0.5, 1.515)] };
  const [t] = layingTolerance({ ...input, site: near }).filter((j) => j.joint === last);
  // 2 m away, 2.015 m allowed: 10 mm back, and no slop of 25 mm.
  expect(t).toMatchObject({ back_m: 0.01, holds_slop: false });
  expect(t!.broken_by.back).toBe("plot-reach");
});
