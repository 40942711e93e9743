import { describe, expect, test } from "vitest";
import { straightLayout, visitOf } from "../../test/support/straight-walkway.ts";
import { rectangle, type Zone } from "../site/index.ts";
import { visitClosureCautions } from "./visit-closures.ts";

/** Closed April to July, its south edge 3 m north of the walkway's middle line. */
const birds = (change: Partial<Zone> = {}): Zone => ({
  id: "birds",
  name: "Tern bank",
  use: "seasonal-closure",
  polygons: [[rectangle(6, 8, 0, 10, 12)]],
  from: "04-01",
  to: "07-31",
  hidden: false,
  source: "invented",
  ...change,
});

const layout = (() => {
  const line = straightLayout([4, 4, 4]);
  const outline = (x: number) => [[rectangle(x, 0, 90, 4, 0.6)]];
  return { ...line, parts: line.parts.map((p, i) => ({ ...p, outline: outline(2 + 4 * i) })) };
})();

const cautions = (zone: Zone, visit: Parameters<typeof visitOf>[0] = {}): string[] =>
  visitClosureCautions({
    visits: [visitOf(visit)],
    zones: [zone],
    layout,
    out: "2028-11-30",
    units: "metric",
  });

describe("visits against closed seasons", () => {
  test("within the buffer and in the season: visit, area and both periods are named", () => {
    const [said] = cautions(birds({ buffer_m: 5, contact: "harbour office" }));
    for (const part of ["Weekly readings", "2027-04-19 to 2027-10-22", "Tern bank", "04-01 to 07-31"])
      expect(said).toContain(part);
    expect(said).toContain("within its buffer of 5.00 m");
    expect(said).toContain("ask the officer (harbour office)");
  });

  test("through the area itself, buffer or none", () => {
    expect(cautions(birds({ polygons: [[rectangle(6, 0, 0, 10, 12)]] }))[0]).toContain("passes through it");
  });

  test("without a buffer of its own, its edge 3 m off, by hand: asked about, with the distance", () => {
    expect(cautions(birds())[0]).toContain("passes 3.00 m from it at the nearest joint");
    expect(cautions(birds({ polygons: [[rectangle(6, 70, 0, 10, 12)]] }))).toEqual([]);
  });

  test("silent beyond the buffer, outside the season, and for areas of other rules", () => {
    expect(cautions(birds({ buffer_m: 2 }))).toEqual([]);
    expect(cautions(birds({ buffer_m: 5 }), { from: "2027-08-01", to: "2028-03-31" })).toEqual([]);
    expect(cautions(birds({ buffer_m: 5, use: "habitat" }))).toEqual([]);
  });

  test("a visit without a last day lasts until the walkway is out, over a closure that runs over New Year", () => {
    const winter = birds({ buffer_m: 5, from: "11-15", to: "01-31" });
    expect(cautions(winter, { from: "2028-03-01", to: null })[0]).toContain("2028-03-01 to 2028-11-30");
    expect(cautions(winter, { from: "2028-03-01", to: "2028-11-01" })).toEqual([]);
  });

  test("a hidden area keeps its days and its officer to itself", () => {
    const [said] = cautions(birds({ buffer_m: 5, hidden: true, contact: "harbour office" }));
    expect(said).not.toMatch(/04-01|07-31|harbour|buffer/);
  });
});
