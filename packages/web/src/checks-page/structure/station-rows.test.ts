import type { FrameDrawing } from "@causey/engine/checks";
import { expect, test } from "vitest";
import { stationRows } from "./station-rows.ts";

/** A load of 1 kN in the middle of 2 m: M = P L / 4 = 0.5 kN m, V = P / 2; the other stringer carries more moment. */
const frame = {
  stations_m: [0, 1, 2],
  moment: {
    most: [
      [0, 500, 0],
      [0, 700, 0],
    ],
    least: [
      [0, -1e-12, 0],
      [0, 0, 0],
    ],
  },
  shear: {
    most: [
      [500, 500, 0],
      [400, 400, 0],
    ],
    least: [
      [0, -500, -500],
      [0, -400, -400],
    ],
  },
  sag: {
    most: [
      [0, 0.00254, 0],
      [0, 0.001, 0],
    ],
    least: [
      [0, 0, 0],
      [0, 0, 0],
    ],
  },
  peaks: {
    moment: { stringer: 0, value: 500 },
    shear: { stringer: 0, value: 500 },
    sag: { stringer: 0, value: 0.00254 },
  },
} as unknown as FrameDrawing;

test("each station shows the stringer that governs the effect, the least only where it is a load", () => {
  const rows = stationRows(frame, "metric");
  expect(rows.map((r) => r.at)).toEqual(["0 mm", "1.00 m", "2.00 m"]);
  expect(rows[1]!.values).toEqual({ moment: "0.500 kN m", shear: "500 N to -500 N", sag: "2.5 mm" });
  expect(rows[2]!.values.shear).toBe("0 N to -500 N");
});

test("in feet and pounds a sag is told in hundredths of an inch", () => {
  expect(stationRows(frame, "us")[1]!.values).toEqual({
    moment: "369 lb ft",
    shear: "112 lb to -112 lb",
    sag: "0.10 in",
  });
});
