import type { Kit } from "@causey/engine/kit";
import { count, id, line, list, note, notNegative, number, positive, share, z } from "./zod.ts";
import type { Frozen, Same } from "./same-type.ts";
import { floats, piles } from "./section-schemas.ts";

const lay = z.enum(["flat", "edge"]);
const size = z.string().check(z.minLength(1), z.maxLength(20));

const lumber = z.strictObject({
  species: line,
  grade: line,
  treatment: z.enum(["none", "treated"]),
  incised: z.boolean(),
  preservative: z.nullable(id),
});

const crossPieces = z.strictObject({
  size,
  lay,
  spacing_mm: positive,
  exceptions: list(
    z.strictObject({
      length_mm: z.exactOptional(positive),
      at_mm: notNegative,
      size: z.exactOptional(size),
      omit: z.exactOptional(z.boolean()),
    }),
    200,
  ),
  screw: id,
  screws_per_end: count,
});

const end = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("catch-board"), size, projection_mm: positive }),
  z.strictObject({ kind: z.literal("plain") }),
]);

const deck = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("boards"),
    size,
    gap_mm: notNegative,
    width_mm: positive,
    screw: id,
    screws_per_bearing: count,
  }),
  z.strictObject({
    kind: z.literal("mesh"),
    name: line,
    wire_mm: positive,
    pitch_mm: positive,
    panel_length_mm: positive,
    width_mm: positive,
    upturn_mm: notNegative,
    clip: id,
    clips_per_panel: count,
    mass_kg_m2: positive,
    open_share: share,
    yield_mpa: positive,
  }),
  z.strictObject({
    kind: z.enum(["moulded-grating", "bar-grating", "plywood", "plastic-panel"]),
    name: line,
    thickness_mm: positive,
    panel_length_mm: positive,
    width_mm: positive,
    gap_mm: notNegative,
    opening_along_mm: notNegative,
    opening_across_mm: notNegative,
    open_share: share,
    mass_kg_m2: positive,
    soak_kg_m2: notNegative,
    fastener: id,
    fasteners_per_panel: count,
    strength: z.strictObject({
      moment_n: positive,
      stiffness_nm: positive,
      creep: z.number().check(z.minimum(1)),
      source: line,
      status: z.enum(["seen", "memory", "practice", "computed"]),
    }),
  }),
]);

const supportPiece = z.strictObject({
  name: line,
  size,
  count,
  length_mm: number,
  per_height: number,
  lie: z.exactOptional(z.enum(["upright", "along", "across"])),
  lay: z.exactOptional(lay),
  beside: z.exactOptional(z.boolean()),
  fill: z.exactOptional(z.boolean()),
});

const support = z.strictObject({
  id,
  name: line,
  form: z.enum(["open-crate", "sleeper", "post-pair", "screw-pile", "float"]),
  height_min_mm: notNegative,
  height_max_mm: notNegative,
  height_step_mm: positive,
  sill: z.strictObject({ size, length_mm: positive, lay }),
  pieces: list(supportPiece, 100),
  feet: list(z.strictObject({ along_mm: positive, across_mm: positive, offset_across_mm: number }), 20),
  rating_n: z.nullable(positive),
  anchor: z.nullable(
    z.strictObject({
      kind: z.literal("stake"),
      size,
      length_mm: positive,
      embedment_mm: positive,
      count,
    }),
  ),
  screws: list(z.strictObject({ screw: id, count }), 50),
  piles: z.exactOptional(piles),
  floats: z.exactOptional(floats),
  stands: z.strictObject({ ground_above_m: z.nullable(number), not_in: list(id, 20) }),
});

/** The whole recipe, as plan.json may carry it. Whether it can be built is judged by the kit's own checks. */
export const kitSchema = z.strictObject({
  id,
  name: line,
  note,
  lumber,
  lengths_mm: list(positive, 20).check(z.minLength(1)),
  joint_gap_mm: notNegative,
  stringers: z.strictObject({ count: z.literal([2, 3]), size, overall_mm: positive }),
  cross_pieces: crossPieces,
  end,
  deck,
  curb: z.nullable(z.strictObject({ size, screw: id, screw_spacing_mm: positive })),
  supports: list(support, 50).check(z.minLength(1)),
  platform: z.strictObject({
    side_mm: positive,
    pieces: z.literal([1, 2]),
    stringers: z.strictObject({ size, count }),
    cross_pieces: z.strictObject({ size, count }),
    screw: id,
    screws_per_end: count,
    edge_sill_mm: z.exactOptional(positive),
  }),
  ramp: z.nullable(
    z.strictObject({ lengths_mm: list(positive, 20).check(z.minLength(1)), max_grade: positive }),
  ),
  spares_share: share,
});

/** A ready kit by its id, with the few things that a site decides about its supports. */
export const kitChoiceSchema = z.strictObject({
  ready: id,
  supports: z.exactOptional(
    list(
      z.strictObject({
        id,
        ground_above_m: z.exactOptional(z.nullable(number)),
        height_max_mm: z.exactOptional(positive),
        use: z.exactOptional(z.boolean()),
      }),
      50,
    ),
  ),
});
export type KitChoice = Frozen<z.infer<typeof kitChoiceSchema>>;

/** Fails to compile when the engine's kit and this schema drift apart. */
export const kitSchemaIsKit: Same<Frozen<z.infer<typeof kitSchema>>, Frozen<Kit>> = true;
