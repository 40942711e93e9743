import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import { metres, pascals } from "../units/index.ts";
import {
  bekkerGround,
  correctReading,
  footBeside,
  groundCalculations,
  movementBeside,
  plotMovement,
  settlementOf,
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
