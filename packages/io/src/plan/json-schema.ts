import { planFileSchema } from "./plan-schema.ts";
import { z } from "./zod.ts";

/** JSON Schema (draft 2020-12) of plan.json, made from the schema that reads it. */
export const planJsonSchema = (): object => ({
  ...z.toJSONSchema(planFileSchema, { io: "input" }),
  title: "plan.json",
  description:
    "Decisions and inputs of one walkway project. Starts and plots stand in places.geojson, zones in zones.geojson. Keys carry their unit.",
});
