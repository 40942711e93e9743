import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { metres, pascals, qty } from "../units/index.ts";
import {
  bearingModes,
  bearingPart,
  capacityFactor,
  edgePressure,
  footLoad,
  groundCalculations,
  shareBetweenFeet,
  type Contact,
} from "./index.ts";

const su = pascals(8000);
const rectangle: Contact = { shape: "rectangle", width_m: 0.3, length_m: 1.2 };
const square: Contact = { shape: "square", width_m: 0.4, length_m: 0.4 };
const circle: Contact = { shape: "circle", width_m: 0.4, length_m: 0.4 };
const strip: Contact = { shape: "strip", width_m: 0.3, length_m: 3 };
const shapes = [rectangle, square, circle, strip];

describe("the part of a foot that bears", () => {
  test("Meyerhof (from memory): two offsets take twice themselves off either side, the shorter side comes first", () => {
    const part = bearingPart(rectangle, 0.05, 0.5);
    expect([part.B, part.L].map((v) => Number(v.toFixed(12)))).toEqual([0.2, 0.2]);
    expect(part.area).toBeCloseTo(0.04, 12);
    expect(bearingPart(square, 0.1, 0).shape).toBe("rectangle");
  });

  test("a round foot keeps its whole area in the middle and loses it smoothly to nothing at the rim", () => {
    const area = (e: number): number => bearingPart(circle, e, 0).area;
    expect(area(0)).toBeCloseTo(Math.PI * 0.04, 12);
    expect(area(1e-7)).toBeCloseTo(area(0), 6);
    expect(area(0.1999)).toBeLessThan(1e-4);
    for (let e = 0; e < 0.19; e += 0.01) expect(area(e + 0.01)).toBeLessThan(area(e));
    // The lens of two circles whose middles lie 2 e apart, by adding strips.
    const e = 0.07;
    const n = 20_000;
    let lens = 0;
    for (let i = 0; i < n; i++) {
      const x = e + ((0.2 - e) * (i + 0.5)) / n;
      lens += 4 * Math.sqrt(0.04 - x * x) * ((0.2 - e) / n);
    }
    expect(area(e)).toBeCloseTo(lens, 6);
    const part = bearingPart(circle, e, 0);
    expect(part.B * part.L).toBeCloseTo(part.area, 12);
    expect(part.L / part.B).toBeCloseTo(Math.sqrt((0.2 + e) / (0.2 - e)), 12);
  });

  test("a load outside the foot is refused", () => {
    expect(() => bearingPart(rectangle, 0.15, 0)).toThrow("load-beside-the-foot");
    expect(() => bearingPart(circle, 0.15, 0.15)).toThrow("load-beside-the-foot");
  });
});

