import { shorten, type Problem } from "../formula/index.ts";
import type { Price } from "./types.ts";

/** A price older than this is shown as old; a decision of this project. */
export const OLD_PRICE_DAYS = 180;
const DAY_MS = 86_400_000;

/**
 * Faults of a price list: wrong currency, numbers that are no prices, impossible dates, the same thing priced twice;
 * and a warning for every price older than 180 days.
 *
 * currency  the plan's, ISO 4217
 * as_of     ISO date the prices are held against; null leaves the age unchecked
 * file      name of the price list, for the messages
 */
export function priceProblems(
  prices: readonly Price[],
  currency: string,
  as_of: string | null,
  file = "prices.csv",
): Problem[] {
  return prices.flatMap((p, i) => {
    const at = (code: string, value: unknown, message: string, mend: string, isWarning = false): Problem => ({
      code: `price-${code}`,
      severity: isWarning ? "warning" : "error",
      file,
      place: `line ${i + 2}, ${p.item}`,
      value: shorten(value),
      message,
      mend,
    });
    return [
      ...(p.currency === currency
        ? []
        : [
            at(
              "currency",
              p.currency,
              `the price is in ${p.currency}, the plan in ${currency}`,
              "Convert it: the plan never does.",
            ),
          ]),
      ...numberProblems(p, at),
      ...dateProblems(p, as_of, at),
      ...(prices.findIndex((q) => sameOffer(p, q)) < i
        ? [
            at(
              "twice",
              p.item,
              "the same thing is priced on an earlier line; the cheaper counts",
              "Remove one.",
              true,
            ),
          ]
        : []),
    ];
  });
}

type At = (code: string, value: unknown, message: string, mend: string, isWarning?: boolean) => Problem;

const sameOffer = (p: Price, q: Price): boolean =>
  p.item === q.item && p.length_mm === q.length_mm && p.pack === q.pack;

function numberProblems(p: Price, at: At): Problem[] {
  const found: Problem[] = [];
  if (!Number.isFinite(p.price) || p.price < 0)
    found.push(at("number", p.price, "the price must be 0 or more", "Give a number."));
  if (!Number.isInteger(p.pack) || p.pack < 1)
    found.push(
      at("number", p.pack, "the pack must be a whole number of at least 1", "Give the pieces in one unit."),
    );
  if (p.length_mm !== null && !(p.length_mm > 0 && Number.isFinite(p.length_mm)))
    found.push(
      at("number", p.length_mm, "the stock length must be greater than 0", "Give it in millimetres."),
    );
  return found;
}

function dateProblems(p: Price, as_of: string | null, at: At): Problem[] {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(p.date) ? Date.parse(p.date) : Number.NaN;
  if (Number.isNaN(time)) return [at("date", p.date, "the date cannot be read", "Give it as 2027-03-15.")];
  if (as_of === null) return [];
  const days = Math.round((Date.parse(as_of) - time) / DAY_MS);
  if (days <= OLD_PRICE_DAYS) return [];
  return [at("old", p.date, `the price is ${days} days old`, "Ask the yard again before ordering.", true)];
}
