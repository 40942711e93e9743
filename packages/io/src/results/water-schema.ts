import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

const share = z.strictObject({
  share: number,
  low: z.nullable(number),
  high: z.nullable(number),
  hours_per_year: z.nullable(number),
});

const dryWindow = z.strictObject({
  from: text,
  to: text,
  ends: z.enum(["flood", "midnight", "record"]),
  back_by: z.nullable(text),
  safe_h: number,
});

const stationDays = z.strictObject({
  station: text,
  ground_m: number,
  way_m: number,
  days: many(z.strictObject({ day: text, dry_h: number, covered_h: number, windows: many(dryWindow) })),
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
  days: many(stationDays),
  residuals: z.nullable(
    z.strictObject({
      n: number,
      from: text,
      to: text,
      mean_m: number,
      sd_m: number,
      low_m: number,
      high_m: number,
      most_m: number,
      most_at: text,
    }),
  ),
  cautions: many(text),
});
