import { defineConstant, defineFormula, recordValue, type Trace } from "../../formula/index.ts";
import { DomainError, inches, metres, qty, type Qty } from "../../units/index.ts";
import type { EndNotch, Member, Situation } from "../contract.ts";
import { nds } from "./sources.ts";
import { strength } from "./strength.ts";

/** Shear at a square notch on the tension face at the end. Fv [Pa], b breadth, d depth, dn depth left [m]; V' [N]. */
export const notchedShearStrength = defineFormula(
  {
    id: "us-asd-2018.notched-shear",
    title: "Shear that the notched end may carry",
    symbol: "V'",
    unit: "N",
    text: "2 / 3 * Fv * b * dn * (dn / d)^2",
    inputs: { Fv: "Pa", b: "m", d: "m", dn: "m" },
    validity: "Rectangle notched on the tension face at its end, dn from 3/4 d to d.",
    source: nds("equation 3.4-3 (3.4.3.2); that the ratio is squared was seen in an AWC answer", "memory"),
  },
  ({ Fv, b, d, dn }) => (2 / 3) * Fv * b * dn * (dn / d) ** 2,
);

export const deepestEndNotch = defineConstant(
  "us-asd-2018.deepest-end-notch",
  "Deepest notch at an end, of the depth",
  "n_max",
  0.25,
  "1",
  nds("4.4.3", "memory"),
);

/** Shear at an end with a notch, for a member on edge; 0 where the notch is deeper than a quarter of the depth. */
export function notchedShear(member: Member, situation: Situation, notch: EndNotch, trace?: Trace): Qty<"N"> {
  const [b, d] = [inches(member.size.thickness_in), inches(member.size.width_in)];
  if (!(notch.left_m > 0 && notch.left_m <= d * (1 + 1e-9)))
    throw new DomainError("notch-outside-the-member", { left_m: notch.left_m, depth_m: d });
  const { fv } = strength(member, situation, trace, ["fv"]);
  if (1 - notch.left_m / d > deepestEndNotch({}, trace) + 1e-9) {
    recordValue(trace, {
      id: "us-asd-2018.notch-too-deep",
      title: "Notch too deep: the code does not allow it",
      symbol: "V'",
      value: 0,
      unit: "N",
      source: deepestEndNotch.spec.source,
      how: "deeper than a quarter of the depth",
    });
    return qty(0, "N");
  }
  return notchedShearStrength({ Fv: fv, b, d, dn: metres(notch.left_m) }, trace);
}
