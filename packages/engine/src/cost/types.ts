import type { OrderLine } from "../materials/index.ts";

export interface LabourLine {
  readonly work: "laying" | "removal";
  readonly length_m: number;
  readonly low_h: number;
  readonly mid_h: number;
  readonly high_h: number;
  readonly note: string;
}

export interface CostLine {
  readonly line: "materials" | "tax" | "delivery" | "labour" | "removal" | "disposal" | "contingency";
  readonly title: string;
  readonly amount: number;
  readonly note: string;
}

export interface Cost {
  readonly currency: string;
  readonly order: readonly OrderLine[];
  /** Items the price list lacks: no total is claimed to be whole while any is left. */
  readonly unpriced: readonly { readonly item: string; readonly needed: number }[];
  readonly labour: readonly LabourLine[];
  readonly lines: readonly CostLine[];
  readonly total: number;
}
