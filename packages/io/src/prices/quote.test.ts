import type { Price } from "@causey/engine/materials";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import {
  guessQuote,
  openQuote,
  quoteRows,
  readQuote,
  stillMissing,
  withColumn,
  writePrices,
  type KnownItem,
  type QuoteChoice,
  type QuoteTable,
} from "./index.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const open = (text: string): QuoteTable => openQuote("quote.csv", bytes(text));
const known: readonly KnownItem[] = [
  ...["2x4", "2x6", "5/4x6"].map((item) => ({ item, names: [], is_lumber: true })),
  { item: "screw-10x3", names: ["Wood screw #10 x 3 in"], is_lumber: false },
];
/** The rows that are recognised, as the dialog takes them before anything is chosen. */
const taken = (table: QuoteTable, choice: QuoteChoice): ReadonlyMap<number, string> =>
  new Map(
    quoteRows(table, choice, known).flatMap((r) => (r.guess.item === null ? [] : [[r.line, r.guess.item]])),
  );
const read = (text: string, more: Partial<QuoteChoice> = {}) => {
  const table = open(text);
  const choice = { ...guessQuote(table), source: "Yard", ...more };
  return readQuote(table, choice, taken(table, choice), known);
};

const YARD = `Item;Length ft;Price GBP;Quoted
2x6 treated;8;9.80;2026-10-02
2x4 treated;8;6.20;2026-10-02
5/4x6 decking;12;11.40;2026-10-02
`;

test("a yard's quote: columns, feet and currency are read off its heads, only the source is still to be said", () => {
  const table = open(YARD);
  const choice = guessQuote(table);
  expect(choice).toEqual({
    columns: {
      item: "item",
      length: "length ft",
      length_ft: null,
      price: "price gbp",
      currency: null,
      date: "quoted",
      source: null,
      pack: null,
      description: null,
    },
    length_unit: "ft",
    decimal: "point",
    date_order: "ymd",
    currency: "GBP",
    date: "",
    source: "",
  });
  expect(stillMissing(choice)).toBe("Still to be said: who gave the prices.");
  expect(read(YARD)).toEqual({
    prices: (
      [
        ["2x6", "2x6 treated", 2438.4, 9.8],
        ["2x4", "2x4 treated", 2438.4, 6.2],
        ["5/4x6", "5/4x6 decking", 3657.6, 11.4],
      ] as const
    ).map(([item, description, length_mm, price]) => ({
      item,
      description,
      length_mm,
      pack: 1,
      price,
      currency: "GBP",
      date: "2026-10-02",
      source: "Yard",
    })),
    problems: [],
    notes: [
      '"treated" makes no difference: a price is kept for a size, whatever else is said of it (lines 2, 3).',
      '"decking" makes no difference: a price is kept for a size, whatever else is said of it (line 4).',
    ],
  });
});

const columns = (heads: string) => guessQuote(open(`${heads}\n`));
test.each([
  ["Product,Stock length (mm),Unit price €", "product", "stock length (mm)", "mm", "unit price €", "EUR"],
  ["Size\tLength in ft\tPrice each (USD)", "size", "length in ft", "ft", "price each (usd)", "USD"],
  ["Material;Length m;Cost ex VAT", "material", "length m", "m", "cost ex vat", ""],
  ["Description;Length;Rate £", "description", "length", null, "rate £", "GBP"],
  ["Timber,Length inches,Price $", "timber", "length inches", "in", "price $", ""],
])("heads of a yard: %s", (heads, item, length, unit, price, currency) => {
  const choice = columns(heads);
  expect([choice.columns.item, choice.columns.length, choice.length_unit]).toEqual([item, length, unit]);
  expect([choice.columns.price, choice.currency]).toEqual([price, currency]);
});

test("what no head tells is asked for and never made up", () => {
  const choice = guessQuote(open("a,b\n2x4,5\n"));
  expect(Object.values(choice.columns).every((head) => head === null)).toBe(true);
  expect(stillMissing(choice)).toBe(
    "Still to be said: which column names the item, which column holds the price, the currency, the day of the prices, who gave the prices.",
  );
});

test("a column chosen by hand brings its unit and currency with it", () => {
  const table = open("Ref,Long one ft,Each one EUR\n2x4,8,5\n");
  const byHand = withColumn(
    table,
    withColumn(table, guessQuote(table), "length", "long one ft"),
    "price",
    "each one eur",
  );
  expect([byHand.length_unit, byHand.currency]).toEqual(["ft", "EUR"]);
});

