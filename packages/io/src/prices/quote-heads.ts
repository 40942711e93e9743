import { guessHeads, type WantedHead } from "../csv/index.ts";
import type { LengthUnit } from "./price-line.ts";
import type { QuoteChoice, QuoteKey } from "./quote-types.ts";

/** Codes that are looked for in heads; any other code is typed or stands in a column. */
const CURRENCIES: ReadonlySet<string> = new Set(
  "usd gbp eur cad aud nzd chf sek nok dkk isk pln czk huf ron zar jpy inr cny hkd sgd mxn brl".split(" "),
);
/** A dollar sign is no currency: a dozen countries write it. */
const SIGNS: Readonly<Record<string, string>> = { "£": "gbp", "€": "eur" };
const UNITS: Readonly<Record<string, LengthUnit>> = {
  mm: "mm",
  millimetres: "mm",
  millimeters: "mm",
  cm: "cm",
  centimetres: "cm",
  centimeters: "cm",
  m: "m",
  metre: "m",
  metres: "m",
  meter: "m",
  meters: "m",
  ft: "ft",
  foot: "ft",
  feet: "ft",
  in: "in",
  inch: "in",
  inches: "in",
};
/** Words around a head's own meaning. */
const FILLERS: ReadonlySet<string> = new Set(
  "per each ea unit piece pc ex excl excluding net vat tax gst before the of a in $".split(" "),
);

const wordsOf = (head: string): readonly string[] =>
  (head.toLowerCase().match(/\p{L}+|[£€$]/gu) ?? []).map((word) => SIGNS[word] ?? word);

const wanted: readonly WantedHead<Exclude<QuoteKey, "length_ft">>[] = [
  {
    key: "item",
    heads: ["item", "product", "article", "material", "timber", "lumber", "size", "section", "goods", "name"],
  },
  { key: "length", heads: ["length", "stock length", "len", "long"] },
  { key: "price", heads: ["price", "cost", "rate", "quoted price"] },
  { key: "currency", heads: ["currency", "currency code", "ccy"] },
  {
    key: "date",
    heads: ["date", "quoted", "day", "quote date", "price date", "date quoted", "quoted on", "valid from"],
  },
  { key: "source", heads: ["source", "yard", "supplier", "merchant", "vendor", "catalogue"] },
  { key: "pack", heads: ["pack", "pack size", "pieces", "pieces pack", "box"] },
  { key: "description", heads: ["description", "details", "words"] },
];

/** The unit that a head of lengths names; null when it names none. In "Length in ft" the "in" is no inch. */
export function unitOfHead(head: string): LengthUnit | null {
  const named = wordsOf(head).flatMap((word) => UNITS[word] ?? []);
  const units = named.length > 1 ? named.filter((unit) => unit !== "in") : named;
  return units.length === 1 ? units[0]! : null;
}

/** The currency that a head of prices names, in capitals; null when it names none. */
export function currencyOfHead(head: string): string | null {
  const codes = wordsOf(head).filter((word) => CURRENCIES.has(word));
  return codes.length === 1 ? codes[0]!.toUpperCase() : null;
}

/** A head without unit, currency and fillers: "Price GBP, each" is "price". */
function plainHead(head: string): string {
  const words = wordsOf(head);
  const left = words.filter((w) => !CURRENCIES.has(w) && !FILLERS.has(w) && UNITS[w] === undefined);
  return (left.length > 0 ? left : words).join(" ");
}

/** The columns that a quote's heads seem to name; null for one that none does. No head is taken twice. */
export function guessQuoteColumns(heads: readonly string[]): QuoteChoice["columns"] {
  const plain = heads.map(plainHead);
  const found = guessHeads(wanted, plain);
  const headOf = (name: string | null): string | null =>
    name === null ? null : (heads[plain.indexOf(name)] ?? null);
  const own = Object.fromEntries(Object.entries(found).map(([key, name]) => [key, headOf(name)])) as {
    readonly [K in Exclude<QuoteKey, "length_ft">]: string | null;
  };
  const item = own.item ?? own.description;
  const hasBoth = heads.includes("length_mm") && heads.includes("length_ft");
  return {
    ...own,
    item,
    description: item === own.description ? null : own.description,
    length: hasBoth ? "length_mm" : own.length,
    length_ft: hasBoth ? "length_ft" : null,
  };
}
