import type { CheckResult } from "@causey/engine/checks";

/**
 * Checks that lack the same, or do not apply for the same reason, as one with all their parts: sixty rows that ask for
 * one flood level would bury the row that failed. What was judged is never folded.
 */
export function foldChecks(checks: readonly CheckResult[]): CheckResult[] {
  const groups = new Map<string, CheckResult[]>();
  for (const check of checks) {
    const key = reasonOf(check) ?? check.id;
    groups.set(key, [...(groups.get(key) ?? []), check]);
  }
  return [...groups.values()].map((group) => (group.length === 1 ? group[0]! : joined(group)));
}

function reasonOf(check: CheckResult): string | null {
  if (check.status === "cannot-check") return JSON.stringify([check.kind, check.missing]);
  if (check.status === "not-applicable") return JSON.stringify([check.kind, check.because]);
  return null;
}

const joined = (group: readonly CheckResult[]): CheckResult => ({
  ...group[0]!,
  title: commonTitle(group.map((c) => c.title)),
  parts: [...new Set(group.flatMap((c) => c.parts))],
});

/** What all titles begin with, up to a whole word: "Bearing of the ground" of "Bearing of the ground, joint J1". */
function commonTitle(titles: readonly string[]): string {
  const words = titles.map((t) => t.split(/(?=[\s,])/));
  const first = words[0]!;
  const end = first.findIndex((word, i) => words.some((others) => others[i] !== word));
  const common = first.slice(0, end < 0 ? undefined : end).join("");
  return common.replace(/[\s,]+(?:joint|part|module)?$/, "") || titles[0]!;
}
