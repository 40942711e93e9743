import {
  defineMethod,
  type Calculation,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import type { CalcContext, DragCoefficient } from "../materials/index.ts";
import { metres, qty, type Qty } from "../units/index.ts";
import {
  cloggedOpening,
  dragForce,
  extraDepth,
  facingArea,
  familyCoefficient,
  leastShapeFactor,
  lowerSpeed,
  meshCoefficient,
  shapeCoefficient,
  SLOW_M_S,
  upperSpeed,
} from "./drag.ts";
import { any, choice, figure, given, metresOf, number, optional, refuse } from "../formula/fields.ts";
import { depthField, speedField, waterField } from "./fields.ts";

const shapes = ["round-post", "square-post", "rounded-post", "stringer", "deck-edge", "mesh", "own"] as const;
type Shape = (typeof shapes)[number];
/** Row of the table for a shape that stands alone. */
const ROWS: Readonly<Record<string, string>> = {
  "round-post": "post-round",
  "square-post": "post-square",
  "deck-edge": "plate-long",
};

interface Body {
  readonly bottom: number;
  readonly top: number;
  readonly along: number;
  readonly across: number;
}
const bodyOf = (input: JsonObject): Body => ({
  bottom: metresOf(input, "bottom_mm"),
  top: metresOf(input, "top_mm"),
  along: metresOf(input, "along_mm"),
  across: metresOf(input, "across_mm"),
});

/** What a shape needs beside the common fields. */
const NEEDS: Readonly<Record<Shape, readonly string[]>> = {
  "round-post": [],
  "square-post": [],
  "rounded-post": ["corner_mm"],
  stringer: [],
  "deck-edge": [],
  mesh: ["open_share", "clogged_share"],
  own: ["cd"],
};

function faultsOf(input: JsonObject): Problem[] {
  const shape = input["shape"] as Shape;
  const missing = NEEDS[shape].filter((key) => input[key] === undefined);
  const top = given(input, "top_mm");
  return [
    ...missing.map((key) => refuse(key, undefined, `is missing for the shape "${shape}"`, `Give "${key}".`)),
    ...(shape === "stringer" && given(input, "across_mm") < 1
      ? [
          refuse(
            "across_mm",
            input["across_mm"],
            "a stringer needs its thickness",
            'Give "across_mm" of 1 or more.',
          ),
        ]
      : []),
    ...(top <= given(input, "bottom_mm")
      ? [refuse("top_mm", top, "is not over the bottom", 'Give "top_mm" over "bottom_mm".')]
      : []),
  ];
}

/** Coefficient of the shape on the area that the flow sees, or null when the tables lack its row. */
function coefficientOf(
  input: JsonObject,
  body: Body,
  rows: readonly DragCoefficient[],
  trace: Trace,
): Qty<"1"> | null {
  const shape = input["shape"] as Shape;
  if (shape === "own") return qty(given(input, "cd"), "1");
  if (shape === "rounded-post")
    return familyCoefficient(rows, "rod-corner", metresOf(input, "corner_mm") / body.along, trace);
  if (shape === "stringer")
    return familyCoefficient(rows, "rectangle", body.across / (body.top - body.bottom), trace);
  if (shape !== "mesh") return shapeCoefficient(rows, ROWS[shape]!, trace);
  const [C_m, C_p] = [
    shapeCoefficient(rows, "mesh-open", trace),
    shapeCoefficient(rows, "plate-long", trace),
  ];
  if (C_m === null || C_p === null) return null;
  const open = { p: qty(given(input, "open_share"), "1"), c: qty(given(input, "clogged_share"), "1") };
  return meshCoefficient({ p_c: cloggedOpening(open, trace), C_m, C_p }, trace);
}

const dragMethod = defineMethod<CalcContext>(
  {
    id: "flood.drag",
    title: "Drag of flowing water on a post, stringer, deck edge or mesh",
    inputs: [
      choice("shape", "What stands in the flow", shapes),
      number("along_mm", "Size along the walkway's line; diameter of a round post", 1, 1e6),
      number("across_mm", "Size across the line; 0 where the ends are hidden", 0, 1e6),
      number("bottom_mm", "Its bottom over the ground", 0, 20_000),
      number("top_mm", "Its top over the ground", 1, 20_000),
      depthField,
      speedField,
      number("angle_deg", "Angle between the flow and the line; 90 = square onto it", 0, 90),
      waterField,
      optional(number("open_share", "Mesh: open share when clean", 0, 1)),
      optional(number("clogged_share", "Mesh: share of its openings that wrack has clogged", 0, 1)),
      optional(number("corner_mm", "Rounded post: radius of its corners", 0, 1000)),
      optional(number("cd", "Drag coefficient of one's own", 0.01, 10)),
    ],
    outputs: [
      figure("force_n", "Drag"),
      figure("coefficient", "Drag coefficient"),
      figure("area_m2", "Area under water that the flow sees"),
      figure("acts_at_mm", "Height over the ground at which it acts"),
      figure("lower_speed_m_s", "Lower bound of a flood's speed at this depth"),
      figure("upper_speed_m_s", "Upper bound of a flood's speed at this depth"),
      any("extra_depth_mm", "Slow flow as extra depth of still water (a = 1.25); null over 3.05 m/s"),
    ],
    validity: `${dragForce.spec.validity} The full speed counts at every angle. Stringers behind each other each take the full flow.`,
    sources: [dragForce.spec.source, lowerSpeed.spec.source, extraDepth.spec.source],
  },
  (input, { tables }, trace) => {
    const problems = faultsOf(input);
    if (problems.length > 0) return { problems };
    const body = bodyOf(input);
    const C_d = coefficientOf(input, body, tables.drag_coefficients, trace);
    if (C_d === null) return { problems: [noRow(input["shape"])] };
    const [d, V] = [metres(metresOf(input, "depth_mm")), qty(given(input, "speed_m_s"), "m/s")];
    const top = Math.min(body.top, d);
    const h = metres(Math.max(0, top - body.bottom));
    const [l, w] = [metres(body.along), metres(input["shape"] === "round-post" ? 0 : body.across)];
    const theta = qty(
      input["shape"] === "round-post" ? Math.PI / 2 : (given(input, "angle_deg") * Math.PI) / 180,
      "rad",
    );
    const A = facingArea({ h, l, w, theta }, trace);
    const force = dragForce({ rho_w: qty(given(input, "water_kg_m3"), "kg/m3"), C_d, A, V }, trace);
    const slow = V <= SLOW_M_S ? extraDepth({ a: leastShapeFactor({}, trace), V }, trace) * 1000 : null;
    return {
      force_n: force,
      coefficient: C_d,
      area_m2: A,
      acts_at_mm: (h > 0 ? (body.bottom + top) / 2 : body.bottom) * 1000,
      lower_speed_m_s: lowerSpeed({ d }, trace),
      upper_speed_m_s: upperSpeed({ d }, trace),
      extra_depth_mm: slow,
    };
  },
);

const noRow = (shape: unknown): Problem =>
  refuse(
    "shape",
    shape,
    "has no row in the table of drag coefficients",
    'Give the shape "own" with a coefficient "cd", or add the row.',
  );

/** Registered calculation of drag. */
export const flowCalculations: readonly Calculation<CalcContext>[] = [dragMethod];
