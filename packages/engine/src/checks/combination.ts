import {
  combinedForce,
  combinedMoment,
  isPlain,
  recordFactors,
  type Combination,
  type DesignCode,
} from "../codes/index.ts";
import type { Trace } from "../formula/index.ts";
import { DomainError, qty, type Qty } from "../units/index.ts";
import { totalForce, totalMoment } from "./formulas.ts";

/** Combinations that are held against a strength of the code, each with the strengths of its own duration. */
export const strengthCombinations = ({ combinations }: DesignCode): readonly Combination[] =>
  combinations.filter((c) => c.state === "strength");

/** The combination for a piece whose own weight is left out: that with the largest factor on the live load. */
export function liveCombination(code: DesignCode): Combination {
  const most = strengthCombinations(code).reduce((a, b) => (b.live > a.live ? b : a));
  if (most.live <= 0) throw new DomainError("code-without-live-combination", { code: code.id });
  return most;
}

/** Adds dead and live with the factors of a combination; a factor of 1 and a load of 0 stay out of the working. */
function combined<U extends "N" | "N*m">(
  c: Combination,
  dead: Qty<U>,
  live: Qty<U>,
  unit: U,
  sums: { readonly plain: (d: Qty<U>, l: Qty<U>) => Qty<U>; readonly factored: () => Qty<U> },
  trace?: Trace,
): Qty<U> {
  if (!isPlain(c)) {
    recordFactors(c, trace);
    return sums.factored();
  }
  const [d, l] = [qty(c.dead * dead, unit), qty(c.live * live, unit)];
  if (d === 0) return l;
  return l === 0 ? d : sums.plain(d, l);
}

/** Moment that a combination asks for, from dead and live moments without factors [N*m]. */
export function momentDemand(
  c: Combination,
  M_d: Qty<"N*m">,
  M_l: Qty<"N*m">,
  trace?: Trace,
  note?: string,
): Qty<"N*m"> {
  const factors = { gG: qty(c.dead, "1"), gQ: qty(c.live, "1") };
  return combined(
    c,
    M_d,
    M_l,
    "N*m",
    {
      plain: (d, l) => totalMoment({ M_d: d, M_l: l }, trace, note),
      factored: () => combinedMoment({ ...factors, M_d, M_l }, trace, note),
    },
    trace,
  );
}

/** End shear or reaction that a combination asks for, from dead and live forces without factors [N]. */
export function forceDemand(
  c: Combination,
  V_d: Qty<"N">,
  V_l: Qty<"N">,
  trace?: Trace,
  note?: string,
): Qty<"N"> {
  const factors = { gG: qty(c.dead, "1"), gQ: qty(c.live, "1") };
  return combined(
    c,
    V_d,
    V_l,
    "N",
    {
      plain: (d, l) => totalForce({ V_d: d, V_l: l }, trace, note),
      factored: () => combinedForce({ ...factors, V_d, V_l }, trace, note),
    },
    trace,
  );
}
