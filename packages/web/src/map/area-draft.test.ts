import type { Zone } from "@causey/engine/site";
import { expect, test } from "vitest";
import { addPoint, drawnZone, nextAreaName, outlineFault } from "./area-draft.ts";

const square = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
] as const;
const zone = (id: string, name: string): Zone => ({
  ...drawnZone([], { name, use: "closed" }, square),
  id,
});

test("an outline needs three points and must not cross itself", () => {
  expect(outlineFault(square.slice(0, 2))).toContain("three points");
  expect(outlineFault(square)).toBeNull();
  expect(outlineFault([square[0], square[2], square[1], square[3]])).toContain("crosses itself");
});

test("the second press of a double press adds no second point", () => {
  const once = addPoint([], [5, 5]);
  expect(addPoint(once, [5.01, 5])).toBe(once);
  expect(addPoint(once, [5.2, 5])).toHaveLength(2);
});

test("a new area takes a free id and a free name, to the millimetre", () => {
  const zones = [zone("closed-1", "Closed area 1"), zone("closed-3", "Nest")];
  expect(nextAreaName(zones)).toBe("Closed area 2");
  const made = drawnZone(zones, { name: "Orchids", use: "closed" }, [
    ...square.slice(0, 3),
    [0.12345, 9.98765],
  ]);
  expect(made).toMatchObject({ id: "closed-2", use: "closed", name: "Orchids", hidden: false });
  expect(made.polygons[0]![0]![3]).toEqual([0.123, 9.988]);
});

test("an area is called and numbered by its rule, and keeps the days of its season", () => {
  const zones = [zone("pool-1", "Pool 1")];
  expect(nextAreaName(zones, "pool")).toBe("Pool 2");
  expect(drawnZone(zones, { name: "Pool 2", use: "pool" }, square)).toMatchObject({
    id: "pool-2",
    use: "pool",
  });
  const season = { name: "Terns", use: "seasonal-closure", from: "04-15", to: "08-31" } as const;
  expect(drawnZone([], season, square)).toMatchObject(season);
});
