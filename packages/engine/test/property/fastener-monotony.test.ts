import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  fastenerRules,
  type FastenerCapacity,
  type FastenerJoint,
  type Found,
} from "../../src/codes/index.ts";
import type { HoleRow } from "../../src/materials/index.ts";

const runs = { numRuns: 300, seed: 29 };
const rows = tables.fasteners.filter((f) => f.kind !== "clip");
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const joints: fc.Arbitrary<FastenerJoint> = fc
  .record({
    fastener: fc.constantFrom(...rows),
    count: fc.integer({ min: 1, max: 12 }),
    side_m: real(0.002, 0.09),
    main_m: real(0.01, 0.3),
    steel: fc.boolean(),
    gravity: fc.tuple(real(0.3, 0.7), real(0.3, 0.7)),
    density: fc.tuple(real(280, 450), real(280, 450)),
    angle: fc.tuple(real(0, 90), real(0, 90)),
    shear: fc.constantFrom("single" as const, "double" as const),
    grain: fc.constantFrom("side" as const, "end" as const),
    moisture: fc.constantFrom("dry" as const, "wet" as const, "cycles" as const, "fresh" as const),
    duration: fc.constantFrom(
      "permanent" as const,
      "ten-years" as const,
      "ten-minutes" as const,
      "impact" as const,
    ),
    short_reach: fc.constantFrom("equations" as const, "table" as const),
    rope: fc.boolean(),
    hole: fc.constantFrom<HoleRow>(...tables.holes),
    rows: fc.boolean(),
  })
  .map((a) => {
    const stiffness_n = 5e7;
    const wood = (i: 0 | 1, thickness_m: number) =>
      ({
        material: "wood",
        thickness_m,
        gravity: a.gravity[i],
        density_k: a.density[i],
        angle_deg: a.angle[i],
        stiffness_n,
      }) as const;
    return {
      fastener: a.fastener,
      count: a.count,
      per_row: a.rows ? a.count : 1,
      row_spacing_m: 0.014 * a.fastener.diameter_mm,
      side: a.steel ? { material: "steel", thickness_m: a.side_m / 8, stiffness_n } : wood(0, a.side_m),
      main: wood(1, a.main_m),
      shear: a.shear,
      grain: a.grain,
      toe_nail: false,
      moisture: a.moisture,
      duration: a.duration,
      short_reach: a.short_reach,
      predrilled: a.fastener.diameter_mm > 6 || a.rows,
      rope: a.rope,
      hole: a.hole,
    };
  });

const valueOf = (found: Found<FastenerCapacity>): FastenerCapacity => {
  if (!found.ok) throw new Error(found.problems.map((p) => `${p.place}: ${p.message}`).join("; "));
  return found.value;
};

