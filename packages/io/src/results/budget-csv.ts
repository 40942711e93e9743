import type { Budget } from "@causey/engine/cost";
import { csvBytes } from "../csv/index.ts";
import { roundTo } from "../json/index.ts";

/** `budget.csv`: every line in the year it is paid, with its range and hours; the amounts add up to the budget. */
export const budgetCsv = ({ currency, entries }: Budget): Uint8Array =>
  csvBytes(
    [
      "year",
      "line",
      "title",
      `low_${currency}`,
      `mid_${currency}`,
      `high_${currency}`,
      "hours",
      "hours_low",
      "hours_high",
      "donated_hours",
      "note",
    ],
    entries.map((e) => [
      e.year,
      e.id,
      e.title,
      roundTo(e.low, 2),
      roundTo(e.mid, 2),
      roundTo(e.high, 2),
      roundTo(e.hours, 1),
      roundTo(e.hours_low, 1),
      roundTo(e.hours_high, 1),
      roundTo(e.donated_hours, 1),
      e.note,
    ]),
  );
