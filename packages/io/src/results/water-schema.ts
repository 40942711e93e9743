import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

const share = z.strictObject({ share: number, low: z.nullable(number), high: z.nullable(number) });

export const waterSchema = z.strictObject({
  findings: many(z.strictObject({ level: text, message: text })),
  record: z.nullable(
    z.strictObject({
      basis: z.enum(["predicted", "recorded"]),
      from: text,
      to: text,
      covered_h: number,
      gaps: number,
      attribution: text,
    }),
  ),
  joints: many(z.strictObject({ joint: text, ground: share, deck: share })),
  longest_dry_h: z.nullable(number),
  cautions: many(text),
});
