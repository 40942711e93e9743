import { columnCapacity, type Combination, type Member, type Situation } from "../codes/index.ts";
import type { Trace } from "../formula/index.ts";
import { rectangleArea, rectangleSectionModulus } from "../structure/index.ts";
import { inches, qty, showQuantity, type Qty } from "../units/index.ts";
import { forceDemand, momentDemand, strengthCombinations } from "./combination.ts";
import { momentCapacity, shearCapacity } from "./formulas.ts";
import type { CheckContext, GradedLumber } from "./input.ts";
import { stouterSizes } from "./piece.ts";
import { cannotCheck, missingOf, resultOf } from "./result.ts";
import {
  beamMoments,
  beamShears,
  recordEffect,
  type BeamPattern,
  type Carrier,
  type Effect,
} from "./support-beam.ts";
import type { CheckBase, CheckResult } from "./types.ts";

/** A sill, rail or bearer of a support. */
export interface SupportBeam {
  /** "sill", "rail". */
  readonly name: string;
  readonly size: string;
  readonly lay: "flat" | "edge";
  readonly lumber: GradedLumber;
  readonly carriers: readonly Carrier[];
}

/** A post or leg under a load along its length. */
export interface Post {
  readonly name: string;
  readonly size: string;
  readonly lumber: GradedLumber;
  /** Between what it stands on, or the ground, and what lies on it [m]. */
  readonly free_m: number;
  /** How many share the load of one carrier. */
  readonly sharing: number;
}

/** An effect with the pattern that makes it. */
export interface PatternEffect {
  readonly pattern: BeamPattern;
  readonly effect: Effect;
}

/** Demand and capacity of one combination. */
interface Judged {
  readonly combination: Combination;
  readonly demand: number;
  readonly capacity: number;
}

type Part = "bending" | "shear" | "column";

const situationOf = (
  member: { readonly lay: "flat" | "edge"; readonly lumber: GradedLumber },
  { duration }: Combination,
  unbraced_m: number,
  column_m?: number,
): Situation => ({
  use: member.lay,
  wet: true,
  incised: member.lumber.incised,
  repetitive: false,
  duration,
  ...(member.lay === "edge" && column_m === undefined ? { unbraced_m } : {}),
  ...(column_m === undefined ? {} : { column_m }),
});

/** Longest stretch of a beam without a carrier [m]. */
function freeLength(carriers: readonly Carrier[], loads: readonly { readonly at_m: number }[]): number {
  const at = [...carriers.flat(), ...loads.map((l) => l.at_m)].sort((a, b) => a - b);
  return Math.max(0.001, ...at.slice(1).map((x, i) => x - at[i]!));
}

export interface Subject {
  readonly part: Part;
  readonly lay: "flat" | "edge";
  readonly size: string;
  readonly lumber: GradedLumber;
  readonly unbraced_m: number;
  readonly column_m?: number;
}

function capacityOf(
  s: Subject,
  member: Member,
  c: Combination,
  { code }: CheckContext,
  trace?: Trace,
): number {
  const [t, w] = [inches(member.size.thickness_in), inches(member.size.width_in)];
  const section = s.lay === "flat" ? { b: w, d: t } : { b: t, d: w };
  const wanted = ({ bending: "fb", shear: "fv", column: "fc" } as const)[s.part];
  const { fb, fv, fc } = code.strength(member, situationOf(s, c, s.unbraced_m, s.column_m), trace, [wanted]);
  if (s.part === "bending")
    return momentCapacity({ F: fb, S: rectangleSectionModulus(section, trace) }, trace);
  if (s.part === "shear") return shearCapacity({ F: fv, A: rectangleArea(section, trace) }, trace);
  return columnCapacity({ F: fc, A: rectangleArea(section, trace) }, trace);
}

const demandOf = (part: Part, c: Combination, e: Effect, trace?: Trace, note?: string): number =>
  part === "bending"
    ? momentDemand(c, qty(e.dead, "N*m"), qty(e.live, "N*m"), trace, note)
    : forceDemand(c, qty(e.dead, "N"), qty(e.live, "N"), trace, note);

const useOf = ({ demand, capacity }: Judged): number =>
  capacity > 0 ? demand / capacity : demand > 0 ? Infinity : 0;

/** The pattern, section and combination that ask for most of one piece. */
function worstOf(s: Subject, member: Member, effects: readonly PatternEffect[], context: CheckContext) {
  const all = strengthCombinations(context.code).flatMap((combination) => {
    const capacity = capacityOf(s, member, combination, context);
    return effects.map((one) => ({
      ...one,
      combination,
      capacity,
      demand: demandOf(s.part, combination, one.effect),
    }));
  });
  return all.reduce((a, b) => (useOf(b) > useOf(a) ? b : a));
}

