import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";
import { step } from "./working-schema.ts";

const residual = { id: text, x: number, y: number, residual_m: number };
const groundKind = z.enum(["grid", "points", "stations"]);

const terrainFinding = z.strictObject({
  kind: groundKind,
  n: number,
  median_m: z.nullable(number),
  mean_m: z.nullable(number),
  sd_m: z.nullable(number),
  lowered_m: number,
  note: text,
  shots: many(z.strictObject({ ...residual, outlier: z.boolean() })),
  elsewhere: many(text),
  off_terrain: many(text),
});

const closure = z.strictObject({
  closures: many(
    z.strictObject({
      benchmark: text,
      shot: text,
      difference_m: number,
      closes: z.nullable(z.boolean()),
      mark_m: number,
      shot_m: number,
    }),
  ),
  rms_m: z.nullable(number),
  not_visited: many(text),
  other_datum: many(text),
});

const shearStation = z.strictObject({
  x: number,
  y: number,
  readings: many(
    z.strictObject({
      depth_m: number,
      su_kpa: number,
      remoulded_kpa: z.nullable(number),
      sensitivity: z.nullable(number),
      vane_mm: z.nullable(text),
      source: text,
    }),
  ),
  least_su_kpa: number,
  sensitivity: z.nullable(number),
});

const station = z.strictObject({
  id: text,
  x: number,
  y: number,
  ground_m: number,
  probe_m: z.nullable(number),
  water_m: z.nullable(number),
  date: z.nullable(text),
  along_m: number,
  firm_m: z.nullable(number),
  water_over_m: z.nullable(number),
});

const points = z.strictObject({
  n: number,
  sigma_m: z.nullable(number),
  not_judged: number,
  merged: number,
  accuracy: z.nullable(z.strictObject({ stated: number, median_m: number, worst_m: number })),
  dates: z.nullable(z.strictObject({ stated: number, first: text, last: text })),
  left_out: number,
  outlier_count: number,
  outliers: many(
    z.strictObject({
      id: z.nullable(text),
      line: number,
      x: number,
      y: number,
      z_m: number,
      residual_m: number,
      sigmas: number,
      accuracy_m: z.nullable(number),
      date: z.nullable(text),
    }),
  ),
});

export const surveyResultsSchema = z.strictObject({
  terrain: z.nullable(terrainFinding),
  band_m: z.nullable(number),
  band_working: many(step),
  unchecked_habitats: many(z.strictObject({ zone: text, name: text })),
  closure,
  shear: many(shearStation),
  shear_working: many(step),
  stations: many(station),
  points: z.nullable(points),
  accuracy_m: z.nullable(number),
  date: z.nullable(text),
  cautions: many(text),
});
