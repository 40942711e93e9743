import type { Trace } from "../formula/index.ts";
import { DomainError, metres, qty, type Qty } from "../units/index.ts";
import {
  fixedForce,
  fixedMoment,
  freeDepth,
  freeForce,
  freeMoment,
  groundReaction,
  heldLength,
  ignoredTop,
  woodForce,
} from "./broms.ts";

export interface Lateral {
  /** Ultimate horizontal force that the ground holds [N]. */
  readonly ground_n: number;
  /** Horizontal force at which the wood breaks [N]; null when its strength is not given. */
  readonly wood_n: number | null;
  /** Smaller of the two [N]. */
  readonly force_n: number;
  readonly governs: "ground" | "wood";
  /** Largest moment in the stake at `force_n` [N*m]. */
  readonly moment_n_m: number;
  readonly reaction_n_m: Qty<"N/m">;
  readonly ignored_m: Qty<"m">;
}
export interface LateralInput {
  /** Width that the ground sees [m] > 0. */
  readonly b: Qty<"m">;
  /** Embedment [m], more than the ignored top. */
  readonly L: Qty<"m">;
  /** Height of the force over the ground [m] >= 0. */
  readonly e: Qty<"m">;
  readonly su: Qty<"Pa">;
  readonly head: "free" | "fixed";
  /** Moment that the wood carries [N*m]; null = not given. */
  readonly wood: Qty<"N*m"> | null;
}

/** Ultimate horizontal force of one stake. Throws `DomainError` when the stake is no longer than the ignored top. */
export function lateral({ b, L, e, su, head, wood }: LateralInput, trace?: Trace): Lateral {
  const t = ignoredTop({ b }, trace);
  if (!(L > t)) throw new DomainError("stake-in-ignored-top", { L, t });
  const q = groundReaction({ su, b }, trace);
  const l = heldLength({ L, t }, trace);
  const ground =
    head === "free" ? freeForce({ q, f: freeDepth({ l, e, t }, trace) }, trace) : fixedForce({ q, l }, trace);
  const breaks = wood === null ? null : woodForce({ q, e, t, M_w: wood }, trace);
  const force = breaks === null ? ground : qty(Math.min(ground, breaks), "N");
  const moment =
    head === "free"
      ? freeMoment({ H: force, e, t, q }, trace)
      : fixedMoment({ H: force, e, t, l: metres(force / q) }, trace);
  return {
    ground_n: ground,
    wood_n: breaks,
    force_n: force,
    governs: breaks !== null && breaks < ground ? "wood" : "ground",
    moment_n_m: moment,
    reaction_n_m: q,
    ignored_m: t,
  };
}
