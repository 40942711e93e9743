import { auditLayout } from "@causey/engine/audit";
import { tables } from "@causey/data/tables";
import { kitGeometry } from "@causey/engine/kit";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { problemLines, readArgs, type Shell } from "../shell/index.ts";
import { readPlanFolder } from "./read-folder.ts";

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
    layout: JSON.parse(await readFile(join(places[1]!, "layout.geojson"), "utf8")) as never,
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
