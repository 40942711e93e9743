import { auditLayout } from "@causey/engine/audit";
import { tables } from "@causey/data/tables";
import { kitGeometry } from "@causey/engine/kit";
import { join } from "node:path";
import { parseJson } from "@causey/io/json";
import { Findings } from "@causey/io/problem";
import { problemLines, readArgs, readGiven, type Shell } from "../shell/index.ts";
import { readPlanFolder } from "./read-folder.ts";

const LAYOUT_FILE = "layout.geojson";
const LAYOUT_BYTES = 50_000_000;

/** `causey audit DIR OUT`: holds OUT/layout.geojson against every hard rule of the plan folder; shares no code with the search. */
export async function runAudit(args: readonly string[], shell: Shell): Promise<number> {
  const { values, places } = readArgs(
    args,
    { json: { type: "boolean" } },
    ["DIR", "OUT"],
    "causey audit DIR OUT [--json]",
  );
  const read = await readPlanFolder(places[0]!);
  if (!read.ok) {
    shell.error(problemLines(read.problems));
    return 2;
  }
  const { plan, site } = read;
  const geometry = kitGeometry(plan.kit, tables.sizes);
  const audit = auditLayout({
    layout: (await readLayout(places[1]!)) as never,
    terrain: site.terrain,
    zones: site.zones,
    starts: site.starts,
    plots: site.plots,
    kit: plan.kit,
    module_depth_m: geometry.module_depth_m,
    laying: plan.laying,
    max_grade: plan.layout.max_grade,
    min_clear_mm: plan.layout.min_clear_mm,
  });
  if (values["json"] === true) shell.out(JSON.stringify(audit));
  else
    for (const rule of audit.rules) {
      shell.out(`${rule.problems.length === 0 ? "kept  " : "BROKEN"}  ${rule.rule} (${rule.tested} tested)`);
      if (rule.problems.length > 0) shell.out(problemLines(rule.problems));
    }
  return audit.ok ? 0 : 1;
}

/** The finished layout as JSON, which the audit itself reads. Throws `ProblemError` for what is none. */
async function readLayout(out: string): Promise<unknown> {
  const bytes = await readGiven(join(out, LAYOUT_FILE));
  return parseJson(new Findings(LAYOUT_FILE), bytes, LAYOUT_BYTES);
}
