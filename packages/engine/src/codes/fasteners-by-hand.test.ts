import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Fastener } from "../materials/index.ts";
import { newtons } from "../units/index.ts";
import { freshHole } from "./fastener-holes.ts";
import { ec5Fasteners, usFasteners, type FastenerCapacity, type FastenerJoint, type Found } from "./index.ts";

/** Values worked out with pencil and the printed equations of EN 1995-1-1, C24 (350 kg/m3), steel of 600 N/mm2. */
const nail: Fastener = {
  id: "asked",
  name: "nail",
  kind: "nail",
  diameter_mm: 3,
  length_mm: 75,
  coating: "none",
  fu_mpa: 600,
  source: "asked",
  status: "project",
};
const screw: Fastener = {
  ...nail,
  kind: "wood-screw",
  diameter_mm: 6,
  length_mm: 100,
  thread_mm: 60,
  root_mm: 3.9,
};

const timber = (thickness_mm: number) =>
  ({
    material: "wood",
    thickness_m: thickness_mm / 1000,
    gravity: 0.42,
    density_k: 350,
    angle_deg: 0,
  }) as const;
const joint = (fastener: Fastener, side_mm: number, main_mm = 200): FastenerJoint => ({
  fastener,
  count: 1,
  per_row: 1,
  side: timber(side_mm),
  main: timber(main_mm),
  shear: "single",
  grain: "side",
  toe_nail: false,
  moisture: "dry",
  duration: "ten-years",
  short_reach: "equations",
  predrilled: false,
  rope: false,
  hole: freshHole,
});
const of = (found: Found<FastenerCapacity>): FastenerCapacity => {
  if (!found.ok) throw new Error(found.problems.map((p) => p.message).join("; "));
  return found.value;
};
const across = (j: FastenerJoint): FastenerCapacity => of(ec5Fasteners.lateral(j));
const along = (j: FastenerJoint): FastenerCapacity => of(ec5Fasteners.withdrawal(j));
const near = (value: number, expected: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(0.002);

test("nail 3 mm, two planes: twice the 716 N of one; the design value is 0.8 / 1.3 of it", () => {
  const long = { ...nail, length_mm: 120 };
  const found = across({ ...joint(long, 35, 50), shear: "double" });
  expect(found.governs).toBe("failure mode k");
  near(found.one, 2 * 716);
  near(found.value, (2 * 716 * 0.8) / 1.3);
});

test("nail 3 mm under a steel plate: 716 N under 1.5 mm, 1013 N under 3 mm, half way between them at 2.25 mm", () => {
  const under = (plate_mm: number): number =>
    across({ ...joint(nail, 35), side: { material: "steel", thickness_m: plate_mm / 1000 } }).one;
  near(under(1.5), 716);
  near(under(3), 1013);
  near(under(2.25), (716 + 1013) / 2);
});

test("nail 3 mm, 33 mm deep (11 d): three quarters of 20e-6 rho2 d t = 243 N; 8 d and less hold nothing", () => {
  const found = along({ ...joint(nail, 42) });
  near(found.one, 0.75 * 20e-6 * 350 ** 2 * 3 * 33);
  expect(along(joint(nail, 51)).value).toBe(0);
  expect(along(joint(nail, 51)).reason).toMatch(/8 diameters/);
});

test("screw 6 x 100 with 60 mm of thread: 15.29 N/mm2 x 6 x 60 x 0.75 = 4128 N; four hold 4^0.9 times as much", () => {
  const found = along(joint(screw, 40));
  near(found.one, 4128);
  near(along({ ...joint(screw, 40), count: 4 }).value / found.value, 4 ** 0.9);
  expect(found.not_checked).toContain("the head pulling through the side piece: missing head_mm");
});

test("a head of 6 mm through C24: 70e-6 rho2 d2 = 309 N, with the smooth shank of a nail in 20 mm 456 N", () => {
  const thin = along({ ...joint({ ...screw, head_mm: 6 }, 40) });
  near(thin.one, 309);
  expect(thin.governs).toMatch(/head/);
  const smooth = along({ ...joint({ ...nail, head_mm: 6 }, 20) });
  expect(smooth.one).toBeLessThan(456);
  near(smooth.one, 20e-6 * 350 ** 2 * 3 * 55);
});

test("a row of three nails 10 d apart counts as 3^0.85, one 14 d apart as 3", () => {
  const three = (spacing: number): number =>
    across({ ...joint(nail, 35), count: 3, per_row: 3, row_spacing_m: spacing * 0.003 }).value /
    across(joint(nail, 35)).value;
  near(three(10), 3 ** 0.85);
  near(three(14), 3);
});

test("NDS 2018, 12.4: screws loaded at an angle use F over W'p Z' / (W'p cos2 + Z' sin2), nails the plain sum", () => {
  const wood = joint({ ...screw, fyb_psi: 80_000 }, 38);
  const force = fc.double({ min: 1, max: 2000, noNaN: true });
  fc.assert(
    fc.property(force, force, (Z, W) => {
      const found = usFasteners.combined(wood, { lateral: newtons(Z), withdrawal: newtons(W) });
      if (!found.ok || found.value.use === null) throw new Error("no value");
      const { use, lateral, withdrawal } = found.value;
      const [F, a] = [Math.hypot(Z, W), Math.atan2(W, Z)];
      const allowed =
        (withdrawal.value * lateral.value) /
        (withdrawal.value * Math.cos(a) ** 2 + lateral.value * Math.sin(a) ** 2);
      expect(use).toBeCloseTo(F / allowed, 9);
    }),
    { numRuns: 100, seed: 4 },
  );
});
