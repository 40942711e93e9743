import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

export const sparesSchema = many(z.strictObject({ length_m: number, in_layout: number, spares: number }));

export const routeSchema = z.strictObject({
  length_m: number,
  parcels: many(
    z.strictObject({
      zone: text,
      name: text,
      owner: z.nullable(text),
      length_m: number,
      area_m2: number,
      parts: many(text),
    }),
  ),
  no_parcel_m: number,
  crossings: many(
    z.strictObject({
      zone: text,
      name: text,
      type: z.enum(["channel", "creek", "ditch", "pool", "panne"]),
      part: text,
      width_m: number,
      at: z.tuple([number, number]),
    }),
  ),
  sensitive_m: number,
  sensitive: many(z.strictObject({ zone: text, name: text, sensitivity: number, length_m: number })),
  dead_ends: many(
    z.strictObject({
      joint: text,
      branch: text,
      plots: many(text),
      last_turn: z.nullable(text),
      sign_at: text,
      back_m: number,
    }),
  ),
  plots: many(
    z.strictObject({
      plot: text,
      keep_off_m: number,
      nearest_m: z.nullable(number),
      overlap_m2: number,
    }),
  ),
  custom_parts: many(text),
  custom_because: text,
});

export const settingOutSchema = z.strictObject({
  lines: many(z.strictObject({ id: text, from: text, heading_deg: number })),
  joints: many(
    z.strictObject({
      joint: text,
      branch: text,
      along_m: number,
      x: number,
      y: number,
      heading_deg: number,
      deck_m: number,
      ground_m: number,
      support: text,
      support_height_m: number,
      line: text,
      distance_m: number,
      offset_m: number,
      ties: many(z.strictObject({ to: text, distance_m: number })),
      crossing_deg: z.nullable(number),
    }),
  ),
  diagonals: many(z.strictObject({ part: text, from: text, to: text, distance_m: number })),
  closing_error_m: number,
});
