import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

const lines = z.strictObject({ most: many(many(number)), least: many(many(number)) });

const peak = z.strictObject({
  value: number,
  at_m: number,
  stringer: number,
  load: text,
  ends: z.enum(["hinged", "stiff"]),
  loads: many(z.strictObject({ x_m: number, y_m: number, weight_n: number, is_wheel: z.boolean() })),
});

const frame = z.strictObject({
  id: text,
  name: text,
  length_m: number,
  parts: many(text),
  stringers_y_m: many(number),
  clear_width_m: number,
  rows_x_m: many(number),
  stations_m: many(number),
  moment: lines,
  shear: lines,
  sag: lines,
  peaks: z.strictObject({ moment: peak, shear: peak, sag: peak }),
});

/** What stands behind the checks. */
export const proofSchema = z.strictObject({ frames: many(frame) });
