import { join } from "node:path";
import { tables } from "@causey/data/tables";
import { derive } from "@causey/engine/plan";
import { finish } from "@causey/engine/formula";
import { readFolder } from "../../../io/src/folder/index.ts";
import { withoutHidden } from "../../../io/src/results/index.ts";
import { readWholePlan } from "../../../runtime/src/derive/index.ts";
import { loadSolver } from "../../../runtime/src/solver/index.ts";
import type { PaperContext } from "../../src/set/index.ts";

/** A demo site worked out with one heading: enough for papers, and quick. Throws with its problems where it has any. */
export async function demoContext(
  site: "salt-meadow" | "spring-fen",
  sheet: "a4" | "letter",
): Promise<PaperContext> {
  const read = await readWholePlan(await readFolder(join(import.meta.dirname, "../../../../examples", site)));
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join("\n"));
  const plan = {
    ...read.plan,
    layout: { ...read.plan.layout, heading_step_deg: 90 },
    papers: { ...read.plan.papers, sheet },
  };
  const results = finish(
    derive({ plan, site: read.site, prices: read.prices }, { tables, solver: await loadSolver() }),
  );
  return { plan, site: read.site, tables, results: withoutHidden(results, plan.zones) };
}
