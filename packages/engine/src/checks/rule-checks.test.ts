// Limits are those of the rule profiles: each has its source beside it in data/src/rules, and the ones that public pages
// print are held against those pages in engine/test/published/rules.test.ts. Here only what the checks make of them.
import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import {
  checkedPlan,
  checksInput,
  levelSite,
  stoutKit,
  straightLayout,
} from "../../test/support/straight-walkway.ts";

import type { Kit } from "../kit/index.ts";

import type { Plan } from "../plan/document.ts";

import { engineerFlags, runChecks, type RuleCheckKind } from "./index.ts";

import {
  FT,
  IN,
  check,
  byId,
  statusOf,
  decked,
  withPlatform,
  type Setup,
} from "../../test/support/rule-setup.ts";

describe("metals and preservatives", () => {
  const coated = (coating: "plain-zinc" | "hot-dip-zinc" | "stainless-304" | "stainless-316") =>
    tables.fasteners.map((f) => ({ ...f, coating }));
  const pairing = (
    id: string,
    preservative: string | null,
    fasteners: typeof tables.fasteners,
    exposure: Plan["water"]["exposure"] = "fresh",
  ): string => {
    const kit: Kit = { ...stoutKit, lumber: { ...stoutKit.lumber, preservative, treatment: "treated" } };
    const plan = checkedPlan({ kit, water: { exposure, series: null } });
    return statusOf(runChecks(checksInput({ plan, tables: { ...tables, fasteners } })), `pairing.${id}`);
  };

  test("zinc plate in copper-treated lumber is not met; hot-dip zinc is", () => {
    expect(pairing("treatment", "ca-c", coated("plain-zinc"))).toBe("fail");
    expect(pairing("treatment", "ca-c", coated("hot-dip-zinc"))).toBe("pass");
    expect(pairing("treatment", null, coated("plain-zinc"))).toBe("cannot-check");
  });
  test("near salt: stainless 316 is met, 304 and zinc plate are not", () => {
    expect(pairing("salt", "cca", coated("stainless-316"), "salt")).toBe("pass");
    expect(pairing("salt", "cca", coated("stainless-304"), "brackish")).toBe("fail");
    expect(pairing("salt", "cca", coated("plain-zinc"), "salt")).toBe("fail");
    expect(pairing("salt", "cca", coated("plain-zinc"))).toBe("not-applicable");
  });
  test("stainless beside zinc plate is not met", () => {
    const mixed = tables.fasteners.map((f) => ({
      ...f,
      coating: f.kind === "clip" ? ("stainless-304" as const) : ("plain-zinc" as const),
    }));
    expect(pairing("mixed", "ca-c", mixed)).toBe("fail");
    expect(pairing("mixed", "ca-c", coated("stainless-304"))).toBe("pass");
  });
  test.each(["creosote", "penta"])("%s is barred, and the reason is given", (id) => {
    expect(pairing("preservative", id, coated("hot-dip-zinc"))).toBe("fail");
    const kit: Kit = { ...stoutKit, lumber: { ...stoutKit.lumber, preservative: id } };
    const found = byId(check({ plan: { kit } }), "pairing.preservative.broken")!;
    expect(found.status === "fail" && found.backwards.carries).toContain("not for small docks");
  });
  test("copper azole is not barred in fresh water, and is in salt water", () => {
    expect(pairing("preservative", "ca-c", coated("hot-dip-zinc"))).toBe("pass");
    expect(pairing("preservative", "ca-c", coated("hot-dip-zinc"), "salt")).toBe("fail");
    expect(pairing("preservative", "acza", coated("stainless-316"), "salt")).toBe("cannot-check");
  });
});

