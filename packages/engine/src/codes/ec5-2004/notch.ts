import { defineFormula, type Trace } from "../../formula/index.ts";
import { DomainError, metres, qty, type Qty } from "../../units/index.ts";
import type { EndNotch, Member, Situation } from "../contract.ts";
import { ec5 } from "./sources.ts";
import { standing, strength } from "./strength.ts";

/** Reduction at a square notch on the tension face. h depth, x reaction to corner [m], alpha depth left over h [1]; kv [1]. */
export const notchFactor = defineFormula(
  {
    id: "ec5-2004.kv",
    title: "Factor for the notch",
    symbol: "kv",
    unit: "1",
    text: "min(1, 5 / (sqrt(1000 * h) * (sqrt(alpha * (1 - alpha)) + 0.8 * x / h * sqrt(1 / alpha - alpha^2))))",
    inputs: { h: "m", x: "m", alpha: "1" },
    validity: "Solid timber (kn 5), square notch on the side of the support, 0 < alpha <= 1.",
    source: ec5("equations 6.60 to 6.63 (6.5.2)", "memory"),
  },
  ({ h, x, alpha }) =>
    Math.min(
      1,
      5 /
        (Math.sqrt(1000 * h) *
          (Math.sqrt(alpha * (1 - alpha)) + ((0.8 * x) / h) * Math.sqrt(1 / alpha - alpha ** 2))),
    ),
);

/** Shear at a notched end. kv [1], f on the full breadth [Pa], b breadth, hef depth left [m]; V [N]. */
export const notchedShearStrength = defineFormula(
  {
    id: "ec5-2004.notched-shear",
    title: "Shear that the notched end may carry",
    symbol: "V_d",
    unit: "N",
    text: "2 / 3 * kv * fv_d * b * hef",
    inputs: { kv: "1", fv_d: "Pa", b: "m", hef: "m" },
    validity: "Rectangle, stress of 1.5 V over the area that is left.",
    source: ec5("6.5.2(2)", "memory"),
  },
  ({ kv, fv_d, b, hef }) => (2 / 3) * kv * fv_d * b * hef,
);

/** Shear at an end with a notch, for a member on edge. Throws `DomainError` for a notch outside the member. */
export function notchedShear(member: Member, situation: Situation, notch: EndNotch, trace?: Trace): Qty<"N"> {
  const { b, h } = standing(member, "edge");
  const isInside = notch.left_m > 0 && notch.left_m <= h * (1 + 1e-9) && notch.reaction_to_corner_m >= 0;
  if (!isInside) throw new DomainError("notch-outside-the-member", { ...notch, depth_m: h });
  const { fv } = strength(member, situation, trace, ["fv"]);
  const alpha = qty(Math.min(1, notch.left_m / h), "1");
  const kv = notchFactor({ h, x: metres(notch.reaction_to_corner_m), alpha }, trace);
  return notchedShearStrength({ kv, fv_d: fv, b, hef: metres(notch.left_m) }, trace);
}
