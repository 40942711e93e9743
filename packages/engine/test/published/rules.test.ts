// Rules of paths, rails and openings as public pages print them; each test names its page. Rows from memory say so.
import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import { ruleCalculations } from "../../src/checks/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";
import { gradeRuns, meetsRule, resolveRules, type Rule } from "../../src/rules/index.ts";

const FT = 0.3048;
const IN = 0.0254;

function rule(profile: string, id: string): Rule {
  const found = tables.rule_profiles.find((p) => p.id === profile)?.rules.find((r) => r.id === id);
  if (!found) throw new Error(`no rule ${id} in ${profile}`);
  return found;
}
const meets = (profile: string, id: string, value: number): boolean => meetsRule(rule(profile, id), value);

describe("US Access Board, outdoor developed areas (bjspark.com/USAB-3, ABA 1017)", () => {
  test("tread at least 36 in, which is 914 mm", () => {
    expect(Math.round(rule("aba-trail", "aba.width").value * 1000)).toBe(914);
    expect(meets("aba-trail", "aba.width", 36 * IN)).toBe(true);
    expect(meets("aba-trail", "aba.width", 35.9 * IN)).toBe(false);
  });

  test("passing spaces of 60 in at most 1000 ft apart", () => {
    expect(rule("aba-trail", "aba.passing-size").value / IN).toBeCloseTo(60, 9);
    expect(meets("aba-trail", "aba.passing-interval", 1000 * FT)).toBe(true);
    expect(meets("aba-trail", "aba.passing-interval", 2500 * FT)).toBe(false);
  });

  test("openings stop a ball over 1/2 in: 12.7 mm is met, 13 mm is not", () => {
    expect(meets("aba-trail", "aba.opening", 0.0127)).toBe(true);
    expect(meets("aba-trail", "aba.opening", 0.013)).toBe(false);
  });

  test("a step on boards over 1/2 in is not met; steps stand 48 in apart", () => {
    expect(meets("aba-trail", "aba.step", 0.5 * IN)).toBe(true);
    expect(meets("aba-trail", "aba.step", 0.51 * IN)).toBe(false);
    expect(meets("aba-trail", "aba.step-distance", 48 * IN)).toBe(true);
  });

  test("cross slope on boards: 1:48 is met, 1:40 is not", () => {
    expect(meets("aba-trail", "aba.cross-slope", 1 / 48)).toBe(true);
    expect(meets("aba-trail", "aba.cross-slope", 1 / 40)).toBe(false);
  });
});

describe("ABA 1017.7.1, running slope (corada.com)", () => {
  const rules = tables.rule_profiles.find((p) => p.id === "aba-trail")!.rules;
  const runOf = (grade: number, length_ft: number) =>
    gradeRuns([{ part: "a", length_m: length_ft * FT, rise_m: grade * length_ft * FT }], rules).runs[0]!;
  const isMet = (grade: number, length_ft: number): boolean => {
    const run = runOf(grade, length_ft);
    return run.kind !== "over" && (run.rule === null || meetsRule(run.rule, run.length_m));
  };

  test("5 per cent may be of any length", () => expect(isMet(0.05, 5000)).toBe(true));
  test.each([
    [1 / 12, 200],
    [1 / 10, 30],
    [1 / 8, 10],
  ] as const)("a grade of %d may be %i ft long and no longer", (grade, most) => {
    expect(isMet(grade, most)).toBe(true);
    expect(isMet(grade, most + 0.1)).toBe(false);
  });
  test("1:9 for 20 ft is not met: 1:10 to 1:8 is limited to 10 ft", () => {
    expect(runOf(1 / 9, 20).rule?.value).toBeCloseTo(10 * FT, 9);
    expect(isMet(1 / 9, 20)).toBe(false);
  });
  test("steeper than 1:8 is never met", () => expect(isMet(1 / 7.9, 1)).toBe(false));
  test("at most 30 per cent of the length steeper than 1:12", () => {
    const share = rule("aba-trail", "aba.steep-share");
    expect([share.value, share.steeper_than]).toEqual([0.3, 1 / 12]);
  });
});

