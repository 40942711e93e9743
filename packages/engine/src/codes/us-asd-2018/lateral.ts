import { defineFormula, type Trace } from "../../formula/index.ts";
import { qty, type Qty } from "../../units/index.ts";
import { yieldModeII, yieldModeIIIm, yieldModeIIIs, yieldModeIm, yieldModeIs, yieldModeIV } from "./dowel.ts";
import type { Reductions } from "./fasteners/reduction.ts";
import { nds } from "./sources.ts";

/** A dowel: D [m], lm and ls lengths in the main and side piece [m], Fem, Fes, Fyb [Pa], Rd [1]. */
export interface Dowel {
  readonly D: Qty<"m">;
  readonly lm: Qty<"m">;
  readonly ls: Qty<"m">;
  readonly Fem: Qty<"Pa">;
  readonly Fes: Qty<"Pa">;
  readonly Fyb: Qty<"Pa">;
  readonly Rd: Qty<"1">;
}

/** Two shear planes carry twice. Z_1 [N]; Z_2 [N]. */
export const twoPlanes = defineFormula(
  {
    id: "us-asd-2018.dowel.two-planes",
    title: "Lateral value of one fastener in double shear",
    symbol: "Z_2",
    unit: "N",
    text: "2 * Z_1",
    inputs: { Z_1: "N" },
    validity: "Two equal side pieces; yield modes Is, IIIs and IV.",
    source: nds("Table 12.3.1A, double shear", "seen"),
  },
  ({ Z_1 }) => 2 * Z_1,
);

type Mode = readonly [name: string, isDoubled: boolean, value: (trace?: Trace) => Qty<"N">];

/** Reference lateral value of one dowel: the least of the yield modes, with the mode's name. */
export function leastYieldMode(
  dowel: Omit<Dowel, "Rd">,
  { I, II, III }: Reductions,
  shear: "single" | "double",
  trace?: Trace,
): { readonly value: Qty<"N">; readonly mode: string } {
  const { D, lm, ls, Fem, Fes } = dowel;
  const common = { ...dowel, Re: qty(Fem / Fes, "1"), Rt: qty(lm / ls, "1") };
  const both: readonly Mode[] = [
    ["Im", false, (t) => yieldModeIm({ D, l: lm, Fe: Fem, Rd: I }, t)],
    ["Is", true, (t) => yieldModeIs({ D, l: ls, Fe: Fes, Rd: I }, t)],
    ["IIIs", true, (t) => yieldModeIIIs({ ...common, Rd: III }, t)],
    ["IV", true, (t) => yieldModeIV({ ...common, Rd: III }, t)],
  ];
  const singleOnly: readonly Mode[] = [
    ["II", false, (t) => yieldModeII({ ...common, Rd: II }, t)],
    ["IIIm", false, (t) => yieldModeIIIm({ ...common, Rd: III }, t)],
  ];
  const isDouble = shear === "double";
  const values = (isDouble ? both : [...both, ...singleOnly]).map(([name, doubled, mode]) => {
    const planes = isDouble && doubled ? 2 : 1;
    return { name, planes, value: planes * mode(), mode };
  });
  const least = values.reduce((a, b) => (b.value < a.value ? b : a));
  const one = least.mode(trace);
  return { value: least.planes === 2 ? twoPlanes({ Z_1: one }, trace) : one, mode: least.name };
}

/** The same in single shear with one reduction term for every mode: fasteners under 1/4 in. */
export const lateralValue = (
  dowel: Dowel,
  trace?: Trace,
): { readonly value: Qty<"N">; readonly mode: string } =>
  leastYieldMode(dowel, { I: dowel.Rd, II: dowel.Rd, III: dowel.Rd }, "single", trace);
