import type { Plan, Results } from "@causey/engine/plan";
import { jsonBytes } from "../json/index.ts";
import { budgetCsv } from "./budget-csv.ts";
import { layoutGeoJson } from "./layout-geojson.ts";
import { checksCsv, cuttingCsv, jointsCsv, orderCsv } from "./tables.ts";
import { withoutHidden } from "./without-hidden.ts";

/**
 * The files that show a plan's results: results.json, layout.geojson, joints.csv, checks.csv,
 * order.csv, budget.csv, cutting.csv.
 * Equal results give equal bytes. They may be shared: hidden zones appear in none of them. Throws `DomainError` for a
 * number that is not finite and for amounts that do not add up to the cost.
 */
export function resultFiles(results: Results, plan: Plan): Map<string, Uint8Array> {
  const shown = withoutHidden(results, plan.zones);
  return new Map([
    ["results.json", jsonBytes(shown)],
    ["layout.geojson", jsonBytes(layoutGeoJson(shown, plan), "as-given")],
    ["joints.csv", jointsCsv(shown.layout.joints)],
    ["checks.csv", checksCsv(shown.checks)],
    ["order.csv", orderCsv(shown.cost)],
    ["budget.csv", budgetCsv(shown.budget)],
    ["cutting.csv", cuttingCsv(shown.cutting)],
  ]);
}