describe("2010 ADA Standards (bluedag.com; corada.com 405)", () => {
  test("passing spaces at most 200 ft apart", () => {
    expect(meets("ada-route", "ada.passing-interval", 200 * FT)).toBe(true);
    expect(meets("ada-route", "ada.passing-interval", 201 * FT)).toBe(false);
  });

  test("a ramp of 1:12 that rises 12 in is 12 ft long and needs handrails: the rise is over 6 in", () => {
    const rise = 12 * IN;
    expect(rise / rule("ada-route", "ada.grade").value / FT).toBeCloseTo(12, 9);
    expect(meets("ada-route", "ada.run-rise", rise)).toBe(true);
    expect(meets("ada-route", "ada.rise-without-rail", rise)).toBe(false);
    expect(meets("ada-route", "ada.rise-without-rail", 6 * IN)).toBe(true);
  });

  test("edge protection 4 in high", () =>
    expect(rule("ada-route", "ada.curb-height").value / IN).toBeCloseTo(4, 9));
});

describe("falls and rails", () => {
  test("US Forest Service, railings (htm07232329): a drop over 30 in needs a guard of 42 in", () => {
    expect(meets("building-guard", "guard.rail", 30 * IN)).toBe(true);
    expect(meets("building-guard", "guard.rail", 30.1 * IN)).toBe(false);
    expect(rule("building-guard", "guard.rail-height").value / IN).toBeCloseTo(42, 9);
  });
  test("29 CFR 1910.23, old text (docslib.org/doc/5324822): a runway 4 ft over ground needs a rail", () => {
    expect(meets("osha-workplace", "osha.rail", 3.99 * FT)).toBe(true);
    expect(meets("osha-workplace", "osha.rail", 4 * FT)).toBe(false);
  });
  test("US Forest Service, curbs: a trail bridge without a rail must have a curb at any height", () => {
    expect(meets("trail-structures", "trail.curb", 0)).toBe(true);
    expect(meets("trail-structures", "trail.curb", 0.05)).toBe(false);
  });
  test("New Zealand consent guidance, as quoted: a fall of 1.2 m needs no consent but a barrier", () => {
    expect(meets("nz-structures", "nz.consent", 1.2)).toBe(true);
    expect(meets("nz-structures", "nz.rail", 1.2)).toBe(false);
    expect(meets("nz-structures", "nz.consent", 1.5)).toBe(true);
    expect(meets("nz-structures", "nz.rail", 1)).toBe(false);
    expect(meets("nz-structures", "nz.rail", 0.99)).toBe(true);
  });
});

