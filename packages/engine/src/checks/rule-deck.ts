import { recordValue, type Trace } from "../formula/index.ts";
import type { Joint, Part } from "../layout/index.ts";
import { fallHeight, heightForWidth, type ResolvedRule } from "../rules/index.ts";
import { M_PER_IN, metres, qty, showQuantity } from "../units/index.ts";
import { jointsOf, spanOf } from "./plan-joints.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { against, fine, recordRule, ruleBase, rulesOn, ruleText, type RuleSetting } from "./rule-setting.ts";
import { sizeOf } from "./setting.ts";
import type { CheckResult } from "./types.ts";

/** Sizes of deck boards, height over marsh and high water, and spans of public bridges. */
export function deckRuleChecks(s: RuleSetting): CheckResult[] {
  const { parts, joints: all } = s.setting.input.layout;
  if (parts.length === 0) return [];
  const joints: Joints = new Map(all.map((j) => [j.id, j]));
  return [
    ...boardSizes(
      s,
      parts.map((p) => p.id),
    ),
    ...rulesOn(s, "height-per-width").flatMap((rule) =>
      shareResults(
        ruleBase(s, rule, "deck-rule", "height", "Height of the deck for its width"),
        parts.map((part) => heightFinding(s, rule, joints, part)),
      ),
    ),
    ...rulesOn(s, "deck-over-high-water").flatMap((rule) =>
      shareResults(
        ruleBase(s, rule, "deck-rule", "high-water", "Deck over mean high water"),
        parts.map((part) => waterFinding(s, rule, joints, part)),
      ),
    ),
    ...rulesOn(s, "public-span").flatMap((rule) =>
      shareResults(
        ruleBase(s, rule, "public-span", "bridge", "Span under the public"),
        parts.map((part) => spanFinding(s, rule, part)),
      ),
    ),
  ];
}

function boardSizes(s: RuleSetting, parts: readonly string[]): CheckResult[] {
  const { deck } = s.setting.input.plan.kit;
  if (deck.kind !== "boards") return [];
  const width = sizeOf(s.setting, deck.size).width_in * M_PER_IN;
  const one = (rule: ResolvedRule, id: string, title: string, have: number): CheckResult[] =>
    shareResults(ruleBase(s, rule, "deck-rule", id, title), [
      {
        kind: "judged",
        parts,
        ...boardVerdict(s, rule, title, fine(have)),
        change: `Would pass with boards ${ruleText(s, rule)}.`,
      },
    ]);
  return [
    ...rulesOn(s, "board-length").flatMap((r) =>
      one(r, "board-length", "Length of deck boards", deck.width_mm / 1000),
    ),
    ...rulesOn(s, "board-width").flatMap((r) => one(r, "board-width", "Width of deck boards", width)),
  ];
}

function boardVerdict(s: RuleSetting, rule: ResolvedRule, title: string, have: number) {
  const working: Trace = [];
  recordValue(working, {
    id: "rules.board",
    title,
    symbol: "b",
    value: have,
    unit: "m",
    source: { id: "kit", title: "The kit", at: "deck", status: "project" },
    how: "from the kit",
  });
  const say = showQuantity(have, "m", s.setting.context.units);
  return {
    verdict: {
      unit: "m",
      ...against(s, rule, have, working),
      governs: "the kit's deck boards",
      working,
    } as const,
    carries: `The boards: ${say}; the rule: ${ruleText(s, rule)}.`,
  };
}

type Joints = ReadonlyMap<string, Joint>;

/** The joint of a part with the least of something; null when it lies on none that is known. */
function lowestJoint(joints: Joints, part: Part, height: (j: Joint) => number): Joint | null {
  const own = jointsOf(part).flatMap((id) => joints.get(id) ?? []);
  return own.length === 0 ? null : own.reduce((a, b) => (height(b) < height(a) ? b : a));
}

const NO_JOINTS = "the joints that the part lies on";

function heightFinding(s: RuleSetting, rule: ResolvedRule, joints: Joints, part: Part): Finding {
  const parts = [part.id];
  const low = lowestJoint(joints, part, (j) => j.deck_m - j.ground_m);
  if (!low) return { kind: "unknown", parts, missing: [NO_JOINTS] };
  const { units } = s.setting.context;
  const working: Trace = [];
  recordRule(s, rule, working);
  const w = part.kind === "module" ? s.setting.geometry.deck_width_m : metres(part.side_m);
  const need = fine(heightForWidth({ k: qty(rule.value, "1"), w }, working));
  const have = fine(
    fallHeight({ z_d: metres(low.deck_m), z_g: metres(low.ground_m) }, working, "deck over marsh"),
  );
  const say = (m: number): string => showQuantity(m, "m", units);
  return {
    kind: "judged",
    parts,
    verdict: {
      unit: "m",
      demand: qty(need, "m"),
      capacity: qty(have, "m"),
      governs: `deck ${say(w)} wide`,
      working,
    },
    carries: `${say(have)} over the marsh lets a deck as wide as ${say(have / rule.value)}.`,
    change: `Would pass ${say(need - have)} higher, or that much narrower.`,
  };
}

function waterFinding(s: RuleSetting, rule: ResolvedRule, joints: Joints, part: Part): Finding {
  const { site, plan } = s.setting.input;
  const parts = [part.id];
  const levels = [...site.levels, ...plan.levels].filter((l) => l.role === "mhw");
  const level = levels.find((l) => l.datum === site.datum);
  if (!level)
    return { kind: "unknown", parts, missing: [`mean high water on the site's datum "${site.datum}"`] };
  const low = lowestJoint(joints, part, (j) => j.deck_m);
  if (!low) return { kind: "unknown", parts, missing: [NO_JOINTS] };
  const { units } = s.setting.context;
  const working: Trace = [];
  const z = { z_d: metres(low.deck_m), z_g: metres(level.z_m) };
  const have = fine(fallHeight(z, working, `deck over ${level.name}`));
  const limits = against(s, rule, have, working);
  return {
    kind: "judged",
    parts,
    verdict: { unit: "m", ...limits, governs: level.name, working },
    carries: `${showQuantity(have, "m", units)} over ${level.name}; the rule: ${ruleText(s, rule)}.`,
    change: `Would pass ${showQuantity(Math.max(0, rule.value - have), "m", units)} higher.`,
  };
}

function spanFinding(s: RuleSetting, rule: ResolvedRule, part: Part): Finding {
  const { units } = s.setting.context;
  const working: Trace = [];
  const span = fine(spanOf(part));
  recordValue(working, {
    id: "rules.span",
    title: "Span, joint to joint",
    symbol: "L",
    value: span,
    unit: "m",
    source: { id: "layout", title: "The plan's layout", status: "project" },
    how: "length of the part",
  });
  return {
    kind: "judged",
    parts: [part.id],
    verdict: { unit: "m", ...against(s, rule, span, working), governs: part.id, working },
    carries: `Spans ${showQuantity(span, "m", units)}; the rule: ${ruleText(s, rule)}.`,
    change: `Needs inspection by bridge rules, or would pass with spans of at most ${showQuantity(rule.value, "m", units)}.`,
  };
}
