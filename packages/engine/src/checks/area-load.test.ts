import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import { usAsd2018 } from "../codes/index.ts";
import { KG_PER_LB, M_PER_FT, M_PER_IN, N_PER_LBF, PA_PER_PSF } from "../units/index.ts";
import { areaDemand, listsByLimit, tributaryWidths } from "./area-load.ts";
import type { Frame, FrameBuild } from "./frame.ts";
import { frameStructure, statePeaks } from "./frame-analysis.ts";
import { rulePieceCases, ruleEdgeCases } from "./rule-pieces.ts";
import { ruleCase } from "./rule-loads.ts";
import { governing } from "./stringer-demand.ts";
import { stringerVerdict } from "./stringer.ts";
import { stringerModel, type StringerModel } from "./stringer-model.ts";
import { deckOn, liveOnJoint, type BearingJoint } from "./bearing.ts";
import { pointCase } from "./walk-demand.ts";

const context = { tables, code: usAsd2018, units: "us" } as const;
const rule = (id: string) => tables.load_rules.find((r) => r.id === id)!;
const walkway = ruleCase(rule("asce-walkway"), tables);
const iso = ruleCase(rule("iso-walkway"), tables);

const build: FrameBuild = {
  rows: [0, 2, 4, 6, 8].map((ft) => ({ x_m: ft * M_PER_FT, size: "2x4", lay: "flat" })),
  boards: [],
  stringer_m: 1.5 * M_PER_IN,
  platform_sill_m: null,
};
/** Two 2x8 of 8 ft, 36 in apart, under 36 in of clear mesh: 18 in of deck on each. */
const frame: Frame = {
  name: "8 ft module",
  span_m: 8 * M_PER_FT,
  positions_m: [-18 * M_PER_IN, 18 * M_PER_IN],
  size: "2x8",
  lumber: { species: "southern-pine", grade: "no2", incised: false },
  clear_width_m: 36 * M_PER_IN,
  brace_m: 24 * M_PER_IN,
  has_boards: false,
  dead_kg_m: (10 * KG_PER_LB) / M_PER_FT,
};

function modelOf(of: Frame): StringerModel {
  const model = stringerModel(of, context);
  if (!model.ok) throw new Error(JSON.stringify(model.problems));
  return model.value;
}
const near = (value: number, expected: number, share = 0.001): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(share);

describe("the deck that each stringer carries", () => {
  test("two share it; of three at 18 in under 54 in each carries 18 in; an overhang goes to the outer one", () => {
    expect(tributaryWidths([-0.4, 0.4], 0.9)).toEqual([0.45, 0.45]);
    tributaryWidths([-18, 0, 18], 54).forEach((w) => expect(w).toBeCloseTo(18, 9));
    expect(tributaryWidths([-18, 0, 18], 60)).toEqual([21, 18, 21]);
  });

  test("a clear deck that ends inside the stringers is shared as far as it goes", () => {
    expect(tributaryWidths([-10, -9, 9, 10], 12)).toEqual([0, 6, 6, 0]);
  });
});

/*
 * 60 psf by 1.5 ft = 90 lb/ft. L 8 ft: M 90 x 64 / 8 = 720 lb ft, V 360 lb; I 47.635, E' 1.26e6:
 * 5 x 7.5 x 96^4 / (384 x 1.26e6 x 47.635) = 0.1382 in.
 */
describe("60 psf on a 2x8 of 8 ft that carries 18 in of deck (worked by hand)", () => {
  const model = modelOf(frame);
  const p = 60 * PA_PER_PSF;
  test("moment, end shear, deflection", () => {
    near(areaDemand("bending", model, 0, p) / N_PER_LBF / M_PER_FT, 720);
    near(areaDemand("shear", model, 0, p) / N_PER_LBF, 360);
    near(areaDemand("deflection", model, 0, p) / M_PER_IN, 0.1382);
  });

  test("the verdict's working names the rule, its pressure and w L^2 / 8", () => {
    const verdict = stringerVerdict("bending", model, [walkway], context);
    const step = (id: string) => verdict.working.find((s) => s.id === id);
    expect(step("load-rule.asce-walkway")).toMatchObject({ unit: "Pa", source: { status: "seen" } });
    near((step("check.area-line-load")!.value / N_PER_LBF) * M_PER_FT, 90);
    near(step("check.total-moment")!.value / N_PER_LBF / M_PER_FT, 720 + 40);
    expect(verdict.governs).toContain("60 psf");
  });

  test("the whole frame agrees with each stringer by itself: moment to 0.1 %, sag but for the shear part", () => {
    const built = { ...frame, build };
    const structure = frameStructure(built, [walkway], context);
    if (!structure?.ok) throw new Error("no structure");
    const { largest, lines } = statePeaks(structure.value, { name: "stiff", ends: "stiff" }, [walkway]);
    near((largest.moment!.value - largest.moment!.own) / N_PER_LBF / M_PER_FT, 720);
    near(largest.moment!.own / N_PER_LBF / M_PER_FT, 40);
    expect(largest.moment!.at_m).toBeCloseTo(4 * M_PER_FT, 6);
    const sag = largest.sag!.value / M_PER_IN;
    // Shear part: 1.2 w L^2 / (8 G A) with G = E / 16: 1.2 x 7.5 x 96^2 / (8 x 78750 x 10.875) = 0.0121 in.
    near(sag, 0.1382 + 0.0121, 0.01);
    // Even loads load both stringers alike: mirrored stations have one moment.
    const S = lines.moment.most.length / 2;
    for (let s = 0; s < S; s++) expect(lines.moment.most[s]).toBeCloseTo(lines.moment.most[S + s]!, 6);
  });

  test("pushes on the bearings sum to the load and own weight", () => {
    const structure = frameStructure({ ...frame, build }, [walkway], context);
    if (!structure?.ok) throw new Error("no structure");
    const { largest } = statePeaks(structure.value, { name: "stiff", ends: "stiff" }, [walkway]);
    near(largest.push!.value / N_PER_LBF, 360 + 20);
  });
});

