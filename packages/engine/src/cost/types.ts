import type { OrderLine } from "../materials/index.ts";

export interface LabourLine {
  readonly work: "laying" | "removal";
  readonly length_m: number;
  readonly low_h: number;
  readonly mid_h: number;
  readonly high_h: number;
  readonly note: string;
}

/** Lines of the order that rest on one source and day of prices. */
export interface PriceSource {
  readonly source: string;
  readonly date: string;
  readonly lines: number;
  /** The source calls itself an example or invented: nobody offered these prices. */
  readonly is_example: boolean;
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
  /** Where the prices of the order come from, oldest first. */
  readonly price_sources: readonly PriceSource[];
  readonly labour: readonly LabourLine[];
  readonly lines: readonly CostLine[];
  readonly total: number;
}
