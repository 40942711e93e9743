import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { JsonObject } from "../formula/index.ts";
import { jointFields } from "./fastener-fields.ts";
import { codeCalculations } from "./index.ts";

const run = (id: string, input: JsonObject) =>
  codeCalculations.find((c) => c.id === id)!.run(input, { tables });
const outputs = (id: string, input: JsonObject): JsonObject => {
  const outcome = run(id, input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.outputs;
};
const places = (id: string, input: JsonObject): string[] => {
  const outcome = run(id, input);
  return outcome.ok ? [] : outcome.problems.map((p) => p.place);
};

const us = {
  code: "us-asd-2018",
  fastener: "nail-16d",
  count: 4,
  per_row: 1,
  side: "wood",
  side_mm: 38.1,
  main_mm: 140,
  side_gravity: 0.5,
  main_gravity: 0.5,
  shear: "single",
  grain: "side",
  toe_nail: false,
  moisture: "dry",
  load_duration: "ten-years",
} as const;
const { side_gravity: _s, main_gravity: _m, ...noGravity } = us;
const ec5 = {
  ...noGravity,
  code: "ec5-2004",
  fastener: "nail-3.1x80",
  side_density_kg_m3: 350,
  main_density_kg_m3: 350,
  predrilled: false,
} as const;
const free = {
  kind: "nail",
  diameter_mm: 0.162 * 25.4,
  length_mm: 3.5 * 25.4,
  head_mm: 0.344 * 25.4,
  fyb_mpa: 620.5281556,
} as const;
const capacity = (id: string, input: JsonObject): number => outputs(id, input)["capacity_n"] as number;

describe.each([us, ec5])("$code", (base) => {
  test("a capacity comes with how it fails, what it must be held against and what it leaves out", () => {
    for (const id of ["fastener.lateral", "fastener.withdrawal"]) {
      const found = outputs(id, { ...base, load_duration: "seven-days" });
      expect(found["capacity_n"]).toBeGreaterThan(0);
      expect(found["reason"]).toBeNull();
      expect(found["governs"]).not.toBe("");
      expect(found["compare_with"]).toContain("load");
    }
    expect(outputs("fastener.lateral", base)["not_checked"]).toHaveLength(1);
  });

  test("every step of the working names its source, and the last one is the capacity", () => {
    const outcome = run("fastener.lateral", base);
    if (!outcome.ok) throw new Error("no value");
    expect(outcome.working.every((s) => s.source.title !== "")).toBe(true);
    expect(outcome.working.at(-1)!.value).toBe(outcome.outputs["capacity_n"]);
  });

  test("a fastener that does not reach has no capacity, and the reason says so", () => {
    for (const id of ["fastener.lateral", "fastener.withdrawal"]) {
      const through = outputs(id, { ...base, side_mm: 120 });
      expect(through).toMatchObject({
        capacity_n: 0,
        reason: "the fastener does not reach through the side piece",
      });
      expect(outputs(id, { ...base, side_mm: 75 })["reason"]).toMatch(/less than \d (shank )?diameters/);
    }
  });

  test("nails in end grain cannot be pulled on; the reason says so", () => {
    expect(outputs("fastener.withdrawal", { ...base, grain: "end" })).toMatchObject({ capacity_n: 0 });
    expect(outputs("fastener.withdrawal", { ...base, grain: "end" })["reason"]).toMatch(/end grain/);
  });

  test("a used hole and a stripped one hold what the table says", () => {
    const ratio = (id: string, hole: string): number => capacity(id, { ...base, hole }) / capacity(id, base);
    expect(ratio("fastener.lateral", "reused")).toBeCloseTo(0.8, 9);
    expect(outputs("fastener.withdrawal", { ...base, hole: "stripped" })).toMatchObject({ capacity_n: 0 });
    expect(places("fastener.lateral", { ...base, hole: "square" })).toEqual(["hole"]);
  });

  test("unknown fastener, sizes beside an id, no size at all: each a problem with its field", () => {
    expect(places("fastener.lateral", { ...base, fastener: "nail-99d" })).toEqual(["fastener"]);
    expect(places("fastener.lateral", { ...base, diameter_mm: 4 })).toEqual(["diameter_mm"]);
    const { fastener: _f, ...bare } = base;
    expect(places("fastener.lateral", bare)).toEqual(["kind", "diameter_mm", "length_mm"]);
    expect(places("fastener.lateral", { ...base, fastener: "mesh-staple" })).toEqual(["fastener"]);
  });

  test("sizes of zero and below, more in a row than there are: problems, never a number", () => {
    for (const key of ["side_mm", "main_mm", "count", "per_row"])
      for (const bad of [0, -3]) expect(places("fastener.lateral", { ...base, [key]: bad })).toEqual([key]);
    expect(places("fastener.withdrawal", { ...base, per_row: 9 })).toContain("per_row");
    const { fastener: _f, ...bare } = base;
    const odd = { ...bare, ...free, root_mm: 9, thread_mm: 200 };
    expect(places("fastener.lateral", odd)).toEqual(["root_mm", "thread_mm"]);
  });

  test("a toe-nail is a nail through one timber into side grain", () => {
    const toed = { ...base, toe_nail: true };
    expect(capacity("fastener.lateral", toed)).toBeGreaterThan(0);
    expect(places("fastener.lateral", { ...toed, grain: "end" })).toEqual(["toe_nail"]);
  });

  test("loads both ways, and a direction that may carry nothing", () => {
    const loads = { lateral_load_n: 300, withdrawal_load_n: 100 };
    const short = { ...base, ...loads, load_duration: "seven-days" };
    const { use, lateral_capacity_n: Z, withdrawal_capacity_n: W } = outputs("fastener.combined", short);
    expect(use).toBeCloseTo(300 / (Z as number) + 100 / (W as number), 9);
    const end = outputs("fastener.combined", { ...short, grain: "end" });
    expect([end["use"], end["reason"] !== null]).toEqual([null, true]);
    expect(outputs("fastener.combined", { ...short, withdrawal_load_n: 0 })["governs"]).toBe(
      "across the fasteners",
    );
  });

  test("guidance lists distances and the metal for the one who builds it", () => {
    const rows = outputs("fastener.guidance", base)["rows"] as readonly JsonObject[];
    expect(rows.length).toBeGreaterThan(6);
    expect(rows.every((r) => r["status"] === "memory")).toBe(true);
    expect(rows.find((r) => r["what"] === "Metal")!["how"]).toMatch(/zinc/);
  });
});

test("the sizes of a nail give what its row gives", () => {
  const { fastener: _f, ...bare } = us;
  for (const id of ["fastener.lateral", "fastener.withdrawal"])
    expect(capacity(id, { ...bare, ...free, coating: "hot-dip-zinc" }) / capacity(id, us)).toBeCloseTo(1, 6);
});

test("missing densities, and what thick fasteners need, are named all at once", () => {
  expect(places("fastener.lateral", noGravity)).toEqual(["main_gravity", "side_gravity"]);
  const lag = { ...us, fastener: "lag-3/8x5", count: 4, per_row: 2 };
  expect(places("fastener.lateral", lag)).toEqual([
    "main_angle_deg",
    "side_angle_deg",
    "row_spacing_mm",
    "side_ea_n",
    "main_ea_n",
  ]);
  const { predrilled: _p, ...unsaid } = ec5;
  expect(places("fastener.lateral", unsaid)).toEqual(["predrilled"]);
  expect(places("fastener.lateral", { ...ec5, fastener: "screw-8x160mm-316" })).toContain("predrilled");
  expect(places("fastener.lateral", { ...ec5, per_row: 2, row_spacing_mm: 12 })).toEqual(["row_spacing_mm"]);
});

test("NDS 2018: end grain 0.67, toe-nail 0.83, wet 0.7 across; impact counts no more than ten minutes", () => {
  const z = (change: JsonObject): number => capacity("fastener.lateral", { ...us, ...change });
  expect(z({ grain: "end" }) / z({})).toBeCloseTo(0.67, 9);
  for (const moisture of ["wet", "cycles"]) expect(z({ moisture }) / z({})).toBeCloseTo(0.7, 9);
  expect(z({ moisture: "fresh" }) / z({})).toBeCloseTo(0.7, 9);
  expect(z({ moisture: "fresh", per_row: 4 }) / z({})).toBeCloseTo(1, 9);
  expect(z({ load_duration: "impact" }) / z({})).toBeCloseTo(1.6, 9);
  const straight = z({ side_mm: (3.5 * 25.4) / 3 });
  expect(z({ toe_nail: true }) / straight).toBeCloseTo(0.83, 9);
});

test("NDS 2018: nails lose three quarters of their pull where the moisture changes, none where it stays; screws 0.7 in the wet", () => {
  const w = (change: JsonObject): number => capacity("fastener.withdrawal", { ...us, ...change });
  expect(w({ moisture: "wet" }) / w({})).toBeCloseTo(1, 9);
  for (const moisture of ["cycles", "fresh"]) expect(w({ moisture }) / w({})).toBeCloseTo(0.25, 9);
  const screw = { fastener: "screw-10x4" };
  for (const moisture of ["wet", "cycles"]) expect(w({ ...screw, moisture }) / w(screw)).toBeCloseTo(0.7, 9);
  expect(w({ fastener: "nail-16d-316" }) / w({})).toBeCloseTo((465 * 0.5 ** 1.5) / (1380 * 0.5 ** 2.5), 9);
});

test("NDS 2018: a lag screw in end grain keeps 0.75 of its pull; a head in a thin side piece governs", () => {
  const lag = { ...us, fastener: "lag-3/8x5", side: "steel", side_mm: 6 };
  const pull = (change: JsonObject): number => capacity("fastener.withdrawal", { ...lag, ...change });
  expect(pull({ grain: "end" }) / pull({})).toBeCloseTo(0.75, 9);
  const thin = outputs("fastener.withdrawal", {
    ...us,
    fastener: "screw-10x4",
    side_mm: 8,
    side_gravity: 0.35,
  });
  expect(thin["governs"]).toMatch(/head/);
});

test("NDS 2018: a row of lag screws carries less than as many alone, and a load across the grain less than along it", () => {
  const lag = {
    ...us,
    fastener: "lag-1/2x6",
    main_angle_deg: 0,
    side_angle_deg: 0,
    row_spacing_mm: 50,
    side_ea_n: 4e7,
    main_ea_n: 8e7,
  };
  const z = (change: JsonObject): number => capacity("fastener.lateral", { ...lag, ...change });
  expect(z({ per_row: 4 })).toBeLessThan(z({}));
  expect(z({ per_row: 4 })).toBeGreaterThan(0.5 * z({}));
  expect(z({ main_angle_deg: 90 })).toBeLessThan(z({}));
});

test("Eurocode 5: the rope part adds at most 15 % for smooth nails and its class 3 factor follows kmod", () => {
  const z = (change: JsonObject): number => capacity("fastener.lateral", { ...ec5, ...change });
  const gain = z({ rope_effect: true }) / z({});
  expect(gain).toBeGreaterThan(1);
  expect(gain).toBeLessThanOrEqual(1.15 + 1e-9);
  expect(z({ moisture: "wet" }) / z({})).toBeCloseTo(0.65 / 0.8, 9);
  const screw = { fastener: "screw-5x100mm-316" };
  expect(z({ ...screw, rope_effect: true }) / z(screw)).toBeLessThanOrEqual(2 + 1e-9);
});

test("Eurocode 5: smooth nails carry no lasting pull, and nothing in wet end grain", () => {
  const lasting = outputs("fastener.withdrawal", { ...ec5, load_duration: "permanent" });
  expect([lasting["capacity_n"], lasting["reason"]]).toEqual([0, expect.stringMatching(/lasting pull/)]);
  const ring = { ...ec5, fastener: "ring-nail-3.1x80", grain: "end" };
  expect(capacity("fastener.lateral", ring)).toBeGreaterThan(0);
  expect(outputs("fastener.lateral", { ...ring, moisture: "wet" })["reason"]).toMatch(/class 3/);
});

test("the wood screws of timber.screw-lateral stand on the same rules", () => {
  const screw = {
    screw: "screw-10x3",
    count: 4,
    side_mm: 38.1,
    specific_gravity: 0.5,
    end_grain: true,
    wet: true,
  };
  const old = outputs("timber.screw-lateral", { code: us.code, ...screw, load_duration: "ten-years" });
  const now = outputs("fastener.lateral", { ...us, fastener: "screw-10x3", grain: "end", moisture: "wet" });
  expect(old["lateral_n"]).toBeCloseTo(now["capacity_n"] as number, 9);
  expect(old["mode"]).toBe(now["governs"]);
});

test("any input within its fields gives finite numbers or problems with a mend, and never breaks", () => {
  const field = (f: (typeof jointFields)[number]): fc.Arbitrary<unknown> => {
    if (f.key === "fastener") return fc.constantFrom(undefined, ...tables.fasteners.map((row) => row.id));
    if (f.key === "hole") return fc.constantFrom(undefined, ...tables.holes.map((row) => row.id));
    const value: fc.Arbitrary<unknown> = f.choices
      ? fc.constantFrom(...f.choices)
      : f.type === "boolean"
        ? fc.boolean()
        : f.type === "integer"
          ? fc.integer({ min: f.min!, max: f.max! })
          : fc.oneof(fc.double({ min: f.min!, max: f.max!, noNaN: true }), fc.constantFrom(f.min!, f.max!));
    return f.optional ? fc.oneof({ weight: 3, arbitrary: value }, fc.constant(undefined)) : value;
  };
  const isFree = new Set([
    "kind",
    "diameter_mm",
    "length_mm",
    "root_mm",
    "thread_mm",
    "tip_mm",
    "head_mm",
    "coating",
  ]);
  const input = fc.record(Object.fromEntries(jointFields.map((f) => [f.key, field(f)]))).map((all) => {
    const named = all["fastener"] !== undefined;
    const kept = Object.entries(all).filter(
      ([key, v]) => v !== undefined && !(named && (isFree.has(key) || /^(fyb|fu|ring|hardened)/.test(key))),
    );
    return { ...Object.fromEntries(kept), lateral_load_n: 100, withdrawal_load_n: 50 } as JsonObject;
  });
  const counts = { ok: 0, not: 0 };
  fc.assert(
    fc.property(input, fc.constantFrom("lateral", "withdrawal", "combined", "guidance"), (all, name) => {
      const { lateral_load_n: _z, withdrawal_load_n: _w, ...joint } = all;
      const outcome = run(`fastener.${name}`, name === "combined" ? all : joint);
      counts[outcome.ok ? "ok" : "not"]++;
      if (!outcome.ok) return outcome.problems.length > 0 && outcome.problems.every((p) => p.mend !== "");
      const numbers = Object.values(outcome.outputs).filter((v) => typeof v === "number");
      return numbers.every((v) => Number.isFinite(v) && v >= 0);
    }),
    { numRuns: 4000, seed: 7 },
  );
  expect(Math.min(counts.ok, counts.not)).toBeGreaterThan(100);
});
