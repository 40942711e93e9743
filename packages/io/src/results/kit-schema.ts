import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";
import { step, unit } from "./working-schema.ts";

const figure = z.strictObject({
  title: text,
  value: z.nullable(number),
  unit,
  working: many(step),
  missing: many(text),
});

const piece = z.strictObject({ role: text, size: z.nullable(text), length_mm: number, count: number });
const counted = z.strictObject({ item: text, name: text, count: number });

const part = z.strictObject({
  id: text,
  kind: z.enum(["module", "platform", "platform-half", "ramp"]),
  name: text,
  length_mm: number,
  pieces: many(piece),
  counted: many(counted),
  screws: number,
  mass_new: figure,
  mass_soaked: figure,
  carrier_new: figure,
  carrier_soaked: figure,
  open: z.nullable(
    z.strictObject({
      deck: figure,
      whole: figure,
      share: z.strictObject({ deck: number, whole: number, outline_m2: number }),
    }),
  ),
  cost: z.nullable(z.strictObject({ material: figure, per_m: figure, per_ft: figure })),
});

const atHeight = z.strictObject({
  height_mm: number,
  pieces: many(piece),
  counted: many(counted),
  mass_new: figure,
  mass_soaked: figure,
  cost: figure,
});

export const kitFiguresSchema = z.strictObject({
  kit: text,
  carriers: number,
  carrier_limit: figure,
  modules: many(part),
  platform: part,
  halves: many(part),
  ramps: many(z.strictObject({ ...part.shape, rise: figure })),
  supports: many(
    z.strictObject({
      id: text,
      name: text,
      form: z.enum(["open-crate", "sleeper", "post-pair", "screw-pile", "float"]),
      height_min_mm: number,
      height_max_mm: number,
      height_step_mm: number,
      contact: figure,
      lowest: atHeight,
      highest: atHeight,
      engineer: z.nullable(text),
    }),
  ),
  unpriced: many(text),
});
