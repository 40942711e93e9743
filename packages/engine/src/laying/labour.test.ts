import { describe, expect, test } from "vitest";
import { yardTables } from "../../test/support/yard-tables.ts";
import type { Trace } from "../formula/index.ts";
import { layingCalculations } from "./calculations.ts";
import { labourHours } from "./labour.ts";

const rates = yardTables.labour;
const FT = 0.3048;

describe("labourHours", () => {
  test("90 ft of ready-made units after a short carry: 12 person-hours in the middle (trail work report of 3 July 2015: 2 people, 6 h)", () => {
    const [laying] = labourHours({ length_m: 90 * FT, carry_m: 50, removal_share: 0.5 }, rates);
    expect(laying!.mid_h).toBeCloseTo(2 * 6, 9);
    expect([laying!.low_h, laying!.high_h]).toEqual([expect.closeTo(9, 9), expect.closeTo(18, 9)]);
  });

  test("24 ft of deck after a 3/4 mile carry: the 28 person-hours of the work day lie in the range (Norwich trails, 23 August 2020: 14 people, 2 h)", () => {
    const [laying] = labourHours({ length_m: 24 * FT, carry_m: 1207, removal_share: 0 }, rates);
    expect(laying!.low_h).toBeLessThanOrEqual(28);
    expect(laying!.high_h).toBeGreaterThanOrEqual(28);
  });

  test("60 m of foundations in 600 h: in the range of the long carry (Caledonia Ramblers, accessible boardwalk)", () => {
    const [laying] = labourHours({ length_m: 60, carry_m: 1207, removal_share: 0 }, rates);
    expect(laying!.low_h).toBeLessThanOrEqual(600);
    expect(laying!.high_h).toBeGreaterThanOrEqual(600);
  });

  test("hours grow evenly with the carry between short and long, and removal is its share", () => {
    const mid = (carry_m: number): number =>
      labourHours({ length_m: 100, carry_m, removal_share: 0 }, rates)[0]!.mid_h;
    expect(mid(675)).toBeCloseTo((mid(150) + mid(1200)) / 2, 9);
    expect(mid(0)).toBe(mid(150));
    const [laying, removal] = labourHours({ length_m: 100, carry_m: 300, removal_share: 0.4 }, rates);
    expect(removal!.high_h).toBeCloseTo(0.4 * laying!.high_h, 9);
  });

  test("beyond the longest carry seen the note says so", () => {
    const note = (carry_m: number): string =>
      labourHours({ length_m: 100, carry_m, removal_share: 0 }, rates)[0]!.note;
    expect(note(3000)).toContain("longer than any of the cases");
    expect(note(1000)).not.toContain("longer than any");
  });

  test("the working shows share, hours and removal with their numbers", () => {
    const trace: Trace = [];
    labourHours({ length_m: 100, carry_m: 300, removal_share: 0.4 }, rates, trace);
    expect(trace.map((s) => s.id)).toEqual([
      "laying.long-carry-share",
      "laying.person-hours",
      "laying.removal-hours",
    ]);
  });

  test("negative or unknown input is a broken promise", () => {
    expect(() => labourHours({ length_m: -1, carry_m: 0, removal_share: 0 }, rates)).toThrow("negative");
    expect(() => labourHours({ length_m: Number.NaN, carry_m: 0, removal_share: 0 }, rates)).toThrow();
  });
});

test("laying.labour gives the six figures by key", () => {
  const method = layingCalculations.find((c) => c.id === "laying.labour")!;
  const result = method.run({ length_m: 27.432, carry_m: 50, removal_share: 0.5 }, { tables: yardTables });
  expect(result.ok && result.outputs).toMatchObject({
    laying_mid_h: expect.closeTo(12, 6) as number,
    removal_mid_h: expect.closeTo(6, 6) as number,
  });
});