describe("capacity", () => {
  test("by shape: strip 5 su, rectangle between, square and circle 6 su; deep down 9 su for the latter", () => {
    const q = (c: Contact, depth = 0): number =>
      bearingModes(bearingPart(c, 0, 0), { su, mat: null }, depth)[0]!.q;
    expect(q(strip)).toBeCloseTo(40_000, 6);
    expect(q(rectangle)).toBeCloseTo(42_000, 6);
    expect(q(square)).toBeCloseTo(48_000, 6);
    expect(q(circle)).toBeCloseTo(48_000, 6);
    expect(q(circle, 3)).toBeCloseTo(72_000, 6);
  });

  test("punching by hand: 0.3 x 1.2 m on a 0.2 m mat over mud of 3 kPa", () => {
    const part = bearingPart(rectangle, 0, 0);
    const modes = bearingModes(
      part,
      { su: pascals(20_000), mat: { thickness_m: 0.2, mud_su: pascals(3000) } },
      0,
    );
    // Spread to 0.5 x 1.4 m: 5 * 3 * (1 + 0.2 * 0.5 / 1.4) = 16.071 kPa over 0.70 m2, on 0.36 m2.
    expect(modes[0]).toMatchObject({ mode: "punching" });
    expect(modes[0]!.q).toBeCloseTo((16_071.4286 * 0.7) / 0.36, 1);
    expect(modes[1]!.q).toBeCloseTo(105_000, 6);
  });

  test("a mat without thickness leaves the mud's own capacity; a thicker one never bears less; depth counts", () => {
    for (const contact of shapes) {
      const part = bearingPart(contact, 0, 0);
      const q = (thickness_m: number, depth = 0): number =>
        bearingModes(part, { su: null, mat: { thickness_m, mud_su: su } }, depth)[0]!.q;
      expect(q(0)).toBeCloseTo(bearingModes(part, { su, mat: null }, 0)[0]!.q, 6);
      for (let t = 0; t < 0.5; t += 0.1) expect(q(t + 0.1)).toBeGreaterThan(q(t));
      expect(q(0.2, 0.3)).toBeGreaterThan(q(0.2));
      expect(capacityFactor(part, 0.1, 0.2) * su).toBeCloseTo(q(0.2, 0.1), 6);
    }
  });

  test("more strength, depth or size never bears less, a load farther off never more", () => {
    const inRange = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes),
        inRange(100, 50_000),
        inRange(0, 2),
        inRange(0, 0.14),
        inRange(1, 3),
        (contact, s, depth, off, by) => {
          const load = (c: Contact, strength: number, d: number, e: number): number => {
            const part = bearingPart(c, e, 0);
            return bearingModes(part, { su: pascals(strength), mat: null }, d)[0]!.q * part.area;
          };
          const base = load(contact, s, depth, off);
          const bigger = { ...contact, width_m: contact.width_m * by, length_m: contact.length_m * by };
          const slack = 1 - 1e-9;
          expect(load(contact, s * by, depth, off)).toBeGreaterThanOrEqual(base * slack);
          expect(load(contact, s, depth + by, off)).toBeGreaterThanOrEqual(base * slack);
          expect(load(bigger, s, depth, off)).toBeGreaterThanOrEqual(base * slack);
          expect(load(contact, s, depth, off / by)).toBeGreaterThanOrEqual(base * slack);
        },
      ),
    );
  });
});

describe("pressure under the edge", () => {
  test("the straight line carries load and moment, with and without a lifted edge (integrated in strips)", () => {
    for (const off of [0.02, 0.05, 0.09, 0.13]) {
      const F = 900;
      const edge = edgePressure(rectangle, F, off, 0)!;
      const pressed = off <= 0.05 ? null : 3 * (0.15 - off);
      const least = pressed === null ? (2 * F) / 0.36 - edge : 0;
      const width = pressed ?? 0.3;
      let load = 0;
      let moment = 0;
      const n = 4000;
      for (let i = 0; i < n; i++) {
        const x = (width * (i + 0.5)) / n;
        const p = edge + ((least - edge) * x) / width;
        load += p * 1.2 * (width / n);
        moment += p * 1.2 * (width / n) * (0.15 - x);
      }
      expect(load).toBeCloseTo(F, 3);
      expect(moment / load).toBeCloseTo(off, 5);
    }
  });

  test("both ways inside the core they add up; beyond it nothing is made up", () => {
    expect(edgePressure(rectangle, 360, 0.02, 0.08)).toBeCloseTo(1000 * (1 + 0.4 + 0.4), 9);
    expect(edgePressure(rectangle, 360, 0.05, 0.2)).toBeNull();
    expect(edgePressure(circle, 100, 0.06, 0)).toBeNull();
    expect(edgePressure(strip, 900, 0, 0)).toBeCloseTo(1000, 9);
  });
});

