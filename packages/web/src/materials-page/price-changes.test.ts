import type { Price } from "@causey/engine/materials";
import { expect, test } from "vitest";
import { changedCount, inCurrency, withPrices } from "./price-changes.ts";

const row = (item: string, price: number): Price => ({
  item,
  description: item,
  length_mm: null,
  pack: 1,
  price,
  currency: "USD",
  date: "2026-01-01",
  source: "Old yard",
});
const list = [row("2x4", 8), row("2x6", 12), row("2x6", 12)];
const told = { date: "2026-05-02", source: "New yard" };

test("a changed price gets its new day and source; the others keep theirs, and a price typed again is none", () => {
  const draft = {
    prices: new Map([
      [1, 13.5],
      [0, 8],
    ]),
    gone: new Set<number>(),
  };
  expect(changedCount(list, draft)).toBe(1);
  expect(withPrices(list, draft, told)).toEqual([list[0], { ...list[1], price: 13.5, ...told }, list[2]]);
});

test("what is not stocked is out of the list, and a price typed for it counts for nothing", () => {
  const draft = { prices: new Map([[0, 9]]), gone: new Set([0, 2]) };
  expect(changedCount(list, draft)).toBe(0);
  expect(withPrices(list, draft, told)).toEqual([list[1]]);
});

test("another currency changes the code alone", () => {
  expect(inCurrency(list, "GBP").map((p) => [p.price, p.currency])).toEqual([
    [8, "GBP"],
    [12, "GBP"],
    [12, "GBP"],
  ]);
});
