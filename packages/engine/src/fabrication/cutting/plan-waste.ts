import type { Trace } from "../../formula/index.ts";
import { DomainError, qty, type Qty } from "../../units/index.ts";
import type { CuttingPlan } from "../types.ts";
import { cuttingWaste } from "./cutting-method.ts";

/** Share of a plan's bought length that becomes no piece, saw cuts with it [1]; null for a plan without sticks. */
export function planWaste({ patterns }: CuttingPlan, trace?: Trace): Qty<"1"> | null {
  const pieces = (p: CuttingPlan["patterns"][number]): number =>
    p.cuts.reduce((sum, c) => sum + c.length_mm * c.count, 0);
  const bought = patterns.reduce((sum, p) => sum + p.stock_mm * p.times, 0) / 1000;
  const cut = patterns.reduce((sum, p) => sum + pieces(p) * p.times, 0) / 1000;
  if (bought === 0) return null;
  if (cut > bought) throw new DomainError("more-cut-than-bought", { cut_m: cut, bought_m: bought });
  return cuttingWaste({ P: qty(cut, "m"), S: qty(bought, "m") }, trace);
}
