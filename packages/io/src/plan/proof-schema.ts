import { count, id, line, list, notNegative, number, positive, share, z } from "./zod.ts";

const told = z.string().check(z.maxLength(500), z.regex(/^[^\p{Cc}]*$/u, "one line of text"));

const flood = z.strictObject({
  levels: list(id, 50),
  speed_m_s: z.nullable(notNegative),
  speed_source: told,
  flow_deg: z.nullable(number),
  wave: z.nullable(z.strictObject({ height_m: positive, period_s: positive })),
  wrack: z.nullable(z.strictObject({ thickness_m: positive, clogged_share: share })),
  log_kg: z.nullable(positive),
  stakes: z.enum(["fresh", "set", "loosened"]),
  ice_months: z.nullable(list(z.int().check(z.minimum(1), z.maximum(12)), 12)),
  ice_m: z.nullable(positive),
  frost_m: z.nullable(notNegative),
});

const softLayer = z.strictObject({
  thickness_m: positive,
  compression: positive,
  creep_share: notNegative,
  pressure_kpa: positive,
  source: line,
});

const ground = z.strictObject({
  root_mat_m: z.nullable(positive),
  prior_spread: positive,
  alike_m: positive,
  chance: z.number().check(z.positive(), z.maximum(0.5)),
  soft_layer: z.nullable(softLayer),
  sinkage: z.nullable(id),
  sensitive_plots: list(id),
});

/** What a plan proves besides its visits. */
export const proof = z.strictObject({
  load_rules: list(id, 20),
  carry: z.nullable(
    z.strictObject({ people: count, person_kg: positive, load_kg: notNegative, spacing_mm: positive }),
  ),
  stacked_modules: z.int().check(z.minimum(0), z.maximum(20)),
  used_timber: z.nullable(z.strictObject({ grade: id, cycles: z.int().check(z.minimum(0), z.maximum(100)) })),
  flood,
  ground,
});
