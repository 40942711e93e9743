import type { Trace } from "../formula/index.ts";
import { densityAtMoisture, densityOfWetWood } from "../structure/index.ts";
import { qty, showQuantity, type Qty } from "../units/index.ts";
import { LIFT } from "./cautions.ts";
import { partMass, soakedOther } from "./formulas.ts";
import type { CheckContext, PartMass } from "./input.ts";
import {
  distanceMultiplier,
  horizontalMultiplier,
  liftHeight,
  liftReach,
  liftTravel,
  loadConstant,
  poorGrip,
  recommendedWeightLimit,
  teamLimit,
  verticalMultiplier,
} from "./niosh.ts";
import { resultOf } from "./result.ts";
import { dryMoisture, soakedMoisture } from "./rules.ts";
import type { CheckBase, CheckResult } from "./types.ts";

export type LiftState = "new" | "soaked";

export interface LiftLabel {
  readonly id: string;
  readonly name: string;
  readonly parts: readonly string[];
}

/** Mass of a part with dry or soaked timber [kg]. */
export function massOf(mass: PartMass, gravity: Qty<"1">, state: LiftState, trace?: Trace): Qty<"kg"> {
  const rho =
    state === "new"
      ? densityAtMoisture({ G: gravity, M: dryMoisture({}, trace) }, trace)
      : densityOfWetWood({ G: gravity, M: soakedMoisture({}, trace) }, trace);
  const dry = qty(mass.other_kg, "kg");
  const water = state === "soaked" ? (mass.soak_kg ?? 0) : 0;
  const m_o = water > 0 ? soakedOther({ m_p: dry, m_w: qty(water, "kg") }, trace) : dry;
  return partMass({ V: qty(mass.timber_m3, "m3"), rho, m_o }, trace);
}

/** Recommended weight limit of one carrier in the posture of carrying a module [kg]. */
export const carrierLimit = (trace?: Trace): Qty<"kg"> =>
  recommendedWeightLimit(
    {
      LC: loadConstant({}, trace),
      HM: horizontalMultiplier({ H: liftReach({}, trace) }, trace),
      VM: verticalMultiplier({ V: liftHeight({}, trace) }, trace),
      DM: distanceMultiplier({ D: liftTravel({}, trace) }, trace),
      CM: poorGrip({}, trace),
    },
    trace,
  );

/**
 * Mass of a part against what its carriers may lift together by the NIOSH equation, new and dry, or soaked when
 * taken out.
 *
 * carriers  people who lift it, >= 1, each with a hold of their own
 */
export function checkLifting(
  mass: PartMass,
  gravity: Qty<"1">,
  state: LiftState,
  label: LiftLabel,
  carriers: number,
  { units }: CheckContext,
): CheckResult {
  const base: CheckBase = {
    id: `lifting.${state}.${label.id}`,
    kind: "lifting",
    title: `Lifting, ${state === "new" ? "new and dry" : "soaked, when taken out"}, ${label.name}`,
    parts: label.parts,
    rule: recommendedWeightLimit.spec.source,
    caution: LIFT,
  };
  const working: Trace = [];
  const demand = massOf(mass, gravity, state, working);
  const limit = carrierLimit(working);
  const capacity = teamLimit({ n: qty(carriers, "1"), RWL: limit }, working);
  const say = (v: number): string => showQuantity(v, "kg", units);
  const needed = Math.max(1, Math.ceil(demand / limit - 1e-9));
  const carries = `${carriers} carriers may lift ${say(capacity)} together; each ${say(limit)}.`;
  const change = `Needs ${needed} carriers, or parts taken off before it is lifted.`;
  const governs = `${carriers} carriers, ${state === "new" ? "timber at 19 % moisture" : "soaked timber"}`;
  const verdict = { unit: "kg", demand, capacity, governs, working } as const;
  return resultOf(base, verdict, { carries, change: demand <= capacity ? null : change });
}
