import { defineConstant, defineFormula, type Trace } from "../../../formula/index.ts";
import { PA_PER_PSI, metres, qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint, WoodPiece } from "../../fastener-contract.ts";
import { dowelBearingStrength } from "../dowel.ts";
import { nds } from "../sources.ts";

const QUARTER_INCH = 0.25 * 0.0254;

/** Whether a fastener counts as thick: 1/4 in and more, where the grain's direction matters. D nominal [m]. */
export const isThick = (D: number): boolean => D >= QUARTER_INCH - 1e-12;

/** Strength of wood under a thick dowel along the grain. G [1]; Fe [Pa]. */
export const bearingAlong = defineFormula(
  {
    id: "us-asd-2018.fastener.bearing-along",
    title: "Dowel bearing strength along the grain",
    symbol: "Fe_par",
    unit: "Pa",
    text: `11200 * ${PA_PER_PSI} * G`,
    inputs: { G: "1" },
    validity: "Diameter of 1/4 in and more. Not rounded to 50 psi as the printed table is.",
    source: nds("Table 12.3.3, note 2", "seen"),
  },
  ({ G }) => 11_200 * PA_PER_PSI * G,
);

/** Strength of wood under a thick dowel across the grain. G [1], D [m]; Fe [Pa]. */
export const bearingAcross = defineFormula(
  {
    id: "us-asd-2018.fastener.bearing-across",
    title: "Dowel bearing strength across the grain",
    symbol: "Fe_perp",
    unit: "Pa",
    text: `6100 * ${PA_PER_PSI} * G^1.45 / sqrt(D / 0.0254)`,
    inputs: { G: "1", D: "m" },
    validity: "Diameter of 1/4 in and more.",
    source: nds("Table 12.3.3, note 2", "seen"),
  },
  ({ G, D }) => (6100 * PA_PER_PSI * G ** 1.45) / Math.sqrt(D / 0.0254),
);

/** Strength at an angle to the grain. Fe_par, Fe_perp [Pa], theta [rad] 0 to pi/2; Fe [Pa]. */
export const bearingAslant = defineFormula(
  {
    id: "us-asd-2018.fastener.bearing-aslant",
    title: "Dowel bearing strength at an angle to the grain",
    symbol: "Fe",
    unit: "Pa",
    text: "Fe_par * Fe_perp / (Fe_par * sin(theta)^2 + Fe_perp * cos(theta)^2)",
    inputs: { Fe_par: "Pa", Fe_perp: "Pa", theta: "rad" },
    validity: "0 <= theta <= pi / 2.",
    source: nds("equation 12.3-11", "seen"),
  },
  ({ Fe_par: a, Fe_perp: b, theta }) => (a * b) / (a * Math.sin(theta) ** 2 + b * Math.cos(theta) ** 2),
);

/** Strength of a steel side plate under a fastener [Pa]. */
export const bearingOfSteel = defineConstant(
  "us-asd-2018.fastener.bearing-steel",
  "Dowel bearing strength of a steel plate",
  "Fe_s",
  61_850 * PA_PER_PSI,
  "Pa",
  nds(
    "Tables 12K, 12M and 12P: cold-formed steel; 61 850 psi reproduces Table 12K; thicker plates carry more",
    "computed",
  ),
  `61850 * ${PA_PER_PSI}`,
);

/** Bearing strength of the side piece. */
export const sideBearing = (joint: FastenerJoint, D: Qty<"m">, trace?: Trace): Qty<"Pa"> =>
  joint.side.material === "steel" ? bearingOfSteel({}, trace) : woodBearing(joint.side, D, trace);

/** Bearing strength of the main piece; a thick fastener in end grain crosses the fibres. */
export function mainBearing(joint: FastenerJoint, D: Qty<"m">, trace?: Trace): Qty<"Pa"> {
  const piece = joint.grain === "end" ? { ...joint.main, angle_deg: 90 } : joint.main;
  return woodBearing(piece, D, trace);
}

function woodBearing({ gravity, angle_deg }: WoodPiece, D: Qty<"m">, trace?: Trace): Qty<"Pa"> {
  const G = qty(gravity ?? NaN, "1");
  if (!isThick(D)) return dowelBearingStrength({ G }, trace);
  const Fe_par = bearingAlong({ G }, trace);
  const Fe_perp = bearingAcross({ G, D: metres(D) }, trace);
  return bearingAslant({ Fe_par, Fe_perp, theta: qty(((angle_deg ?? NaN) * Math.PI) / 180, "rad") }, trace);
}