describe("a rule's own deflection limit", () => {
  test("cases with one limit stay the same list, so that their peaks are found once", () => {
    const cases = [pointCase("us"), walkway];
    expect(listsByLimit(cases)).toEqual([cases]);
    expect(listsByLimit(cases)[0]).toBe(cases);
    expect(listsByLimit([...cases, iso])).toEqual([cases, [iso]]);
  });

  test("under ISO 14122-2 the limit is L/200, and the case that uses most of its own limit governs", () => {
    const wide = { ...frame, clear_width_m: 2 };
    const verdict = stringerVerdict("deflection", modelOf(wide), [pointCase("us"), iso], context);
    expect(verdict.governs).toContain("2 kN/m2");
    near(verdict.capacity, frame.span_m / 200);
    // Just under the sag of another case, but over its own stricter limit.
    const base = areaDemand("deflection", modelOf(frame), 0, 1000);
    const strict = { ...iso, name: "strict", area_pa: 1000, span_over: 200 };
    const lax = { ...iso, name: "lax", area_pa: 1050 };
    const { span_over: _, ...laxer } = lax;
    const worst = governing("deflection", modelOf(frame), [laxer, strict]);
    expect(worst.load.name).toBe("strict");
    near(worst.utilisation, (base * 200) / frame.span_m);
  });

  test("the same holds in the frame with stiff cross pieces", () => {
    const strict = { ...iso, name: "strict", area_pa: 1000 };
    const { span_over: _, ...lax } = { ...iso, name: "lax", area_pa: 1050 };
    const worst = governing("deflection", modelOf({ ...frame, build }), [lax, strict]);
    expect(worst.peak).not.toBeNull();
    expect(worst.load.name).toBe("strict");
  });
});

describe("rules on one piece, and on a joint", () => {
  const rules = { tables, load_rules: [rule("asce-terrace"), rule("iso-floor-point")] };
  const L = 0.5 as never;

  test("100 psf on a board of 0.14 m: w L^2 / 8, w L / 2, 5 w L^4 / 384; 1.5 kN on 200 mm: P (L/4 - c/8)", () => {
    const [area, point] = rulePieceCases(rules, true, 0.14);
    const w = 100 * PA_PER_PSF * 0.14;
    near(area!.moment(L), (w * 0.25) / 8);
    near(area!.reaction(L), (w * 0.5) / 2);
    near(area!.deflectionTimesStiffness(L), (5 * w * 0.0625) / 384);
    near(point!.moment(L), 1500 * (0.5 / 4 - 0.2 / 8));
    expect([area!.span_over, point!.span_over]).toEqual([undefined, 200]);
  });

  test("on an overhang of 0.3 m: w a^2 / 2, and the patch wholly on the deck", () => {
    const [area, point] = ruleEdgeCases(rules, 1.2, 0.6, 0.14);
    near(area!.moment(L), (100 * PA_PER_PSF * 0.14 * 0.09) / 2);
    near(point!.moment(L), 1500 * 0.2);
    expect(ruleEdgeCases(rules, 0.6, 0.6, 0.14)).toEqual([]);
  });

  test("a joint carries half of both full spans; a platform's share is told as deck", () => {
    const joint = { left_m: 3, right_m: 2, clear_width_m: 0.8 } as BearingJoint;
    expect(deckOn(joint)).toBeCloseTo(2, 9);
    expect(liveOnJoint(joint, iso)).toEqual({ N: 4000, m: 0 });
    expect(liveOnJoint({ ...joint, deck_m2: 3 }, iso).N).toBeCloseTo(6000, 6);
  });
});
