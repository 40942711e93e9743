import type { Combination, Strengths } from "../codes/index.ts";
import type { Source, Trace } from "../formula/index.ts";
import {
  rectangleArea,
  rectangleSectionModulus,
  recordTrain,
  uniformMoment,
  uniformShear,
} from "../structure/index.ts";
import { metres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { GRADE } from "./cautions.ts";
import { forceDemand, liveCombination, momentDemand } from "./combination.ts";
import { deadLoad, momentCapacity, shearCapacity } from "./formulas.ts";
import { deadShare } from "./frame.ts";
import { handlingFactor, handlingLoad, stackLoad, stackedMoment, stackedShear } from "./handling-formulas.ts";
import type { CheckContext } from "./input.ts";
import type { ModuleGroup } from "./plan-frames.ts";
import { cannotCheck, missingOf, notApplicable, resultOf, type Verdict } from "./result.ts";
import type { Setting } from "./setting.ts";
import { deeperStringers } from "./stringer-backwards.ts";
import { governingAlone } from "./stringer-demand.ts";
import { situationOf, stringerModel, type StringerModel } from "./stringer-model.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

type Check = "bending" | "shear";
const CHECKS: readonly Check[] = ["bending", "shear"];

const RULE: Source = {
  id: "causey-handling",
  title: "Project rule on handling",
  at: "loads of building: the code's duration of seven days",
  status: "project",
};

const baseOf = (
  what: "lift" | "stack",
  title: string,
  { frame, length_mm, parts }: ModuleGroup,
  caution: string,
): CheckBase => ({
  id: `handling.${what}.${Math.round(length_mm)}mm`,
  kind: "handling",
  title: `${title}, ${frame.name}`,
  parts: parts.map((p) => p.id),
  rule: RULE,
  caution: `${caution} ${GRADE}`,
});

/** Each length of module while it is lifted at its ends, and with others stacked on it while it lies. */
export const handlingChecks = (setting: Setting, groups: readonly ModuleGroup[]): CheckResult[] =>
  groups.flatMap((group) => {
    const lift = baseOf(
      "lift",
      "Lifted by its two ends",
      group,
      "Held deck up at both ends. Never lift it on its side, by its deck or by its cross pieces.",
    );
    const stack = baseOf(
      "stack",
      "Modules stacked on it while the walkway grows",
      group,
      "Modules of the same length, laid flat over both supports, nobody on the stack. Those who walk beside it leave the cart behind.",
    );
    const model = setting.modelOf(group.frame);
    if (!model.ok) return [lift, stack].map((base) => cannotCheck(base, missingOf(model.problems)));
    const { stacked_modules } = setting.input.plan.proof;
    return [
      checkLift(lift, model.value, setting.context),
      checkStack(stack, model.value, stacked_modules, setting.cases, setting.context),
    ];
  });

/** The combination of a load of some days: the factors of people, the duration of building. */
const building = ({ code }: CheckContext): Combination => ({
  ...liveCombination(code),
  duration: "seven-days",
});

const ownLoad = ({ frame }: StringerModel, trace?: Trace): Qty<"N/m"> =>
  deadLoad({ q: qty(frame.dead_kg_m, "kg/m"), k: qty(deadShare(frame), "1") }, trace, "soaked part");

const strengthsOf = (
  model: StringerModel,
  c: Combination,
  { code }: CheckContext,
  check: Check,
  trace?: Trace,
): Strengths =>
  code.strength(model.member, situationOf(model.frame, c), trace, [check === "bending" ? "fb" : "fv"]);

/** What the section may carry for some days [N*m or N]. */
function capacityOf(check: Check, model: StringerModel, strengths: Strengths, trace?: Trace): number {
  return check === "bending"
    ? momentCapacity({ F: strengths.fb, S: rectangleSectionModulus(model.section, trace) }, trace)
    : shearCapacity({ F: strengths.fv, A: rectangleArea(model.section, trace) }, trace);
}

/** Moment or end shear of an even load along the stringer [N*m or N]. */
const uniform = (check: Check, w: Qty<"N/m">, L: Qty<"m">, trace?: Trace, note?: string): number =>
  check === "bending" ? uniformMoment({ w, L }, trace, note) : uniformShear({ w, L }, trace, note);

function demandOf(check: Check, c: Combination, dead: number, live: number, trace?: Trace): number {
  return check === "bending"
    ? momentDemand(c, qty(dead, "N*m"), qty(live, "N*m"), trace)
    : forceDemand(c, newtons(dead), newtons(live), trace);
}

interface Held {
  readonly check: Check;
  readonly demand: number;
  readonly capacity: number;
}

const worstOf = (held: readonly Held[]): Held =>
  held.reduce((a, b) => (b.demand / b.capacity > a.demand / a.capacity ? b : a));

const verdictOf = ({ check, demand, capacity }: Held, governs: string, working: Trace): Verdict =>
  check === "bending"
    ? { unit: "N*m", demand: qty(demand, "N*m"), capacity: qty(capacity, "N*m"), governs, working }
    : { unit: "N", demand: newtons(demand), capacity: newtons(capacity), governs, working };

/** Bending or shear of a stringer under twice the module's soaked weight. */
function liftHeld(check: Check, model: StringerModel, context: CheckContext, trace?: Trace): Held {
  const c = building(context);
  const k_h = handlingFactor({}, trace);
  const w = handlingLoad({ w: ownLoad(model, trace), k_h }, trace);
  const dead = uniform(check, w, metres(model.frame.span_m), trace);
  const strengths = strengthsOf(model, c, context, check, trace);
  const demand = demandOf(check, c, dead, 0, trace);
  return { check, demand, capacity: capacityOf(check, model, strengths, trace) };
}

function checkLift(base: CheckBase, model: StringerModel, context: CheckContext): CheckResult {
  const held = (m: StringerModel): Held => worstOf(CHECKS.map((check) => liftHeld(check, m, context)));
  const worst = held(model);
  const working: Trace = [];
  liftHeld(worst.check, model, context, working);
  const governs = `${worst.check}, twice its soaked weight`;
  const isFine = worst.demand <= worst.capacity;
  const times = (handlingFactor({}) * worst.capacity) / worst.demand;
  const other = isFine
    ? undefined
    : deeperStringers(model.frame, context).find((change) => {
        const found = stringerModel(change.frame, context);
        return found.ok && held(found.value).demand <= held(found.value).capacity;
      });
  return resultOf(base, verdictOf(worst, governs, working), {
    carries: `Its stringers hold ${showQuantity(times, "1", context.units)} times its own soaked weight when it hangs by its ends.`,
    change: isFine
      ? null
      : other
        ? `Would pass with ${other.words}.`
        : "Lift it with a third pair of carriers at its middle, or in shorter modules.",
  });
}

/** Those who may walk beside a stack: people in file and the single load; no cart and no crowd. */
const beside = (cases: readonly LoadCase[]): LoadCase[] =>
  cases.filter((c) => c.cart === null && c.area_pa === undefined);

function stackHeld(
  check: Check,
  model: StringerModel,
  count: number,
  cases: readonly LoadCase[],
  context: CheckContext,
  trace?: Trace,
): Held & { readonly load: LoadCase } {
  const c = building(context);
  const L = metres(model.frame.span_m);
  const w = ownLoad(model, trace);
  const dead = uniform(check, w, L, trace, "the laid module");
  const stack = uniform(check, stackLoad({ w, n: qty(count, "1") }, trace), L, trace, "the stack");
  const { live: walk, load } = governingAlone(check, model, beside(cases));
  if (trace) {
    load.explain(trace);
    recordTrain(
      trace,
      check === "bending" ? "M_w" : "V_w",
      check === "bending" ? "Largest moment of those who walk" : "Largest end shear of those who walk",
      walk,
      check === "bending" ? "N*m" : "N",
      load.name,
    );
  }
  const live =
    check === "bending"
      ? stackedMoment({ M_s: qty(stack, "N*m"), M_w: qty(walk, "N*m") }, trace)
      : stackedShear({ V_s: newtons(stack), V_w: newtons(walk) }, trace);
  const strengths = strengthsOf(model, c, context, check, trace);
  const demand = demandOf(check, c, dead, live, trace);
  return { check, demand, capacity: capacityOf(check, model, strengths, trace), load };
}

/** More than these are not stacked by hand. */
const MOST_STACKED = 20;

function checkStack(
  base: CheckBase,
  model: StringerModel,
  asked: number,
  cases: readonly LoadCase[],
  context: CheckContext,
): CheckResult {
  const holds = (n: number): boolean =>
    CHECKS.every((check) => {
      const { demand, capacity } = stackHeld(check, model, n, cases, context);
      return demand <= capacity;
    });
  const may = mostOf(holds);
  if (asked === 0) return notApplicable(base, `the plan stacks no modules on a laid one; ${mayWords(may)}`);
  const held = CHECKS.map((check) => stackHeld(check, model, asked, cases, context));
  const worst = worstOf(held);
  const working: Trace = [];
  const { load } = stackHeld(worst.check, model, asked, cases, context, working);
  const governs = `${asked} stacked, ${load.name}`;
  const words = mayWords(may);
  const change =
    may < 1 ? "Stack them on firm ground, not on the walkway." : `Stack at most ${may} on one module.`;
  return resultOf(base, verdictOf(worst, governs, working), {
    carries: `${words[0]!.toUpperCase()}${words.slice(1)}.`,
    change: worst.demand <= worst.capacity ? null : change,
  });
}

/** The most modules that may lie on one, up to those that hands can stack; -1 when none may and the walk fails. */
function mostOf(holds: (n: number) => boolean): number {
  for (let n = MOST_STACKED; n >= 0; n--) if (holds(n)) return n;
  return -1;
}

const mayWords = (may: number): string => {
  if (may < 0) return "it does not carry those who walk over it even with none";
  if (may === 0) return "none may be stacked while people walk over it";
  return may >= MOST_STACKED
    ? `at least ${MOST_STACKED} may be stacked while people walk beside`
    : `${may} may be stacked while people walk beside`;
};
