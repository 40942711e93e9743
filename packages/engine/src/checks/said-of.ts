import { STAFF_ACCESS } from "./cautions.ts";
import type { CheckContext } from "./input.ts";
import type { CheckKind, CheckResult } from "./types.ts";

const TIMBER_KINDS: readonly CheckKind[] = [
  "stringer-bending",
  "stringer-shear",
  "stringer-deflection",
  "cross-piece",
  "deck",
  "seat",
  "platform",
  "damage",
  "supports",
  "fastening",
  "feel",
  "handling",
];

/** What every check of timber says where the timber has lain out before. */
function usedWords({ used }: CheckContext): string {
  if (!used) return "";
  const { grade, cycles } = used;
  const times = cycles === 1 ? "once" : `${cycles} times`;
  return `Used timber, laid ${times} before: ${grade.name}. Sorted so: ${grade.sort}. `;
}

/** What the walkway is held against, where the plan names load rules beside its visits. */
function accessWords({ load_rules = [] }: CheckContext): string {
  if (load_rules.length === 0) return STAFF_ACCESS;
  const names = load_rules.map((r) => r.name).join("; ");
  return `Held against the visits asked for and these load rules: ${names}. Whether they are those that your place asks for, its officials say.`;
}

/** Results with the words of the whole plan: used timber and chosen load rules. */
export function saidOf(results: readonly CheckResult[], context: CheckContext): readonly CheckResult[] {
  const used = usedWords(context);
  const access = accessWords(context);
  if (used === "" && access === STAFF_ACCESS) return results;
  return results.map((r) => {
    const caution = r.caution.replace(STAFF_ACCESS, access);
    return { ...r, caution: TIMBER_KINDS.includes(r.kind) ? used + caution : caution };
  });
}
