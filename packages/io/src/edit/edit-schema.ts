import type { Edit, Section } from "@causey/engine/plan";
import { kitSchema } from "../plan/kit-schema.ts";
import { planWithKitSchema } from "../plan/plan-schema.ts";
import type { Frozen, Same } from "../plan/same-type.ts";
import { id, line, list, notNegative, number, positive, z } from "../plan/zod.ts";

const { layout, visits } = planWithKitSchema.shape;
const visit = visits.def.element;
const { weights } = layout.shape;

/** Month and day, as a closure that comes round every year is given. */
const monthDay = z
  .string()
  .check(z.regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$/, "month and day, such as 04-15"));

const ring = list(z.tuple([number, number]), 100_000);

const zone = z.strictObject({
  id,
  name: line,
  use: z.enum([
    "habitat",
    "closed",
    "seasonal-closure",
    "buffer",
    "soft-ground",
    "channel",
    "pool",
    "parcel",
  ]),
  polygons: list(list(ring)),
  sensitivity: z.exactOptional(notNegative),
  from: z.exactOptional(monthDay),
  to: z.exactOptional(monthDay),
  hidden: z.boolean(),
  source: line,
  buffer_m: z.exactOptional(notNegative),
  contact: z.exactOptional(line),
  owner: z.exactOptional(line),
  water: z.exactOptional(z.enum(["creek", "ditch", "pool", "panne"])),
});

const start = z.strictObject({ id, name: line, x: number, y: number });
const plot = z.strictObject({
  ...start.shape,
  keep_off_m: notNegative,
  reach_m: positive,
  arrive_from: z.exactOptional(z.enum(["north", "east", "south", "west"])),
});

const p = planWithKitSchema.shape;
const section = <S extends Section, V extends z.core.SomeType>(name: S, value: V) =>
  z.strictObject({ type: z.literal("set-section"), section: z.literal(name), value });

/** A section of the plan, replaced whole. */
const sectionEdit = z.discriminatedUnion("section", [
  section("site_name", p.site_name),
  section("request", p.request),
  section("survey", p.survey),
  section("water", p.water),
  section("rules", p.rules),
  section("papers", p.papers),
  section("photo", p.photo),
  section("terrain", p.terrain),
  section("prices", p.prices),
  section("laying", p.laying),
  section("removal", p.removal),
  section("starts", list(start)),
  section("plots", list(plot)),
  section("zones", list(zone)),
  section("levels", p.levels),
  section("flood_level", p.flood_level),
  section("water_kg_m3", p.water_kg_m3),
  section("ground", p.ground),
  section("proof", p.proof),
  section("code", p.code),
  section("visits", p.visits),
  section("saw", p.saw),
  section("money", p.money),
]);

/** One edit of a plan as JSON. What it names, and whether it fits the plan, is judged by `applyEdit`. */
export const editSchema = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("move-plot"), plot: id, x: number, y: number }),
  z.strictObject({ type: z.literal("move-start"), start: id, x: number, y: number }),
  z.strictObject({ type: z.literal("set-plot-reach"), plot: id, keep_off_m: notNegative, reach_m: positive }),
  z.strictObject({ type: z.literal("add-zone"), zone, at: z.exactOptional(z.int().check(z.minimum(0))) }),
  z.strictObject({ type: z.literal("remove-zone"), zone: id }),
  z.strictObject({ type: z.literal("set-weights"), weights }),
  z.strictObject({ type: z.literal("set-layout"), layout }),
  z.strictObject({ type: z.literal("set-visit"), visit }),
  z.strictObject({ type: z.literal("set-kit"), kit: kitSchema }),
  z.strictObject({ type: z.literal("set-units"), units: z.enum(["us", "metric"]) }),
  z.strictObject({ type: z.literal("rename"), name: line }),
  z.strictObject({
    type: z.literal("set-price-list"),
    file: p.prices.shape.file,
    currency: p.money.shape.currency,
  }),
  sectionEdit,
]);

/** Fails to compile when the engine's edits and this schema drift apart. */
export const editSchemaIsEdit: Same<Frozen<z.infer<typeof editSchema>>, Frozen<Edit>> = true;
