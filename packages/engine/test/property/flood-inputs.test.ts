import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anchorCalculations } from "../../src/anchors/index.ts";
import { floodCalculations } from "../../src/flood/index.ts";
import type { Calculation, Field, Json, JsonObject } from "../../src/formula/index.ts";
import type { CalcContext } from "../../src/materials/index.ts";

const all: readonly Calculation<CalcContext>[] = [...floodCalculations, ...anchorCalculations];
const methods = all.filter((c) => c.kind === "method");
const formulas = all.filter((c) => c.kind === "formula");

/** Half spread evenly over the range, half over the powers of two, which crowd about zero. */
const real = (min: number, max: number): fc.Arbitrary<Json> =>
  fc.oneof(
    fc.integer({ min: 0, max: 1_000_000 }).map((i) => min + ((max - min) * i) / 1_000_000),
    fc.double({ min, max, noNaN: true, noDefaultInfinity: true }),
  );
const wild: fc.Arbitrary<Json> = fc.constantFrom<Json>(
  0,
  -1,
  -0.001,
  1e-12,
  1e12,
  "",
  "x",
  true,
  null,
  [],
  {},
);
const mostly = (good: fc.Arbitrary<Json>): fc.Arbitrary<Json> =>
  fc.oneof({ weight: 120, arbitrary: good }, { weight: 1, arbitrary: wild });

/** Values of a field: its ends, what lies between, now and then nonsense. */
function valueOf(field: Field): fc.Arbitrary<Json> {
  const { min = -1e6, max = 1e6 } = field.key === "height_mm" ? { min: 1, max: 4000 } : field;
  const lists: Readonly<Record<string, fc.Arbitrary<Json>>> = {
    pieces: listOf(pieceEntry),
    parts: listOf(
      fc.record({
        id: fc.string(),
        pieces: listOf(pieceEntry),
        weight_share: real(0, 1),
        hold_n: real(0, 5000),
      }),
    ),
    obstacles: listOf(
      fc.record({
        name: fc.constant("post"),
        count: fc.integer({ min: 1, max: 40 }),
        width_mm: real(1, 500),
        bottom_mm: real(0, 900),
        top_mm: real(1, 3000),
      }),
    ),
    links: listOf(fc.record({ name: fc.constantFrom("anchors", "screws"), capacity_n: real(0, 1e4) })),
    stakes: listOf(
      fc.record({
        name: fc.constant("stake"),
        shape: fc.constantFrom("round", "square"),
        size_mm: real(20, 150),
        lengths_mm: fc.array(real(900, 3000), { maxLength: 3 }),
        bending_mpa: real(1, 30),
      }),
    ),
    ice_months: fc.array(fc.integer({ min: 0, max: 12 }), { maxLength: 4 }),
    undersides_mm: fc.array(
      fc.oneof({ weight: 30, arbitrary: real(0, 3000) }, { weight: 1, arbitrary: real(-1, 0) }),
      { maxLength: 4 },
    ),
  };
  switch (field.type) {
    case "array":
      return lists[field.key]!;
    case "boolean":
      return fc.boolean();
    case "integer":
      return fc.integer({ min, max });
    case "string":
      return field.choices
        ? fc.constantFrom(...field.choices)
        : fc.constantFrom("2026-11-30", "2027-02-28", "2027-06-01", "2027-13-01", "post");
    default:
      return fc.oneof(real(min, max), real(min, Math.min(max, min + 1000)), fc.constantFrom(min, max));
  }
}

const listOf = (entry: fc.Arbitrary<Json>): fc.Arbitrary<Json> => fc.array(mostly(entry), { maxLength: 4 });
const pieceEntry: fc.Arbitrary<Json> = fc
  .record({
    bottom: real(-500, 500),
    height: fc.oneof({ weight: 40, arbitrary: real(1, 900) }, { weight: 1, arbitrary: real(-5, 5) }),
    volume: real(1e-6, 1),
    wood: fc.boolean(),
    state: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ bottom, height, volume, wood, state }) => ({
    name: "piece",
    bottom_mm: bottom,
    top_mm: (bottom as number) + (height as number),
    volume_m3: volume,
    ...(wood
      ? {
          gravity: 0.42,
          driest: "dry-19",
          wettest: (["dry-12", "dry-19", "wet", "waterlogged"] as const)[state as number]!,
        }
      : { density_kg_m3: 950 }),
  }));

