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

const soil = z.strictObject({
  joints: many(
    z.strictObject({
      id: text,
      along_m: number,
      su_low_pa: number,
      su_median_pa: number,
      su_high_pa: number,
      capacity_low_pa: number,
      capacity_median_pa: number,
      demand_pa: number,
      chance: number,
    }),
  ),
  any_fails_chance: number,
  any_fails_error: number,
  readings_used: number,
  readings_left_out: number,
  settings: many(text),
  worth: many(
    z.strictObject({
      joint: text,
      ratio_now: number,
      ratio_one: number,
      ratio_two: number,
      risk_now: number,
      risk_one: number,
      risk_two: number,
      turns_one: number,
      turns_two: number,
      words: text,
    }),
  ),
});

const flood = z.strictObject({
  cases: many(
    z.strictObject({
      id: text,
      name: text,
      z_m: number,
      speeds_m_s: z.tuple([number, number]),
      source: text,
    }),
  ),
  first_floats: z.nullable(z.strictObject({ part: text, z_m: number })),
  dammed_share: z.nullable(number),
  anchors: many(
    z.strictObject({ joint: text, pull_n: number, push_n: number, utilisation: number, stakes: text }),
  ),
  closes_at: z.strictObject({ z_m: number, speed_m_s: number }),
});

/** What stands behind the checks. */
export const proofSchema = z.strictObject({
  frames: many(frame),
  soil: z.nullable(soil),
  flood: z.nullable(flood),
});
