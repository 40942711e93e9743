import type { Trace } from "../formula/index.ts";
import type { Cart, Visit } from "../plan/document.ts";
import { cartWidth, turningCircle, type ResolvedRule } from "../rules/index.ts";
import { metres, qty, showQuantity } from "../units/index.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { recordRule, ruleBase, ruleOn, type RuleSetting } from "./rule-setting.ts";
import { platformSquare } from "./rule-width.ts";
import type { CheckResult } from "./types.ts";

const mm = (v: number) => metres(v / 1000);

/** Room for every cart between the curbs, and for turning it on the platforms where the walkway turns or branches. */
export function cartChecks(s: RuleSetting): CheckResult[] {
  const margin = ruleOn(s, "cart-margin");
  const carts = cartsOf(s.setting.input.plan.visits);
  if (!margin || carts.length === 0) return [];
  const { parts } = s.setting.input.layout;
  const all = parts.map((p) => p.id);
  if (all.length === 0) return [];
  const turns = parts.filter((p) => p.kind === "platform" && p.use === "turning").map((p) => p.id);
  const straight = carts.map((cart) => widthFinding(s, margin, cart, all));
  const turning = turns.length === 0 ? [] : carts.map((cart) => turningFinding(s, margin, cart, turns));
  const caution =
    "Measured on paper: roll the loaded cart over a mock-up of the deck before the kit is built.";
  return [
    ...shareResults(ruleBase(s, margin, "cart", "width", "Cart between the curbs", caution), straight),
    ...shareResults(
      ruleBase(s, margin, "cart", "turning", "Turning the cart on a platform", caution),
      turning,
    ),
  ];
}

/** Each cart once, by its name and sizes. */
function cartsOf(visits: readonly Visit[]): Cart[] {
  const carts = visits.flatMap((v) => (v.cart ? [v.cart] : []));
  const key = (c: Cart): string =>
    JSON.stringify([c.name, c.track_mm, c.wheel_width_mm, c.width_mm, c.length_mm]);
  return [...new Map(carts.map((c) => [key(c), c])).values()];
}

function widthFinding(s: RuleSetting, rule: ResolvedRule, cart: Cart, parts: readonly string[]): Finding {
  const { units } = s.setting.context;
  const working: Trace = [];
  recordRule(s, rule, working);
  const clear = s.setting.geometry.clear_width_m;
  const m = metres(rule.value);
  const demand = cartWidth({ t: mm(cart.track_mm), w: mm(cart.wheel_width_mm), m }, working, cart.name);
  const say = (v: number): string => showQuantity(v, "m", units);
  const widest = clear - cart.wheel_width_mm / 1000 - 2 * rule.value;
  return {
    kind: "judged",
    parts,
    verdict: { unit: "m", demand, capacity: clear, governs: cart.name, working },
    carries: `The deck is clear for ${say(clear)}: wheels up to ${say(Math.max(0, widest))} apart.`,
    change: `Would pass with wheels at most ${say(Math.max(0, widest))} apart, or a deck ${say(demand - clear)} wider.`,
  };
}

function turningFinding(s: RuleSetting, rule: ResolvedRule, cart: Cart, parts: readonly string[]): Finding {
  if (cart.width_mm === null || cart.length_mm === null) {
    const unknown = [
      ...(cart.length_mm === null ? ["length"] : []),
      ...(cart.width_mm === null ? ["width"] : []),
    ];
    return { kind: "unknown", parts, missing: [`the overall ${unknown.join(" and ")} of "${cart.name}"`] };
  }
  const { units } = s.setting.context;
  const working: Trace = [];
  recordRule(s, rule, working);
  const m = metres(rule.value);
  const demand = turningCircle({ L: mm(cart.length_mm), w: mm(cart.width_mm), m }, working, cart.name);
  const capacity = platformSquare(s.setting, working);
  const say = (v: number): string => showQuantity(v, "m", units);
  const longest = Math.sqrt(Math.max(0, (capacity - 2 * rule.value) ** 2 - (cart.width_mm / 1000) ** 2));
  return {
    kind: "judged",
    parts,
    verdict: { unit: "m", demand, capacity: qty(Math.max(0, capacity), "m"), governs: cart.name, working },
    carries: `The platform is clear for ${say(capacity)}: a cart of this width may be ${say(longest)} long.`,
    change: `Would pass with a cart at most ${say(longest)} long, or a platform ${say(demand - capacity)} larger.`,
  };
}
