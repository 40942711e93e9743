import type { Field } from "../formula/index.ts";
import { fastenerRules } from "./fastener-registry.ts";
import { durationField } from "./timber-input.ts";

const optional = (field: Field): Field => ({ ...field, optional: true });
const number = (key: string, title: string, min: number, max: number): Field => ({
  key,
  title,
  type: "number",
  min,
  max,
});
const choice = (key: string, title: string, choices: readonly string[]): Field => ({
  key,
  title,
  type: "string",
  choices,
});
const yes = (key: string, title: string): Field => ({ key, title, type: "boolean" });

export const COATINGS = ["stainless-316", "stainless-304", "hot-dip-zinc", "plain-zinc", "none"] as const;
export const KINDS = ["nail", "wood-screw", "lag-screw"] as const;

/** A fastener by its own sizes, instead of by a row of the table. */
export const freeFields: readonly Field[] = [
  choice("kind", "Kind of fastener, when none of the table is named", KINDS),
  number("diameter_mm", "Shank of a nail, nominal diameter of a screw", 0.5, 50),
  number("length_mm", "Length of the fastener", 1, 1000),
  yes("ring_shank", "Nail with rings (smooth unless given)"),
  yes("hardened", "Nail of hardened steel with a thread"),
  choice("coating", "What keeps it from rusting (none unless given)", COATINGS),
  number("root_mm", "Diameter at the root of the thread", 0.3, 50),
  number("thread_mm", "Length of the thread or of the rings, the point included", 1, 1000),
  number("tip_mm", "Length of the point (two diameters unless given)", 0, 100),
  number("head_mm", "Diameter of the head", 0.5, 100),
  number("fyb_mpa", "Bending yield of the fastener", 50, 3000),
  number("fu_mpa", "Tensile strength of its steel", 50, 3000),
].map(optional);

const sideFields: readonly Field[] = [
  choice("side", "What the fastener is driven through", ["wood", "steel"]),
  number("side_mm", "Thickness of the side piece or plate", 0.3, 500),
  number("main_mm", "Thickness of the main piece along the fastener", 1, 2000),
  ...[
    number("side_gravity", "Specific gravity of the side piece (us-asd-2018)", 0.2, 0.9),
    number("main_gravity", "Specific gravity of the main piece (us-asd-2018)", 0.2, 0.9),
    number("side_density_kg_m3", "Characteristic density of the side piece (ec5-2004)", 200, 900),
    number("main_density_kg_m3", "Characteristic density of the main piece (ec5-2004)", 200, 900),
    number("side_angle_deg", "Load to the grain of the side piece (thick fasteners)", 0, 90),
    number("main_angle_deg", "Load to the grain of the main piece (thick fasteners)", 0, 90),
    number(
      "side_ea_n",
      "E A of the side piece along the load (rows of thick fasteners, us-asd-2018)",
      1e4,
      1e12,
    ),
    number(
      "main_ea_n",
      "E A of the main piece along the load (rows of thick fasteners, us-asd-2018)",
      1e4,
      1e12,
    ),
  ].map(optional),
];

/** Inputs that every fastener calculation shares. */
export const jointFields: readonly Field[] = [
  choice(
    "code",
    "Design code",
    fastenerRules.map((r) => r.id),
  ),
  optional({ key: "fastener", title: "Fastener of the table, for example nail-16d", type: "string" }),
  ...freeFields,
  { key: "count", title: "Number of fasteners", type: "integer", min: 1, max: 1000 },
  {
    key: "per_row",
    title: "Fasteners one behind the other along the grain and the load, 1 when side by side",
    type: "integer",
    min: 1,
    max: 1000,
  },
  optional(number("row_spacing_mm", "Spacing of the fasteners in a row", 1, 5000)),
  ...sideFields,
  choice("shear", "One shear plane, or two through two side pieces alike", ["single", "double"]),
  choice("grain", "What the point is driven into", ["side", "end"]),
  yes("toe_nail", "Driven aslant as a toe-nail"),
  choice(
    "moisture",
    "Wood at most 19 % always, wet always, changing between, or put together wet and then dry",
    ["dry", "wet", "cycles", "fresh"],
  ),
  durationField,
  optional(
    choice("short_reach", "How a reach under 10 diameters counts (equations unless given, us-asd-2018)", [
      "equations",
      "table",
    ]),
  ),
  optional(yes("predrilled", "Holes bored first (ec5-2004 asks)")),
  optional(yes("rope_effect", "Let the pull along the fastener help across it (no unless given, ec5-2004)")),
  optional({
    key: "hole",
    title: "State of the hole (fresh unless given): a row of the table of holes",
    type: "string",
  }),
];
