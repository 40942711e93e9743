import type { Source } from "../formula/index.ts";
import { engineerBecause } from "../kit/index.ts";
import type { Layout } from "../layout/index.ts";
import type { Plan } from "../plan/document.ts";
import type { RuleProfile } from "../rules/index.ts";
import { M_PER_IN, showQuantity } from "../units/index.ts";
import { spanOf } from "./plan-joints.ts";
import type { CheckResult } from "./types.ts";

/** One reason why an engineer must look at a plan before it is built. */
export interface EngineerFlag {
  readonly id: string;
  readonly title: string;
  readonly because: string;
  /** Tags of the parts or joints that it is about. */
  readonly parts: readonly string[];
  readonly source: Source;
}

const practice = (at: string): Source => ({
  id: "common-practice",
  title: "Common practice, no source",
  at,
  status: "practice",
});
const HANDBOOK: Source = {
  id: "fs-wetland-trails",
  title: "US Forest Service, Wetland Trail Design and Construction, 2007",
  at: "floating walkways and screw piles are for engineers and trained installers",
  status: "seen",
};
const GUARD: Source = {
  id: "fs-rails",
  title: "US Forest Service, railings of trail bridges",
  at: "building-code areas ask for a guard over 30 in",
  status: "seen",
};

/** Deck over ground at a joint, and span, from which an engineer must look. */
export const ENGINEER_HEIGHT_M = 30 * M_PER_IN;
export const ENGINEER_SPAN_M = 16 * 12 * M_PER_IN;

/**
 * Limits that a plan passes and that want an engineer: tall decks, long spans, piles, floats, tall posts, a rail that
 * is asked for, public use. Empty does not mean that none is needed: it means that none of these limits is passed.
 *
 * checks    the plan's results, for the rails that the profile asks for
 * profiles  every rule profile of the tables
 */
export function engineerFlags(
  plan: Plan,
  layout: Layout,
  checks: readonly CheckResult[],
  profiles: readonly RuleProfile[],
): EngineerFlag[] {
  return [
    ...tallDecks(plan, layout),
    ...longSpans(plan, layout),
    ...supports(plan, layout),
    ...rails(checks),
    ...publicUse(plan, layout, profiles),
  ];
}

function tallDecks({ units }: Plan, layout: Layout): EngineerFlag[] {
  const tall = layout.joints.filter((j) => j.deck_m - j.ground_m > ENGINEER_HEIGHT_M + 1e-6);
  if (tall.length === 0) return [];
  const most = Math.max(...tall.map((j) => j.deck_m - j.ground_m));
  const limit = showQuantity(ENGINEER_HEIGHT_M, "m", units);
  return [
    {
      id: "height",
      title: "Deck high over the ground",
      because: `the deck stands up to ${showQuantity(most, "m", units)} over the ground, the limit is ${limit}`,
      parts: tall.map((j) => j.id),
      source: GUARD,
    },
  ];
}

function longSpans({ units }: Plan, layout: Layout): EngineerFlag[] {
  const long = layout.parts.filter((p) => spanOf(p) > ENGINEER_SPAN_M + 1e-6);
  if (long.length === 0) return [];
  const most = Math.max(...long.map(spanOf));
  const limit = showQuantity(ENGINEER_SPAN_M, "m", units);
  return [
    {
      id: "span",
      title: "Long span",
      because: `a part spans ${showQuantity(most, "m", units)}, the limit is ${limit}`,
      parts: long.map((p) => p.id),
      source: practice("lumber-yard stringers to 16 ft"),
    },
  ];
}

/** Each kind of support in the layout that never goes without an engineer. */
function supports({ kit }: Plan, layout: Layout): EngineerFlag[] {
  return kit.supports.flatMap((kind) => {
    const because = engineerBecause(kind);
    const parts = layout.joints.filter((j) => j.support === kind.id).map((j) => j.id);
    if (because === null || parts.length === 0) return [];
    const source = kind.form === "post-pair" ? practice("posts over 24 in") : HANDBOOK;
    return [{ id: `support.${kind.id}`, title: kind.name, because, parts, source }];
  });
}

/** Rails and handrails that the profile asks for: no kit has them. */
function rails(checks: readonly CheckResult[]): EngineerFlag[] {
  const asked = ["edge.rail.broken", "grade.handrail.broken"];
  return checks
    .filter((c) => asked.includes(c.id))
    .map((c) => ({
      id: c.id.startsWith("edge") ? "rail" : "handrail",
      title: c.title,
      because: "the chosen rule asks for a rail, which must carry a person falling against it",
      parts: c.parts,
      source: c.rule,
    }));
}

function publicUse({ rules }: Plan, layout: Layout, profiles: readonly RuleProfile[]): EngineerFlag[] {
  const profile = profiles.find((p) => p.id === rules.profile);
  if (!profile?.public) return [];
  return [
    {
      id: "public",
      title: "Open to the public",
      because: `"${profile.name}" is for the public: crowds weigh more than the visits checked here (60 to 90 psf)`,
      parts: layout.parts.map((p) => p.id),
      source: {
        id: "asce-7-16",
        title: "ASCE 7-16, Minimum Design Loads",
        at: "Table 4.3-1, walkways 60 psf",
        status: "seen",
      },
    },
  ];
}
