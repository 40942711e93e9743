import { list, number, z } from "../plan/zod.ts";

/** Results are written by this program, so their schema says shapes, not limits; lists may be long. */
const LONG = 1_000_000;
export const many = <T extends z.core.SomeType>(item: T): z.ZodMiniArray<T> => list(item, LONG);

export const text = z.string();
const point = z.tuple([number, number]);
const polygons = many(many(many(point)));

const joint = z.strictObject({
  id: text,
  x: number,
  y: number,
  heading_deg: number,
  branch: text,
  along_m: number,
  ground_m: number,
  deck_m: number,
  support: text,
  support_height_m: number,
  feet: polygons,
});

const modulePart = z.strictObject({
  id: text,
  kind: z.literal("module"),
  branch: text,
  length_m: number,
  heading_deg: number,
  from: text,
  to: text,
  along_m: number,
  outline: polygons,
  bridges: many(text),
});

const platformPart = z.strictObject({
  id: text,
  kind: z.literal("platform"),
  use: z.enum(["turning", "passing"]),
  branch: text,
  side_m: number,
  x: number,
  y: number,
  heading_deg: number,
  from: text,
  exits: z.strictObject({ ahead: text, left: text, right: text }),
  along_m: number,
  outline: polygons,
  bridges: many(text),
});

const ramp = z.strictObject({
  start: text,
  joint: text,
  heading_deg: number,
  step_m: number,
  length_m: z.nullable(number),
  grade: z.nullable(number),
  keeps_grade: z.nullable(z.boolean()),
  foot: z.nullable(z.strictObject({ x: number, y: number, ground_m: number })),
  outline: polygons,
  allowed: z.nullable(z.boolean()),
  because: z.nullable(text),
});

const gap = z.strictObject({ width_m: number, over: text, from: point, to: point });

const lineFit = z.strictObject({
  lines: many(
    z.strictObject({
      id: text,
      max_deviation_m: z.nullable(number),
      rms_deviation_m: z.nullable(number),
      at: point,
      within_corridor: z.boolean(),
      not_followed: many(z.strictObject({ from_m: number, to_m: number, from: point, to: point })),
    }),
  ),
  broken: many(z.strictObject({ rule: text, part_or_joint: text, place: point, message: text, mend: text })),
});

const asLaid = z.strictObject({
  joints: many(
    z.strictObject({
      joint: text,
      dx_m: number,
      dy_m: number,
      along_m: number,
      across_m: number,
      dz_m: z.nullable(number),
      within_slop: z.boolean(),
    }),
  ),
  kept: many(text),
  refitted: many(text),
  unknown: many(text),
});

export const layoutSchema = z.strictObject({
  heading_deg: number,
  lattice_m: number,
  joints: many(joint),
  parts: many(z.discriminatedUnion("kind", [modulePart, platformPart])),
  branches: many(
    z.strictObject({ id: text, from: text, to_plot: text, parts: many(text), length_m: number }),
  ),
  reached: many(z.strictObject({ plot: text, joint: text, distance_m: number, walk_m: number })),
  unreached: many(z.strictObject({ plot: text, because: text, gap: z.nullable(gap) })),
  ramps: z.exactOptional(many(ramp)),
  notes: many(text),
  search: z.strictObject({ headings: number, estimate: number }),
  line: z.nullable(lineFit),
  as_laid: z.nullable(asLaid),
});

export const evaluationSchema = z.strictObject({
  length_m: number,
  modules: many(z.strictObject({ length_m: number, count: number })),
  platforms: number,
  joints: number,
  shaded_m2: number,
  shaded_by_zone: many(z.strictObject({ zone: text, name: text, area_m2: number })),
  contact_m2: number,
  crossings: many(z.strictObject({ zone: text, name: text, part: text, clear_m: number })),
  lowest_deck_clear_m: number,
  steepest_grade: number,
  weighted: z.strictObject({
    money: number,
    shade: number,
    contact: number,
    crossings: number,
    total: number,
  }),
});
