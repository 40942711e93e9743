import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ec52004, usAsd2018, type DesignCode } from "../codes/index.ts";
import { M_PER_IN, N_PER_LBF } from "../units/index.ts";
import { carrierForces, type BeamPattern, type Carrier } from "./support-beam.ts";
import { checkPressed } from "./support-contact.ts";
import { checkPost, checkSupportBeam, type SupportBeam } from "./support-member.ts";
import type { CheckResult } from "./types.ts";

/*
 * Southern Pine No.2, wet, by hand in inches and pounds (NDS 2018 as the reference tables of this project give it).
 * Sill 2x6 on two rails 1.5 in wide, 9.5 in off the middle; a stringer 11.25 in off the middle on either side brings
 * 50 lb of own weight and 500 lb of people: each 1.75 in beyond its rail.
 *   Moment 550 x 1.75 = 962.5 lb in; shear 550 lb.
 * Flat: Fb 1000 <= 1150, CM 1, Cfu 1.15: 1150 psi; S 5.5 x 1.5^2 / 6 = 2.0625; 2371.9 lb in: 0.4058.
 *   Fv' 175 x 0.97 = 169.75; 2/3 x 169.75 x 8.25 = 933.6 lb: 0.5891.
 * On edge: free 17.5 in between the rails; 17.5 / 5.5 = 3.18 < 7: le 2.06 x 17.5 = 36.05; RB sqrt(36.05 x 5.5) / 1.5
 *   = 9.387; FbE 1.2 x 459000 / 88.12 = 6250; CL 3.8160 - sqrt(14.5619 - 6.5794) = 0.9907; S 7.5625; 7492 lb in: 0.1285.
 * Post 4x4, 36 in free: Fc 1450 x 0.8 = 1160; le/d 10.286; FcE 0.822 x 459000 / 105.80 = 3566; CP 2.5465 -
 *   sqrt(6.4847 - 3.8430) = 0.9212; 1068.6 x 12.25 = 13090 lb. 3000 lb: 0.2292.
 * C24 under Eurocode 5: kmod 0.65 (medium, class 3), kh 1.3: 0.65 x 1.3 x 24 / 1.3 = 15.6 N/mm2; W 139.7 x 38.1^2 / 6
 *   = 33798 mm3: 527.2 N m. 200 N of own weight and 2000 N of people 50 mm beyond: 1.35 x 10 + 1.5 x 100 = 163.5 N m: 0.3101.
 */