const WORDS = {
  bending: ["M_d", "M_l", "Moment", "N*m"],
  shear: ["V_d", "V_l", "Shear", "N"],
  column: ["V_d", "V_l", "Load on one of them", "N"],
} as const;

/** Whether a piece of another size carries the same effects under every combination. */
function passesAs(
  s: Subject,
  size: string,
  effects: readonly PatternEffect[],
  context: CheckContext,
): boolean {
  const found = context.code.member(context.tables, s.lumber.species, s.lumber.grade, size);
  return found.ok && useOf(worstOf({ ...s, size }, found.value, effects, context)) <= 1;
}

/** One piece under the effects of its patterns, against the strength of each combination. */
export function checkMember(
  s: Subject,
  effects: readonly PatternEffect[],
  base: CheckBase,
  name: string,
  change: (passes: (size: string) => boolean) => string,
  context: CheckContext,
): CheckResult {
  const found = context.code.member(context.tables, s.lumber.species, s.lumber.grade, s.size);
  if (!found.ok) return cannotCheck(base, missingOf(found.problems));
  const worst = worstOf(s, found.value, effects, context);
  const { pattern, effect, combination } = worst;
  const [d, l, title, unit] = WORDS[s.part];
  const working: Trace = [];
  pattern.explain(working);
  recordEffect(working, d, `${title} of own weight`, effect.dead, unit, effect.where, pattern.name);
  recordEffect(working, l, `${title} of the live load`, effect.live, unit, effect.where, pattern.name);
  const demand = demandOf(s.part, combination, effect, working, pattern.name);
  const capacity = capacityOf(s, found.value, combination, context, working);
  const live = Math.max(0, capacity - combination.dead * effect.dead);
  const share = effect.live > 0 && combination.live > 0 ? live / (combination.live * effect.live) : Infinity;
  const percent = Math.floor(Math.min(share, 100) * 100);
  const carries =
    share === Infinity || share > 100
      ? `The ${name} carries what is asked.`
      : `The ${name} carries ${percent} % of the people and carts asked of it, beside own weight: ${showQuantity(capacity, unit, context.units)}.`;
  const governs = `${pattern.name}; ${effect.where}`;
  const verdict = {
    unit,
    demand: qty(demand, unit) as Qty,
    capacity: qty(capacity, unit) as Qty,
    governs,
    working,
  };
  const isFine = demand <= capacity;
  return resultOf(base, verdict, {
    carries,
    change: isFine ? null : change((size) => passesAs(s, size, effects, context)),
  });
}

/** Bending or shear of a sill, rail or bearer on its carriers, wet, one piece alone, under every combination. */
export function checkSupportBeam(
  part: "bending" | "shear",
  beam: SupportBeam,
  patterns: readonly BeamPattern[],
  base: CheckBase,
  context: CheckContext,
): CheckResult {
  if (beam.carriers.length === 0) return cannotCheck(base, [`what carries the ${beam.name}`]);
  const find = part === "bending" ? beamMoments : beamShears;
  const effects = patterns.flatMap((pattern) =>
    find(beam.carriers, pattern.loads).map((effect) => ({ pattern, effect })),
  );
  const subject: Subject = {
    part,
    lay: beam.lay,
    size: beam.size,
    lumber: beam.lumber,
    unbraced_m: freeLength(
      beam.carriers,
      patterns.flatMap((p) => p.loads),
    ),
  };
  const change = (passes: (size: string) => boolean): string => {
    const stouter = stouterSizes(context.tables.sizes, beam.size).find((size) => passes(size.id));
    const by = `a carrier of the ${beam.name} under every load`;
    return stouter
      ? `Would pass with ${stouter.id} laid ${beam.lay}, or with ${by}.`
      : `No stouter size of the table passes laid ${beam.lay}: it would pass only with ${by}.`;
  };
  return checkMember(subject, effects, base, beam.name, change, context);
}

/** Posts or legs as columns free to turn at both ends, leaning over their thinner side. */
export function checkPost(
  post: Post,
  forces: readonly PatternEffect[],
  base: CheckBase,
  context: CheckContext,
): CheckResult {
  const effects = forces.map(({ pattern, effect }) => ({
    pattern,
    effect: {
      ...effect,
      dead: effect.dead / post.sharing,
      live: effect.live / post.sharing,
      where: post.sharing > 1 ? `${effect.where}, shared by ${post.sharing}` : effect.where,
    },
  }));
  const subject: Subject = {
    part: "column",
    lay: "edge",
    size: post.size,
    lumber: post.lumber,
    unbraced_m: post.free_m,
    column_m: post.free_m,
  };
  const change = (passes: (size: string) => boolean): string => {
    const stouter = stouterSizes(context.tables.sizes, post.size).find((size) => passes(size.id));
    return stouter
      ? `Would pass with ${stouter.id}.`
      : "No stouter size of the table passes: lower the support, or brace it at mid height.";
  };
  return checkMember(subject, effects, base, post.name, change, context);
}
