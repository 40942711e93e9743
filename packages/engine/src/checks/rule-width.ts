import { recordValue, type Trace } from "../formula/index.ts";
import type { Part } from "../layout/index.ts";
import { clearSquare, type ResolvedRule } from "../rules/index.ts";
import { M_PER_IN, metres, showQuantity, type Qty } from "../units/index.ts";
import { shareResults, type Finding } from "./rule-results.ts";
import { against, fine, ruleBase, ruleOn, ruleText, type RuleSetting } from "./rule-setting.ts";
import { sizeOf, type Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";

/** Side of the square between a platform's curbs [m]. */
export function platformSquare(setting: Setting, trace?: Trace): Qty<"m"> {
  const { kit } = setting.input.plan;
  const c = kit.curb ? sizeOf(setting, kit.curb.size).width_in * M_PER_IN : 0;
  return clearSquare({ s: setting.geometry.platform_side_m, c: metres(c) }, trace);
}

/** Clear width, and passing places where the profile asks for them. */
export function widthChecks(s: RuleSetting): CheckResult[] {
  const modules = s.setting.input.layout.parts.filter((p) => p.kind === "module").map((p) => p.id);
  if (modules.length === 0) return [];
  const width = ruleOn(s, "clear-width");
  const twoWays = ruleOn(s, "two-way-width");
  const interval = ruleOn(s, "passing-interval");
  const results = width ? widthCheck(s, width, "clear", "Clear width", modules) : [];
  if (twoWays && passingPlaces(s).length === 0)
    results.push(...widthCheck(s, twoWays, "two-way", "Clear width without passing places", modules));
  if (interval) results.push(...passingCheck(s, interval, modules));
  return results;
}

function recordClear(s: RuleSetting, trace: Trace): Qty<"m"> {
  const value = s.setting.geometry.clear_width_m;
  recordValue(trace, {
    id: "rules.clear-width",
    title: "Clear width of the deck",
    symbol: "w",
    value,
    unit: "m",
    source: {
      id: "kit",
      title: "The kit",
      at: "between curbs, upturned edges or deck edges",
      status: "project",
    },
    how: "from the kit",
  });
  return value;
}

function widthCheck(
  s: RuleSetting,
  rule: ResolvedRule,
  id: string,
  title: string,
  parts: readonly string[],
): CheckResult[] {
  const { units } = s.setting.context;
  const working: Trace = [];
  const have = fine(recordClear(s, working));
  const missing = Math.max(0, rule.value - have);
  const say = (m: number): string => showQuantity(m, "m", units);
  return shareResults(ruleBase(s, rule, "width", id, title), [
    {
      kind: "judged",
      parts,
      verdict: { unit: "m", ...against(s, rule, have, working), governs: "the kit's modules", working },
      carries: `Clear for ${say(have)}; the rule: ${ruleText(s, rule)}.`,
      change: `Would pass with a deck ${say(missing)} wider.`,
    },
  ]);
}

/** Platforms with room for two to pass. */
function passingPlaces(s: RuleSetting): string[] {
  const size = ruleOn(s, "passing-size")?.value ?? 0;
  if (platformSquare(s.setting) + 1e-6 < size) return [];
  return s.setting.input.layout.parts.filter((p) => p.kind === "platform").map((p) => p.id);
}

const platforms = (n: number): string => (n === 1 ? "1 passing platform" : `${n} passing platforms`);

interface Stretch {
  readonly length_m: number;
  readonly parts: readonly string[];
}

/** Lengths between places to pass, branch by branch; the start and a branch's platform count as places. */
function stretches(parts: readonly Part[], places: ReadonlySet<string>): Stretch[] {
  const found: { length_m: number; parts: string[] }[] = [];
  let branch: string | null = null;
  for (const part of parts) {
    const isPlace = places.has(part.id);
    if (part.branch !== branch || isPlace) found.push({ length_m: 0, parts: [] });
    branch = part.branch;
    if (isPlace) continue;
    const last = found.at(-1)!;
    last.parts.push(part.id);
    last.length_m += part.kind === "module" ? part.length_m : part.side_m;
  }
  return found.filter((f) => f.parts.length > 0);
}

function passingCheck(s: RuleSetting, rule: ResolvedRule, modules: readonly string[]): CheckResult[] {
  const { units } = s.setting.context;
  const base = ruleBase(s, rule, "width", "passing", "Distance between passing places");
  const size = ruleOn(s, "passing-size");
  if (size && s.setting.geometry.clear_width_m >= size.value - 1e-6)
    return shareResults(base, [
      { kind: "not-applicable", parts: modules, because: "the whole walkway is wide enough to pass" },
    ]);
  const places = new Set(passingPlaces(s));
  const findings = stretches(s.setting.input.layout.parts, places).map((stretch): Finding => {
    const working: Trace = [];
    recordValue(working, {
      id: "rules.passing-stretch",
      title: "Length without a place to pass",
      symbol: "l",
      value: fine(stretch.length_m),
      unit: "m",
      source: { id: "layout", title: "The plan's layout", status: "project" },
      how: "sum of its parts",
    });
    const limits = against(s, rule, fine(stretch.length_m), working);
    return {
      kind: "judged",
      parts: stretch.parts,
      verdict: { unit: "m", ...limits, governs: `${stretch.parts[0]} to ${stretch.parts.at(-1)}`, working },
      carries: `${showQuantity(stretch.length_m, "m", units)} without a place to pass.`,
      change: `Would pass with ${platforms(Math.ceil(stretch.length_m / rule.value) - 1)}${size ? ` of ${showQuantity(size.value, "m", units)} clear` : ""} along it.`,
    };
  });
  return shareResults(base, findings);
}
