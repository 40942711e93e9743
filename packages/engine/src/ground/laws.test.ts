import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { randomStream } from "../statistics/index.ts";
import { metres, pascals, qty } from "../units/index.ts";
import {
  bekkerGround,
  correctReading,
  fitPlates,
  footBeside,
  footTilt,
  groundCalculations,
  movementBeside,
  muskegPressure,
  muskegSinkage,
  plateFault,
  plotMovement,
  pressureOf,
  settlementOf,
  sinkageOf,
  type PlatePoint,
  type RawReading,
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

describe("readings corrected", () => {
  const vane: RawReading = { value: 10, unit: "kPa", instrument: "vane", depth_m: 0.3, material: "peat" };
  const became = (more: Partial<RawReading>) => {
    const found = correctReading({ ...vane, ...more }, "r");
    if (!found.ok) throw new Error(JSON.stringify(found.problems));
    return found.value;
  };

  test("a vane in peat is halved, and keeps what it was and the published range 0.26 to 0.69", () => {
    expect(became({})).toMatchObject({
      was: { value: 10, unit: "kPa", instrument: "vane" },
      su_pa: 5000,
      factor: 0.5,
    });
    expect(became({}).low_pa).toBeCloseTo(2600, 9);
    expect(became({}).high_pa).toBeCloseTo(6900, 9);
  });

  test("Bjerrum (from memory): 0.62 at a plasticity index of 100, 1 at 20 and under, held at 120 beyond; none given, none corrected", () => {
    const clay = (plasticity_index: number | null) => became({ material: "clay", plasticity_index });
    expect(clay(100).factor).toBeCloseTo(0.62, 10);
    expect(clay(15).factor).toBe(1);
    expect(clay(180).factor).toBe(clay(120).factor);
    expect(clay(null)).toMatchObject({ su_pa: 10_000, factor: 1 });
    expect(clay(null).note).toMatch(/not corrected/);
    expect(clay(null).low_pa).toBeLessThan(10_000);
  });

  test("a cone by hand: 150 kPa at 1 m in clay of 14 kN/m3, Nkt 14: (150 - 14) / 14 kPa, 10 to 18 as the range", () => {
    const cone = became({
      instrument: "cone",
      value: 150,
      depth_m: 1,
      material: "clay",
      unit_weight_n_m3: 14_000,
    });
    expect(cone.su_pa).toBeCloseTo(136_000 / 14, 9);
    expect([cone.low_pa, cone.high_pa]).toEqual([136_000 / 18, 13_600]);
  });

  test("psf and psi by definition", () => {
    expect(became({ unit: "psf", instrument: "laboratory", value: 100 }).su_pa).toBeCloseTo(
      4788.0258980336,
      8,
    );
    expect(became({ unit: "psi", instrument: "laboratory", value: 1 }).su_pa).toBeCloseTo(6894.7572931684, 8);
  });

  test("without unit, instrument, depth and ground every one of them is named at once", () => {
    const bare = {
      readings: [
        { value: 10 },
        { value: 0, unit: "bar", instrument: "thumb", depth_m: -1, material: "rock" },
      ],
    };
    const named = places("ground.vane-correction", bare);
    for (const key of ["unit", "instrument", "depth_m", "material"])
      for (const i of [0, 1]) expect(named).toContain(`readings[${i}].${key}`);
    expect(named).toContain("readings[1].value");
    const cone = { ...vane, instrument: "cone" };
    expect(places("ground.vane-correction", { readings: [cone] })).toEqual(["readings[0].unit_weight_n_m3"]);
    const light = { ...cone, value: 1, depth_m: 2, unit_weight_n_m3: 10_500 };
    expect(places("ground.vane-correction", { readings: [light] })).toEqual(["readings[0].value"]);
  });
});

describe("settlement", () => {
  const layer = { thickness_m: 1, cc: 3, e0: 9, ca: 0.18, stress_pa: 5000 };
  const wide = { width_m: 1e6, length_m: 1e6, pressure_pa: 2000 };

  test("under a wide load the example of the reference: 44 mm and, from 30 days to a year, 19.5 mm", () => {
    const found = settlementOf(wide, [layer], 365, 30);
    expect(found.primary_m * 1000).toBeCloseTo(43.84, 2);
    expect(found.creep_m * 1000).toBeCloseTo(19.53, 2);
  });

  test("a layer cut in two settles as one under a wide load; a plan over before consolidation ends has no creep and says so", () => {
    const half = { ...layer, thickness_m: 0.5 };
    expect(settlementOf(wide, [half, half], 365, 30).primary_m).toBeCloseTo(
      settlementOf(wide, [layer], 365, 30).primary_m,
      7,
    );
    const short = settlementOf(wide, [layer], 20, 30);
    expect(short.creep_m).toBe(0);
    expect(short.words.join()).toMatch(/upper bound/);
  });

  const foot = { width_mm: 300, length_mm: 1200, pressure_pa: 3000, days: 365, primary_days: 30 };

  test("a soil of the table gives its values and shows them as from memory; typed values go first; nothing else is made up", () => {
    const soft = ran("ground.settlement", { ...foot, layers: [{ thickness_mm: 800, soil: "soft-peat" }] });
    expect(soft.primary_mm).toBeGreaterThan(0);
    const outcome = calc("ground.settlement").run(
      { ...foot, layers: [{ thickness_mm: 800, soil: "soft-peat" }] },
      { tables },
    );
    expect(outcome.ok && outcome.working.find((s) => s.symbol === "cc")?.source.status).toBe("memory");
    const stiff = ran("ground.settlement", {
      ...foot,
      layers: [{ thickness_mm: 800, soil: "soft-peat", cc: 3 }],
    });
    expect(stiff.primary_mm as number).toBeCloseTo((soft.primary_mm as number) / 2, 9);
    expect(places("ground.settlement", { ...foot, layers: [{ thickness_mm: 800 }] })).toEqual(
      ["cc", "e0", "ca", "stress_pa"].map((k) => `layers[0].${k}`),
    );
    expect(places("ground.settlement", { ...foot, layers: [] })).toEqual(["layers"]);
  });

  test("ground as light as water has no stress that could be worked out: it is asked for", () => {
    const light = { thickness_mm: 800, cc: 6, e0: 10, ca: 0.3, unit_weight_n_m3: 9800 };
    expect(places("ground.settlement", { ...foot, layers: [light] })).toEqual(["layers[0].stress_pa"]);
  });
});

describe("at the plot and beside the walkway", () => {
  test("Boussinesq's stiff round foot (from memory): all of its movement at the rim, a third at twice the radius", () => {
    const at = (r: number): number => movementBeside({ w0: metres(0.03), a: metres(0.2), r: metres(r) });
    expect(at(0.2)).toBeCloseTo(0.03, 12);
    expect(at(0.4)).toBeCloseTo(0.01, 12);
    // Far away it is the point load's 2 a / (pi r).
    expect(at(50) / ((0.03 * 2 * 0.2) / (Math.PI * 50))).toBeCloseTo(1, 4);
  });

  test("a step on the last support moves the plot less the farther it lies, never more than the foot", () => {
    const move = (distance: number) =>
      plotMovement(
        loam,
        { width_m: 0.4, length_m: 0.4 },
        { resting: pascals(2000), loaded: pascals(9000) },
        distance,
      )!;
    expect(move(0).plot_m).toBe(move(0).foot_m);
    expect(move(0).foot_m).toBeCloseTo(move(0).loaded_m - move(0).unloaded_m, 12);
    for (let r = 0; r < 3; r += 0.2) expect(move(r + 0.2).plot_m).toBeLessThanOrEqual(move(r).plot_m);
  });

  test("walking on 5 kPa breaks in, on 40 kPa it does not (60 to 80 kPa of a walking foot)", () => {
    expect(footBeside(pascals(5000), null)).toMatchObject({ sinks: "yes", depth_m: null });
    expect(footBeside(pascals(13_000), null).sinks).toBe("at times");
    expect(footBeside(pascals(40_000), null).sinks).toBe("no");
    expect(footBeside(pascals(5000), loam).depth_m).toBeGreaterThan(0);
  });
});
