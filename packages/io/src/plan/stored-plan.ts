import type { JsonObject } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import { Findings } from "../problem/index.ts";
import { migrate } from "./migrations.ts";

/**
 * A whole plan document as a store kept it, places and zones inside, brought to the schema of today. Throws
 * `ProblemError` when a newer program wrote it.
 */
export const upgradePlan = (stored: JsonObject): Plan =>
  migrate(new Findings("plan.json"), stored) as unknown as Plan;