const lumber = { species: "southern-pine", grade: "no2", incised: false };
const us = { tables, code: usAsd2018, units: "us" } as const;
const RAILS: readonly Carrier[] = [
  [-10.25 * M_PER_IN, -8.75 * M_PER_IN],
  [8.75 * M_PER_IN, 10.25 * M_PER_IN],
];
const both = (at_in: number, dead_lb: number, live_lb: number): BeamPattern => ({
  name: "by hand",
  explain: () => undefined,
  loads: [-at_in, at_in].map((at) => ({
    at_m: at * M_PER_IN,
    dead_n: dead_lb * N_PER_LBF,
    live_n: live_lb * N_PER_LBF,
  })),
});
const sill = (lay: "flat" | "edge", change: Partial<SupportBeam> = {}): SupportBeam => ({
  name: "sill",
  size: "2x6",
  lay,
  lumber,
  carriers: RAILS,
  ...change,
});
const base = {
  id: "supports.asked",
  kind: "supports",
  title: "Asked",
  parts: [],
  rule: usAsd2018.rule("bending"),
  caution: "",
} as const;
type Judged = Extract<CheckResult, { status: "pass" | "fail" }>;
function judged(result: CheckResult): Judged {
  if (result.status !== "pass" && result.status !== "fail") throw new Error(JSON.stringify(result));
  return result;
}
const near = (value: number, expected: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThan(0.001);

describe("sill 2x6 by hand (NDS 2018; hand calculation above)", () => {
  const use = (part: "bending" | "shear", beam: SupportBeam): number =>
    judged(checkSupportBeam(part, beam, [both(11.25, 50, 500)], base, us)).utilisation;

  test("flat in bending: 962.5 of 2371.9 lb in", () => near(use("bending", sill("flat")), 962.5 / 2371.9));
  test("flat in shear: 550 of 933.6 lb", () => near(use("shear", sill("flat")), 550 / 933.6));
  test("on edge in bending: 962.5 of 7492 lb in", () => near(use("bending", sill("edge")), 962.5 / 7492));

  test("400 lb between two carriers 24 in apart is 2400 of 2371.9 lb in: a stouter size that is named passes", () => {
    const carriers: Carrier[] = [-12, 12].map((x) => [(x - 0.75) * M_PER_IN, (x + 0.75) * M_PER_IN]);
    const middle = {
      ...both(0, 0, 0),
      loads: [{ at_m: 0, dead_n: 0, live_n: 400 * N_PER_LBF }],
    };
    const r = judged(checkSupportBeam("bending", sill("flat", { carriers }), [middle], base, us));
    near(r.utilisation, 2400 / 2371.9);
    const size = /Would pass with (\S+) laid flat/.exec(r.backwards.change ?? "")?.[1];
    const stouter = checkSupportBeam("bending", sill("flat", { carriers, size: size! }), [middle], base, us);
    expect(stouter.status).toBe("pass");
  });

  test("nothing that carries it: cannot be checked, and says so", () => {
    const r = checkSupportBeam("bending", sill("flat", { carriers: [] }), [both(11, 0, 1)], base, us);
    expect(r).toMatchObject({ status: "cannot-check", missing: ["what carries the sill"] });
  });

  test("a timber that the tables lack: cannot be checked", () => {
    const beam = sill("flat", { lumber: { ...lumber, species: "balsa" } });
    expect(checkSupportBeam("bending", beam, [both(11, 0, 1)], base, us).status).toBe("cannot-check");
  });
});

test("sill 2x6 flat of C24 under Eurocode 5 by hand: 163.5 of 527.2 N m", () => {
  const c24 = { species: "softwood", grade: "c24", incised: false };
  const at = (9.5 * M_PER_IN + 0.05) / M_PER_IN;
  const pattern = both(at, 200 / N_PER_LBF, 2000 / N_PER_LBF);
  const context = { tables, code: ec52004, units: "metric" } as const;
  const r = judged(checkSupportBeam("bending", sill("flat", { lumber: c24 }), [pattern], base, context));
  near(r.utilisation, 163.5 / 527.2);
  expect(r.governs).toContain("over the carrier");
});

describe("posts (NDS 2018 3.7; hand calculation above)", () => {
  const load = { pattern: both(0, 0, 0), effect: { dead: 0, live: 3000 * N_PER_LBF, where: "on the post" } };
  const post = { name: "post", size: "4x4", lumber, free_m: 36 * M_PER_IN, sharing: 1 };

  test("4x4, 36 in free: 3000 of 13090 lb", () =>
    near(judged(checkPost(post, [load], base, us)).utilisation, 3000 / 13090));
  test("two that share the load take half each", () =>
    near(judged(checkPost({ ...post, sharing: 2 }, [load], base, us)).utilisation, 1500 / 13090));
  test("over fifty times as long as it is thick it carries nothing", () => {
    const r = judged(checkPost({ ...post, free_m: 5 }, [load], base, us));
    expect(r.status).toBe("fail");
    expect(r.capacity).toBe(0);
  });
});

test("pressed across the grain: 565 x 0.67 psi on 1.5 by 2.5 in is 1419.6 lb at the end of a piece (NDS 3.10)", () => {
  const piece = {
    name: "sill under a stringer",
    size: "2x6",
    lay: "flat",
    lumber,
    length_m: 1.5 * M_PER_IN,
    breadth_m: 2.5 * M_PER_IN,
    to_end_m: 0,
    to_next_m: 0.4,
    is_continuous: false,
  } as const;
  const force = { pattern: both(0, 0, 0), effect: { dead: 0, live: 700 * N_PER_LBF, where: "there" } };
  near(judged(checkPressed(piece, [force], base, us)).utilisation, 700 / 1419.6);
});

test("a load 1.75 in beyond one of two carriers 19 in apart presses it with 1 + 1.75 / 19 of itself (statics)", () => {
  const only = [{ at_m: 11.25 * M_PER_IN, dead_n: 0, live_n: 1000 }];
  near(Math.max(...carrierForces(RAILS, only).map((e) => e.live)), 1000 * (1 + 1.75 / 19));
});

describe("properties under both codes", () => {
  const codes: readonly (readonly [DesignCode, typeof lumber])[] = [
    [usAsd2018, lumber],
    [ec52004, { species: "softwood", grade: "c24", incised: false }],
  ];
  const part = fc.constantFrom("bending" as const, "shear" as const);
  for (const [code, wood] of codes) {
    const context = { tables, code, units: "metric" } as const;
    const use = (which: "bending" | "shear", beam: SupportBeam, at: number, live: number): number =>
      judged(checkSupportBeam(which, { ...beam, lumber: wood }, [both(at, 20, live)], base, context))
        .utilisation;

    test(`${code.id}: more load never lowers the utilisation of a sill`, () =>
      fc.assert(
        fc.property(
          part,
          fc.double({ min: 1, max: 900, noNaN: true }),
          fc.double({ min: 0, max: 500, noNaN: true }),
          (p, a, more) => {
            expect(use(p, sill("flat"), 11.25, a + more)).toBeGreaterThanOrEqual(
              use(p, sill("flat"), 11.25, a) - 1e-12,
            );
          },
        ),
      ));
    test(`${code.id}: a stringer farther out over the overhang never helps`, () =>
      fc.assert(
        fc.property(
          part,
          fc.double({ min: 10.3, max: 20, noNaN: true }),
          fc.double({ min: 0, max: 15, noNaN: true }),
          (p, at, out) => {
            expect(use(p, sill("flat"), at + out, 300)).toBeGreaterThanOrEqual(
              use(p, sill("flat"), at, 300) - 1e-12,
            );
          },
        ),
      ));
    test(`${code.id}: a thicker sill never hurts`, () =>
      fc.assert(
        fc.property(part, fc.double({ min: 1, max: 900, noNaN: true }), (p, live) => {
          expect(use(p, sill("flat", { size: "4x6" }), 11.25, live)).toBeLessThanOrEqual(
            use(p, sill("flat"), 11.25, live),
          );
        }),
      ));
    test(`${code.id}: a longer post never carries more`, () =>
      fc.assert(
        fc.property(
          fc.double({ min: 0.2, max: 3, noNaN: true }),
          fc.double({ min: 0, max: 1, noNaN: true }),
          (L, more) => {
            const force = { pattern: both(0, 0, 0), effect: { dead: 100, live: 5000, where: "there" } };
            const of = (free_m: number): number =>
              judged(
                checkPost(
                  { name: "post", size: "4x4", lumber: wood, free_m, sharing: 1 },
                  [force],
                  base,
                  context,
                ),
              ).capacity;
            expect(of(L + more)).toBeLessThanOrEqual(of(L) * (1 + 1e-9));
          },
        ),
      ));
  }
});
