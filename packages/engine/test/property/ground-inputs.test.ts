import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Field, Json, JsonObject } from "../../src/formula/index.ts";
import { groundCalculations } from "../../src/ground/index.ts";

const RUNS = 10_000;
const methods = groundCalculations.filter((c) => c.kind === "method");

/** Numbers a form or a script may send: ordinary ones, ends of ranges, and slips. */
const numbers = (min = -1e9, max = 1e9): fc.Arbitrary<number> =>
  fc.oneof(
    { weight: 12, arbitrary: fc.double({ min: Math.max(0, min), max, noNaN: true }) },
    {
      weight: 12,
      arbitrary: fc
        .double({ min: Math.log(Math.max(1e-3, min)), max: Math.log(Math.max(1e-2, max)), noNaN: true })
        .map((x) => Math.min(max, Math.max(min, Math.exp(x)))),
    },
    { weight: 4, arbitrary: fc.constantFrom(min, max) },
    { weight: 1, arbitrary: fc.constantFrom(0, -1, 1e-12, 1e12, -3.5) },
  );

const rowsFor: Readonly<Record<string, Readonly<Record<string, fc.Arbitrary<Json>>>>> = {
  points: {
    b_mm: fc.constantFrom<Json>(50, 100, 300, 0),
    z_mm: numbers(0.1, 200),
    p_pa: numbers(1, 1e6),
  },
  layers: {
    thickness_mm: numbers(1, 5000),
    soil: fc.constantFrom("soft-peat", "organic-clay", "soft-clay", "nothing"),
    cc: numbers(0.01, 20),
    e0: numbers(0.2, 30),
    ca: numbers(0, 3),
    stress_pa: numbers(1, 1e6),
    unit_weight_n_m3: numbers(8000, 25_000),
  },
  joints: { at_m: numbers(0, 300), off_m: numbers(0, 5), pressure_pa: numbers(0, 1e5) },
};
const bandReading = {
  at_m: numbers(0, 300),
  off_m: numbers(0, 5),
  depth_m: numbers(0, 2),
  su_pa: numbers(10, 5e5),
};
const rawReading = {
  value: numbers(0.01, 500),
  unit: fc.constantFrom("kPa", "Pa", "psf", "psi", "MPa", "bar"),
  instrument: fc.constantFrom("vane", "cone", "laboratory", "thumb"),
  depth_m: numbers(0, 10),
  material: fc.constantFrom("peat", "clay", "mud", "organic-clay", "rock"),
  plasticity_index: numbers(1, 200),
  cone_factor: numbers(5, 40),
  unit_weight_n_m3: numbers(8000, 25_000),
};

/** Mostly whole rows, at times one with something left out. */
const rows = (fields: Readonly<Record<string, fc.Arbitrary<Json>>>, most: number): fc.Arbitrary<Json> =>
  fc.array(
    fc.oneof(
      { weight: 9, arbitrary: fc.record(fields) },
      { weight: 1, arbitrary: fc.record(fields, { requiredKeys: [] }) as fc.Arbitrary<Record<string, Json>> },
    ),
    { maxLength: most },
  ) as fc.Arbitrary<Json>;

/** Points near some law of sinkage, so that many of them can be fitted. */
const lawfulPoints: fc.Arbitrary<Json> = fc
  .record({
    n: numbers(0.05, 2),
    k: numbers(1e4, 1e7),
    bumps: fc.array(fc.double({ min: 0.7, max: 1.4, noNaN: true }), { minLength: 3, maxLength: 9 }),
    plates: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ n, k, bumps, plates }) =>
    bumps.map((bump, i) => ({
      b_mm: 50 * (1 + (i % plates)),
      z_mm: 3 * (i + 1),
      p_pa: Math.abs(k * bump) * (0.003 * (i + 1)) ** Math.abs(n),
    })),
  );

function valueOf(id: string, f: Field): fc.Arbitrary<Json> {
  if (f.key === "terrain") return fc.constantFrom(...tables.ground.terrains.map((t) => t.id), "nowhere");
  if (f.key === "muskeg") return fc.constantFrom("petawawa-a", "petawawa-b", "nowhere");
  if (f.key === "readings") return rows(id === "ground.strength-band" ? bandReading : rawReading, 6);
  if (f.key === "offsets_mm") return fc.array(numbers(-2000, 2000), { maxLength: 5 });
  if (f.key === "points") return fc.oneof(lawfulPoints, rows(rowsFor["points"]!, 6));
  if (f.type === "array") return rows(rowsFor[f.key]!, 6);
  if (f.choices) return fc.constantFrom(...f.choices);
  if (f.key === "trials") return fc.constant(100);
  if (f.type === "integer") return fc.integer({ min: f.min ?? 0, max: f.max ?? 100 });
  if (f.type === "boolean") return fc.boolean();
  return numbers(f.min, f.max);
}

