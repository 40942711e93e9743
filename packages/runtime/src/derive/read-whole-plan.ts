import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import { codeFitProblems, proofProblems } from "@causey/engine/checks";
import { cartProblems, validateKit } from "@causey/engine/kit";
import { partCosts } from "@causey/engine/cost";
import type { Problem } from "@causey/engine/formula";
import type { PlanFiles } from "@causey/io/files";
import { readPlan, type ReadPlan } from "@causey/io/plan";

/**
 * Reads a plan folder's files with the ready kits and tables of this build, and holds kit and carts against each
 * other too. Every shell reads plans through here, so the same folder gives the same problems everywhere.
 */
export async function readWholePlan(files: PlanFiles): Promise<ReadPlan> {
  const read = await readPlan(files, {
    readyKits,
    validateKit: (kit) => validateKit(kit, tables),
    validateProof: (proof) => proofProblems(proof, tables),
  });
  if (!read.ok) return read;
  const carts: Problem[] = read.plan.visits.flatMap((visit, n) =>
    visit.cart ? cartProblems(read.plan.kit, visit.cart, tables.sizes, `visits[${n}].cart`) : [],
  );
  const notes = [
    ...carts.filter((p) => p.severity !== "error"),
    ...codeFitProblems(read.plan, tables),
    ...missingPrices(read),
  ];
  const errors = carts.filter((p) => p.severity === "error");
  return errors.length > 0
    ? { ok: false, problems: [...errors, ...read.warnings] }
    : { ...read, warnings: [...read.warnings, ...notes] };
}

/** What the kit needs and the price list does not sell: the cost would not be the whole. */
function missingPrices({ plan, prices }: Extract<ReadPlan, { ok: true }>): Problem[] {
  const { missing } = partCosts(plan.kit, prices, tables.sizes);
  return missing.map((item) => ({
    code: "price-missing",
    severity: "warning",
    file: plan.prices.file,
    place: `item ${item}`,
    value: "",
    message: `The kit needs ${item} and the list has no price for it: the cost will not be the whole.`,
    mend: "Add a line for it; for lumber one line for each length that the yard sells.",
  }));
}
