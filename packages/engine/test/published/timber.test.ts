// Public lumber charts: board feet and dressed sizes.
import { expect, test } from "vitest";
import { tables } from "@causey/data/tables";
import { boardFeet } from "../../src/structure/index.ts";
import { qty } from "../../src/units/index.ts";

test.each([
  [2, 6, 12, 12],
  [2, 10, 16, 26.67],
  [1, 6, 16, 8],
] as const)(
  "Lumber dimension charts (sawdustmaking.com): %ix%i, %i ft holds %d board feet",
  (t, w, L, bf) => {
    expect(Math.abs(boardFeet({ t: qty(t, "1"), w: qty(w, "1"), L: qty(L, "1") }) - bf)).toBeLessThanOrEqual(
      0.005,
    );
  },
);

test.each([
  ["2x4", 1.5, 3.5, 38, 89],
  ["2x6", 1.5, 5.5, 38, 140],
  ["2x8", 1.5, 7.25, 38, 184],
  ["2x12", 1.5, 11.25, 38, 286],
  ["5/4x6", 1, 5.5, 25, 140],
] as const)(
  "Lumber sizes (vterrain.org, woodsize charts): %s is %d x %d in, %i x %i mm",
  (id, t, w, tmm, wmm) => {
    const size = tables.sizes.find((s) => s.id === id)!;
    expect([size.thickness_in, size.width_in]).toEqual([t, w]);
    expect([Math.round(size.thickness_in * 25.4), Math.round(size.width_in * 25.4)]).toEqual([tmm, wmm]);
  },
);
