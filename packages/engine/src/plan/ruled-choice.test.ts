// Limits of the profile: US Access Board, ABA 1017.4 (passing spaces of 60 by 60 in, 1000 ft) and 1017.7.1 (1:8).
import { expect, test } from "vitest";
import { samplePlan } from "../../test/plan/sample-plan.ts";
import { yardTables } from "../../test/support/yard-tables.ts";
import type { RuleProfile, Rule } from "../rules/index.ts";
import type { Plan } from "./document.ts";
import { ruledChoice } from "./ruled-choice.ts";

const rule = (id: string, topic: Rule["topic"], unit: Rule["unit"], value: number): Rule => ({
  id,
  title: id,
  topic,
  unit,
  value,
  direction: topic === "passing-size" ? "at-least" : "at-most",
  when: "",
  source: "test",
  at: "",
  status: "practice",
});
const trail: RuleProfile = {
  id: "trail",
  name: "Trail",
  where: "",
  public: true,
  rules: [
    rule("grade", "grade", "1", 1 / 8),
    rule("every", "passing-interval", "m", 304.8),
    rule("size", "passing-size", "m", 1.524),
  ],
};
const free: RuleProfile = { ...trail, id: "free", name: "Free", rules: [] };
const tables = { ...yardTables, rule_profiles: [trail, free] };
const sample = samplePlan();
const plan = (profile: string, layout: Partial<Plan["layout"]> = {}, platform_mm = 1816.1): Plan => ({
  ...sample,
  rules: { profile, overrides: [] },
  kit: { ...sample.kit, platform: { ...sample.kit.platform, side_mm: platform_mm } },
  layout: { ...sample.layout, max_grade: 0.2, passing_every_m: null, ...layout },
});

test("the rules' grade and interval narrow the plan's, and the notes say so", () => {
  const { choice, notes } = ruledChoice(plan("trail"), tables);
  expect([choice.max_grade, choice.passing_every_m]).toEqual([1 / 8, 304.8]);
  expect(notes).toHaveLength(2);
  expect(notes[0]).toContain("at most 1:8");
  expect(notes[1]).toContain("Trail");
});

test("narrower limits of the plan stay, and rules without limits change nothing", () => {
  const own = { max_grade: 0.05, passing_every_m: 20 };
  expect(ruledChoice(plan("trail", own), tables)).toMatchObject({ choice: own, notes: [] });
  expect(ruledChoice(plan("free"), tables)).toEqual({ choice: plan("free").layout, notes: [] });
});

test("a platform too small to pass on is not placed for passing: the check says so", () => {
  const { choice, notes } = ruledChoice(plan("trail", {}, 1206.5), tables);
  expect(choice.passing_every_m).toBeNull();
  expect(notes).toHaveLength(1);
});

test("a profile that the tables lack narrows nothing", () => {
  expect(ruledChoice(plan("none such"), tables).notes).toEqual([]);
});