test("decimal commas, a unit in the cell, a sign of the currency, days that begin with the day", () => {
  const { prices, problems } = read(
    "Item;Length m;Price EUR;Date\n2x4;2,4;€ 6,20;31.03.2026\n2x6;8 ft;1.234,50 EUR;01.04.2026\n",
  );
  expect(problems).toEqual([]);
  expect(prices.map((p) => [p.length_mm, p.price, p.date])).toEqual([
    [2400, 6.2, "2026-03-31"],
    [2438.4, 1234.5, "2026-04-01"],
  ]);
});

test("days that read in two ways are asked for", () => {
  const choice = guessQuote(open("Item,Price GBP,Date\n2x4,5,02/10/2026\n"));
  expect(choice.date_order).toBeNull();
  expect(stillMissing({ ...choice, source: "Yard" })).toBe("Still to be said: how its days are written.");
});

test("a price that reads in two ways is a fault, until the decimals are said to be commas", () => {
  const text = "Item;Length mm;Price EUR;Date\n2x4;2400;1,250;2026-03-31\n";
  expect(read(text).problems.map((p) => [p.code, p.place])).toEqual([
    ["price-number", "line 2, column price eur"],
  ]);
  expect(read(text, { decimal: "comma" }).prices[0]!.price).toBe(1.25);
});

test("lumber without a length is a fault; what is bought by the piece loses its length, and a note says so", () => {
  const text = "Item,Length mm,Price GBP,Date\n2x4,,5,2026-03-31\nscrew-10x3,75,0.2,2026-03-31\n";
  const { prices, problems, notes } = read(text);
  expect(problems).toMatchObject([{ code: "price-length", place: "line 2, column length mm" }]);
  expect(prices.map((p) => [p.item, p.length_mm])).toEqual([["screw-10x3", null]]);
  expect(notes).toEqual(["The length is left out: these are priced by the piece (line 3)."]);
});

test("two currencies in one file are refused with a mend; a row that is left out is not read", () => {
  const text =
    "Item,Length ft,Price,Currency,Date\n2x4,8,5,GBP,2026-03-31\n2x6,8,5,EUR,2026-03-31\n2x9,8,x,EUR,never\n";
  const { problems } = read(text);
  expect(problems.map((p) => p.code)).toEqual(["price-currencies"]);
  expect(problems[0]!.mend).toMatch(/one currency/);
});

test("treated and untreated of one size and length are told: they are one item here", () => {
  const { problems } = read(
    "Item,Length ft,Price GBP,Date\n2x4,8,5,2026-03-31\n2x4 treated,8,6,2026-03-31\n",
  );
  expect(problems).toMatchObject([{ code: "price-twins", severity: "warning", place: "line 3" }]);
});

test("a file without rows of heads, and one with a head twice, are refused", () => {
  expect(() => open("")).toThrow();
  expect(() => open("item,item,price\n2x4,2x4,5\n")).toThrow();
});

test("property: a written list is read back the same, with nothing to choose", () => {
  const item = fc.constantFrom(...known);
  const price = fc.record({
    of: item,
    description: fc.constantFrom("Deal", "=2+2", "a;b", 'said "so"', "10'", "Fir, 8 ft"),
    length_mm: fc.integer({ min: 1, max: 9_999_000 }).map((n) => n / 1000),
    pack: fc.integer({ min: 1, max: 1000 }),
    cents: fc.integer({ min: 0, max: 1e7 }),
    date: fc.constantFrom("2024-02-29", "2026-12-01"),
    source: fc.constantFrom("Yard, by phone", "Liste", "'quoted'"),
  });
  fc.assert(
    fc.property(fc.array(price, { minLength: 1, maxLength: 12 }), (rows) => {
      const prices = rows.map(({ of, cents, length_mm, description, pack, date, source }): Price => ({
        item: of.item,
        description,
        length_mm: of.is_lumber ? length_mm : null,
        pack,
        price: cents / 100,
        currency: "GBP",
        date,
        source,
      }));
      const table = openQuote("prices.csv", writePrices(prices));
      const choice = guessQuote(table);
      expect(stillMissing(choice)).toBeNull();
      const back = readQuote(table, choice, taken(table, choice), known);
      expect(back.prices).toEqual(prices);
      expect(back.problems.filter((p) => p.severity === "error")).toEqual([]);
    }),
  );
});

test("property: every row of the file is shown once, in its order, whatever stands in it", () => {
  fc.assert(
    fc.property(fc.array(fc.string({ maxLength: 12 }), { maxLength: 12 }), (words) => {
      const rows = words.map((w) => `"${w.replaceAll('"', '""').replaceAll(/[\r\n]/g, " ")}",8,5,2026-01-01`);
      const table = open(`Item,Length ft,Price GBP,Date\n${rows.join("\n")}\n`);
      const shown = quoteRows(table, guessQuote(table), known);
      expect(shown.map((r) => r.line)).toEqual(words.map((_, i) => i + 2));
    }),
  );
});
