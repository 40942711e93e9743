import type { Results } from "@causey/engine/plan";

type Check = Results["checks"][number];
type OpenCheck = Extract<Check, { readonly status: "cannot-check" }>;

const isOpen = (check: Check): check is OpenCheck => check.status === "cannot-check";

/** So many titles of one group are written out. */
const MOST_TITLES = 3;

/** Checks that could not be made, by what they lack: one line for each want, the one that most checks lack first. */
export function openCheckLines(checks: readonly Check[]): readonly string[] {
  const groups = new Map<string, Set<string>>();
  const counts = new Map<string, number>();
  for (const check of checks.filter(isOpen)) {
    const missing = check.missing.join(", ");
    groups.set(missing, (groups.get(missing) ?? new Set()).add(check.title));
    counts.set(missing, (counts.get(missing) ?? 0) + 1);
  }
  return [...groups]
    .toSorted(([a], [b]) => counts.get(b)! - counts.get(a)!)
    .map(([missing, titles]) => {
      const n = counts.get(missing)!;
      const named = [...titles].slice(0, MOST_TITLES).join("; ");
      const more = titles.size > MOST_TITLES ? "; and others" : "";
      return `  cannot be checked, missing ${missing}: ${n} ${n === 1 ? "check" : "checks"} (${named}${more})`;
    });
}
