import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

const share = z.strictObject({
  share: number,
  low: z.nullable(number),
  high: z.nullable(number),
  hours_per_year: z.nullable(number),
});

export const waterSchema = z.strictObject({
  findings: many(z.strictObject({ level: text, message: text })),
  record: z.nullable(
    z.strictObject({
      kind: z.enum(["readings", "high-low"]),
      basis: z.enum(["predicted", "recorded"]),
      from: text,
      to: text,
      covered_h: number,
      gap_h: number,
      gaps: number,
      attribution: text,
      zone_note: text,
    }),
  ),
  joints: many(z.strictObject({ joint: text, ground: share, deck: share })),
  lowest: z.nullable(
    z.strictObject({
      joint: text,
      ground_m: number,
      longest_dry_h: number,
      longest_wet_h: number,
      floods: number,
    }),
  ),
  longest_dry_h: z.nullable(number),
  residuals: z.null(),
  cautions: many(text),
});