describe("several feet under one support", () => {
  test("equal feet share as the check of joints has it", () => {
    const feet = [-0.5, 0.5, -0.2, 0.2].map((offset_m) => ({ area_m2: 0.1, offset_m }));
    const { loads_n } = shareBetweenFeet(feet, 1000, 100)!;
    feet.forEach(({ offset_m }, i) => {
      const by = footLoad({
        N: qty(1000, "N"),
        m: qty(100, "N*m"),
        n: qty(4, "1"),
        o: metres(offset_m),
        Q: qty(0.58, "m2"),
      });
      expect(loads_n[i]).toBeCloseTo(by, 9);
    });
  });

  test("loads and moments balance whatever the feet; lifted feet bear nothing; outside the feet it tips", () => {
    const foot = fc.record({
      area_m2: fc.double({ min: 0.01, max: 1, noNaN: true }),
      offset_m: fc.double({ min: -2, max: 2, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(foot, { minLength: 2, maxLength: 6 }),
        fc.double({ min: -2.5, max: 2.5, noNaN: true }),
        (feet, off) => {
          const offsets = feet.map((f) => f.offset_m);
          fc.pre(Math.max(...offsets) - Math.min(...offsets) > 0.1);
          const shared = shareBetweenFeet(feet, 800, 800 * off);
          if (off > Math.max(...offsets) + 1e-6 || off < Math.min(...offsets) - 1e-6)
            expect(shared).toBeNull();
          if (!shared) return;
          const sum = shared.loads_n.reduce((a, b) => a + b, 0);
          const moment = shared.loads_n.reduce((a, v, i) => a + v * offsets[i]!, 0);
          expect(sum).toBeCloseTo(800, 6);
          expect(moment).toBeCloseTo(800 * off, 5);
          expect(Math.min(...shared.loads_n)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});

describe("ground.bearing", () => {
  const calc = groundCalculations.find((c) => c.id === "ground.bearing")!;
  const base = { shape: "rectangle", width_mm: 300, length_mm: 1200, su_pa: 8000, depth_mm: 0, load_n: 5040 };
  const run = (more: object) => calc.run({ ...base, ...more }, { tables });
  const figures = (more: object) => {
    const ran = run(more);
    if (!ran.ok) throw new Error(JSON.stringify(ran.problems));
    return ran.outputs;
  };

  test("the pad of the reference: 42 kPa ultimate, 14 at factor 3, 5.04 kN just carried; 2 for one day", () => {
    expect(figures({})).toMatchObject({ capacity_pa: 42_000, allowed_pa: 14_000, mode: "bearing" });
    expect(figures({}).utilisation).toBeCloseTo(1, 12);
    expect(figures({ one_day: true }).allowed_pa).toBe(21_000);
    expect(figures({ safety: 4 }).allowed_pa).toBe(10_500);
  });

  test("under 3 kPa without a measurement it stops; measured it goes on; the mud under a mat counts", () => {
    expect(figures({ su_pa: 2500 })).toMatchObject({ mode: "stop", utilisation: null });
    expect(figures({ su_pa: 2500, measured: true })).toMatchObject({ mode: "bearing" });
    expect(figures({ su_pa: 9000, mat_mm: 200, mud_su_pa: 2000 })).toMatchObject({ mode: "stop" });
    expect(figures({ su_pa: 20_000, mat_mm: 200, mud_su_pa: 4000 })).toMatchObject({ mode: "punching" });
  });

  test("water takes weight off; two feet take half each, and a moment presses the outer one", () => {
    const dry = figures({}).pressure_pa as number;
    const wet = figures({ under_water_m3: 0.1, water_kg_m3: 1000 }).pressure_pa as number;
    expect(dry - wet).toBeCloseTo((1000 * 9.80665 * 0.1) / 0.36, 6);
    expect(figures({ offsets_mm: [-400, 400] }).pressure_pa).toBeCloseTo(dry / 2, 6);
    expect(figures({ offsets_mm: [-400, 400], moment_n_m: 400 }).pressure_pa).toBeCloseTo(
      (2520 + 500) / 0.36,
      6,
    );
  });

  test.each([
    [{ width_mm: 0 }, "width_mm"],
    [{ width_mm: -5 }, "width_mm"],
    [{ su_pa: 0 }, "su_pa"],
    [{ load_n: 0 }, "load_n"],
    [{ mat_mm: 200 }, "mud_su_pa"],
    [{ off_width_mm: 150 }, "off_width_mm"],
    [{ under_water_m3: 1, water_kg_m3: 1000 }, "under_water_m3"],
    [{ offsets_mm: [-100, 100], moment_n_m: 2000 }, "moment_n_m"],
    [{ shape: "square" }, "length_mm"],
  ])("%o is a problem at %s with a mend", (more, place) => {
    const ran = run(more);
    expect(ran.ok).toBe(false);
    if (ran.ok) return;
    expect(ran.problems.map((p) => p.place)).toContain(place);
    for (const p of ran.problems) expect(p.mend).toMatch(/\S/);
  });
});