describe.each(fastenerRules.map((r) => [r.id, r] as const))("fasteners by %s", (_, rules) => {
  const ways = ["lateral", "withdrawal"] as const;
  type Way = (typeof ways)[number];
  const capacity = (joint: FastenerJoint, way: Way): FastenerCapacity =>
    valueOf(rules[way](way === "withdrawal" ? { ...joint, shear: "single" } : joint));

  /** `worse` never beats `better`, both ways. */
  const never = (
    worse: (j: FastenerJoint) => FastenerJoint,
    better: (j: FastenerJoint) => FastenerJoint,
    only: readonly Way[] = ways,
  ) => {
    fc.assert(
      fc.property(joints, fc.constantFrom(...only), (joint, way) => {
        const low = capacity(worse(joint), way).value;
        expect(low).toBeLessThanOrEqual(capacity(better(joint), way).value * (1 + 1e-9));
      }),
      runs,
    );
  };
  const same = (j: FastenerJoint): FastenerJoint => j;

  test("is finite and above 0, or 0 with a reason, whatever the joint", () => {
    const seen = { some: 0, none: 0 };
    fc.assert(
      fc.property(joints, fc.constantFrom(...ways), (joint, way) => {
        const { value, one, reason, governs } = capacity(joint, way);
        expect(Number.isFinite(value) && Number.isFinite(one)).toBe(true);
        expect(governs).not.toBe("");
        if (reason === null) expect(value).toBeGreaterThan(0);
        else expect([value, reason.length > 10]).toEqual([0, true]);
        seen[reason === null ? "some" : "none"]++;
      }),
      runs,
    );
    expect(Math.min(seen.some, seen.none)).toBeGreaterThan(20);
  });

  test("more penetration is never weaker", () => {
    const longer = (j: FastenerJoint): FastenerJoint => ({
      ...j,
      main: { ...j.main, thickness_m: 0.5 },
      shear: "single",
      fastener: { ...j.fastener, length_mm: j.fastener.length_mm * 1.2 },
    });
    never((j) => ({ ...longer(j), fastener: j.fastener }), longer);
  });

  test("a thicker main piece is never weaker in single shear", () =>
    never(
      (j) => ({ ...j, shear: "single" }),
      (j) => ({ ...j, shear: "single", main: { ...j.main, thickness_m: j.main.thickness_m * 1.3 } }),
    ));

  test("wet never beats dry, however it is wet", () => never(same, (j) => ({ ...j, moisture: "dry" })));

  test("denser wood is never weaker", () =>
    never(same, (j) => {
      const denser = <T extends object>(p: T): T & { gravity: number; density_k: number } => {
        const { gravity = 0.4, density_k = 350 } = p as { gravity?: number; density_k?: number };
        return { ...p, gravity: gravity * 1.15, density_k: density_k * 1.15 };
      };
      return { ...j, main: denser(j.main), side: j.side.material === "wood" ? denser(j.side) : j.side };
    }));

  test("end grain is never stronger", () =>
    never(
      (j) => ({ ...j, grain: "end" }),
      (j) => ({ ...j, grain: "side" }),
    ));

  test("a hole that is not new and a longer load are never stronger", () => {
    never(same, (j) => ({ ...j, hole: tables.holes[0]! }));
    never((j) => ({ ...j, duration: "permanent" }), same);
  });

  test("a toe-nail whose point stays in is never stronger than a nail driven straight through a third of its length", () => {
    const nails = joints.filter((j) => j.fastener.kind === "nail");
    fc.assert(
      fc.property(nails, fc.constantFrom(...ways), (joint, way) => {
        const third = joint.fastener.length_mm / 3000;
        const density = { gravity: 0.5, density_k: 350, angle_deg: 0 } as const;
        const straight: FastenerJoint = {
          ...joint,
          side: { material: "wood", thickness_m: third, ...density },
          main: { ...joint.main, thickness_m: joint.fastener.length_mm / 1000 },
          shear: "single",
          grain: "side",
        };
        const toed = capacity({ ...straight, toe_nail: true }, way).value;
        expect(toed).toBeLessThanOrEqual(capacity(straight, way).value * (1 + 1e-9));
      }),
      runs,
    );
  });

  test("a load both ways uses at least what each way uses alone, and says why where there is nothing", () => {
    fc.assert(
      fc.property(joints, real(1, 500), real(1, 500), (any, Z, W) => {
        const joint: FastenerJoint = { ...any, shear: "single" };
        const found = rules.combined(joint, { lateral: Z as never, withdrawal: W as never });
        if (!found.ok) throw new Error(found.problems.map((p) => p.message).join("; "));
        const { use, reason, lateral, withdrawal } = found.value;
        expect(use === null).toBe(reason !== null);
        const alone = [Z / lateral.value, W / withdrawal.value];
        if (use !== null && joint.fastener.kind === "nail" && Math.max(...alone) >= 1)
          expect(use).toBeGreaterThanOrEqual(Math.max(...alone) * (1 - 1e-9));
        expect(use === null || (Number.isFinite(use) && use > 0)).toBe(true);
      }),
      runs,
    );
  });

  test("guidance names distances, holes and the metal, each with a source", () => {
    fc.assert(
      fc.property(joints, (joint) => {
        const guidance = rules.guidance(joint);
        expect(guidance.map((g) => g.what)).toContain("Metal");
        for (const { size_m, source, how } of guidance) {
          expect(size_m === null || (Number.isFinite(size_m) && size_m > 0)).toBe(true);
          expect([source.status, how !== ""]).toEqual(["memory", true]);
        }
      }),
      runs,
    );
  });
});
