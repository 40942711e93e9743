import type { JsonObject } from "@causey/engine/formula";
import { toSchemaThree } from "./migrate-to-three.ts";
import { toSchemaTwo } from "./migrate-to-two.ts";
import { PLAN_SCHEMA } from "./schema-number.ts";
import type { Findings } from "../problem/index.ts";

/** Turns a document of one schema number into one of the next. */
export type Migration = (document: JsonObject) => JsonObject;

/** From schema number -> migration to the next. */
export const MIGRATIONS: ReadonlyMap<number, Migration> = new Map([
  [1, toSchemaTwo],
  [2, toSchemaThree],
]);

/**
 * Brings a plan document to the schema that this program knows, one number at a time. Throws `ProblemError` for a
 * document without a number, from a newer program, or from one so old that no way leads up.
 */
export function migrate(
  found: Findings,
  document: JsonObject,
  target: number = PLAN_SCHEMA,
  migrations: ReadonlyMap<number, Migration> = MIGRATIONS,
): JsonObject {
  let current = document;
  for (let schema = schemaOf(found, current, target); schema < target; schema++) {
    const step = migrations.get(schema);
    if (step === undefined)
      return found.stop({
        code: "plan-too-old",
        place: "schema",
        value: schema,
        message: `No way is known from the plan's schema ${schema} to ${target}.`,
        mend: `Check "schema" in plan.json; this Causey writes ${target}.`,
      });
    current = { ...step(current), schema: schema + 1 };
  }
  return current;
}

function schemaOf(found: Findings, document: JsonObject, target: number): number {
  const schema = document["schema"];
  if (typeof schema !== "number" || !Number.isInteger(schema) || schema < 0)
    return found.stop({
      code: "plan-schema-number",
      place: "schema",
      value: schema,
      message: "The plan does not say which schema it follows.",
      mend: `Add "schema": ${target}.`,
    });
  if (schema > target)
    found.stop({
      code: "plan-too-new",
      place: "schema",
      value: schema,
      message: `The plan was made by a newer Causey: its schema is ${schema}, this program knows up to ${target}.`,
      mend: "Update Causey, or ask for the plan in the older form.",
    });
  return schema;
}
