import type { Problem } from "@causey/engine/formula";
import { proofProblems } from "@causey/engine/checks";
import { cartProblems, validateKit, type Kit } from "@causey/engine/kit";
import type { Tables } from "@causey/engine/materials";
import type { Edit, Plan, Section } from "@causey/engine/plan";
import { readArchive, writeArchive } from "@causey/io/archive";
import { movesSomething, siteFaults } from "@causey/io/edit";
import {
  namedFiles,
  PLACES_FILE,
  PLAN_FILE,
  readPlan,
  writePlan,
  ZONES_FILE,
  type ReadPlanOptions,
} from "@causey/io/plan";
import type { FilesBeside, PlanFormat } from "./options.ts";
import { terrainShelf } from "./terrain-shelf.ts";

/** The files that the document takes in whole: they are written anew from it. */
const taken = new Set([PLAN_FILE, PLACES_FILE, ZONES_FILE]);

/**
 * Plan folders and archives as `io` reads and writes them.
 *
 * readyKits  kits that a plan may name instead of carrying a recipe
 * tables     what a recipe is held against
 */
export function planFormat(readyKits: readonly Kit[], tables: Tables): PlanFormat {
  const judgeKit = (kit: Kit): readonly Problem[] => validateKit(kit, tables);
  const options: ReadPlanOptions = {
    readyKits,
    validateKit: judgeKit,
    validateProof: (proof) => proofProblems(proof, tables),
  };
  const terrainOf = terrainShelf();
  return {
    read: (files) => readPlan(files, options),
    check: async (plan, edit, beside) => {
      if (touchesFiles(edit)) return readAgain(plan, beside, options);
      if (movesSomething(edit)) return siteFaults(plan, edit, await terrainOf(plan, beside));
      const problems = [
        ...(edit.type === "set-kit" ? judgeKit(plan.kit) : []),
        ...judgeCarts(plan, edit, tables),
      ];
      return problems.filter((problem) => problem.severity === "error");
    },
    takesIn: (name) => taken.has(name),
    beside: (_plan, files) => new Map([...files].filter(([name]) => !taken.has(name))),
    write: writePlan,
    readArchive,
    writeArchive,
  };
}

/** Sections that nothing else in the plan or beside it can contradict. */
const wordsOnly: ReadonlySet<Section> = new Set<Section>(["site_name", "request", "rules", "papers", "saw"]);

const touchesFiles = (edit: Edit): boolean =>
  edit.type === "set-price-list" || (edit.type === "set-section" && !wordsOnly.has(edit.section));

/** Reads the plan as its folder would be read, with the files that it names: errors only. */
async function readAgain(
  plan: Plan,
  beside: FilesBeside,
  options: ReadPlanOptions,
): Promise<readonly Problem[]> {
  const files = new Map(writePlan(plan));
  for (const name of namedFiles(plan)) {
    const bytes = await beside.read(name);
    if (bytes) files.set(name, bytes);
  }
  const reading = await readPlan(files, options);
  return reading.ok ? [] : reading.problems.filter((problem) => problem.severity === "error");
}

/** A cart must find room on the deck: a new visit's cart, or every cart after a change of the kit. */
function judgeCarts(plan: Plan, edit: Edit, { sizes }: Tables): readonly Problem[] {
  if (edit.type !== "set-kit" && edit.type !== "set-visit") return [];
  return plan.visits.flatMap(({ id, cart }, i) =>
    cart && (edit.type === "set-kit" || edit.visit.id === id)
      ? cartProblems(plan.kit, cart, sizes, `visits[${i}].cart`)
      : [],
  );
}
