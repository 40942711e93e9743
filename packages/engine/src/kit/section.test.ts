import { expect, test } from "vitest";
import { yardTables } from "../../test/support/yard-tables.ts";
import { lying, sectionOf } from "./section.ts";

test.each([
  ["2x4", 38, 89],
  ["2x6", 38, 140],
  ["2x8", 38, 184],
  ["2x12", 38, 286],
  ["5/4x6", 25, 140],
])("a nominal %s is %i x %i mm (public lumber size charts, PS 20)", (id, thickness, width) => {
  const s = sectionOf(yardTables.sizes, id);
  expect([Math.round(s.thickness_mm), Math.round(s.width_mm)]).toEqual([thickness, width]);
});

test("flat shows the wide face up, edge the narrow one", () => {
  const s = sectionOf(yardTables.sizes, "2x6");
  expect(lying(s, "flat").along).toBe(lying(s, "edge").high);
  expect(lying(s, "flat").high).toBe(s.thickness_mm);
});

test("a size that the table lacks is a broken promise", () => {
  expect(() => sectionOf(yardTables.sizes, "2x5")).toThrow("unknown-lumber-size");
});
