import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkCalculations } from "../../src/checks/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";

const runs = { numRuns: 200, seed: 17 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const run = (id: string, input: JsonObject) =>
  checkCalculations.find((c) => c.id === id)!.run(input, { tables });
const outputs = (id: string, input: JsonObject): JsonObject => {
  const outcome = run(id, input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  for (const value of Object.values(outcome.outputs))
    if (typeof value === "number") expect(Number.isFinite(value) && value >= 0).toBe(true);
  return outcome.outputs;
};
const places = (id: string, input: JsonObject): string[] => {
  const outcome = run(id, input);
  return outcome.ok ? [] : outcome.problems.map((p) => p.place);
};
const number = (id: string, input: JsonObject, key: string): number => outputs(id, input)[key] as number;
const MORE = 1 + 1e-9;

describe("people.lift", () => {
  const id = "people.lift";
  const base = {
    mass_kg: 60,
    carriers: 4,
    reach_mm: 305,
    hands_mm: 457,
    set_down_mm: 914,
    grip: "poor",
  } as const;
  test("the posture of check.lifting has its limit of 32 lb; four carry what two cannot", () => {
    expect(number(id, { ...base, set_down_mm: 762 }, "limit_kg")).toBeGreaterThan(14);
    expect(outputs(id, { ...base, mass_kg: 50 })["status"]).toBe("pass");
    const two = outputs(id, { ...base, mass_kg: 50, carriers: 2 });
    expect([two["status"], two["per_carrier_kg"]]).toEqual(["fail", 25]);
    expect(two["carriers_needed"]).toBe(Math.ceil(50 / (two["limit_kg"] as number)));
  });
  test("soaked timber, mud, a farther reach, a higher stack or fewer carriers never make it easier", () => {
    const lift = fc.record({
      timber_m3: real(0.01, 0.2),
      specific_gravity: real(0.35, 0.6),
      other_kg: real(0, 20),
      carriers: fc.integer({ min: 2, max: 6 }),
      reach_mm: real(200, 500),
      hands_mm: real(0, 760),
      set_down_mm: real(800, 1500),
    });
    fc.assert(
      fc.property(lift, real(0, 400), (some, suction_n) => {
        const start = { ...some, state: "new", grip: "fair" } as const;
        const index = (change: JsonObject): number => number(id, { ...start, ...change }, "index");
        const before = index({}) / MORE;
        expect(index({ state: "soaked" })).toBeGreaterThanOrEqual(before);
        expect(index({ suction_n })).toBeGreaterThanOrEqual(before);
        expect(index({ reach_mm: some.reach_mm * 1.2 })).toBeGreaterThanOrEqual(before);
        expect(index({ set_down_mm: some.set_down_mm + 150 })).toBeGreaterThanOrEqual(before);
        expect(index({ carriers: some.carriers - 1 })).toBeGreaterThanOrEqual(before);
        expect(index({ grip: "poor" })).toBeGreaterThanOrEqual(before);
      }),
      runs,
    );
  });
  test("a weighed mass beside volumes, half a volume, or no mass at all are problems", () => {
    const { mass_kg: _m, ...none } = base;
    expect(places(id, none)).toEqual(["mass_kg"]);
    expect(places(id, { ...base, timber_m3: 0.1 })).toEqual(["timber_m3"]);
    expect(places(id, { ...none, timber_m3: 0.1 })).toEqual(["specific_gravity", "state"]);
    expect(places(id, { ...base, reach_mm: 800 })).toEqual(["reach_mm"]);
    expect(places(id, { ...base, carriers: 0 })).toEqual(["carriers"]);
  });
});

test("any input within its fields gives finite numbers or problems with a mend, and never breaks", () => {
  const ids = ["deck.mesh-strand", "deck.bar-grating", "deck.plywood", "people.lift"] as const;
  const rowsOf: Readonly<Record<string, readonly { readonly id: string }[]>> = {
    mesh: tables.meshes,
    wire: tables.wires,
    grating: tables.bar_gratings,
    panel: tables.plywood,
  };
  const counts = { ok: 0, not: 0 };
  for (const id of ids) {
    const fields = checkCalculations.find((c) => c.id === id)!.inputs;
    const valueOf = (f: (typeof fields)[number]): fc.Arbitrary<unknown> => {
      const rows = rowsOf[f.key];
      if (rows) return fc.constantFrom(...rows.map((row) => row.id));
      if (f.choices) return fc.constantFrom(...f.choices);
      if (f.type === "boolean") return fc.boolean();
      if (f.type === "integer") return fc.integer({ min: f.min!, max: f.max! });
      return fc.oneof(real(f.min!, f.max!), fc.constantFrom(f.min!, f.max!));
    };
    const input = fc.record(
      Object.fromEntries(
        fields.map((f) => [f.key, f.optional ? fc.oneof(valueOf(f), fc.constant(undefined)) : valueOf(f)]),
      ),
    );
    fc.assert(
      fc.property(input, (all) => {
        const given = Object.fromEntries(
          Object.entries(all).filter(([, v]) => v !== undefined),
        ) as JsonObject;
        const outcome = run(id, given);
        counts[outcome.ok ? "ok" : "not"]++;
        if (!outcome.ok) return outcome.problems.length > 0 && outcome.problems.every((p) => p.mend !== "");
        const numbers = Object.values(outcome.outputs).filter((v) => typeof v === "number");
        return numbers.every((v) => Number.isFinite(v) && v >= 0);
      }),
      { numRuns: 1500, seed: 23 },
    );
  }
  expect(Math.min(counts.ok, counts.not)).toBeGreaterThan(100);
});
