import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { randomStream } from "../statistics/index.ts";
import { metres, pascals, qty } from "../units/index.ts";
import {
  bekkerGround,
  fitPlates,
  footTilt,
  groundCalculations,
  muskegPressure,
  muskegSinkage,
  plateFault,
  pressureOf,
  sinkageOf,
  type PlatePoint,
} from "./index.ts";

const calc = (id: string) => groundCalculations.find((c) => c.id === id)!;
const ran = (id: string, input: object) => {
  const outcome = calc(id).run(input as never, { tables });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.outputs;
};
const places = (id: string, input: object): string[] => {
  const outcome = calc(id).run(input as never, { tables });
  if (outcome.ok) return [];
  for (const p of outcome.problems) expect(p.mend).toMatch(/\S/);
  return outcome.problems.map((p) => p.place);
};
const loam = bekkerGround({ kc_kn: 6.9, kphi_kn: 752, n: 0.66 });

describe("pressure and sinkage", () => {
  test("every terrain of the table: there and back again, and a wider foot of positive kc sinks more under one pressure", () => {
    for (const row of tables.ground.terrains) {
      const ground = bekkerGround(row);
      const z = sinkageOf(ground, 0.2, pascals(5000))!;
      expect(pressureOf(ground, 0.2, z)! / 5000, row.id).toBeCloseTo(1, 9);
      expect(sinkageOf(ground, 0.4, pascals(5000))!, row.id).toBeGreaterThan(z);
    }
  });

  test("muskeg: there and back again", () => {
    const args = { kp: qty(290_000, "N/m3"), mm: qty(51_000, "N/m3"), Dh: metres(0.4) };
    for (const mm of [1, 20, 150])
      expect(muskegSinkage({ ...args, p: muskegPressure({ ...args, z: metres(mm / 1000) }) })).toBeCloseTo(
        mm / 1000,
        12,
      );
  });

  test("a kc below zero leaves no stiffness under a small foot: null, never a broken number", () => {
    const odd = { ...loam, kc: qty(-80_000, "N/m") };
    expect(sinkageOf(odd, 0.1, pascals(1000))).toBeNull();
    expect(sinkageOf(odd, 0.5, pascals(1000))).toBeGreaterThan(0);
  });

  test("clays of low n are flagged for the bearing capacity, others are not; muskeg says it is from memory", () => {
    const foot = { width_mm: 100, length_mm: 300, pressure_pa: 20_000 };
    expect(ran("ground.sinkage", { ...foot, terrain: "heavy-clay-40" }).use_bearing).toBe(true);
    expect(ran("ground.sinkage", { ...foot, terrain: "lete-sand" })).toMatchObject({
      use_bearing: false,
      words: [],
    });
    expect(ran("ground.sinkage", { ...foot, muskeg: "petawawa-a" }).words).toEqual([
      expect.stringMatching(/memory/),
    ]);
    expect(places("ground.sinkage", { ...foot, terrain: "nowhere" })).toEqual(["terrain"]);
    expect(places("ground.sinkage", { ...foot, kc_n_per_m: 1, kphi_pa: 1000, n: 0 })).toEqual(["n"]);
    expect(places("ground.sinkage", { ...foot, kphi_pa: 1000 })).toEqual(["kc_n_per_m"]);
    expect(places("ground.sinkage", foot)).toEqual(["terrain"]);
  });
});

