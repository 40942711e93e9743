import type { Trace } from "../formula/index.ts";
import { fullMass } from "./cart-mass.ts";
import type { Cart } from "../plan/document.ts";
import {
  largestDeflection,
  largestMoment,
  largestReaction,
  overhangMoment,
  patchMoment,
  recordTrain,
  weightOf,
} from "../structure/index.ts";
import { kilograms, metres, newtons, qty, showQuantity, type Qty, type UnitSystem } from "../units/index.ts";
import { axleLoad, wheelLoad } from "./formulas.ts";
import { cartsOf } from "./ladder.ts";
import { bumpFactor, footEdgeDistance, footPatch, pointLoad } from "./rules.ts";
import type { WalkDemand } from "./walk-demand.ts";

/** One way to load a single piece across the walkway. */
export interface PieceCase {
  readonly name: string;
  /** One foot or one wheel of it [N]. */
  readonly load: Qty<"N">;
  readonly explain: (trace: Trace) => void;
  readonly moment: (span: Qty<"m">, trace?: Trace) => Qty<"N*m">;
  readonly reaction: (span: Qty<"m">, trace?: Trace) => Qty<"N">;
  /** Deflection times E I [N*m3]. */
  readonly deflectionTimesStiffness: (span: Qty<"m">) => number;
  /** Deflection that the rule behind the case allows: span over this; left out, the checks' own limit. */
  readonly span_over?: number;
}

export type Load = (trace?: Trace) => Qty<"N">;

/** One load on a contact length, at midspan for bending, beside a stringer for shear. */
export function singleCase(name: string, load: Load, contact: Qty<"m">): PieceCase {
  return {
    name,
    load: load(),
    explain: (trace) => void load(trace),
    moment: (L, trace) => patchMoment({ P: load(), L, c: metres(Math.min(contact, L)) }, trace),
    reaction: (_, trace) => {
      recordTrain(trace, "V", "End shear: the load beside the stringer", load(), "N", name);
      return load();
    },
    deflectionTimesStiffness: (L) => (load() * L ** 3) / 48,
  };
}

/** Load of one wheel of the loaded cart, with its bump allowance. */
export function wheelOf(cart: Cart): Load {
  return (trace) => {
    const m = kilograms(fullMass(cart));
    const axle = axleLoad({ m, k_b: bumpFactor({}, trace), n: qty(cart.axles, "1") }, trace, cart.name);
    return wheelLoad({ P_a: axle }, trace);
  };
}

/** The two wheels of one axle, both on the piece where its span has room for them. */
export function axleCase(cart: Cart): PieceCase {
  const name = `one axle of ${cart.name} with its load`;
  const wheel = wheelOf(cart);
  const train = [0, cart.track_mm / 1000].map((at) => ({ at, weight: wheel() }));
  return {
    name,
    load: wheel(),
    explain: (trace) => void wheel(trace),
    moment: (L, trace) => {
      const M = qty(largestMoment(train, L).value, "N*m");
      recordTrain(trace, "M", "Largest moment of the two wheels", M, "N*m", name);
      return M;
    },
    reaction: (L, trace) => {
      const V = newtons(largestReaction(train, L).value);
      recordTrain(trace, "V", "Largest end reaction of the two wheels", V, "N", name);
      return V;
    },
    deflectionTimesStiffness: (L) => largestDeflection(train, L).value,
  };
}

/** A load on the overhang of a board outside the outer stringer: it bends, it does not shear more than inside. */
export const overhangCase = (name: string, load: Load, arm: Qty<"m">): PieceCase => ({
  name,
  load: load(),
  explain: (trace) => void load(trace),
  moment: (_, trace) => overhangMoment({ P: load(), a: arm }, trace),
  reaction: () => load(),
  deflectionTimesStiffness: () => 0,
});

/** The heaviest foot: the single load of the rule, or a heavier person. */
export function footLoad(
  demands: readonly WalkDemand[],
  units: UnitSystem,
): { readonly name: string; readonly load: Load } {
  const kg = Math.max(0, ...demands.filter((d) => d.people > 0).map((d) => d.person_kg));
  const person: Load = (trace) => weightOf({ m: kilograms(kg) }, trace, "one person with the pack");
  if (person() > pointLoad({}))
    return { name: `one person of ${showQuantity(kg, "kg", units)}`, load: person };
  const load: Load = (trace) => pointLoad({}, trace);
  return { name: `one load of ${showQuantity(load(), "N", units)}`, load };
}

/** Foot at the middle and each cart's axle; `spread` lets the foot stand on its contact length. */
export function pieceCases(demands: readonly WalkDemand[], units: UnitSystem, spread: boolean): PieceCase[] {
  const foot = footLoad(demands, units);
  const contact = spread ? footPatch({}) : metres(0);
  return [singleCase(`${foot.name} at the middle`, foot.load, contact), ...cartsOf(demands).map(axleCase)];
}

/** Foot and wheel at the edge of the clear deck, where boards reach past the outer stringer. */
export function edgeCases(
  demands: readonly WalkDemand[],
  units: UnitSystem,
  clear_width_m: number,
  overall_m: number,
): PieceCase[] {
  const foot = footLoad(demands, units);
  const arm = (fromEdge: number): Qty<"m"> => metres((clear_width_m - overall_m) / 2 - fromEdge);
  return [
    overhangCase(`${foot.name} at the edge`, foot.load, arm(footEdgeDistance({}))),
    ...cartsOf(demands).map((cart) =>
      overhangCase(`a wheel of ${cart.name} at the edge`, wheelOf(cart), arm(cart.wheel_width_mm / 2000)),
    ),
  ].filter((edge) => edge.moment(metres(1)) > 0);
}
