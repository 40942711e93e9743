import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import { validateKit } from "@causey/engine/kit";
import type { SearchInput } from "@causey/engine/layout";
import { layoutFacts, searchCosts } from "@causey/engine/plan";
import { readPlan } from "@causey/io/plan";
import { stourPlanFiles, type StourVariant } from "./stour-plan.ts";

const options = { readyKits, validateKit: (kit: (typeof readyKits)[number]) => validateKit(kit, tables) };

/** What the layout search reads of the Stour plan; prices are left out, so that length and harm decide. */
export async function stourInput(dataFolder: string, variant: StourVariant): Promise<SearchInput> {
  const read = await readPlan(await stourPlanFiles(dataFolder, variant), options);
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  const { plan, site } = read;
  return {
    site,
    choice: plan.layout,
    laying: { from: plan.laying.from, to: plan.laying.to },
    facts: layoutFacts(plan.kit, tables.sizes),
    costs: searchCosts(plan, [], tables),
  };
}