describe("make-up of boardwalks", () => {
  test("US Forest Service, Trail Notebook 2004, page 26: puncheon gap 3/4 in, boards 18 in, notch one third", () => {
    expect(meets("trail-structures", "trail.gap", 0.75 * IN)).toBe(true);
    expect(meets("trail-structures", "trail.gap", 0.7 * IN)).toBe(false);
    expect(meets("trail-structures", "trail.board-length", 18 * IN)).toBe(true);
    expect(meets("trail-structures", "trail.notch", 0.34)).toBe(false);
  });
  test("US Forest Service, Wetland Trail Design and Construction, page 6: drift pins 24 to 30 in", () => {
    for (const [length, both] of [
      [23, false],
      [24, true],
      [30, true],
      [31, false],
    ] as const)
      expect(
        meets("trail-structures", "trail.pin-least", length * IN) &&
          meets("trail-structures", "trail.pin-most", length * IN),
      ).toBe(both);
  });
  test("US Forest Service, foundations (01232833 found03): screw-pile leads of 3.5 to 7 ft", () => {
    expect(rule("trail-structures", "trail.pile-lead-least").value / FT).toBeCloseTo(3.5, 9);
    expect(rule("trail-structures", "trail.pile-lead-most").value / FT).toBeCloseTo(7, 9);
  });
  test("Scottish grant: boards 1600 x 150 x 50 mm, posts 600 mm in, 1:12", () => {
    const values = ["board-length", "board-width", "board-thickness", "post-depth"].map(
      (id) => rule("scottish-grant", `grant.${id}`).value,
    );
    expect(values).toEqual([1.6, 0.15, 0.05, 0.6]);
  });
  test("Paths for All: 1200 mm one way, 1700 mm two ways, gaps of 10 mm", () => {
    expect(["width", "two-way", "gap"].map((id) => rule("uk-paths", `uk.${id}`).value)).toEqual([
      1.2, 1.7, 0.01,
    ]);
    expect(meets("uk-paths", "uk.gap", 0.0127)).toBe(true);
    expect(meets("uk-paths", "uk.gap", 0.019)).toBe(false);
  });
  test("Fen Management Handbook, page 248: posts of 100 mm every 2 m", () => {
    expect(["post-size", "post-spacing"].map((id) => rule("uk-paths", `uk.${id}`).value)).toEqual([0.1, 2]);
  });
  test("St. Lucie County sample permit: deck 5 ft over mean high water, planks to 8 in, gaps from 1/2 in", () => {
    expect(meets("coastal-pier", "pier.over-high-water", 5 * FT)).toBe(true);
    expect(meets("coastal-pier", "pier.over-high-water", 4.9 * FT)).toBe(false);
    expect(meets("coastal-pier", "pier.board-width", 8 * IN)).toBe(true);
    expect(meets("coastal-pier", "pier.gap", 0.4 * IN)).toBe(false);
  });
  test("Small docks (cdn.slideserve.com/balin): a deck 4 ft wide asks for 4 ft of height", () => {
    const height = ruleCalculations.find((c) => c.id === "rules.height-for-width")!;
    const outcome = height.run(
      { k: rule("coastal-pier", "pier.height-per-width").value, w_m: 4 * FT },
      { tables },
    );
    expect(outcome.ok && Number(outcome.outputs["h_m"]) / FT).toBeCloseTo(4, 9);
  });
  test("NRCS code 568: a public span of 21 ft falls under bridge inspection, one of 20 ft does not", () => {
    expect(meets("aba-trail", "public.span", 20 * FT)).toBe(true);
    expect(meets("aba-trail", "public.span", 21 * FT)).toBe(false);
    expect(
      tables.rule_profiles.find((p) => p.id === "staff-access")!.rules.some((r) => r.topic === "public-span"),
    ).toBe(false);
  });
});

test("US Access Board 1/2 in against Trail Notebook 3/4 in: the clash names both rules and both profiles", () => {
  const { clashes } = resolveRules({ profile: "aba-trail", overrides: [] }, tables.rule_profiles, "us");
  const clash = clashes.find((c) => c.b.id === "trail.gap")!;
  for (const words of [
    "Deck openings",
    "at most 1/2 in",
    "Gap between deck boards",
    "at least 3/4 in",
    "Accessible trail",
    "Trail bridges",
  ])
    expect(clash.message).toContain(words);
});

test("the calculations of the shell give the printed answers (ABA 1017.7.1, 1017.7.2)", () => {
  const run = (id: string, input: JsonObject): JsonObject => {
    const outcome = ruleCalculations.find((c) => c.id === id)!.run(input, { tables });
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    return outcome.outputs;
  };
  expect(run("rules.held-against", { profile: "aba-trail", rule: "aba.cross-slope", value: 1 / 40 })).toEqual(
    {
      meets: false,
      says: "at most 1:48",
    },
  );
  const steps = [{ length_mm: 20 * 304.8, rise_mm: (20 * 304.8) / 9 }];
  const { runs } = run("rules.grade-runs", { profile: "aba-trail", steps }) as { runs: JsonObject[] };
  expect(runs[0]).toMatchObject({ kind: "band", meets: false });
  expect(runs[0]!["limit_mm"]).toBeCloseTo(3048, 6);
  const unknown = ruleCalculations
    .find((c) => c.id === "rules.profile-rules")!
    .run({ profile: "none" }, { tables });
  expect(unknown.ok).toBe(false);
});
