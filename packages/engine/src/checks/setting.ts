import type { Found } from "../codes/index.ts";
import { kitGeometry, type KitGeometry } from "../kit/index.ts";
import { ovenDryGravity, type LumberSize } from "../materials/index.ts";
import { DomainError, type Qty } from "../units/index.ts";
import type { CheckContext, ChecksInput, GradedLumber } from "./input.ts";
import type { Frame } from "./frame.ts";
import { ladderOf, type Rung } from "./ladder.ts";
import { findLoadRules, proofCases, proofRungs } from "./rule-loads.ts";
import { stringerModel, type StringerModel } from "./stringer-model.ts";
import { codeOf } from "./used-timber.ts";
import { casesOf, type LoadCase } from "./walk-demand.ts";

/** What all checks of one plan share, worked out once. */
export interface Setting {
  readonly input: ChecksInput;
  readonly context: CheckContext;
  readonly geometry: KitGeometry;
  readonly lumber: GradedLumber;
  /** Specific gravity of the kit's timber. */
  readonly gravity: Qty<"1">;
  readonly cases: readonly LoadCase[];
  readonly rungs: readonly Rung[];
  /** The stringers of a frame, worked out once for all checks that ask. */
  readonly modelOf: (frame: Frame) => Found<StringerModel>;
}

/** Prepares the checks of a plan; fails when the code, species, grade or stringer size is not in the tables. */
export function settingOf(input: ChecksInput): Found<Setting> {
  const { plan, tables } = input;
  const rules = findLoadRules(tables, plan.proof.load_rules);
  if (!rules.ok) return rules;
  const code = codeOf(plan, tables);
  if (!code.ok) return code;
  const { species, grade, incised } = plan.kit.lumber;
  const member = code.value.code.member(tables, species, grade, plan.kit.stringers.size);
  if (!member.ok) return member;
  const context: CheckContext = { tables, units: plan.units, load_rules: rules.value, ...code.value };
  const asked = proofCases(rules.value, plan.proof.carry, tables, plan.units);
  const models = new Map<Frame, Found<StringerModel>>();
  return {
    ok: true,
    value: {
      input,
      context,
      geometry: kitGeometry(plan.kit, tables.sizes),
      lumber: { species, grade, incised },
      gravity: ovenDryGravity(member.value.density, tables.sources),
      cases: [...casesOf(plan.visits, plan.units), ...asked],
      rungs: [...ladderOf(plan.visits, plan.units), ...proofRungs(asked)],
      modelOf: (frame) => {
        let model = models.get(frame);
        if (!model) models.set(frame, (model = stringerModel(frame, context)));
        return model;
      },
    },
  };
}

/** A size of the kit. Throws `DomainError` for a size that `validateKit` would have refused. */
export function sizeOf({ context }: Setting, id: string): LumberSize {
  const size = context.tables.sizes.find((s) => s.id === id);
  if (!size) throw new DomainError("unknown-lumber-size", { size: id });
  return size;
}

/** Groups by a key, in order of first appearance. */
export function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}
