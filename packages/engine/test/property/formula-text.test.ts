import { readdirSync, existsSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import * as fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import type { AnyFormula, FormulaSpec } from "../../src/formula/index.ts";
import type { Unit } from "../../src/units/index.ts";
import { evaluateText } from "../support/evaluate-text.ts";

/** Every formula that any topic of the engine exports, alone, in a list or in a record. */
const formulas = new Map<string, AnyFormula>();
const duplicates: string[] = [];

const isFormula = (v: unknown): v is AnyFormula =>
  typeof v === "function" && typeof (v as { spec?: FormulaSpec }).spec?.text === "string";

function collect(value: unknown): void {
  if (isFormula(value)) {
    const known = formulas.get(value.spec.id);
    if (known && known !== value) duplicates.push(value.spec.id);
    formulas.set(value.spec.id, value);
  } else if (Array.isArray(value)) value.forEach(collect);
}

beforeAll(async () => {
  const src = join(import.meta.dirname, "../../src");
  for (const topic of readdirSync(src)) {
    const index = join(src, topic, "index.ts");
    if (!existsSync(index)) continue;
    const exported = (await import(pathToFileURL(index).href)) as Record<string, unknown>;
    Object.values(exported).forEach(collect);
  }
});

/** Ordinary sizes of each unit, so that a formula is tried where it lives. */
const ranges: Readonly<Record<Unit, readonly [number, number]>> = {
  "1": [0.05, 40],
  m: [0.01, 20],
  m2: [1e-4, 50],
  m3: [1e-6, 5],
  m4: [1e-9, 1e-3],
  kg: [0.1, 2000],
  "kg/m": [0.1, 500],
  "kg/m2": [0.1, 500],
  "kg/m3": [100, 8000],
  N: [1, 1e5],
  "N/m": [1, 1e5],
  "N*m": [1, 1e5],
  Pa: [1e2, 1e10],
  "N*m2": [1, 1e7],
  "N/m3": [1, 1e5],
  "m/s": [0.01, 10],
  s: [0.1, 1e5],
  Hz: [0.1, 100],
  h: [0.01, 1e4],
  rad: [0, 1.5],
  money: [0.01, 1e6],
};

const argumentsOf = (spec: FormulaSpec): fc.Arbitrary<Record<string, number>> =>
  fc.record(
    Object.fromEntries(
      Object.entries(spec.inputs).map(([symbol, unit]) => {
        const [low, high] = ranges[unit];
        const from = Math.log(Math.max(low, 1e-3 * high, 1e-12));
        return [symbol, fc.double({ min: from, max: Math.log(high), noNaN: true }).map((x) => Math.exp(x))];
      }),
    ),
  );

/** The code's value, or NaN where the formula refuses. */
function valueOf(formula: AnyFormula, args: Record<string, number>): number {
  try {
    return formula(args as never);
  } catch {
    return NaN;
  }
}

describe("every formula", () => {
  test("there are formulas to hold", () => expect(formulas.size).toBeGreaterThan(80));

  test("has an id of its own", () => expect(duplicates).toEqual([]));

  test("prints a text that computes what its code computes", () => {
    for (const formula of formulas.values()) {
      let finite = 0;
      fc.assert(
        fc.property(argumentsOf(formula.spec), (args) => {
          const code = valueOf(formula, args);
          const text = evaluateText(formula.spec.text, args);
          if (Number.isNaN(code)) return !Number.isFinite(text);
          finite++;
          return Math.abs(text - code) <= 1e-9 * Math.max(Math.abs(code), 1e-12);
        }),
        { numRuns: 60, seed: 20_261_124 },
      );
      expect(finite, `${formula.spec.id} was never finite`).toBeGreaterThan(5);
    }
  });

  test("names a source with a title, says where it holds and uses each of its inputs", () => {
    for (const { spec } of formulas.values()) {
      expect(spec.source.title.trim(), spec.id).not.toBe("");
      expect(spec.source.id.trim(), spec.id).not.toBe("");
      expect(spec.validity.trim(), spec.id).not.toBe("");
      for (const symbol of Object.keys(spec.inputs))
        expect(
          new RegExp(`(?<![\\w'])${symbol}(?![\\w'])`).test(spec.text),
          `${spec.id} does not use ${symbol}`,
        ).toBe(true);
    }
  });
});
