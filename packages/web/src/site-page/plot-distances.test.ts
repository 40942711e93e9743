import type { Plot } from "@causey/engine/site";
import { expect, test } from "vitest";
import { plotDistances } from "./plot-distances.ts";

const plot = (keep_off_m: number, reach_m: number): Plot => ({
  id: "P",
  name: "P",
  x: 0,
  y: 0,
  keep_off_m,
  reach_m,
});

test("a new plot gets what all plots have; where they differ, or there are none, what new plans have", () => {
  expect(plotDistances({ plots: [] })).toEqual({ keep_off_m: 1.5, reach_m: 2 });
  expect(plotDistances({ plots: [plot(1, 3), plot(1, 4)] })).toEqual({ keep_off_m: 1, reach_m: 2 });
  expect(plotDistances({ plots: [plot(0, 3)] })).toEqual({ keep_off_m: 0, reach_m: 3 });
});
