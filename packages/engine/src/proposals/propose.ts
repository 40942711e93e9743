import { massOf, prove, type CheckResult } from "../checks/index.ts";
import { designCode } from "../codes/index.ts";
import type { Job } from "../formula/index.ts";
import { kitLength, validateKit } from "../kit/index.ts";
import { moduleMasses, ovenDryGravity, type Tables } from "../materials/index.ts";
import {
  applyEdit,
  derive,
  type DeriveContext,
  type DeriveInput,
  type Plan,
  type Results,
} from "../plan/index.ts";
import { familiesFor } from "./families.ts";
import type { Family, Proposal, Step } from "./types.ts";

/** A plan after one step, or null when the step cannot be applied or its kit cannot be built. */
function planAfter({ edit }: Step, plan: Plan, tables: Tables): Plan | null {
  const outcome = applyEdit(plan, edit);
  if (!outcome.ok) return null;
  const isBuilt =
    edit.type !== "set-kit" ||
    validateKit(outcome.plan.kit, tables).every((problem) => problem.severity !== "error");
  return isBuilt ? outcome.plan : null;
}

const useOf = (check: CheckResult | undefined): number =>
  check && (check.status === "pass" || check.status === "fail") ? check.utilisation : Infinity;

/** The smallest step of a family that passes on the line as it lies; steps that need a new line are kept untried. */
function smallest(
  family: Family,
  check: string,
  { plan, site }: DeriveInput,
  layout: Results["layout"],
  tables: Tables,
): { readonly step: Step; readonly plan: Plan } | null {
  for (const step of family.steps) {
    const after = planAfter(step, plan, tables);
    if (!after) continue;
    if (!step.keepsLayout) return { step, plan: after };
    const masses = moduleMasses(after.kit, tables.sizes);
    const { checks } = prove({ plan: after, site, layout, tables, masses });
    if (useOf(checks.find((c) => c.id === check)) <= 1) return { step, plan: after };
  }
  return null;
}

/** Dry mass of all modules and platforms of a layout, and of its heaviest module [kg]. */
function massesOf(plan: Plan, { layout }: Results, tables: Tables): { total: number; heaviest: number } {
  const code = designCode(plan.code);
  const { species, grade } = plan.kit.lumber;
  const member = code.ok ? code.value.member(tables, species, grade, plan.kit.stringers.size) : code;
  if (!member.ok) return { total: 0, heaviest: 0 };
  const gravity = ovenDryGravity(member.value.density, tables.sources);
  const masses = moduleMasses(plan.kit, tables.sizes);
  let [total, heaviest] = [0, 0];
  for (const part of layout.parts) {
    const mass =
      part.kind === "module" ? masses.module(kitLength(plan.kit, part.length_m) / 1000) : masses.platform;
    const kg = massOf(mass, gravity, "new");
    total += kg;
    if (part.kind === "module") heaviest = Math.max(heaviest, kg);
  }
  return { total, heaviest };
}

const totalOf = (results: Results): number | null =>
  results.cost.unpriced.length > 0 ? null : results.cost.total;

/** Whether the check passes with a step, and everything that comes with it: the whole plan is worked out anew. */
function* workedOut(
  found: { readonly step: Step; readonly plan: Plan },
  family: string,
  check: string,
  input: DeriveInput,
  before: Results,
  context: DeriveContext,
): Job<Proposal | null> {
  const cache = new Map(context.cache ?? []);
  const after = yield* derive({ ...input, plan: found.plan }, { ...context, cache });
  const same = after.checks.find((c) => c.id === check);
  // A length that is no longer used has no check of its own: nothing is left to fail.
  const isGone = same === undefined && !found.step.keepsLayout;
  const utilisation = isGone ? 0 : useOf(same);
  if (utilisation > 1) return null;
  const [was, is] = [
    massesOf(input.plan, before, context.tables),
    massesOf(found.plan, after, context.tables),
  ];
  const [paid, pays] = [totalOf(before), totalOf(after)];
  const passed = new Set(before.checks.filter((c) => c.status === "pass").map((c) => c.id));
  return {
    check,
    family,
    words: found.step.words,
    edit: found.step.edit,
    utilisation,
    added_cost: paid === null || pays === null ? null : pays - paid,
    added_kg: is.total - was.total,
    heaviest_kg: is.heaviest,
    worsens: after.checks
      .filter((c) => c.status === "fail" && passed.has(c.id))
      .map(({ id, title }) => ({ id, title })),
  };
}

/**
 * What would make a failing check pass: of each family of catalogue steps the smallest that does, on the line as it
 * lies, then worked out on the whole plan with its line sought anew, so that applying it gives what is promised here.
 *
 * before   results of the plan as it is
 * check    id of a check that fails; a check that passes, or that no part can mend, has no proposals
 * Returns the proposals, cheapest first. Long: one derivation of the plan for each.
 */
export function* propose(
  input: DeriveInput,
  before: Results,
  check: string,
  context: DeriveContext,
): Job<Proposal[]> {
  const failing = before.checks.find((c) => c.id === check && c.status === "fail");
  if (!failing) return [];
  const families = familiesFor(failing, input.plan, context.tables);
  const proposals: Proposal[] = [];
  for (const [i, family] of families.entries()) {
    yield { done: i, total: families.length, note: "Trying steps of the catalogue" };
    const found = smallest(family, check, input, before.layout, context.tables);
    if (!found) continue;
    const proposal = yield* workedOut(found, family.id, check, input, before, context);
    if (proposal) proposals.push(proposal);
  }
  return proposals.sort((a, b) => (a.added_cost ?? Infinity) - (b.added_cost ?? Infinity));
}
