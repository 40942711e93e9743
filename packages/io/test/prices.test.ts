import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Price } from "@causey/engine/materials";
import { readPrices, writePrices } from "../src/prices/index.ts";
import { isHelpful, problemsOf, utf8 } from "./support/problems.ts";

const heads = "item,description,length_mm,pack,price,currency,date,source";
const read = (text: string) => readPrices("prices.csv", utf8(text));
const one = (line: string): Price => read(`${heads}\n${line}\n`).prices[0]!;

test("lumber by its length, counted things without one, an empty pack as one piece", () => {
  const { prices, currency, warnings } = read(
    `${heads}\n2x4,"2x4 treated, 8 ft",2438,,7.65,USD,2026-10-05,Yard list\nscrew-10x3,Screws,,100,25.4,usd,2026-10-05,Yard list\n`,
  );
  expect(prices).toEqual([
    {
      item: "2x4",
      description: "2x4 treated, 8 ft",
      length_mm: 2438,
      pack: 1,
      price: 7.65,
      currency: "USD",
      date: "2026-10-05",
      source: "Yard list",
    },
    {
      item: "screw-10x3",
      description: "Screws",
      length_mm: null,
      pack: 100,
      price: 25.4,
      currency: "USD",
      date: "2026-10-05",
      source: "Yard list",
    },
  ]);
  expect([currency, warnings]).toEqual(["USD", []]);
});

test("feet become millimetres by the definition of the foot: 8 ft is 2438.4 mm, 12 ft is 3657.6 mm", () => {
  const list = read(
    "item,length_ft,price,currency,date,source\n2x4,8,1,USD,2026-01-01,s\n2x4,12,1,USD,2026-01-01,s\n",
  );
  expect(list.prices.map((p) => p.length_mm)).toEqual([2438.4, 3657.6]);
});

test("semicolons, decimal commas and a byte order mark, as a continental spreadsheet writes them", () => {
  const text =
    "\ufeffItem;Description;Length_mm;Pack;Price;Currency;Date;Source\r\n2x4;Latte;3000;;1.234,50;EUR;2026-03-31;Liste\r\n2x6;Latte;3000;;7,5;EUR;2026-03-31;Liste\r\n";
  expect(read(text).prices.map((p) => p.price)).toEqual([1234.5, 7.5]);
});

test("tabs part columns too, unknown columns are left alone, blank lines skipped", () => {
  const text = "item\tnote\tprice\tcurrency\tdate\tsource\n\n2x4\tx\t1,000.50\tUSD\t2026-03-31\ts\n\n";
  expect(read(text).prices[0]).toMatchObject({
    item: "2x4",
    description: "2x4",
    price: 1000.5,
    length_mm: null,
  });
});

const faults: readonly (readonly [string, string, string, string, RegExp])[] = [
  [
    "no column of currencies",
    "item,price,date,source\n2x4,1,2026-01-01,s\n",
    "price-currency",
    "line 1",
    /"currency"/,
  ],
  [
    "a price without a currency",
    `${heads}\n2x4,,,1,5,,2026-01-01,s\n`,
    "price-currency",
    "line 2, column currency",
    /no currency/,
  ],
  [
    "a sign for a currency",
    `${heads}\n2x4,,,1,5,$,2026-01-01,s\n`,
    "price-currency",
    "line 2, column currency",
    /not the code/,
  ],
  [
    "two currencies",
    `${heads}\n2x4,,,1,5,USD,2026-01-01,s\n2x6,,,1,5,EUR,2026-01-01,s\n`,
    "price-currencies",
    "column currency",
    /EUR and USD/,
  ],
  [
    "a price below zero",
    `${heads}\n2x4,,,1,-5,USD,2026-01-01,s\n`,
    "price-negative",
    "line 2, column price",
    /below zero/,
  ],
  ["no price", `${heads}\n2x4,,,1,,USD,2026-01-01,s\n`, "price-missing", "line 2, column price", /missing/],
  [
    "a price in words",
    `${heads}\n2x4,,,1,five,USD,2026-01-01,s\n`,
    "price-number",
    "line 2, column price",
    /not a number/,
  ],
  ["31 February", `${heads}\n2x4,,,1,5,USD,2026-02-31,s\n`, "price-date", "line 2, column date", /no date/],
  [
    "a date the other way round",
    `${heads}\n2x4,,,1,5,USD,10/05/2026,s\n`,
    "price-date",
    "line 2, column date",
    /no date/,
  ],
  ["no source", `${heads}\n2x4,,,1,5,USD,2026-01-01,\n`, "price-text", "line 2, column source", /empty/],
  [
    "half a pack",
    `${heads}\n2x4,,,0.5,5,USD,2026-01-01,s\n`,
    "price-pack",
    "line 2, column pack",
    /whole number/,
  ],
  [
    "a length of zero",
    `${heads}\n2x4,,0,1,5,USD,2026-01-01,s\n`,
    "price-length",
    "line 2, column length_mm",
    /not above zero/,
  ],
  [
    "a length in both units",
    "item,length_mm,length_ft,price,currency,date,source\n2x4,2438,8,5,USD,2026-01-01,s\n",
    "price-length",
    "line 2, column length_ft",
    /given twice/,
  ],
  ["a column twice", `${heads},price\n2x4,,,1,5,USD,2026-01-01,s,5\n`, "csv-head", "line 1", /stands twice/],
  [
    "a quote that never closes",
    `${heads}\n2x4,"open,,1,5,USD,2026-01-01,s\n`,
    "csv-quotes",
    "row 2",
    /not closed/,
  ],
  [
    "a price that reads two ways",
    "item;price;currency;date;source\n2x4;1,250;EUR;2026-01-01;s\n",
    "price-number",
    "line 2, column price",
    /one way only/,
  ],
  [
    "a decimal point among decimal commas",
    "item;price;currency;date;source\n2x4;1,25;EUR;2026-01-01;s\n2x6;1.5;EUR;2026-01-01;s\n",
    "price-number",
    "line 3, column price",
    /one way only/,
  ],
  ["nothing", "", "price-heads", "line 1", /lacks the columns/],
];
test.each(faults)("refused with line and column: %s", async (_title, text, code, place, message) => {
  const problems = await problemsOf(() => read(text));
  const problem = problems.find((p) => p.code === code);
  expect(problem, problems.map((p) => p.code).join()).toBeDefined();
  expect(problem!.place).toBe(place);
  expect(problem!.message).toMatch(message);
  expect(problems.every((p) => p.file === "prices.csv" && isHelpful(p))).toBe(true);
});

