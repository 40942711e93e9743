import { defineConstant, defineFormula, type Trace } from "../../../formula/index.ts";
import { metres, millimetres, type Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { clause, projectRule } from "./sources.ts";

/** Point side: how far the fastener is in the piece that holds its point. l, s, m [m]; t_p [m]. */
export const pointSide = defineFormula(
  {
    id: "ec5-2004.fastener.point-side",
    title: "Penetration on the point side",
    symbol: "t_p",
    unit: "m",
    text: "max(0, min(l - s, m))",
    inputs: { l: "m", s: "m", m: "m" },
    validity: "Head flush with the side piece.",
    source: clause("8.3.1.1(1)"),
  },
  ({ l, s, m }) => Math.max(0, Math.min(l - s, m)),
);

/** Point side of a nail driven aslant at 30 degrees, started a third of its length from the end. l, m [m]; t_p [m]. */
export const pointSideAslant = defineFormula(
  {
    id: "ec5-2004.fastener.point-side-aslant",
    title: "Penetration of a nail driven aslant",
    symbol: "t_p",
    unit: "m",
    text: "max(0, min(l * cos(pi / 6) - l / 3, m))",
    inputs: { l: "m", m: "m" },
    validity: "At about 30 degrees to the side piece, a third of the nail's length in it.",
    source: projectRule("the American picture of a toe-nail"),
  },
  ({ l, m }) => Math.max(0, Math.min(l * Math.cos(Math.PI / 6) - l / 3, m)),
);

/** How far a nail driven at 30 degrees reaches along the straight way. l [m]; l_t [m]. */
export const slantLength = defineFormula(
  {
    id: "ec5-2004.fastener.slant-length",
    title: "Reach of a nail driven aslant along the straight way",
    symbol: "l_t",
    unit: "m",
    text: "l * cos(pi / 6)",
    inputs: { l: "m" },
    validity: "Driven at about 30 degrees.",
    source: projectRule("the American picture of a toe-nail"),
  },
  ({ l }) => l * Math.cos(Math.PI / 6),
);

const least = (name: string, title: string, value: number, at: string) =>
  defineConstant(`ec5-2004.fastener.least-${name}`, title, "p_min", value, "1", clause(at));
export const leastReach = {
  smooth: least(
    "smooth",
    "Least point-side penetration of smooth nails, in diameters",
    8,
    "8.3.1.2(1) and 8.3.2(7)",
  ),
  other: least(
    "other",
    "Least point-side penetration of ring-shank nails and screws, in diameters",
    6,
    "8.3.1.2(2), 8.3.2(7), 8.7.2(3)",
  ),
} as const;

/** Where the point sits. Lengths in metres. */
export interface PointSide {
  readonly t_p: Qty<"m">;
  /** Length under the head in the side piece. */
  readonly head_side: Qty<"m">;
  readonly fault: string | null;
}

export const isSmooth = ({ fastener: f }: FastenerJoint): boolean => f.kind === "nail" && f.shank !== "ring";

/** How deep the point is in the piece that holds it, and why that is not enough when it is not. */
export function pointSideOf(joint: FastenerJoint, trace?: Trace): PointSide {
  const { fastener: f, side, main, shear, toe_nail } = joint;
  const l = millimetres(f.length_mm);
  const before = side.thickness_m + (shear === "double" ? main.thickness_m : 0);
  const m = metres(shear === "double" ? side.thickness_m : main.thickness_m);
  const t_p = toe_nail ? pointSideAslant({ l, m }, trace) : pointSide({ l, s: metres(before), m }, trace);
  const head_side = metres(toe_nail ? l / 3 : side.thickness_m);
  return { t_p, head_side, fault: faultOf(joint, l, before, t_p, trace) };
}

function faultOf(joint: FastenerJoint, l: number, before: number, t_p: number, trace?: Trace): string | null {
  const { side, shear, fastener: f } = joint;
  if (!joint.toe_nail && l <= before)
    return shear === "double"
      ? "the fastener does not reach into the far side piece"
      : "the fastener does not reach through the side piece";
  if (shear === "double" && side.material === "steel")
    return l + 1e-12 >= before + side.thickness_m
      ? null
      : "the fastener does not reach through the far plate";
  const times = (isSmooth(joint) ? leastReach.smooth : leastReach.other)({}, trace);
  return t_p * 1000 + 1e-9 < times * f.diameter_mm ? `reaches in less than ${times} diameters` : null;
}

export const reachFormulas = [
  pointSide,
  pointSideAslant,
  slantLength,
  leastReach.smooth,
  leastReach.other,
] as const;
