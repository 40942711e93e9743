/** One entry of the budget in one calendar year; amounts to the cent. */
export interface BudgetEntry {
  readonly id: string;
  readonly title: string;
  readonly year: number;
  readonly low: number;
  readonly mid: number;
  readonly high: number;
  /** Hours in the middle figure, and how many of them volunteers give; 0 for what is bought. */
  readonly hours: number;
  readonly donated_hours: number;
  /** Hours in the low and the high figure. */
  readonly hours_low: number;
  readonly hours_high: number;
  readonly note: string;
}

export interface BudgetYear {
  readonly year: number;
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** An item of the price list with a price older than the plan allows. */
export interface OldPrice {
  readonly item: string;
  /** Of the item's oldest price. */
  readonly date: string;
  readonly age_days: number;
  /** Lines of the order that rest on an old price of the item. */
  readonly order_lines: number;
}

/** The whole project in money, from the first board to the last pin: the cost of the walkway and its years of use. */
export interface Budget {
  readonly currency: string;
  readonly entries: readonly BudgetEntry[];
  readonly years: readonly BudgetYear[];
  readonly low: number;
  readonly mid: number;
  readonly high: number;
  /** What volunteers' hours count for at the plan's rate, and the money that is left to be paid. */
  readonly donated_hours: number;
  readonly donated_value: number;
  readonly cash: number;
  /** The same of the low and the high figure. */
  readonly donated_hours_low: number;
  readonly donated_hours_high: number;
  readonly donated_value_low: number;
  readonly donated_value_high: number;
  readonly cash_low: number;
  readonly cash_high: number;
  /** From the first day of laying to the day it is out. */
  readonly days: number;
  readonly visits: number;
  readonly per_metre: number | null;
  readonly per_foot: number | null;
  readonly per_visit: number | null;
  readonly per_year: number | null;
  readonly warnings: readonly string[];
  /** Prices that are older than the plan allows on the day they are held against. */
  readonly old_prices: readonly OldPrice[];
}