test("all faults of the list are told at once", async () => {
  const problems = await problemsOf(() => read(`${heads}\n,,,1,x,USD,2026-01-01,s\n2x6,,,1,5,US,never,s\n`));
  expect(problems.map((p) => p.place)).toEqual([
    "line 2, column item",
    "line 2, column price",
    "line 3, column currency",
    "line 3, column date",
  ]);
});

test("lines are counted through cells that run over several of them", async () => {
  const problems = await problemsOf(() =>
    read(`${heads}\n2x4,"a\nb\nc",,1,5,USD,2026-01-01,s\n2x6,,,1,x,USD,2026-01-01,s\n`),
  );
  expect(problems[0]!.place).toBe("line 5, column price");
});

test("one thing priced twice is told: the cheaper counts", () => {
  const { warnings } = read(`${heads}\n2x4,,2438,1,5,USD,2026-01-01,s\n2x4,,2438,1,6,USD,2026-01-01,s\n`);
  expect(warnings).toMatchObject([{ code: "price-twins", place: "line 3" }]);
});

test("more rows than are read are refused without reading them", async () => {
  const row = "2x4,,,1,5,USD,2026-01-01,s\n";
  const start = performance.now();
  const problems = await problemsOf(() => read(`${heads}\n${row.repeat(200_000)}`));
  expect(problems.map((p) => p.code)).toContain("too-many-rows");
  expect(performance.now() - start).toBeLessThan(10_000);
});

test("a formula in a description is text when read, and defused when written", () => {
  const price = one('2x4,"=cmd|x",,1,5,USD,2026-01-01,s');
  expect(price.description).toBe("=cmd|x");
  const text = new TextDecoder().decode(writePrices([price]));
  expect(text).toContain(",'=cmd|x,");
  expect(read(text).prices).toEqual([price]);
});

test("property: written prices are read back the same", () => {
  const text = fc
    .string({ minLength: 1, maxLength: 20 })
    .map((s) => s.replaceAll(/\p{Cc}/gu, "").trim())
    .filter((s) => s !== "");
  const price = fc.record({
    item: text,
    description: text,
    length_mm: fc.option(fc.integer({ min: 1, max: 10_000 }), { nil: null }),
    pack: fc.integer({ min: 1, max: 1000 }),
    price: fc.integer({ min: 0, max: 1e6 }).map((cents) => cents / 100),
    currency: fc.constant("GBP"),
    date: fc.constantFrom("2024-02-29", "2026-12-31"),
    source: text,
  });
  fc.assert(
    fc.property(
      fc.uniqueArray(price, { selector: (p) => `${p.item} ${p.length_mm} ${p.pack}`, maxLength: 8 }),
      (prices) => {
        expect(read(new TextDecoder().decode(writePrices(prices))).prices).toEqual(prices);
      },
    ),
  );
});
