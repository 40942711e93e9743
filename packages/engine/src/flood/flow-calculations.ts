import { defineMethod, type Calculation, type JsonObject, type Problem } from "../formula/index.ts";
import { any, choice, figure, given, metresOf, number, optional, refuse } from "../formula/fields.ts";
import type { CalcContext } from "../materials/index.ts";
import { metres, qty } from "../units/index.ts";
import { dragOnBody, type FlowBody, type FlowShape } from "./body-drag.ts";
import { dragForce, extraDepth, leastShapeFactor, lowerSpeed, SLOW_M_S, upperSpeed } from "./drag.ts";
import { depthField, speedField, waterField } from "./fields.ts";

type Kind = FlowShape["kind"];
/** What a shape needs beside the common fields. */
const NEEDS: Readonly<Record<Kind, readonly string[]>> = {
  "round-post": [],
  "square-post": [],
  "rounded-post": ["corner_mm"],
  stringer: [],
  "deck-edge": [],
  mesh: ["open_share", "clogged_share"],
  own: ["cd"],
};
const shapes = Object.keys(NEEDS) as readonly Kind[];

function faultsOf(input: JsonObject): Problem[] {
  const shape = input["shape"] as Kind;
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
    ...(top - given(input, "bottom_mm") < 1
      ? [refuse("top_mm", top, "is not over the bottom", 'Give "top_mm" 1 or more over "bottom_mm".')]
      : []),
  ];
}

function shapeFrom(input: JsonObject): FlowShape {
  const kind = input["shape"] as Kind;
  if (kind === "own") return { kind, cd: given(input, "cd") };
  if (kind === "rounded-post") return { kind, corner_m: metresOf(input, "corner_mm") };
  if (kind === "mesh")
    return { kind, open: given(input, "open_share"), clogged: given(input, "clogged_share") };
  return { kind };
}

const bodyFrom = (input: JsonObject): FlowBody => ({
  name: input["shape"] as string,
  count: 1,
  shape: shapeFrom(input),
  along_m: metresOf(input, "along_mm"),
  across_m: metresOf(input, "across_mm"),
  bottom_m: metresOf(input, "bottom_mm"),
  top_m: metresOf(input, "top_mm"),
});

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
    const [d, V] = [metres(metresOf(input, "depth_mm")), qty(given(input, "speed_m_s"), "m/s")];
    const flow = {
      depth: d,
      speed: V,
      angle: qty((given(input, "angle_deg") * Math.PI) / 180, "rad"),
      rho_w: qty(given(input, "water_kg_m3"), "kg/m3"),
    };
    const found = dragOnBody(bodyFrom(input), flow, tables, trace);
    if (found === null) return { problems: [noRow(input["shape"])] };
    return {
      force_n: found.force_n,
      coefficient: found.coefficient,
      area_m2: found.area_m2,
      acts_at_mm: found.acts_at_m * 1000,
      lower_speed_m_s: lowerSpeed({ d }, trace),
      upper_speed_m_s: upperSpeed({ d }, trace),
      extra_depth_mm: V <= SLOW_M_S ? extraDepth({ a: leastShapeFactor({}, trace), V }, trace) * 1000 : null,
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
