import type { Price } from "@causey/engine/materials";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { mergeFaults, mergePrices, packNotes } from "./index.ts";

const price = (item: string, length_mm: number | null, cost: number, pack = 1, currency = "GBP"): Price => ({
  item,
  description: item,
  length_mm,
  pack,
  price: cost,
  currency,
  date: "2026-10-02",
  source: "Yard",
});
const there = [
  price("2x4", 2438, 7),
  price("2x6", 2438, 9),
  price("2x6", 3658, 12),
  price("screw", null, 20, 100),
];

test("8 ft takes the place of 2438 mm and 12 ft that of 3658 mm; the others stay where they stood", () => {
  const come = [price("2x6", 3657.6, 15), price("2x6", 2438.4, 10), price("4x4", 2438.4, 14)];
  const merged = mergePrices(there, come, "add");
  expect(merged.prices).toEqual([there[0], come[1], come[0], there[3], come[2]]);
  expect(merged.gone).toEqual([there[1], there[2]]);
  expect(merged.stay).toEqual([there[0], there[3]]);
  expect(merged.added).toEqual([come[2]]);
});

test("replacing leaves the new prices alone", () => {
  const come = [price("2x6", 2438.4, 10)];
  expect(mergePrices(there, come, "replace")).toEqual({ prices: come, gone: there, stay: [], added: [] });
});

test("a box priced anew by the piece is pointed at, one priced by the same box is not", () => {
  expect(packNotes([there[3]!], [price("screw", null, 0.2)])).toEqual([
    "screw: the list had a price for a pack of 100, the file for 1. Look at its pack.",
  ]);
  expect(packNotes([there[3]!], [price("screw", null, 22, 100)])).toEqual([]);
});

test("another currency cannot be added, and the mend says how to go on; it can replace", () => {
  const come = [price("2x6", 2438.4, 10, 1, "EUR")];
  const [fault] = mergeFaults("quote.csv", there, come, "add");
  expect(fault).toMatchObject({ code: "price-currencies", severity: "error", file: "quote.csv" });
  expect(fault!.mend).toMatch(/Replace the list/);
  expect(mergeFaults("quote.csv", there, come, "replace")).toEqual([]);
  expect(mergeFaults("quote.csv", [], come, "add")).toEqual([]);
  expect(mergeFaults("quote.csv", there, [price("2x6", 2438.4, 10)], "add")).toEqual([]);
});

const some = fc.record({
  item: fc.constantFrom("2x4", "2x6", "screw"),
  tenths: fc.option(fc.integer({ min: 24370, max: 24400 }), { nil: null }),
  cost: fc.integer({ min: 0, max: 50 }),
  pack: fc.constantFrom(1, 100),
});
const list = (least: number) =>
  fc.array(
    some.map(({ item, tenths, cost, pack }) => price(item, tenths === null ? null : tenths / 10, cost, pack)),
    { minLength: least, maxLength: 10 },
  );

test("property: adding the same prices again changes nothing", () => {
  fc.assert(
    fc.property(list(0), list(0), (old, come) => {
      const once = mergePrices(old, come, "add").prices;
      expect(mergePrices(once, come, "add").prices).toEqual(once);
    }),
  );
});

test("property: no price is lost: each old one stays or is named as gone, each new one is in the list once", () => {
  fc.assert(
    fc.property(list(0), list(1), (old, come) => {
      const { prices, gone, stay } = mergePrices(old, come, "add");
      expect(new Set([...gone, ...stay])).toEqual(new Set(old));
      expect(gone.length + stay.length).toBe(old.length);
      expect(prices).toHaveLength(stay.length + come.length);
      for (const p of [...stay, ...come]) expect(prices.filter((q) => q === p)).toHaveLength(1);
      for (const p of gone)
        expect(come.some((c) => c.item === p.item && (c.length_mm === null) === (p.length_mm === null))).toBe(
          true,
        );
    }),
  );
});
