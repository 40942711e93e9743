import { defineFormula, type Trace } from "../../../formula/index.ts";
import { qty, type Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { reductionTerm } from "../dowel.ts";
import { nds } from "../sources.ts";
import { isThick } from "./bearing.ts";

const rule = nds("Table 12.3.1B", "seen");

/** Angle term of thick fasteners. theta [rad], the largest angle of load to grain of any piece; K_t [1]. */
export const angleTerm = defineFormula(
  {
    id: "us-asd-2018.fastener.angle-term",
    title: "Angle term of the reduction",
    symbol: "K_t",
    unit: "1",
    text: "1 + 0.25 * theta / (pi / 2)",
    inputs: { theta: "rad" },
    validity: "Diameter of 1/4 in and more, 0 <= theta <= pi / 2.",
    source: rule,
  },
  ({ theta }) => 1 + (0.25 * theta) / (Math.PI / 2),
);

const thick = (group: string, k: number) =>
  defineFormula(
    {
      id: `us-asd-2018.fastener.reduction-${group}`,
      title: `Reduction term of a thick fastener, yield mode ${group}`,
      symbol: "Rd",
      unit: "1",
      text: `${k} * K_t`,
      inputs: { K_t: "1" },
      validity: "Diameter 1/4 in to 1 in.",
      source: rule,
    },
    ({ K_t }) => k * K_t,
  );
export const thickReductions = { I: thick("I", 4), II: thick("II", 3.6), III: thick("III", 3.2) } as const;

/** A thread cut thinner than 1/4 in into a nominal diameter of 1/4 in and more. D_r root [m], K_t [1]; Rd [1]. */
export const threadReduction = defineFormula(
  {
    id: "us-asd-2018.fastener.reduction-thread",
    title: "Reduction term of a thick fastener whose root is under 1/4 in",
    symbol: "Rd",
    unit: "1",
    text: "max(2.2, 10 * D_r / 0.0254 + 0.5) * K_t",
    inputs: { D_r: "m", K_t: "1" },
    validity:
      "Nominal diameter of 1/4 in and more, root under 1/4 in. On the root, as the printed values of lag screws show; wood screws stand by decision 0004.",
    source: nds("Table 12.3.1B, note 1; reproduces Table 12K", "seen"),
  },
  ({ D_r, K_t }) => Math.max(2.2, (10 * D_r) / 0.0254 + 0.5) * K_t,
);

/** Reduction terms of the yield modes I, II and III with IV. */
export interface Reductions {
  readonly I: Qty<"1">;
  readonly II: Qty<"1">;
  readonly III: Qty<"1">;
}

/** D nominal and root diameter of the yield equations [m]. */
export function reductionsOf(joint: FastenerJoint, D: Qty<"m">, root: Qty<"m">, trace?: Trace): Reductions {
  if (!isThick(D)) {
    const Rd = reductionTerm({ D }, trace);
    return { I: Rd, II: Rd, III: Rd };
  }
  const K_t = angleTerm({ theta: largestAngle(joint) }, trace);
  if (!isThick(root)) {
    const Rd = threadReduction({ D_r: root, K_t }, trace);
    return { I: Rd, II: Rd, III: Rd };
  }
  return {
    I: thickReductions.I({ K_t }, trace),
    II: thickReductions.II({ K_t }, trace),
    III: thickReductions.III({ K_t }, trace),
  };
}

function largestAngle({ side, main, grain }: FastenerJoint): Qty<"rad"> {
  const ofSide = side.material === "steel" ? 0 : (side.angle_deg ?? NaN);
  const ofMain = grain === "end" ? 90 : (main.angle_deg ?? NaN);
  return qty((Math.max(ofSide, ofMain) * Math.PI) / 180, "rad");
}
