import type { Json, JsonObject } from "@causey/engine/formula";
import { upgradeEdit } from "@causey/io/edit";
import { upgradePlan } from "@causey/io/plan";
import { PLAN_SCHEMA, type Edit, type Plan } from "@causey/engine/plan";
import type { Selectable } from "kysely";
import { StoreError, type PlanSummary, type RevisionRecord, type StoredFile } from "./port.ts";
import type { PlanFileTable, PlanTable, RevisionTable } from "./tables.ts";

/** Reads a stored document. Throws `StoreError` "newer-store" when a newer version of the plan's schema wrote it. */
export function readDocument(text: string): Plan {
  const plan = JSON.parse(text) as Plan;
  const schema: number = plan.schema;
  if (schema === PLAN_SCHEMA) return plan;
  if (schema < PLAN_SCHEMA) return upgradePlan(JSON.parse(text) as JsonObject);
  throw new StoreError(
    "newer-store",
    `The plan "${plan.name}" has schema ${schema}; this version reads schema ${PLAN_SCHEMA}.`,
  );
}

/** A stored edit in the form of today; null for none. */
export const readEdit = (text: string | null): Edit | null =>
  text === null ? null : upgradeEdit(JSON.parse(text) as Json);

export const summaryOf = (row: Omit<Selectable<PlanTable>, "document">): PlanSummary => ({
  id: row.id,
  name: row.name,
  site_name: row.site_name,
  revision: row.revision,
  created_at: Number(row.created_at),
  saved_at: Number(row.saved_at),
});

export const recordOf = (row: Selectable<RevisionTable>): RevisionRecord => ({
  number: row.number,
  kind: row.kind,
  summary: row.summary,
  edit: readEdit(row.edit),
  inverse: readEdit(row.inverse),
  of: row.of_revision,
  saved_at: Number(row.saved_at),
});

export const fileOf = (row: Selectable<PlanFileTable>): StoredFile => ({
  name: row.name,
  sha256: row.sha256,
  size: Number(row.size),
});
