import type { Found } from "../codes/index.ts";
import { inputProblem, recordValue, type Problem, type Source, type Trace } from "../formula/index.ts";
import type { LoadRule, Tables, UsedTimberGrade } from "../materials/index.ts";
import type { CarryParty, ProofChoice } from "../plan/proof-choice.ts";
import { kilograms, newtons, qty, showQuantity, type Qty, type UnitSystem } from "../units/index.ts";
import type { Rung } from "./ladder.ts";
import { fileCase, people, type LoadCase } from "./walk-demand.ts";

type Row = { readonly id: string };

function rowsOf<T extends Row>(
  rows: readonly T[],
  ids: readonly string[],
  place: string,
  what: string,
): Found<T[]> {
  const problems: Problem[] = [];
  const value: T[] = [];
  for (const id of new Set(ids)) {
    const row = rows.find((r) => r.id === id);
    if (row) value.push(row);
    else problems.push(unknownRow(rows, id, place, what));
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value };
}

const unknownRow = (rows: readonly Row[], id: string, place: string, what: string): Problem =>
  inputProblem(
    place,
    id,
    `There is no ${what} with the id "${id}"`,
    rows.length > 0 ? `Use one of: ${rows.map((r) => r.id).join(", ")}.` : "Leave it out.",
  );

/** The load rules that a plan names; every unknown id is a problem that lists the known ones. */
export const findLoadRules = ({ load_rules }: Tables, ids: readonly string[]): Found<LoadRule[]> =>
  rowsOf(load_rules, ids, "proof.load_rules", "load rule");

/** The row of used timber that a plan names; null for new timber. */
export function findUsedTimber({ used_timber }: Tables, grade: string | null): Found<UsedTimberGrade | null> {
  if (grade === null) return { ok: true, value: null };
  const found = rowsOf(used_timber, [grade], "proof.used_timber.grade", "grade of used timber");
  return found.ok ? { ok: true, value: found.value[0]! } : found;
}

/** What a plan's proof names that the tables lack: nothing that is asked for is left out without a word. */
export function proofProblems(proof: ProofChoice, tables: Tables): Problem[] {
  const rules = findLoadRules(tables, proof.load_rules);
  const used = findUsedTimber(tables, proof.used_timber?.grade ?? null);
  return [...(rules.ok ? [] : rules.problems), ...(used.ok ? [] : used.problems)];
}

/** Where the tables have a rule from. */
export const ruleSource = ({ source, name, status }: LoadRule, tables: Tables): Source => ({
  ...(tables.sources[source] ?? { id: source, title: name }),
  status,
});

/** The load of a rule, with its step of the working: a pressure or a single load. */
export function recordRule(rule: LoadRule, tables: Tables, trace?: Trace): void {
  const isArea = rule.kind === "area";
  recordValue(trace, {
    id: `load-rule.${rule.id}`,
    title: rule.name,
    symbol: isArea ? "p" : "P",
    value: isArea ? rule.pressure_pa : rule.load_n,
    unit: isArea ? "Pa" : "N",
    source: ruleSource(rule, tables),
    how: "as the rule asks",
    note: `asked by ${rule.asked_by}`,
  });
}

/** Single load of a point rule, in the working [N]. */
export const pointOf =
  (rule: Extract<LoadRule, { kind: "point" }>, tables: Tables) =>
  (trace?: Trace): Qty<"N"> => {
    recordRule(rule, tables, trace);
    return newtons(rule.load_n);
  };

/** A pressure or a load as both systems of units say it. */
export const sayRule = (rule: LoadRule, units: UnitSystem): string =>
  rule.kind === "area"
    ? `${showQuantity(rule.pressure_pa, "Pa", units)} all over`
    : `${showQuantity(rule.load_n, "N", units)} at one place`;

/** A rule as a case on the walkway: all over its clear deck, or one load anywhere. */
export const ruleCase = (rule: LoadRule, tables: Tables): LoadCase => ({
  name: `${rule.name} (${ruleSource(rule, tables).title})`,
  loads: rule.kind === "area" ? [] : [{ at: 0, weight: newtons(rule.load_n), cart: null }],
  cart: null,
  explain: (trace) => recordRule(rule, tables, trace),
  ...(rule.kind === "area" ? { area_pa: qty(rule.pressure_pa, "Pa") } : {}),
  ...(rule.span_over === null ? {} : { span_over: rule.span_over }),
});

/** People who carry a load between them, in step and evenly apart: each weighs with an equal share of the load. */
export function carryCase(party: CarryParty, units: UnitSystem): LoadCase {
  const kg = party.person_kg + party.load_kg / party.people;
  const load = showQuantity(party.load_kg, "kg", units);
  const name = `${people(party.people)} in step who carry ${load} between them`;
  const file = fileCase(name, party.people, kg, party.spacing_mm / 1000);
  return {
    ...file,
    explain: (trace) => {
      recordValue(trace, {
        id: "check.carried-share",
        title: "One carrier with an equal share of the load",
        symbol: "m_c",
        value: kilograms(kg),
        unit: "kg",
        source: { id: "plan", title: "The plan's carry party", status: "project" },
        how: "carrier + load / carriers",
      });
      file.explain(trace);
    },
  };
}

/** What a plan asks for beside its visits: each load rule and the carry party. */
export const proofCases = (
  rules: readonly LoadRule[],
  carry: CarryParty | null,
  tables: Tables,
  units: UnitSystem,
): LoadCase[] => [
  ...rules.map((rule) => ruleCase(rule, tables)),
  ...(carry ? [carryCase(carry, units)] : []),
];

/** A rung for each of these cases, so that the answer says which of them the walkway carries. */
export const proofRungs = (cases: readonly LoadCase[]): Rung[] =>
  cases.map((load) => ({
    ladder: `proof ${load.name}`,
    words: load.name,
    beyond: load.name,
    none: `not ${load.name}`,
    load,
  }));
