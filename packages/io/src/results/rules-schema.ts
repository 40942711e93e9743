import { z } from "../plan/zod.ts";
import { walkwayKinds } from "../plan/section-schemas.ts";
import { many, text } from "./layout-schema.ts";
import { source, step } from "./working-schema.ts";

export const optionsSchema = many(
  z.strictObject({
    kind: z.enum(walkwayKinds),
    name: text,
    make_up: text,
    removable: z.enum(["yes", "no", "poorly", "nothing to remove"]),
    removal_note: text,
    against: text,
    source,
    status: z.enum(["chosen", "rejected", "open", "not looked at"]),
    reason: text,
    is_reason_missing: z.boolean(),
    notes: many(text),
    warnings: many(z.strictObject({ text, source })),
    working: many(step),
  }),
);

export const engineerSchema = many(
  z.strictObject({ id: text, title: text, because: text, parts: many(text), source }),
);
