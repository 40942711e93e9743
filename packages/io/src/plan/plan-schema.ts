import type { Plan } from "@causey/engine/plan";
import type { PlaceDefaults } from "../vector/index.ts";
import { kitChoiceSchema, kitSchema, type KitChoice } from "./kit-schema.ts";
import { proof } from "./proof-schema.ts";
import { PLAN_SCHEMA } from "./schema-number.ts";
import type { Frozen, Same } from "./same-type.ts";
import {
  drawnLines,
  laidJoints,
  level,
  papers,
  photo,
  request,
  rules,
  survey,
  terrain,
  water,
} from "./section-schemas.ts";
import { count, day, id, line, list, notNegative, number, positive, share, z } from "./zod.ts";

const crs = z.union([
  z.strictObject({ epsg: z.int().check(z.minimum(1), z.maximum(9_999_999)) }),
  z.strictObject({ local: line }),
]);

const ground = z.strictObject({
  su_kpa: z.nullable(notNegative),
  source: line,
  readings: list(
    z.strictObject({
      x: number,
      y: number,
      depth_m: notNegative,
      su_kpa: notNegative,
      source: line,
      remoulded_kpa: z.exactOptional(notNegative),
      vane_mm: z.exactOptional(line),
    }),
    10_000,
  ),
  safety: positive,
});

const cart = z.strictObject({
  name: line,
  empty_kg: notNegative,
  load_kg: notNegative,
  wet_kg: notNegative,
  width_mm: z.nullable(positive),
  length_mm: z.nullable(positive),
  track_mm: positive,
  axle_distance_mm: notNegative,
  axles: z.literal([1, 2]),
  wheel_width_mm: positive,
  wheel_contact_mm: positive,
});

const visit = z.strictObject({
  id,
  name: line,
  plots: list(id).check(z.minLength(1)),
  people: count,
  person_kg: positive,
  spacing_mm: positive,
  cart: z.nullable(cart),
  per_year: positive,
  from: day,
  to: z.nullable(day),
});

const layout = z.strictObject({
  weights: z.strictObject({
    money: notNegative,
    shade_per_m2: notNegative,
    contact_per_m2: notNegative,
    crossing: notNegative,
  }),
  heading_step_deg: z.number().check(z.positive(), z.maximum(90)),
  first_heading_deg: number,
  max_grade: positive,
  min_clear_mm: notNegative,
  lines: drawnLines,
  passing_every_m: z.nullable(positive),
  as_laid: laidJoints,
  slop_mm: notNegative,
});

const money = z.strictObject({
  currency: z.string().check(z.regex(/^[A-Z]{3}$/, "three capital letters, such as USD")),
  labour_per_hour: notNegative,
  contingency_share: share,
  tax_share: share,
  delivery: notNegative,
  removal_share: notNegative,
  disposal: notNegative,
  donated_share: share,
  donated_per_hour: notNegative,
  jig_hours_per_module: notNegative,
  inspections_per_year: notNegative,
  hours_per_inspection: notNegative,
  repair_share_per_year: notNegative,
  monitoring_per_year: z.exactOptional(notNegative),
  price_age_days: positive,
});

const pricesFile = z.strictObject({ file: line });

const plotDefaults = z.strictObject({
  keep_off_m: z.exactOptional(notNegative),
  reach_m: z.exactOptional(positive),
});

/** plan.json with any of the two ways to state the kit. Places and zones stand in their own files. */
const planWith = <K extends z.core.SomeType>(kit: K) =>
  z.strictObject({
    schema: z.literal(PLAN_SCHEMA),
    id,
    name: line,
    site_name: line,
    units: z.enum(["us", "metric"]),
    crs,
    vertical_datum: line,
    request,
    survey,
    water,
    rules,
    papers,
    photo,
    terrain,
    prices: pricesFile,
    laying: z.strictObject({ from: day, to: day, carry_m: notNegative, carriers: count }),
    removal: z.strictObject({ by: day }),
    plot_defaults: z.exactOptional(plotDefaults),
    levels: list(level, 200),
    flood_level: z.nullable(id),
    water_kg_m3: positive,
    ground,
    proof,
    visits: list(visit),
    kit,
    layout,
    code: z.enum(["us-asd-2018", "ec5-2004"]),
    saw: z.strictObject({ kerf_mm: notNegative }),
    money,
  });

/** Parts of plan.json by which the other files are read, even when the rest of it is wrong. */
export const sitePartSchemas = { crs, terrain, prices: pricesFile, plot_defaults: plotDefaults } as const;

export const planWithKitSchema = planWith(kitSchema);
export const planWithReadyKitSchema = planWith(kitChoiceSchema);
/** The published schema of plan.json. */
export const planFileSchema = planWith(z.union([kitSchema, kitChoiceSchema]));

/** What plan.json holds: the plan without its places and zones, and with the kit by recipe or by name. */
export type PlanFile = Frozen<z.infer<typeof planFileSchema>>;

type FromEngine = Omit<Plan, "starts" | "plots" | "zones" | "kit"> & {
  readonly kit: Plan["kit"] | KitChoice;
  readonly plot_defaults?: PlaceDefaults;
};
/** Fails to compile when the engine's plan and this schema drift apart. */
export const planSchemaIsPlan: Same<PlanFile, Frozen<FromEngine>> = true;
