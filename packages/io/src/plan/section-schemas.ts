import { count, day, id, line, list, note, notNegative, number, positive, z } from "./zod.ts";

/** Text that may still be empty: not told yet. */
const told = z.string().check(z.maxLength(500), z.regex(/^[^\p{Cc}]*$/u, "one line of text"));

export const walkwayKinds = [
  "no-structure",
  "another-season",
  "by-boat",
  "ground-laid",
  "sleepers",
  "open-crates",
  "post-pairs",
  "screw-piles",
  "floats",
  "mats",
] as const;

export const request = z.strictObject({
  requester: told,
  organisation: told,
  contact: told,
  purpose: note,
  received: z.nullable(day),
  wet_feet_ok: z.nullable(z.boolean()),
  options: list(
    z.strictObject({
      kind: z.enum(walkwayKinds),
      status: z.enum(["chosen", "rejected", "open"]),
      reason: note,
    }),
    50,
  ),
});

export const survey = z.strictObject({
  benchmarks: list(
    z.strictObject({ id, name: line, x: number, y: number, z_m: number, datum: line, source: line }),
    200,
  ),
  check_shots: list(
    z.strictObject({
      id,
      x: number,
      y: number,
      z_m: number,
      accuracy_m: z.nullable(notNegative),
      date: z.nullable(day),
    }),
    10_000,
  ),
  stations: list(
    z.strictObject({
      id,
      x: number,
      y: number,
      ground_m: number,
      probe_m: z.nullable(notNegative),
      water_m: z.nullable(number),
      date: z.nullable(day),
    }),
    10_000,
  ),
  correct_terrain: z.boolean(),
  accuracy_m: z.nullable(notNegative),
  date: z.nullable(day),
});

export const level = z.strictObject({
  id,
  name: line,
  role: z.enum([
    "mhhw",
    "mhw",
    "mhws",
    "mhwn",
    "msl",
    "mlw",
    "mllw",
    "highest-predicted",
    "lowest-predicted",
    "highest-recorded",
    "lowest-recorded",
    "high-tide-line",
    "ordinary-high-water",
    "groundwater",
    "flood",
    "other",
  ]),
  basis: z.enum(["mean", "predicted", "recorded", "assumed"]),
  z_m: number,
  datum: line,
  source: line,
  epoch: told,
});

const seriesFile = z.strictObject({
  file: line,
  kind: z.enum(["readings", "high-low"]),
  basis: z.enum(["predicted", "recorded"]),
  columns: z.strictObject({ time: line, level: line, flag: z.nullable(line) }),
  unit: z.enum(["m", "ft"]),
  zone: line,
  datum: line,
  offset_m: number,
  offset_source: told,
  attribution: told,
});

export const water = z.strictObject({
  exposure: z.enum(["fresh", "brackish", "salt"]),
  series: z.nullable(seriesFile),
  compare: z.exactOptional(z.nullable(seriesFile)),
});

export const rules = z.strictObject({
  profile: id,
  overrides: list(z.strictObject({ rule: id, value: number, reason: line, by: line, date: day }), 100),
});

export const papers = z.strictObject({
  sheet: z.enum(["a4", "letter"]),
  applicant: told,
  prepared_by: told,
  file_no: told,
  waterbody: told,
  date: z.nullable(day),
  adjoining: list(line, 100),
});

export const photo = z.nullable(
  z.strictObject({
    file: line,
    world: z.nullable(z.tuple([number, number, number, number, number, number])),
    crs_confirmed: z.exactOptional(z.boolean()),
    opacity: z.exactOptional(z.number().check(z.positive(), z.maximum(1))),
  }),
);

export const terrain = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("grid"),
    file: line,
    unit: z.enum(["m", "ft"]),
    datum: line,
    crs_confirmed: z.exactOptional(z.boolean()),
  }),
  z.strictObject({
    kind: z.literal("points"),
    file: line,
    columns: z.strictObject({
      id: z.nullable(line),
      x: line,
      y: line,
      z: line,
      code: z.nullable(line),
      accuracy: z.nullable(line),
      date: z.nullable(line),
    }),
    unit: z.enum(["m", "ft", "us-ft"]),
    decimal: z.enum(["point", "comma"]),
    date_order: z.enum(["ymd", "dmy", "mdy"]),
    datum: line,
    cell_m: positive,
    longest_edge_m: positive,
  }),
  z.strictObject({ kind: z.literal("stations"), datum: line, cell_m: positive, reach_m: positive }),
]);

export const drawnLines = list(
  z.strictObject({
    id,
    points: list(z.tuple([number, number]), 1000).check(z.minLength(2)),
    plot: z.nullable(id),
    corridor_m: positive,
  }),
  20,
);

export const laidJoints = list(
  z.strictObject({ joint: id, x: number, y: number, deck_m: z.nullable(number), date: day }),
  5000,
);

export const piles = z.strictObject({
  item: id,
  count,
  shaft_mm: positive,
  helix_mm: positive,
  helices: count,
  length_mm: positive,
  depth_mm: positive,
  mass_kg: positive,
});

export const floats = z.strictObject({
  item: id,
  count,
  length_mm: positive,
  width_mm: positive,
  height_mm: positive,
  mass_kg: positive,
  freeboard_mm: notNegative,
});
