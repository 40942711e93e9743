import type { Price } from "@causey/engine/materials";
import { expect, test } from "vitest";
import { knownItems } from "./index.ts";

const price = (item: string, description: string, length_mm: number | null): Price => ({
  item,
  description,
  length_mm,
  pack: 1,
  price: 5,
  currency: "GBP",
  date: "2026-10-02",
  source: "Yard",
});

test("an item is known from tables, list and order, once, under all the words that they have for it", () => {
  const tables = {
    sizes: [{ id: "2x4" }] as never,
    fasteners: [{ id: "screw-10x3", name: "Wood screw" }] as never,
  };
  const list = [
    price("2x4", "Deal, 8 ft", 2438),
    price("2x4", "Deal, 12 ft", 3658),
    price("3x5", "Oak", 3000),
    price("screw-10x3", "Screws, box", null),
  ];
  const off = { timber: [], counted: [{ item: "mesh 1219x914", name: "Mesh", count: 4 }] };
  expect(knownItems(tables, list, off)).toEqual([
    { item: "2x4", names: ["Deal, 8 ft", "Deal, 12 ft"], is_lumber: true },
    { item: "mesh 1219x914", names: ["Mesh"], is_lumber: false },
    { item: "3x5", names: ["Oak"], is_lumber: true },
    { item: "screw-10x3", names: ["Screws, box", "Wood screw"], is_lumber: false },
  ]);
  expect(knownItems(tables, [], null).map((k) => k.item)).toEqual(["2x4", "screw-10x3"]);
});
