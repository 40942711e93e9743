import { recordValue, type Trace } from "../formula/index.ts";
import { boardPattern, isPanelDeck } from "../kit/index.ts";
import { openingSize, wheelDrop, type ResolvedRule } from "../rules/index.ts";
import { M_PER_IN, metres, qty, showQuantity } from "../units/index.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import {
  against,
  fine,
  ruleBase,
  rulesOn,
  ruleText,
  type RuleBase,
  type RuleSetting,
} from "./rule-setting.ts";
import { sizeOf, type Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";

/** One kind of opening in a deck: its free sizes along and across the walkway. */
export interface Opening {
  readonly name: string;
  readonly kind: "board-gap" | "deck" | "joint";
  readonly along_m: number;
  readonly across_m: number;
  readonly parts: readonly string[];
}

const idsOf = (setting: Setting, kind?: "module" | "platform"): string[] =>
  setting.input.layout.parts.filter((p) => kind === undefined || p.kind === kind).map((p) => p.id);

/** Every opening of the layout's decks: between boards by length, through mesh or panels, and at the joints. */
export function deckOpenings(setting: Setting): Opening[] {
  const { kit } = setting.input.plan;
  const all = idsOf(setting);
  const width = setting.geometry.deck_width_m;
  const joint: Opening = {
    name: "gap at a joint",
    kind: "joint",
    along_m: kit.joint_gap_mm / 1000,
    across_m: width,
    parts: all,
  };
  const { deck } = kit;
  const own: Opening[] =
    deck.kind === "boards"
      ? boardGaps(setting)
      : deck.kind === "mesh"
        ? [
            through(
              deck.name,
              (deck.pitch_mm - deck.wire_mm) / 1000,
              (deck.pitch_mm - deck.wire_mm) / 1000,
              all,
            ),
          ]
        : isPanelDeck(deck)
          ? [
              through(deck.name, deck.opening_along_mm / 1000, deck.opening_across_mm / 1000, all),
              { ...joint, name: "gap between panels", kind: "deck", along_m: deck.gap_mm / 1000 },
            ]
          : [];
  return [...own, joint].filter((o) => o.along_m > 1e-6 && o.across_m > 1e-6 && o.parts.length > 0);
}

const through = (name: string, along_m: number, across_m: number, parts: readonly string[]): Opening => ({
  name: `opening of ${name}`,
  kind: "deck",
  along_m,
  across_m,
  parts,
});

function boardGaps(setting: Setting): Opening[] {
  const { deck } = setting.input.plan.kit;
  if (deck.kind !== "boards") return [];
  const board = sizeOf(setting, deck.size).width_in * M_PER_IN * 1000;
  const lengths = new Map<number, string[]>();
  for (const part of setting.input.layout.parts) {
    const mm = Math.round((part.kind === "module" ? part.length_m : part.side_m) * 1e5) / 100;
    lengths.set(mm, [...(lengths.get(mm) ?? []), part.id]);
  }
  return [...lengths].map(([mm, parts]) => ({
    name: "gap between boards",
    kind: "board-gap",
    along_m: Math.max(0, boardPattern(mm, board, deck.gap_mm).gap_mm) / 1000,
    across_m: setting.geometry.deck_width_m,
    parts,
  }));
}

/** Openings against the profile's ball, direction and gap rules, and against the wheels of every cart. */
export function openingChecks(s: RuleSetting): CheckResult[] {
  const openings = deckOpenings(s.setting);
  const gaps = openings.filter((o) => o.kind === "board-gap");
  return [
    ...rulesOn(s, "opening")
      .filter((r) => r.direction !== "as-large-as-can-be")
      .flatMap((rule) =>
        shareResults(ruleBase(s, rule, "opening", "ball", "Openings of the deck"), sized(s, rule, openings)),
      ),
    ...rulesOn(s, "opening-direction").flatMap((rule) =>
      shareResults(
        ruleBase(s, rule, "opening", "direction", "Long openings lie across travel"),
        directed(s, rule, openings),
      ),
    ),
    ...rulesOn(s, "board-gap").flatMap((rule) =>
      shareResults(ruleBase(s, rule, "opening", "gap", "Gap between deck boards"), sized(s, rule, gaps)),
    ),
    ...wheelChecks(s, openings),
  ];
}

function sized(s: RuleSetting, rule: ResolvedRule, openings: readonly Opening[]): Finding[] {
  const { units } = s.setting.context;
  const say = (m: number): string => showQuantity(m, "m", units);
  return openings.map((o): Finding => {
    const working: Trace = [];
    const size = fine(openingSize({ a: metres(o.along_m), b: metres(o.across_m) }, working, o.name));
    return {
      kind: "judged",
      parts: o.parts,
      verdict: { unit: "m", ...against(s, rule, size, working), governs: o.name, working },
      carries: `The ${o.name} is ${say(size)}; the rule: ${ruleText(s, rule)}.`,
      change: `Would pass with the ${o.name} ${ruleText(s, rule)}.`,
    };
  });
}

function directed(s: RuleSetting, rule: ResolvedRule, openings: readonly Opening[]): Finding[] {
  return openings.map((o): Finding => {
    const working: Trace = [];
    const ratio = fine(o.along_m / o.across_m);
    recordValue(working, {
      id: "rules.opening-direction",
      title: "Opening along the walkway over across",
      symbol: "q",
      value: ratio,
      unit: "1",
      source: { id: "kit", title: "The kit", at: o.name, status: "project" },
      how: "from the kit",
    });
    return {
      kind: "judged",
      parts: o.parts,
      verdict: {
        unit: "1",
        ...against(s, rule, ratio, working),
        governs: `${o.name}, along over across`,
        working,
      },
      carries: `The ${o.name} is ${ratio > 1 ? "longer along the walkway than across" : "no longer along the walkway than across"}.`,
      change: "Would pass with the panels or boards turned by a quarter.",
    };
  });
}

/** Whether a wheel drops into an opening, straight on and, where the cart turns, across. */
function wheelChecks(s: RuleSetting, openings: readonly Opening[]): CheckResult[] {
  const { plan, layout } = s.setting.input;
  const { units } = s.setting.context;
  const turns = layout.parts.some((p) => p.kind === "platform");
  const say = (m: number): string => showQuantity(m, "m", units);
  const findings = plan.visits.flatMap(({ cart }) => {
    if (!cart) return [];
    const [w, c] = [metres(cart.wheel_width_mm / 1000), metres(cart.wheel_contact_mm / 1000)];
    return openings.flatMap((o) => {
      const ways: readonly (readonly [number, number])[] = [
        [o.along_m, o.across_m],
        ...(turns ? [[o.across_m, o.along_m] as const] : []),
      ];
      return ways.map(([a, b]): Finding => {
        const working: Trace = [];
        const demand = wheelDrop({ a: metres(a), b: metres(b), c, w }, working, `${cart.name}, ${o.name}`);
        return {
          kind: "judged",
          parts: o.parts,
          verdict: {
            unit: "1",
            demand,
            capacity: qty(1, "1"),
            governs: `${cart.name} over the ${o.name}`,
            working,
          },
          carries: `The wheel, ${say(w)} wide with ${say(c)} on the deck, against ${say(a)} along and ${say(b)} across its travel.`,
          change: `Would pass with wheels at least ${say(b)} wide, or openings narrower than ${say(w)}.`,
        };
      });
    });
  });
  if (findings.length === 0) return [];
  const base: RuleBase = {
    id: "opening.wheel",
    kind: "opening",
    title: "Wheels over the openings of the deck",
    rule: wheelDrop.spec.source,
    caution:
      "Small castors and soft tyres catch earlier: push the loaded cart over the first module before building the rest.",
  };
  return shareResults(base, findings);
}
