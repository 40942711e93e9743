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

const gap = z.strictObject({ width_m: number, over: text, from: point, to: point });

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
  notes: many(text),
  search: z.strictObject({ headings: number, estimate: number }),
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
