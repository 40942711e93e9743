import { expect, test } from "vitest";
import { missingPrices } from "./missing-prices.ts";
import type { Price, TakeOff } from "./types.ts";

const price = (item: string, length_mm: number | null): Price => ({
  item,
  description: item,
  length_mm,
  pack: 1,
  price: 5,
  currency: "GBP",
  date: "2026-10-02",
  source: "Yard",
});
const off: TakeOff = {
  timber: [
    { size: "2x4", length_mm: 2400, count: 3, uses: [] },
    { size: "2x6", length_mm: 3000, count: 2, uses: [] },
    { size: "2x6", length_mm: 900, count: 8, uses: [] },
  ],
  counted: [{ item: "screw-10x3", name: "Screw", count: 90 }],
};
const whole = [price("2x4", 2438), price("2x6", 3658), price("screw-10x3", null)];

test("a list that prices every size, length and counted thing lacks nothing", () => {
  expect(missingPrices(off, whole)).toEqual([]);
});

test("a size without a price, a piece longer than the stock, and a thing priced by length alone are missing", () => {
  const list = [price("2x6", 2438), price("screw-10x3", 75)];
  expect(missingPrices(off, list)).toEqual([
    { item: "2x4, 2400 mm", needed: 3 },
    { item: "2x6, 3000 mm", needed: 2 },
    { item: "screw-10x3", needed: 90 },
  ]);
});
