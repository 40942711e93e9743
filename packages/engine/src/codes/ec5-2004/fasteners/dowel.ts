import { defineFormula, type Trace } from "../../../formula/index.ts";
import { PA_PER_PSI, millimetres, qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint, WoodPiece } from "../../fastener-contract.ts";
import { clause, projectRule } from "./sources.ts";

/** Strength of wood under a thin nail that was not bored for. rho [kg/m3], d [m]; f_h [Pa]. */
export const bearingDriven = defineFormula(
  {
    id: "ec5-2004.fastener.bearing-driven",
    title: "Embedding strength, driven without boring",
    symbol: "f_h",
    unit: "Pa",
    text: "0.082 * rho * (1000 * d)^(-0.3) * 1e6",
    inputs: { rho: "kg/m3", d: "m" },
    validity: "Nails up to 8 mm, screws up to 6 mm, any direction of the grain.",
    source: clause("equation 8.15", "seen"),
  },
  ({ rho, d }) => 0.082 * rho * (1000 * d) ** -0.3 * 1e6,
);

/** Strength of wood about a bored hole, along the grain. rho [kg/m3], d [m]; f_h [Pa]. */
export const bearingBored = defineFormula(
  {
    id: "ec5-2004.fastener.bearing-bored",
    title: "Embedding strength, bored, along the grain",
    symbol: "f_h",
    unit: "Pa",
    text: "0.082 * (1 - 0.01 * (1000 * d)) * rho * 1e6",
    inputs: { rho: "kg/m3", d: "m" },
    validity: "Diameter up to 30 mm.",
    source: clause("equations 8.16 and 8.32"),
  },
  ({ rho, d }) => 0.082 * (1 - 0.01 * (1000 * d)) * rho * 1e6,
);

/** Thick fasteners at an angle to the grain. f_h along the grain [Pa], d [m], theta [rad]; f_ha [Pa]. */
export const bearingAslant = defineFormula(
  {
    id: "ec5-2004.fastener.bearing-aslant",
    title: "Embedding strength at an angle to the grain",
    symbol: "f_ha",
    unit: "Pa",
    text: "f_h / ((1.35 + 0.015 * (1000 * d)) * sin(theta)^2 + cos(theta)^2)",
    inputs: { f_h: "Pa", d: "m", theta: "rad" },
    validity: "Softwood, screws over 6 mm and nails over 8 mm.",
    source: clause("equations 8.31 and 8.33"),
  },
  ({ f_h, d, theta }) => f_h / ((1.35 + 0.015 * (1000 * d)) * Math.sin(theta) ** 2 + Math.cos(theta) ** 2),
);

/** Yield moment of a round nail. f_u [Pa], d [m]; M_y [N*m]. */
export const yieldMoment = defineFormula(
  {
    id: "ec5-2004.fastener.yield-moment",
    title: "Yield moment of a round fastener",
    symbol: "M_y",
    unit: "N*m",
    text: "0.3 * (f_u / 1e6) * (1000 * d)^2.6 / 1000",
    inputs: { f_u: "Pa", d: "m" },
    validity: "Round wire; for screws d is the effective diameter.",
    source: clause("equation 8.14", "seen"),
  },
  ({ f_u, d }) => (0.3 * (f_u / 1e6) * (1000 * d) ** 2.6) / 1000,
);

/** Yield moment where only the American bending yield is known. F_yb [Pa], d [m]; M_y [N*m]. */
export const momentFromYield = defineFormula(
  {
    id: "ec5-2004.fastener.moment-from-yield",
    title: "Yield moment from the bending yield",
    symbol: "M_y",
    unit: "N*m",
    text: "F_yb * d^3 / 6",
    inputs: { F_yb: "Pa", d: "m" },
    validity: "Round section, wholly plastic.",
    source: projectRule("bending yield times the plastic section modulus"),
  },
  ({ F_yb, d }) => (F_yb * d ** 3) / 6,
);

/** Effective diameter of a screw whose thread reaches the joint. d_1 root [m]; d_ef [m]. */
export const effectiveDiameter = defineFormula(
  {
    id: "ec5-2004.fastener.effective-diameter",
    title: "Effective diameter of a screw",
    symbol: "d_ef",
    unit: "m",
    text: "1.1 * d_1",
    inputs: { d_1: "m" },
    validity: "Thread at the shear plane, or a smooth shank less than 4 diameters deep in the main piece.",
    source: clause("8.7.1(3)"),
  },
  ({ d_1 }) => 1.1 * d_1,
);

export const dowelFormulas = [
  bearingDriven,
  bearingBored,
  bearingAslant,
  yieldMoment,
  momentFromYield,
  effectiveDiameter,
] as const;

/** Whether the rules of bolts hold: screws over 6 mm, nails over 8 mm. */
export const isThick = ({ kind, diameter_mm }: FastenerJoint["fastener"]): boolean =>
  diameter_mm > (kind === "nail" ? 8 : 6);

/** The diameter of the equations and the yield moment. */
export function shankOf(
  { fastener: f }: FastenerJoint,
  trace?: Trace,
): { readonly d: Qty<"m">; readonly M_y: Qty<"N*m"> } {
  const nominal = millimetres(f.diameter_mm);
  const d = f.kind === "nail" ? nominal : effectiveDiameter({ d_1: millimetres(f.root_mm ?? NaN) }, trace);
  if (f.fu_mpa !== undefined) return { d, M_y: yieldMoment({ f_u: qty(f.fu_mpa * 1e6, "Pa"), d }, trace) };
  // A bending yield is measured on the root of a screw: the moment is taken there.
  const at = f.kind === "nail" ? nominal : millimetres(f.root_mm ?? NaN);
  return { d, M_y: momentFromYield({ F_yb: qty((f.fyb_psi ?? NaN) * PA_PER_PSI, "Pa"), d: at }, trace) };
}

/** Embedding strength of one piece. */
export function bearingOf(joint: FastenerJoint, piece: WoodPiece, d: Qty<"m">, trace?: Trace): Qty<"Pa"> {
  const rho = qty(piece.density_k ?? NaN, "kg/m3");
  if (isThick(joint.fastener)) {
    const f_h = bearingBored({ rho, d }, trace);
    const theta = qty(((piece.angle_deg ?? NaN) * Math.PI) / 180, "rad");
    return bearingAslant({ f_h, d, theta }, trace);
  }
  return joint.predrilled === true ? bearingBored({ rho, d }, trace) : bearingDriven({ rho, d }, trace);
}