describe("other rules", () => {
  test("a deck 4 ft wide at 3 ft wants 4 ft", () => {
    const kit: Kit = { ...stoutKit, deck: { ...stoutKit.deck, width_mm: 1219.2 } as Kit["deck"] };
    const found = byId(
      check({ profile: "coastal-pier", plan: { kit }, layout: decked(3 * FT) }),
      "deck-rule.height.broken",
    )!;
    expect(found.status === "fail" && found.demand / FT).toBeCloseTo(4, 4);
  });
  test("mean high water must be known for the rule that speaks of it", () => {
    expect(statusOf(check({ profile: "coastal-pier" }), "deck-rule.high-water")).toBe("cannot-check");
    const mhw = { ...levelSite().levels[0]!, id: "mhw", role: "mhw" as const, z_m: 0 };
    const over = (deck: number): string =>
      statusOf(
        check({
          profile: "coastal-pier",
          site: { levels: [...levelSite().levels, mhw] },
          layout: decked(deck),
        }),
        "deck-rule.high-water",
      );
    expect(over(5 * FT - 1 + 1e-6)).toBe("pass");
    expect(over(5 * FT - 1 - 0.001)).toBe("fail");
  });
  test("bridge rules from 20 ft, for the public only", () => {
    const span = (profile: string, ft: number): string =>
      statusOf(check({ profile, layout: straightLayout([ft * FT]) }), "public-span.bridge");
    expect([span("aba-trail", 20), span("aba-trail", 21), span("staff-access", 21)]).toEqual([
      "pass",
      "fail",
      "",
    ]);
  });
  test("an unknown profile, or an override without a rule, is said and never a pass", () => {
    expect(check({ profile: "none" }).find((r) => r.id === "edge.profile")?.status).toBe("cannot-check");
    const own = { rule: "aba.width", value: 1, reason: "r", by: "b", date: "2027-01-05" };
    expect(byId(check({ overrides: [own] }), "edge.profile")?.status).toBe("cannot-check");
  });
  test("every profile gives results with ids of their own, a rule, a way on, and no finite number missing", () => {
    for (const { id } of tables.rule_profiles) {
      const results = check({ profile: id, layout: withPlatform() });
      expect(new Set(results.map((r) => r.id)).size, id).toBe(results.length);
      for (const r of results) {
        expect(r.rule.title, r.id).not.toBe("");
        expect(r.parts.length, r.id).toBeGreaterThan(0);
        if (r.status === "fail") expect(r.backwards.change, r.id).toMatch(/Would pass|Needs|No /);
        if (r.status === "pass") expect(r.backwards.change, r.id).toBeNull();
        if ("working" in r) {
          expect(r.working.length, r.id).toBeGreaterThan(0);
          for (const step of r.working) expect(Number.isFinite(step.value), `${r.id} ${step.id}`).toBe(true);
        }
      }
      expect(JSON.stringify(results)).not.toMatch(/\bsafe\b|\bapproved\b/);
    }
  });
});

describe("when an engineer is needed", () => {
  const flags = (setup: Setup): string[] => {
    const plan = checkedPlan({
      rules: { profile: setup.profile ?? "staff-access", overrides: [] },
      ...setup.plan,
    });
    const layout = setup.layout ?? straightLayout([3, 3]);
    return engineerFlags(plan, layout, check({ ...setup, layout }), tables.rule_profiles).map((f) => f.id);
  };
  test("a low staff walkway on crates passes none of the limits", () => expect(flags({})).toEqual([]));
  test("height over 30 in and spans over 16 ft", () => {
    expect(flags({ layout: decked(30 * IN) })).toEqual([]);
    expect(flags({ layout: decked(30 * IN + 0.001) })).toEqual(["height"]);
    expect(flags({ layout: straightLayout([16 * FT]) })).toEqual([]);
    expect(flags({ layout: straightLayout([16 * FT + 0.001]) })).toEqual(["span"]);
  });
  test("a rail that is asked for, and the public", () => {
    expect(flags({ layout: decked(4 * FT) })).toEqual(["height", "rail"]);
    expect(flags({ profile: "aba-trail" })).toContain("public");
  });
  test("floats and screw piles always", () => {
    for (const form of ["float", "screw-pile"] as const) {
      const supports = stoutKit.supports.map((k) => ({ ...k, form }));
      const plan = checkedPlan({ kit: { ...stoutKit, supports } });
      expect(engineerFlags(plan, straightLayout([3]), [], tables.rule_profiles).map((f) => f.id)).toEqual([
        "support.open-crate",
      ]);
    }
  });
});

test("the kinds of check by rule are all reached by one profile or another", () => {
  const kinds = new Set<string>(
    tables.rule_profiles.flatMap(({ id }) => check({ profile: id }).map((r) => r.kind)),
  );
  const wanted: readonly RuleCheckKind[] = [
    "width",
    "cart",
    "opening",
    "edge",
    "grade",
    "deck-rule",
    "public-span",
    "setback",
    "tipping",
    "pairing",
  ];
  for (const kind of wanted) expect(kinds).toContain(kind);
});
