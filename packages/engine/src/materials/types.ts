import type { SizeId } from "../kit/index.ts";

/** One kind of timber piece with its length: what the saw makes. */
export interface TimberLine {
  readonly size: SizeId;
  readonly length_mm: number;
  readonly count: number;
  /** What it becomes: "stringer", "cross piece", "sill"... with how many of each. */
  readonly uses: readonly { readonly use: string; readonly count: number }[];
}

/** Anything counted and not sawn from lumber: screws, clips, mesh panels. */
export interface CountLine {
  readonly item: string;
  readonly name: string;
  readonly count: number;
}

export interface TakeOff {
  readonly timber: readonly TimberLine[];
  readonly counted: readonly CountLine[];
}

/** One dated price of the price list. Lumber: one line per size and stock length. */
export interface Price {
  readonly item: string;
  readonly description: string;
  /** Stock length for lumber; null for counted things. */
  readonly length_mm: number | null;
  /** Pieces in one selling unit (a box of 100 screws). */
  readonly pack: number;
  readonly price: number;
  readonly currency: string;
  readonly date: string;
  readonly source: string;
}

export interface OrderLine {
  readonly item: string;
  readonly description: string;
  readonly length_mm: number | null;
  /** Selling units to buy. */
  readonly quantity: number;
  readonly needed: number;
  readonly unit_price: number;
  /** quantity * unit_price, rounded to the currency's cents. */
  readonly amount: number;
  readonly price_date: string;
  /** Who gave the price, in the price list's words. */
  readonly price_source: string;
}
