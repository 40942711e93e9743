import { designCode } from "../codes/index.ts";
import type { Problem } from "../formula/index.ts";
import type { Tables } from "../materials/index.ts";
import type { Plan } from "../plan/document.ts";

/** Timber whose strength the checks look up, by its place in the kit. */
const carrying = ({
  stringers,
  cross_pieces,
  platform,
  deck,
}: Plan["kit"]): [place: string, size: string][] => [
  ["stringers.size", stringers.size],
  ["cross_pieces.size", cross_pieces.size],
  ["platform.stringers.size", platform.stringers.size],
  ["platform.cross_pieces.size", platform.cross_pieces.size],
  ...(deck.kind === "boards" ? [["deck.size", deck.size] satisfies [string, string]] : []),
];

/**
 * Warnings for wood and sizes that the plan's design code has no values for: a plan may be read and drawn so, but its
 * timber cannot be checked. Each names its place in the plan file and the ids that the code knows.
 */
export function codeFitProblems({ code, kit }: Pick<Plan, "code" | "kit">, tables: Tables): Problem[] {
  const found = designCode(code);
  if (!found.ok) return [];
  const { species, grade } = kit.lumber;
  const problems = carrying(kit).flatMap(([place, size]) => {
    const member = found.value.member(tables, species, grade, size);
    return member.ok ? [] : member.problems.map((p) => inPlan(p, place));
  });
  return problems.filter((p, i) => problems.findIndex((q) => q.place === p.place) === i);
}

const inPlan = (problem: Problem, place: string): Problem => ({
  ...problem,
  code: "kit-code",
  severity: "warning",
  file: "plan.json",
  place: problem.place === "size" ? `kit.${place}` : `kit.lumber.${problem.place}`,
});
