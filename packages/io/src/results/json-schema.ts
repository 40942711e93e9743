import { z } from "../plan/zod.ts";
import { resultsSchema } from "./results-schema.ts";

/** JSON Schema (draft 2020-12) of results.json. */
export const resultsJsonSchema = (): object => ({
  ...z.toJSONSchema(resultsSchema, { io: "input" }),
  title: "results.json",
  description:
    "What Causey works out from one plan and its files. Lengths in metres and heights on the plan's vertical datum unless a key carries another unit; values beside a member \"unit\" are in that SI unit; money in the plan's currency.",
});