/** Fields that come together, as those of a piece or of a deck, share the first word of their key. */
const groupOf = (key: string): string => key.split("_")[0]!;

/** A random input: each field most often in its range, optional groups given or left out as a whole, most often. */
function inputOf(calculation: Calculation<CalcContext>): fc.Arbitrary<JsonObject> {
  const { inputs } = calculation;
  const values = fc.record(Object.fromEntries(inputs.map((f) => [f.key, mostly(valueOf(f))])));
  const groups = [...new Set(inputs.map((f) => groupOf(f.key)))];
  const given = fc.record(Object.fromEntries(groups.map((g) => [g, fc.boolean()])));
  const stray = fc.record(Object.fromEntries(inputs.map((f) => [f.key, fc.integer({ min: 0, max: 199 })])));
  return fc.tuple(values, given, stray).map(([all, keeps, strays]) => {
    const kept = inputs.filter((f) => !f.optional || keeps[groupOf(f.key)] !== (strays[f.key] === 0));
    return Object.fromEntries(kept.map((f) => [f.key, all[f.key]!]));
  });
}

/** Every number anywhere in a value is finite. */
function isFinite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value === "object" && value !== null) return Object.values(value).every(isFinite);
  return value !== undefined;
}

/** Runs one input and says what is wrong with the answer; null = a finite answer or problems with names and mends. */
function faultOf(
  calculation: Calculation<CalcContext>,
  input: JsonObject,
): { ok: boolean; fault: string | null } {
  const outcome = calculation.run(input, { tables });
  if (outcome.ok) {
    const known = new Set(calculation.outputs.map((f) => f.key));
    const unknown = Object.keys(outcome.outputs).filter((key) => !known.has(key));
    if (unknown.length > 0) return { ok: true, fault: `unlisted output ${unknown.join(", ")}` };
    return { ok: true, fault: isFinite(outcome.outputs) && isFinite(outcome.working) ? null : "not finite" };
  }
  const keys = [...calculation.inputs.map((f) => f.key), "input"];
  const unnamed = outcome.problems.find(
    (p) => !keys.some((key) => p.place.startsWith(key)) || p.message === "" || p.mend === "",
  );
  if (outcome.problems.length === 0) return { ok: false, fault: "refused without a problem" };
  return { ok: false, fault: unnamed ? `problem without a name: ${JSON.stringify(unnamed)}` : null };
}

describe("10,000 random inputs and more: a finite answer, or a problem that names its field and says how to mend it", () => {
  test.each(methods.map((c) => [c.id, c] as const))("%s", (_id, calculation) => {
    let answered = 0;
    fc.assert(
      fc.property(inputOf(calculation), (input) => {
        const { ok, fault } = faultOf(calculation, input);
        if (ok) answered++;
        expect(fault).toBeNull();
      }),
      { numRuns: 1000 },
    );
    expect(answered, `${calculation.id} never answered`).toBeGreaterThan(100);
  });

  test("the formulas of both topics", () => {
    expect(formulas.length).toBeGreaterThan(90);
    for (const calculation of formulas)
      fc.assert(
        fc.property(inputOf(calculation), (input) => {
          expect(faultOf(calculation, input).fault, calculation.id).toBeNull();
        }),
        { numRuns: 60 },
      );
  });

  test("there are the methods that are asked for", () => {
    const ids = methods.map((c) => c.id).sort();
    expect(ids).toEqual([
      "anchor.frost",
      "anchor.lateral",
      "anchor.pullout",
      "anchor.stakes-needed",
      "flood.buoyancy",
      "flood.drag",
      "flood.floats-first",
      "flood.ice",
      "flood.log-impact",
      "flood.tether",
      "flood.wave",
      "flood.wrack",
    ]);
  });
});
