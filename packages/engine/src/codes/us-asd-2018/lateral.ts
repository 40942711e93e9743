import type { Trace } from "../../formula/index.ts";
import { qty, type Qty } from "../../units/index.ts";
import { yieldModeII, yieldModeIIIm, yieldModeIIIs, yieldModeIm, yieldModeIs, yieldModeIV } from "./dowel.ts";

/** A dowel in single shear: D [m], lm and ls lengths in the main and side piece [m], Fem, Fes, Fyb [Pa], Rd [1]. */
export interface Dowel {
  readonly D: Qty<"m">;
  readonly lm: Qty<"m">;
  readonly ls: Qty<"m">;
  readonly Fem: Qty<"Pa">;
  readonly Fes: Qty<"Pa">;
  readonly Fyb: Qty<"Pa">;
  readonly Rd: Qty<"1">;
}

/** Reference lateral value of one dowel: the least of the six yield modes, with the mode's name. */
export function lateralValue(
  dowel: Dowel,
  trace?: Trace,
): { readonly value: Qty<"N">; readonly mode: string } {
  const { D, lm, ls, Fem, Fes, Rd } = dowel;
  const common = { ...dowel, Re: qty(Fem / Fes, "1"), Rt: qty(lm / ls, "1") };
  const modes: readonly (readonly [string, (t?: Trace) => Qty<"N">])[] = [
    ["Im", (t) => yieldModeIm({ D, l: lm, Fe: Fem, Rd }, t)],
    ["Is", (t) => yieldModeIs({ D, l: ls, Fe: Fes, Rd }, t)],
    ["II", (t) => yieldModeII(common, t)],
    ["IIIm", (t) => yieldModeIIIm(common, t)],
    ["IIIs", (t) => yieldModeIIIs(common, t)],
    ["IV", (t) => yieldModeIV(common, t)],
  ];
  const values = modes.map(([name, mode]) => ({ name, value: mode(), mode }));
  const least = values.reduce((a, b) => (b.value < a.value ? b : a));
  least.mode(trace);
  return { value: least.value, mode: least.name };
}
