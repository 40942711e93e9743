import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  doClash,
  meetsRule,
  resolveRules,
  ruleSource,
  showRuleValue,
  type Rule,
  type RuleProfile,
} from "./index.ts";

const rule = (change: Partial<Rule> = {}): Rule => ({
  id: "a.gap",
  title: "Gap",
  topic: "opening",
  unit: "m",
  value: 0.0127,
  direction: "at-most",
  when: "",
  source: "book",
  at: "page 1",
  status: "seen",
  ...change,
});
const profile = (id: string, rules: readonly Rule[]): RuleProfile => ({
  id,
  name: `Profile ${id}`,
  where: "tests",
  public: false,
  rules,
});
const narrow = profile("narrow", [rule()]);
const wide = profile("wide", [
  rule({ id: "b.gap", topic: "board-gap", value: 0.019, direction: "at-least" }),
]);
const open = profile("open", [rule({ id: "c.gap", value: 0, direction: "as-large-as-can-be" })]);
const profiles = [narrow, wide, open];
const override = {
  rule: "a.gap",
  value: 0.02,
  reason: "agreed with the access officer",
  by: "A. Warden",
  date: "2027-01-05",
};

describe("resolving a choice", () => {
  test("the profile's rules, and every clash once", () => {
    const found = resolveRules({ profile: "narrow", overrides: [] }, profiles, "metric");
    expect(found.problems).toEqual([]);
    expect(found.rules.map((r) => r.origin.kind)).toEqual(["profile"]);
    expect(found.clashes.map((c) => [c.a.id, c.b.id])).toEqual([
      ["a.gap", "b.gap"],
      ["a.gap", "c.gap"],
    ]);
    expect(found.clashes[1]!.message).toContain("as large as can be");
  });

  test("an override with its reason is marked, and can settle a clash", () => {
    const found = resolveRules({ profile: "narrow", overrides: [override] }, profiles, "metric");
    expect(found.rules[0]).toMatchObject({
      value: 0.02,
      origin: { kind: "override", instead_of: 0.0127, by: "A. Warden" },
    });
    expect(found.clashes.map((c) => c.b.id)).toEqual(["c.gap"]);
    const source = ruleSource(found.rules[0]!, {}, "metric");
    expect(source.status).toBe("project");
    expect(source.at).toMatch(
      /project's own value instead of 13 mm: agreed with the access officer \(A. Warden/,
    );
  });

  test.each([
    [{ ...override, reason: " " }, /gives no reason/],
    [{ ...override, rule: "z.gap" }, /has no rule "z.gap"/],
    [{ ...override, value: -1 }, /no number of 0 or more/],
  ] as const)("an override that cannot count changes nothing and is a problem", (own, words) => {
    const found = resolveRules({ profile: "narrow", overrides: [own] }, profiles, "metric");
    expect(found.rules[0]!.value).toBe(0.0127);
    expect(found.problems).toHaveLength(1);
    expect(found.problems[0]!.message).toMatch(words);
  });

  test("an unknown profile is a problem that names the known ones", () => {
    const found = resolveRules({ profile: "none", overrides: [] }, profiles, "metric");
    expect(found.profile).toBeNull();
    expect(found.problems[0]!.mend).toContain("narrow, wide, open");
  });
});

test("two limits clash exactly when no value meets both", () => {
  const side = fc.constantFrom("at-most", "at-least", "about") as fc.Arbitrary<Rule["direction"]>;
  const value = fc.integer({ min: 0, max: 60 });
  fc.assert(
    fc.property(side, value, side, value, (da, va, db, vb) => {
      const [a, b] = [rule({ direction: da, value: va }), rule({ id: "b.gap", direction: db, value: vb })];
      const exact = (r: Rule, v: number): boolean =>
        r.direction === "about" ? v === r.value : meetsRule(r, v);
      const shared = Array.from({ length: 62 }, (_, v) => v).some((v) => exact(a, v) && exact(b, v));
      expect(doClash(a, b)).toBe(!shared);
      expect(doClash(b, a)).toBe(!shared);
    }),
  );
});

test("rules of different things never clash", () =>
  expect(
    doClash(rule(), rule({ id: "b.width", topic: "clear-width", value: 1, direction: "at-least" })),
  ).toBe(false));

test("a rule's value in words: grades as 1 in so many, lengths by the tape, and in mm where the tape has no mark", () => {
  expect(showRuleValue({ topic: "grade", unit: "1", value: 1 / 12 }, "us")).toBe("1:12");
  expect(showRuleValue({ topic: "steep-share", unit: "1", value: 0.3 }, "us")).toBe("30 %");
  expect(showRuleValue({ topic: "opening", unit: "m", value: 0.0127 }, "us")).toBe("1/2 in");
  expect(showRuleValue({ topic: "board-gap", unit: "m", value: 0.01 }, "us")).toBe("3/8 in (10 mm)");
  expect(showRuleValue({ topic: "board-gap", unit: "m", value: 0.01 }, "metric")).toBe("10 mm");
});
