import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

const cell = z.strictObject({
  part: text,
  kind: z.enum(["module", "platform"]),
  from_m: number,
  to_m: number,
  length_m: number,
  branch: text,
  utilisation: z.nullable(number),
  state: z.enum(["within", "near", "over", "broken", "not-checked"]),
  governs: text,
});

export const stripSchema = z.strictObject({
  length_m: number,
  datum: text,
  z_min_m: number,
  z_max_m: number,
  branches: many(z.strictObject({ id: text, from_m: number, to_m: number, plot: text })),
  ground: many(z.strictObject({ at_m: number, z_m: z.nullable(number) })),
  joints: many(z.strictObject({ id: text, at_m: number, ground_m: number, deck_m: number })),
  levels: many(z.strictObject({ id: text, name: text, z_m: number })),
  cells: many(cell),
});
