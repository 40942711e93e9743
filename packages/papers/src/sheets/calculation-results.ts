import type { CheckResult } from "@causey/engine/checks";
import type { TraceStep } from "@causey/engine/formula";
import { showQuantity, showShareOfLimit } from "@causey/engine/units";
import type { PaperContext } from "../set/context.ts";
import type { Block } from "../text/index.ts";
import { partWords, sourceWords, stepBlock } from "./working-blocks.ts";

export type Judged = Extract<CheckResult, { readonly status: "pass" | "fail" }>;

export const isJudged = (check: CheckResult): check is Judged =>
  check.status === "pass" || check.status === "fail";

/** Up to so many checks of a kind are listed each by itself; of more, the one nearest to its limit stands for all. */
const MOST_OF_A_KIND = 8;

/** Checks by kind, in the order of the results, the highest utilisation of each kind first. */
export function byKind(checks: readonly CheckResult[]): readonly (readonly Judged[])[] {
  const kinds = new Map<string, Judged[]>();
  for (const check of checks.filter(isJudged))
    kinds.set(check.kind, [...(kinds.get(check.kind) ?? []), check]);
  return [...kinds.values()].map((all) => all.toSorted((a, b) => b.utilisation - a.utilisation));
}

/** Demand, capacity and share by part, with what governs and the rule. */
export function resultBlocks({ plan, results }: PaperContext): Block[] {
  const rows = byKind(results.checks).flatMap((all) =>
    (all.length > MOST_OF_A_KIND ? all.slice(0, 1) : all).map((c) => [
      all.length > MOST_OF_A_KIND ? `${c.title}, nearest to its limit of ${all.length}` : c.title,
      partWords(c.parts),
      showQuantity(c.demand, c.unit, plan.units),
      showQuantity(c.capacity, c.unit, plan.units),
      showShareOfLimit(c.utilisation),
      c.governs,
      sourceWords(c.rule),
    ]),
  );
  const open = results.checks.filter((c) => c.status === "cannot-check");
  return [
    { kind: "head", text: "Results by part" },
    {
      kind: "table",
      columns: [
        { head: "Check", share: 3 },
        { head: "Parts", share: 1.9 },
        { head: "Demand", share: 1.5, align: "end" },
        { head: "Capacity", share: 1.5, align: "end" },
        { head: "Share", share: 1.1, align: "end" },
        { head: "Governs", share: 3 },
        { head: "Rule", share: 3.4 },
      ],
      rows,
    },
    {
      kind: "text",
      text:
        open.length === 0
          ? "Every check that applies could be made."
          : `${open.length} checks cannot be made and are no passes; the check summary names what each lacks.`,
    },
  ];
}

/** Every value and rule that nobody has looked up, once each, with how many checks rest on it. */
export function toConfirmBlocks({ plan, results }: PaperContext, status: "memory" | "practice"): Block[] {
  const found = new Map<
    string,
    { readonly step: TraceStep; readonly values: Set<number>; checks: Set<string> }
  >();
  for (const check of results.checks.filter(isJudged))
    for (const step of check.working.filter((s) => s.source.status === status)) {
      const key = `${step.id}|${step.title}|${step.source.title}|${step.source.at ?? ""}`;
      const entry = found.get(key) ?? { step, values: new Set(), checks: new Set() };
      entry.values.add(step.value);
      entry.checks.add(check.id);
      found.set(key, entry);
    }
  const rules = new Map(
    results.checks
      .filter((c) => c.rule.status === status)
      .map((c) => [`${c.rule.title}, ${c.rule.at ?? ""}`, sourceWords(c.rule)]),
  );
  if (found.size + rules.size === 0) return [{ kind: "text", text: "None." }];
  return [
    ...[...found.values()].map(({ step, values, checks }): Block => {
      const value =
        values.size === 1 ? showQuantity(step.value, step.unit, plan.units) : `${values.size} values by part`;
      return {
        kind: "text",
        bullet: true,
        text: `${step.title}: ${value}. ${step.source.title}${step.source.at ? `, ${step.source.at}` : ""}. In ${checks.size} ${checks.size === 1 ? "check" : "checks"}.`,
      };
    }),
    ...[...rules.values()].map((text): Block => ({ kind: "text", bullet: true, text: `Rule: ${text}.` })),
  ];
}

/** The whole working of the check nearest to its limit, of each kind. */
export const governingWorkings = ({ plan, results }: PaperContext): Block[] =>
  byKind(results.checks).flatMap(([check]): Block[] =>
    check === undefined
      ? []
      : [
          {
            kind: "head",
            text: `${check.title}: ${showShareOfLimit(check.utilisation)} of the limit`,
          },
          {
            kind: "text",
            quiet: true,
            text: `${showQuantity(check.demand, check.unit, plan.units)} of ${showQuantity(check.capacity, check.unit, plan.units)}; governs: ${check.governs || "the part itself"}. ${sourceWords(check.rule)}.`,
          },
          ...check.working.map((step) => stepBlock(step, plan.units)),
          {
            kind: "text",
            text: `The other way round: ${[check.backwards.carries, check.backwards.change].filter(Boolean).join(" ")}`,
          },
        ],
  );
