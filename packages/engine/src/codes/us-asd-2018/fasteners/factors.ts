import { defineConstant, defineFormula, type Constant, type Trace } from "../../../formula/index.ts";
import type { Qty } from "../../../units/index.ts";
import type { FastenerJoint } from "../../fastener-contract.ts";
import { durationFactors } from "../duration.ts";
import { noFactor } from "../service-factors.ts";
import { nds } from "../sources.ts";
import { isThick } from "./bearing.ts";

const factor = (
  name: string,
  title: string,
  symbol: string,
  value: number,
  at: string,
  seen = false,
): Constant<"1"> =>
  defineConstant(
    `us-asd-2018.fastener.${name}`,
    title,
    symbol,
    value,
    "1",
    nds(at, seen ? "seen" : "memory"),
  );

export const lateralFactors = {
  wet: factor("wet", "Wet service factor of connections, lateral", "CM", 0.7, "Table 11.3.3"),
  fresh_thin: factor(
    "fresh-thin",
    "Put together wet, dry in service, several rows under 1/4 in",
    "CM",
    0.7,
    "Table 11.3.3, note",
  ),
  fresh_thick: factor(
    "fresh-thick",
    "Put together wet, dry in service, several rows of 1/4 in and more",
    "CM",
    0.4,
    "Table 11.3.3",
  ),
  end_grain: factor(
    "end-grain",
    "End grain factor, lateral",
    "Ceg",
    0.67,
    "12.5.2; two thirds also seen in Civil Engineering Formulas",
    true,
  ),
  toe_nail: factor("toe-nail", "Toe-nail factor, lateral", "Ctn", 0.83, "12.5.4"),
} as const;

export const withdrawalFactors = {
  nail_changes: factor(
    "withdrawal-nail-changes",
    "Wet service factor of nails in withdrawal where the moisture changes",
    "CM",
    0.25,
    "Table 11.3.3",
  ),
  screw_wet: factor(
    "withdrawal-screw-wet",
    "Wet service factor of screws in withdrawal",
    "CM",
    0.7,
    "Table 11.3.3",
  ),
  lag_end_grain: factor(
    "withdrawal-lag-end-grain",
    "End grain factor of lag screws in withdrawal",
    "Ceg",
    0.75,
    "12.2.1 and 12.5.2",
    true,
  ),
  toe_nail: factor("withdrawal-toe-nail", "Toe-nail factor, withdrawal", "Ctn", 0.67, "12.5.4"),
} as const;

/** Load duration on a connection: as on members, at most 1.6. CD [1]. */
export const connectionDuration = defineFormula(
  {
    id: "us-asd-2018.fastener.duration",
    title: "Load duration factor of a connection",
    symbol: "CD_c",
    unit: "1",
    text: "min(1.6, CD)",
    inputs: { CD: "1" },
    validity: "Impact counts no more than ten minutes.",
    source: nds("11.3.2", "seen"),
  },
  ({ CD }) => Math.min(1.6, CD),
);

export const durationOf = ({ duration }: FastenerJoint, trace?: Trace): Qty<"1"> =>
  connectionDuration({ CD: durationFactors[duration]({}, trace) }, trace);

/** Wet service factor across the fastener. */
export function wetLateral(joint: FastenerJoint, D: number, trace?: Trace): Qty<"1"> {
  if (joint.moisture === "dry") return noFactor({});
  if (joint.moisture !== "fresh") return lateralFactors.wet({}, trace);
  if (joint.count <= joint.per_row) return noFactor({}, trace, "one fastener or one row: may shrink freely");
  return isThick(D) ? lateralFactors.fresh_thick({}, trace) : lateralFactors.fresh_thin({}, trace);
}

/** Wet service factor along the fastener; on toe-nails too, where the code takes none: the safer reading. */
export function wetWithdrawal({ fastener: f, moisture }: FastenerJoint, trace?: Trace): Qty<"1"> {
  if (f.kind !== "nail")
    return moisture === "wet" || moisture === "cycles"
      ? withdrawalFactors.screw_wet({}, trace)
      : noFactor({});
  const isSteady = moisture === "dry" || moisture === "wet";
  if (isSteady || f.hardened === true) return noFactor({});
  return withdrawalFactors.nail_changes({}, trace);
}
