import { describe, expect, test } from "vitest";
import type { OrderLine, Price } from "../materials/index.ts";
import { oldPrices } from "./old-prices.ts";
import { oldPriceWords, priceSourceWords, priceSources } from "./price-sources.ts";

const line = (item: string, price_source: string, price_date = "2026-01-01"): OrderLine => ({
  item,
  description: item,
  length_mm: 2438,
  quantity: 1,
  needed: 1,
  unit_price: 1,
  amount: 1,
  price_date,
  price_source,
});
const EXAMPLE = "Example, not a real price: put in your yard's";

describe("where prices come from", () => {
  test("lines are counted by source and day, oldest first", () => {
    const order = [
      line("2x4", "Yard", "2026-10-05"),
      line("2x4", EXAMPLE),
      line("2x6", EXAMPLE),
      line("x", " "),
    ];
    const sources = priceSources(order);
    expect(sources.map(({ date, lines, is_example }) => [date, lines, is_example])).toEqual([
      ["2026-01-01", 1, false],
      ["2026-01-01", 2, true],
      ["2026-10-05", 1, false],
    ]);
    expect(priceSourceWords(sources[1]!)).toBe(`2 lines of 2026-01-01, source: ${EXAMPLE}`);
    expect(priceSourceWords(sources[0]!)).toContain("source: not told");
  });

  test.each([
    ["Fennick Yard list, invented", true],
    ["for example only", true],
    ["Exemplar Timber, counter list", false],
    ["Yard, quote 1881", false],
  ])("%s: an example, %s", (source, is_example) => {
    expect(priceSources([line("2x4", source)])[0]!.is_example).toBe(is_example);
  });
});

test("an item bought in three lengths is one old item and three lines of the order", () => {
  const price = (date: string): Price => ({
    item: "2x4",
    description: "2x4",
    length_mm: 2438,
    pack: 1,
    price: 1,
    currency: "USD",
    date,
    source: "yard",
  });
  const order = [line("2x4", "y"), line("2x4", "y"), line("2x4", "y"), line("2x4", "y", "2026-12-01")];
  const old = oldPrices([price("2026-01-01"), price("2026-12-01")], "2027-01-01", 180, order);
  expect(old).toMatchObject([{ item: "2x4", order_lines: 3 }]);
  expect(oldPriceWords(old, 4, 180)).toMatch(
    /^3 of the order's 4 lines .* 180 days \(items of the price list that old: 1\)/,
  );
  expect(oldPriceWords([], 4, 180)).toBeNull();
});
