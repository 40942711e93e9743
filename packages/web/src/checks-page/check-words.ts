import type { CheckKind, CheckResult } from "@causey/engine/checks";
import type { Layout } from "@causey/engine/layout";
import { foldChecks } from "./fold-checks.ts";

/** The kinds of check, gathered under the part they are about. */
export const groups: readonly { readonly title: string; readonly kinds: readonly CheckKind[] }[] = [
  { title: "Stringers", kinds: ["stringer-bending", "stringer-shear", "stringer-deflection", "feel"] },
  { title: "Cross pieces", kinds: ["cross-piece"] },
  { title: "Deck", kinds: ["deck"] },
  { title: "Seats and fastening", kinds: ["seat", "fastening"] },
  { title: "Supports and ground", kinds: ["bearing", "supports", "settling", "plot"] },
  { title: "Staying put in a flood", kinds: ["uplift", "flood", "anchor", "cold"] },
  { title: "Lifting and handling", kinds: ["lifting", "handling"] },
  { title: "Platforms", kinds: ["platform"] },
  { title: "Damaged in use", kinds: ["damage"] },
  {
    title: "Rules of the chosen profile",
    kinds: [
      "width",
      "cart",
      "opening",
      "edge",
      "grade",
      "deck-rule",
      "public-span",
      "setback",
      "tipping",
      "pairing",
    ],
  },
];

export const statusWords: Readonly<Record<CheckResult["status"], string>> = {
  pass: "meets the chosen rule",
  fail: "does not meet the chosen rule",
  "cannot-check": "cannot be checked",
  "not-applicable": "does not apply",
};

/** Kinds that no part of a kit mends: where the line runs, what the rules of the place ask. */
const LINE_KINDS: ReadonlySet<CheckKind> = new Set([
  "edge",
  "opening",
  "grade",
  "width",
  "cart",
  "setback",
  "tipping",
  "pairing",
  "deck-rule",
  "public-span",
  "cold",
  "plot",
  "flood",
]);

/** Whether steps of the catalogue may make a check pass. */
export const canBeMended = ({ kind }: CheckResult): boolean => !LINE_KINDS.has(kind);

/** The whole status in words, with what is missing or why it does not apply. */
export function statusLine(check: CheckResult): string {
  if (check.status === "cannot-check") return `cannot be checked: missing ${check.missing.join(", ")}`;
  if (check.status === "not-applicable") return `does not apply: ${check.because}`;
  return statusWords[check.status];
}

const rank: Readonly<Record<CheckResult["status"], number>> = {
  fail: 0,
  "cannot-check": 1,
  pass: 2,
  "not-applicable": 3,
};

/** What needs attention first: failed, unknown, then by utilisation. */
export const byConcern = (a: CheckResult, b: CheckResult): number =>
  rank[a.status] - rank[b.status] || utilisationOf(b) - utilisationOf(a) || a.title.localeCompare(b.title);

export const utilisationOf = (check: CheckResult): number =>
  check.status === "pass" || check.status === "fail" ? check.utilisation : 0;

export interface CheckGroup {
  readonly title: string;
  readonly checks: readonly CheckResult[];
}

/** Checks by group, worst first; with tags given, only those that concern one of them. */
export function groupChecks(checks: readonly CheckResult[], tags: ReadonlySet<string> | null): CheckGroup[] {
  const concerned = tags ? checks.filter((c) => c.parts.some((p) => tags.has(p))) : checks;
  return groups
    .map(({ title, kinds }) => ({
      title,
      checks: foldChecks(concerned.filter((c) => kinds.includes(c.kind)).toSorted(byConcern)),
    }))
    .filter((g) => g.checks.length > 0);
}

/** A part's tag with those of the joints it stands on: their checks concern it too. */
export function tagsOf(layout: Layout, part: string): ReadonlySet<string> {
  const found = layout.parts.find((p) => p.id === part);
  if (!found) return new Set([part]);
  const joints =
    found.kind === "module"
      ? [found.from, found.to]
      : [found.from, found.exits.ahead, found.exits.left, found.exits.right];
  return new Set([part, ...joints]);
}

/** The parts to point at for a check's tags: a joint's tag stands for the parts that meet there. */
export function partsAt(layout: Layout, tags: readonly string[]): string[] {
  const wanted = new Set(tags);
  return layout.parts.filter((p) => [...tagsOf(layout, p.id)].some((t) => wanted.has(t))).map((p) => p.id);
}

/** Tags in order, runs drawn together: `A1 to A4, B2`. */
export function tagWords(tags: readonly string[]): string {
  const sorted = tags.toSorted((a, b) => a.localeCompare(b, "en", { numeric: true }));
  const runs: string[][] = [];
  for (const tag of sorted) {
    const run = runs.at(-1);
    if (run && follows(run.at(-1)!, tag)) run.push(tag);
    else runs.push([tag]);
  }
  return runs.map((run) => (run.length < 3 ? run.join(", ") : `${run[0]} to ${run.at(-1)}`)).join(", ");
}

function follows(a: string, b: string): boolean {
  const [x, y] = [/^(.*?)(\d+)$/.exec(a), /^(.*?)(\d+)$/.exec(b)];
  return x !== null && y !== null && x[1] === y[1] && Number(y[2]) === Number(x[2]) + 1;
}

/** How many checks stand in each status. */
export function tally(checks: readonly CheckResult[]): Readonly<Record<CheckResult["status"], number>> {
  const counts = { pass: 0, fail: 0, "cannot-check": 0, "not-applicable": 0 };
  for (const c of checks) counts[c.status]++;
  return counts;
}