describe("tilt of a foot", () => {
  test("the tilted foot carries load and moment (integrated in strips), with and without an edge clear of the ground", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.45, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        (share, n) => {
          const side = 0.6;
          const law = { ...loam, n };
          const { pressed_m, other_m } = footTilt(law, { side_m: side, other_m: 0.4 }, 700, share * side)!;
          const k = 6900 / 0.4 + 752_000;
          let [load, moment] = [0, 0];
          const strips = 20_000;
          for (let i = 0; i < strips; i++) {
            const x = (side * (i + 0.5)) / strips;
            const z = pressed_m + ((other_m - pressed_m) * x) / side;
            const f = z > 0 ? (k * z ** n * 0.4 * side) / strips : 0;
            load += f;
            moment += f * (side / 2 - x);
          }
          expect(load / 700).toBeCloseTo(1, 3);
          expect(moment / load / side).toBeCloseTo(share, 3);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("no offset, no tilt; more offset, more tilt; off the foot is refused", () => {
    const tilt = (off: number): number => footTilt(loam, { side_m: 0.6, other_m: 0.4 }, 700, off)!.rotation;
    expect(tilt(0)).toBe(0);
    expect(tilt(1e-6)).toBeGreaterThan(0);
    for (let off = 0; off < 0.27; off += 0.02) expect(tilt(off + 0.02)).toBeGreaterThan(tilt(off));
    expect(() => tilt(0.3)).toThrow("tilt-load");
  });
});

describe("plate tests", () => {
  const law = (b: number, z: number): number => (6900 / b + 752_000) * z ** 0.66;
  const points = (sizes: readonly number[], noise = () => 1): PlatePoint[] =>
    sizes.flatMap((b_m) =>
      [0.005, 0.01, 0.02, 0.04, 0.06].map((z_m) => ({ b_m, z_m, p_pa: law(b_m, z_m) * noise() })),
    );

  test("points of an exact law give it back, from two plates and from three", () => {
    for (const sizes of [
      [0.1, 0.2],
      [0.05, 0.1, 0.3],
    ]) {
      const fit = fitPlates(points(sizes));
      expect(fit.n.value).toBeCloseTo(0.66, 9);
      expect(fit.kc_n_per_m!.value).toBeCloseTo(6900, 3);
      expect(fit.kphi_pa!.value).toBeCloseTo(752_000, 2);
      expect(fit.residual_share).toBeLessThan(1e-9);
      expect(fit.words).toEqual([]);
    }
  });

  test("one size of plate: its stiffness is given, kc and kphi are not told apart, and the words say why", () => {
    const fit = fitPlates(points([0.1]));
    expect(fit.kc_n_per_m).toBeNull();
    expect(fit.kphi_pa).toBeNull();
    expect(fit.plates[0]!.k_pa.value).toBeCloseTo(6900 / 0.1 + 752_000, 2);
    expect(fit.words.join()).toMatch(/cannot be told apart/);
  });

  test("the 95 % bands hold the true values in about 95 of 100 noisy tests where the noise is even in p (800 tests, seeded)", () => {
    const random = randomStream(21);
    const inside = { n: 0, kc: 0, kphi: 0 };
    const holds = (f: { low: number | null; high: number | null }, v: number): number =>
      f.low! <= v && v <= f.high! ? 1 : 0;
    for (let t = 0; t < 800; t++) {
      const noisy = points([0.1, 0.3]).map((p) => ({ ...p, p_pa: p.p_pa + 1500 * random.normal() }));
      const fit = fitPlates(noisy);
      inside.n += holds(fit.n, 0.66) / 800;
      inside.kc += holds(fit.kc_n_per_m!, 6900) / 800;
      inside.kphi += holds(fit.kphi_pa!, 752_000) / 800;
    }
    for (const share of Object.values(inside)) {
      expect(share).toBeGreaterThan(0.925);
      expect(share).toBeLessThan(0.975);
    }
  });

  test("too few points, one depth alone or a plate with one point cannot be fitted", () => {
    expect(plateFault(points([0.1]).slice(0, 2))).toMatch(/three/);
    expect(plateFault([...points([0.1]), { b_m: 0.2, z_m: 0.01, p_pa: 1 }])).toMatch(/two points/);
    expect(plateFault(points([0.1]).map((p) => ({ ...p, z_m: 0.01 })))).toMatch(/differ/);
    expect(places("ground.plate-test-fit", { points: [{ b_mm: 0, z_mm: 10 }] })).toEqual([
      "points[0].b_mm",
      "points[0].p_pa",
    ]);
  });
});
