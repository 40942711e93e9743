import { cannotCheck, notApplicable, resultOf, type Verdict } from "./result.ts";
import type { RuleBase } from "./rule-setting.ts";
import type { Backwards, CheckResult } from "./types.ts";

/** What a rule found at one part or joint. */
export type Finding = { readonly parts: readonly string[] } & (
  | { readonly kind: "judged"; readonly verdict: Verdict; readonly carries: string; readonly change: string }
  | { readonly kind: "unknown"; readonly missing: readonly string[] }
  | { readonly kind: "not-applicable"; readonly because: string }
);

type Judged = Extract<Finding, { kind: "judged" }>;

const useOf = ({ verdict: v }: Judged): number =>
  v.capacity > 0 ? v.demand / v.capacity : v.demand === 0 ? 0 : Infinity;
const isMet = (f: Judged): boolean => useOf(f) <= 1;

/** Every tag once, in order of first appearance. */
const tagsOf = (findings: readonly Finding[]): string[] => [...new Set(findings.flatMap((f) => f.parts))];

const worstOf = (findings: readonly Judged[]): Judged =>
  findings.reduce((a, b) => (useOf(b) > useOf(a) ? b : a));

/**
 * At most one result for all that meet a rule, one for all that do not, and one for what is unknown: each speaks of
 * its worst case and lists every part. "Does not apply" is said only where nothing else is.
 */
export function shareResults(base: RuleBase, findings: readonly Finding[]): CheckResult[] {
  const judged = findings.filter((f) => f.kind === "judged");
  const broken = judged.filter((f) => !isMet(f));
  const met = judged.filter(isMet);
  const unknown = findings.filter((f) => f.kind === "unknown");
  const spared = findings.filter((f) => f.kind === "not-applicable");
  const results: CheckResult[] = [];
  if (broken.length > 0) results.push(judgedResult(base, "broken", broken));
  if (unknown.length > 0)
    results.push(
      cannotCheck({ ...base, id: `${base.id}.unknown`, parts: tagsOf(unknown) }, [
        ...new Set(unknown.flatMap((f) => f.missing)),
      ]),
    );
  if (met.length > 0) results.push(judgedResult(base, "met", met));
  if (results.length === 0 && spared.length > 0)
    results.push(
      notApplicable({ ...base, id: `${base.id}.spared`, parts: tagsOf(spared) }, spared[0]!.because),
    );
  return results;
}

function judgedResult(base: RuleBase, outcome: string, findings: readonly Judged[]): CheckResult {
  const worst = worstOf(findings);
  const tags = tagsOf(findings);
  const more = tags.length - worst.parts.length;
  const first = worst.parts[0]!;
  const named = worst.verdict.governs.includes(first) ? "" : `${first}, `;
  const isOne = worst.parts.length === 1 && more > 0;
  const governs = isOne
    ? `${worst.verdict.governs}; ${named}the worst of ${tags.length}`
    : worst.verdict.governs;
  const backwards: Backwards = {
    carries: worst.carries,
    change: outcome === "broken" ? worst.change : null,
  };
  return resultOf(
    { ...base, id: `${base.id}.${outcome}`, parts: tags },
    { ...worst.verdict, governs },
    backwards,
  );
}
