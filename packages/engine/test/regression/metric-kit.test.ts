import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import { metricKit } from "../support/metric-kit.ts";
import { checksInput, checkedPlan, straightLayout } from "../support/straight-walkway.ts";
import { codeFitProblems, runChecks } from "../../src/checks/index.ts";
import { kitFigures } from "../../src/kit-figures/index.ts";
import { moduleMasses, takeOff } from "../../src/materials/index.ts";
import { moduleDrawing, rampPieces, sectionOf, validateKit } from "../../src/kit/index.ts";

const { sizes } = tables;

describe("a kit of metric sizes", () => {
  test("is a kit that can be built: no fault, no warning", () => {
    expect(validateKit(metricKit, tables)).toEqual([]);
  });

  test("a wood that no table holds is a fault that names classes beside grades", () => {
    const lumber = { ...metricKit.lumber, grade: "c99" };
    const [fault] = validateKit({ ...metricKit, lumber }, tables);
    expect(fault).toMatchObject({ place: "kit.lumber", value: "softwood c99" });
    expect(fault!.mend).toMatch(/southern-pine no2.*softwood c24/);
  });

  test("sections are the millimetres of the name, to a millionth", () => {
    for (const { id } of sizes.filter((s) => s.nominal_width_in === null)) {
      const [t, w] = id.split("x").map(Number);
      const section = sectionOf(sizes, id);
      expect(section.thickness_mm).toBeCloseTo(t!, 9);
      expect(section.width_mm).toBeCloseTo(w!, 9);
    }
  });

  test("one module takes off two stringers, 24 boards and cross pieces by hand count, and its drawing draws them all", () => {
    const layout = { parts: [straightLayout([3.595]).parts[0]!], joints: [] };
    const lines = takeOff(metricKit, layout, sizes).timber;
    const count = (size: string, use: string): number =>
      lines
        .filter((l) => l.size === size)
        .flatMap((l) => l.uses)
        .filter((u) => u.use === use)
        .reduce((n, u) => n + u.count, 0);
    expect([count("45x195", "stringer"), count("28x145", "deck board")]).toEqual([2, 24]);
    expect(count("45x95", "cross piece")).toBe(4);
    const drawing = moduleDrawing(metricKit, 3595, sizes);
    expect(drawing.plan.filter((p) => p.role === "deck board")).toHaveLength(24);
  });

  test("its mass is the volume of hand-counted pieces by the density of C24 at 19 % moisture", () => {
    const timber = moduleMasses(metricKit, sizes).module(3.595).timber_m3;
    const stringers = 2 * 3.595 * 0.045 * 0.195;
    const boards = 24 * 0.75 * 0.028 * 0.145;
    const cross = 4 * 0.61 * 0.045 * 0.095;
    const curbs = 2 * 3.595 * 0.045 * 0.045;
    expect(timber).toBeCloseTo(stringers + boards + cross + curbs, 9);
    const figures = kitFigures(metricKit, tables, [], 2);
    const module = figures.modules.find((m) => m.length_mm === 3595)!;
    const G = 420 / (1120 - 0.009 * 420 * 12);
    const rho = (1000 * G * 1.19) / (1 + 0.009 * G * 19);
    expect(module.mass_new.value).toBeCloseTo(timber * rho, 6);
  });

  test("the cleats of its ramp come from its own yard", () => {
    const cleats = rampPieces(metricKit, 2395, sizes).filter((p) => p.role === "cleat");
    expect(cleats.length).toBeGreaterThan(3);
    expect(new Set(cleats.map((p) => p.size))).toEqual(new Set(["22x45"]));
  });
});

describe("checks of that kit under Eurocode 5", () => {
  const input = (code: "us-asd-2018" | "ec5-2004") =>
    checksInput({
      plan: checkedPlan({ kit: metricKit, code, units: "metric" }),
      layout: {
        ...straightLayout([3.595, 2.395]),
        joints: straightLayout([3.595, 2.395]).joints.map((j) => ({
          ...j,
          support: "sleeper",
          support_height_m: 0.18,
        })),
      },
      masses: moduleMasses(metricKit, sizes),
    });

  test("all run: stringers, boards, seats and ground are judged by its clauses, no word of NDS among the rules", () => {
    const results = runChecks(input("ec5-2004"));
    const judged = results.filter((r) => r.status === "pass" || r.status === "fail");
    const kinds = new Set(judged.map((r) => r.kind));
    for (const kind of ["stringer-bending", "stringer-shear", "deck", "seat", "bearing", "lifting"] as const)
      expect(kinds, kind).toContain(kind);
    const rules = results.filter((r) => ["stringer-bending", "stringer-shear"].includes(r.kind));
    expect(new Set(rules.map((r) => r.rule.id))).toEqual(new Set(["en-1995-1-1"]));
    expect(results.some((r) => r.rule.id.startsWith("awc-nds"))).toBe(false);
    for (const r of judged)
      if ("working" in r)
        for (const step of r.working) expect(step.source.id, `${r.id} ${step.id}`).not.toMatch(/awc-nds/);
  });

  test("what would pass is named from the same yard", () => {
    const weak = { ...metricKit, stringers: { ...metricKit.stringers, size: "45x95" } };
    const plan = { ...input("ec5-2004").plan, kit: weak };
    const bending = runChecks({ ...input("ec5-2004"), plan }).find(
      (r) => r.kind === "stringer-bending" && r.status === "fail",
    );
    const change = bending?.status === "fail" ? bending.backwards.change : null;
    expect(change).toMatch(/45x\d+ stringers/);
    expect(change).not.toMatch(/\b2x\d/);
  });

  test("under the US code the wood cannot be checked, and the words say why and what to use", () => {
    const results = runChecks(input("us-asd-2018"));
    expect(new Set(results.map((r) => r.status))).toEqual(new Set(["cannot-check"]));
    const { missing } = results[0] as { missing: readonly string[] };
    expect(missing.join(" ")).toMatch(/species: "softwood" is graded for another design code/);
    expect(missing.join(" ")).toMatch(/southern-pine/);
    expect(missing.join(" ")).toMatch(/45x195 is a metric size.*Use one of: .*2x8/);
  });

  test("a plan whose code has no values for its wood is told so, by the place in the plan file", () => {
    expect(codeFitProblems(input("ec5-2004").plan, tables)).toEqual([]);
    const problems = codeFitProblems(input("us-asd-2018").plan, tables);
    expect(problems.map((p) => [p.place, p.severity])).toEqual([
      ["kit.lumber.species", "warning"],
      ["kit.lumber.grade", "warning"],
      ["kit.stringers.size", "warning"],
      ["kit.cross_pieces.size", "warning"],
      ["kit.platform.stringers.size", "warning"],
      ["kit.platform.cross_pieces.size", "warning"],
      ["kit.deck.size", "warning"],
    ]);
    expect(codeFitProblems(checkedPlan(), tables)).toEqual([]);
    const graded = codeFitProblems(checkedPlan({ code: "ec5-2004" }), tables);
    expect(graded.map((p) => p.place)).toEqual(["kit.lumber.species", "kit.lumber.grade"]);
    expect(graded[1]!.mend).toContain("c24");
  });
});
