import { number, z } from "../plan/zod.ts";
import { many, text } from "./layout-schema.ts";

export const unit = z.enum([
  "1",
  "m",
  "m2",
  "m3",
  "m4",
  "kg",
  "kg/m",
  "kg/m2",
  "kg/m3",
  "N",
  "N/m",
  "N*m",
  "Pa",
  "N*m2",
  "N/m3",
  "m/s",
  "s",
  "Hz",
  "h",
  "rad",
  "money",
]);

export const source = z.strictObject({
  id: text,
  title: text,
  at: z.exactOptional(text),
  status: z.enum(["seen", "memory", "computed", "practice", "project"]),
});

/** One step of a working. */
export const step = z.strictObject({
  id: text,
  title: text,
  symbol: text,
  text,
  inputs: many(z.strictObject({ symbol: text, value: number, unit })),
  value: number,
  unit,
  source,
  note: z.exactOptional(text),
});
