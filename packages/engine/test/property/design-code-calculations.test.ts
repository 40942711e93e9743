import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { designCodes } from "../../src/codes/index.ts";
import type { JsonObject, TraceStep } from "../../src/formula/index.ts";
import { PA_PER_PSI } from "../../src/units/index.ts";
import { ordinaryWood, runCalculation } from "../support/ordinary-woods.ts";

const STRENGTHS = ["fb", "fv", "fcp", "fc", "e", "emin"] as const;
const dryAlone = { use: "edge", wet: false, incised: false, repetitive: false } as const;

describe.each(designCodes.map((c) => [c.id, c] as const))("every calculation under %s", (id, code) => {
  const { species, grade, sizes, board } = ordinaryWood(code);
  const base = { code: id, species, grade, incised: false } as const;
  const size = fc.constantFrom(...sizes);

  const piece = {
    ...base,
    lay: "edge",
    clear_span_mm: 600,
    screw: "screw-10x3",
    screws_per_end: 2,
    stringer_thickness_mm: 45,
    people: 1,
    spacing_mm: 1500,
  } as const;

  test("more load never lowers utilisation: cross piece, boards, seat", () => {
    const frame = {
      ...base,
      size: sizes[2],
      stringers: 2,
      overall_mm: 560,
      clear_width_mm: 600,
      span_mm: 3000,
      cross_piece_spacing_mm: 600,
      boards: false,
      spacing_mm: 1500,
    } as const;
    const use = (calculation: string, input: JsonObject): readonly number[] =>
      (runCalculation(calculation, input).outputs["results"] as readonly JsonObject[]).flatMap((r) =>
        typeof r["utilisation"] === "number" && r["id"] !== "seat.length.asked" ? [r["utilisation"]] : [],
      );
    const asked = (kg: number): readonly (readonly [string, JsonObject])[] => [
      ["check.cross-piece", { ...piece, size: sizes[0], person_kg: kg }],
      [
        "check.deck",
        {
          ...base,
          size: board,
          stringer_distance_mm: 500,
          overall_mm: 550,
          clear_width_mm: 600,
          stringers: 2,
          people: 1,
          spacing_mm: 1500,
          person_kg: kg,
        },
      ],
      [
        "check.seat",
        {
          ...frame,
          dead_kg_per_m: 20,
          people: 3,
          person_kg: kg,
          sill_width_mm: 140,
          joint_gap_mm: 5,
        },
      ],
    ];
    fc.assert(
      fc.property(fc.double({ min: 140, max: 300, noNaN: true }), (kg) => {
        const heavier = asked(kg * 1.2);
        for (const [i, [calculation, input]] of asked(kg).entries()) {
          const [a, b] = [use(calculation, input), use(calculation, heavier[i]![1])];
          expect(a.length, calculation).toBeGreaterThan(0);
          // Eurocode 5 counts on no screw in wet end grain: without any capacity heavier is as bad as light.
          const NOTHING = 1e9;
          a.forEach((u, j) =>
            u === NOTHING ? expect(b[j]).toBe(NOTHING) : expect(b[j], calculation).toBeGreaterThan(u),
          );
        }
      }),
      { numRuns: 15, seed: 2 },
    );
  });

  test("the load factors of the code stand on the demand of a piece, and only where it has any", () => {
    const { outputs, working } = runCalculation("check.cross-piece", {
      ...piece,
      size: sizes[0],
      person_kg: 200,
    });
    const shear = (outputs["results"] as readonly JsonObject[]).find((r) => r["id"] === "cross-piece.shear")!;
    const { live } = code.combinations.find((c) => c.state === "strength" && c.live > 0)!;
    expect((shear["demand_n"] as number) / (200 * 9.80665)).toBeCloseTo(live, 9);
    const steps = working.filter((s) => s.id === "combination.force");
    expect(steps.length > 0).toBe(code.safety === "partial-factors");
    const bending = (outputs["results"] as readonly JsonObject[]).find(
      (r) => r["id"] === "cross-piece.bending",
    )!;
    expect((bending["demand_n_m"] as number) / ((200 * 9.80665 * 0.6) / 4)).toBeCloseTo(live, 9);
  });

  test("joists: more load, wider spacing or a stricter limit never lengthens the span; deeper never shortens it", () => {
    const span = (input: JsonObject): number =>
      runCalculation("timber.joist-span", input).outputs["span_mm"] as number;
    const load = fc.double({ min: 200, max: 8000, noNaN: true });
    fc.assert(
      fc.property(fc.nat(2), load, load, (i, live, dead) => {
        const joist = {
          ...base,
          size: sizes[i]!,
          spacing_mm: 400,
          live_pa: live,
          dead_pa: dead,
          wet: true,
          repetitive: true,
          live_limit: 300,
        };
        const most = span(joist) * (1 + 1e-12);
        expect(span({ ...joist, live_pa: live * 1.2 })).toBeLessThanOrEqual(most);
        expect(span({ ...joist, dead_pa: dead * 1.2 })).toBeLessThanOrEqual(most);
        expect(span({ ...joist, spacing_mm: 600 })).toBeLessThanOrEqual(most);
        expect(span({ ...joist, live_limit: 500 })).toBeLessThanOrEqual(most);
        expect(span({ ...joist, size: sizes[i + 1]! }) * (1 + 1e-12)).toBeGreaterThanOrEqual(span(joist));
      }),
      { numRuns: 40, seed: 3 },
    );
  });

  test("posts: more length carries less, and the load over the capacity is what is used", () => {
    const post = { ...base, wet: true, load_duration: "ten-years", load_n: 3000 } as const;
    fc.assert(
      fc.property(size, fc.double({ min: 300, max: 1500, noNaN: true }), (s, length_mm) => {
        const [short, long] = [length_mm, length_mm * 1.2].map(
          (l) => runCalculation("timber.column", { ...post, size: s, length_mm: l }).outputs,
        );
        expect(long!["capacity_n"]).toBeLessThanOrEqual(short!["capacity_n"] as number);
        expect(short!["utilisation"]).toBeCloseTo(3000 / (short!["capacity_n"] as number), 12);
        expect(short!["stability"]).toBeGreaterThan(0);
        expect(short!["stability"]).toBeLessThanOrEqual(1);
      }),
      { numRuns: 40, seed: 4 },
    );
  });

  test("the working of a post shows each stress that its formulas take, as a step of its own", () => {
    const { working } = runCalculation("timber.column", {
      ...base,
      size: sizes[0],
      length_mm: 900,
      wet: true,
      load_duration: "ten-years",
    });
    const values = working.map((s) => s.value);
    for (const [i, step] of working.entries())
      for (const { symbol, value, unit } of step.inputs)
        if (unit === "Pa") expect(values.slice(0, i), `${step.id} ${symbol}`).toContain(value);
    expect(working.flatMap((s) => s.inputs).filter((s) => s.unit === "Pa").length).toBeGreaterThan(3);
  });

  test("two stringers never count as sharing: the factor is exactly 1, with boards too; three under boards do", () => {
    const frame = {
      ...base,
      size: sizes[2],
      overall_mm: 700,
      clear_width_mm: 700,
      span_mm: 3600,
      cross_piece_spacing_mm: 600,
      boards: true,
      dead_kg_per_m: 15,
      people: 2,
      person_kg: 90,
      spacing_mm: 1500,
    } as const;
    const factor = (stringers: number): number => {
      const { working } = runCalculation("check.stringer-bending", { ...frame, stringers });
      const step = working.find((s) => s.inputs.some((i) => i.symbol === "Fb" || i.symbol === "fm_k"))!;
      const own = working.find((s) =>
        ["us-asd-2018.adjusted.bending", "ec5-2004.design.bending"].includes(s.id),
      )!;
      expect(step).toBeDefined();
      return own.inputs.find((i) => i.symbol === "Cr" || i.symbol === "ksys")!.value;
    };
    expect(factor(2)).toBe(1);
    expect(factor(3)).toBeGreaterThan(1);
  });

  test("the strengths of the shell are those of the code, in pascals", () => {
    const asked = {
      ...base,
      size: sizes[1],
      use: "edge",
      wet: true,
      repetitive: false,
      load_duration: "ten-years",
    };
    const { outputs } = runCalculation("timber.adjusted-values", asked);
    const found = code.member(tables, species, grade, sizes[1]);
    if (!found.ok) throw new Error("no member");
    const direct = code.strength(found.value, { ...dryAlone, wet: true, duration: "ten-years" });
    for (const k of STRENGTHS) expect(outputs[`${k}_pa`], k).toBe(direct[k]);
    expect(Object.keys(outputs).length).toBeGreaterThan(12);
  });
});