const anyOf = (id: string, fields: readonly Field[]): fc.Arbitrary<JsonObject> =>
  fc.record(Object.fromEntries(fields.map((f) => [f.key, valueOf(id, f)])), {
    requiredKeys: fields.filter((f) => !f.optional).map((f) => f.key),
  });

/** Fields of which an ordinary input has one group or another, not several. */
const either: readonly (readonly (readonly string[])[])[] = [
  [["pressure_pa"], ["sinkage_mm"]],
  [["terrain"], ["muskeg"], ["kc_n_per_m", "kphi_pa", "n"]],
];

/** Half of the inputs as they come, half with one of each group and the whole of it. */
function inputOf(id: string, fields: readonly Field[]): fc.Arbitrary<JsonObject> {
  const has = (keys: readonly string[]): boolean => keys.every((k) => fields.some((f) => f.key === k));
  const groups = either.map((g) => g.filter(has)).filter((g) => g.length > 1);
  const chosen = fc.tuple(...groups.map((g) => fc.constantFrom(...g)));
  const ordinary = chosen.chain((keys) => {
    const dropped = groups.flat(2).filter((k) => !keys.flat().includes(k));
    const kept = fields.filter((f) => !dropped.includes(f.key));
    return anyOf(
      id,
      kept.map((f) => (keys.flat().includes(f.key) ? { ...f, optional: false } : f)),
    );
  });
  return fc.oneof(anyOf(id, fields), ordinary);
}

/** Every number inside is finite. */
function isFinite(v: Json): boolean {
  if (typeof v === "number") return Number.isFinite(v);
  if (typeof v !== "object" || v === null) return v !== undefined;
  return Object.values(v as Record<string, Json>).every(isFinite);
}

const SLOW = 600;
const FAST = Math.ceil((RUNS - SLOW) / (methods.length - 1));
const runsOf = (id: string): number => (id === "ground.strength-band" ? SLOW : FAST);
for (const { id, inputs, run } of methods) {
  const share = runsOf(id);
  test(`${id}: ${share} random inputs give finite figures or problems that name a field and a mend`, () => {
    let good = 0;
    fc.assert(
      fc.property(inputOf(id, inputs), (input) => {
        const outcome = run(input, { tables });
        if (!outcome.ok) {
          expect(outcome.problems.length).toBeGreaterThan(0);
          for (const p of outcome.problems)
            for (const text of [p.place, p.message, p.mend]) expect(text, JSON.stringify(p)).toMatch(/\S/);
          return;
        }
        good++;
        expect(isFinite(outcome.outputs), JSON.stringify(outcome.outputs)).toBe(true);
        for (const step of outcome.working) expect(Number.isFinite(step.value), step.id).toBe(true);
      }),
      { numRuns: share },
    );
    expect(good, "inputs that were answered").toBeGreaterThan(share / 50);
  });
}

test("every formula of the topic: 150 random inputs each give a finite figure or a problem", () => {
  for (const { id, inputs, run } of groundCalculations.filter((c) => c.kind === "formula")) {
    const input = fc.record(Object.fromEntries(inputs.map((f) => [f.key, numbers(-1e6, 1e6)])));
    fc.assert(
      fc.property(input, (values) => {
        const outcome = run(values, { tables });
        if (outcome.ok) expect(isFinite(outcome.outputs), id).toBe(true);
        else expect(outcome.problems[0]!.mend, id).toMatch(/\S/);
      }),
      { numRuns: 150 },
    );
  }
});

test("the eight methods are all tried, ten thousand inputs between them", () => {
  expect(methods.map((m) => m.id).sort()).toEqual([
    "ground.bearing",
    "ground.foot-beside",
    "ground.plate-test-fit",
    "ground.plot-movement",
    "ground.settlement",
    "ground.sinkage",
    "ground.strength-band",
    "ground.vane-correction",
  ]);
  expect(methods.reduce((sum, m) => sum + runsOf(m.id), 0)).toBeGreaterThanOrEqual(RUNS);
});
