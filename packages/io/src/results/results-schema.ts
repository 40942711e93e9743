import type { Results } from "@causey/engine/plan";
import type { Frozen, Same } from "../plan/same-type.ts";
import { RESULTS_SCHEMA } from "../plan/schema-number.ts";
import { number, z } from "../plan/zod.ts";
import { evaluationSchema, layoutSchema, many, text } from "./layout-schema.ts";
import { proofSchema } from "./proof-schema.ts";
import { budgetSchema, costSchema, cuttingSchema, takeOffSchema } from "./material-schema.ts";
import { kitFiguresSchema } from "./kit-schema.ts";
import { routeSchema, settingOutSchema, sparesSchema } from "./route-schema.ts";
import { engineerSchema, optionsSchema } from "./rules-schema.ts";
import { stripSchema } from "./strip-schema.ts";
import { surveyResultsSchema } from "./survey-schema.ts";
import { waterSchema } from "./water-schema.ts";
import { source, step, unit } from "./working-schema.ts";

const checkBase = {
  id: text,
  kind: z.enum([
    "stringer-bending",
    "stringer-shear",
    "stringer-deflection",
    "cross-piece",
    "deck",
    "seat",
    "bearing",
    "uplift",
    "lifting",
    "platform",
    "damage",
    "supports",
    "fastening",
    "feel",
    "handling",
    "settling",
    "plot",
    "flood",
    "anchor",
    "cold",
    "edge",
    "opening",
    "grade",
    "width",
    "cart",
    "setback",
    "tipping",
    "pairing",
    "deck-rule",
    "public-span",
  ]),
  title: text,
  parts: many(text),
  rule: source,
  caution: text,
};

const check = z.discriminatedUnion("status", [
  z.strictObject({
    ...checkBase,
    status: z.enum(["pass", "fail"]),
    demand: number,
    capacity: number,
    unit,
    utilisation: number,
    governs: text,
    working: many(step),
    backwards: z.strictObject({ carries: text, change: z.nullable(text) }),
    from_memory: z.boolean(),
  }),
  z.strictObject({ ...checkBase, status: z.literal("not-applicable"), because: text }),
  z.strictObject({ ...checkBase, status: z.literal("cannot-check"), missing: many(text) }),
]);

const figure = z.strictObject({
  id: text,
  title: text,
  value: number,
  unit,
  note: text,
  incomplete: z.exactOptional(text),
  working: many(step),
  sources: many(source),
});

/** results.json, as other programs may rely on it. */
export const resultsSchema = z.strictObject({
  schema: z.literal(RESULTS_SCHEMA),
  causey: text,
  plan: z.strictObject({ id: text, name: text, units: z.enum(["us", "metric"]) }),
  crs: text,
  datum: text,
  layout: layoutSchema,
  evaluation: evaluationSchema,
  checks: many(check),
  proof: proofSchema,
  take_off: takeOffSchema,
  cutting: cuttingSchema,
  cost: costSchema,
  spares: sparesSchema,
  route: routeSchema,
  setting_out: settingOutSchema,
  options: optionsSchema,
  clashes: many(text),
  engineer: engineerSchema,
  budget: budgetSchema,
  water: waterSchema,
  kit: kitFiguresSchema,
  survey: surveyResultsSchema,
  figures: many(figure),
  strip: stripSchema,
  cautions: many(text),
  stages: many(z.strictObject({ stage: text, key: text })),
});

/** Fails to compile when the engine's results and this schema drift apart. */
export const resultsSchemaIsResults: Same<Frozen<z.infer<typeof resultsSchema>>, Frozen<Results>> = true;