describe("units round trip", () => {
  const reference = (code: string, species: string, grade: string, size: string): readonly TraceStep[] =>
    runCalculation("timber.adjusted-values", {
      code,
      species,
      grade,
      size,
      use: "edge",
      wet: false,
      incised: false,
      repetitive: false,
      load_duration: "ten-years",
      column_length_mm: 500,
    }).working;

  test("a tabulated psi comes back from the working to the last digit", () => {
    const row = tables.grades.find((g) => g.id === "douglas-fir-larch-no2")!;
    const steps = reference("us-asd-2018", row.species, row.grade, "2x6");
    for (const [name, psi] of [
      ["fb", row.fb_psi["all"]!.value],
      ["fv", row.fv_psi.value],
      ["fcp", row.fcp_psi.value],
      ["fc", row.fc_psi["all"]!.value],
      ["e", row.e_psi.value],
    ] as const)
      expect(steps.find((s) => s.id === `us-asd-2018.reference.${name}`)!.value / PA_PER_PSI).toBeCloseTo(
        psi,
        6,
      );
  });

  test("a tabulated N/mm2 comes back from the working to the last digit", () => {
    const row = tables.strength_classes.find((c) => c.grade === "c18")!;
    const steps = reference("ec5-2004", row.species, row.grade, "45x145");
    for (const [name, value] of [
      ["fm-k", row.fm_k_mpa.value],
      ["fv-k", row.fv_k_mpa.value],
      ["fc90-k", row.fc90_k_mpa.value],
      ["fc0-k", row.fc0_k_mpa.value],
      ["e0-mean", row.e0_mean_mpa.value],
    ] as const)
      expect(steps.find((s) => s.id === `ec5-2004.class.${name}`)!.value / 1e6).toBeCloseTo(value, 9);
  });
});
