import type { StripModel } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { groundRuns } from "./strip-section.tsx";

test("unknown ground is left open: the section is drawn in runs of known height", () => {
  const ground = [1, 1.1, null, null, 1.2, null, 1.3, 1.4].map((z_m, at_m) => ({ at_m, z_m }));
  const runs = groundRuns({ ground } as unknown as StripModel);
  expect(runs.map((run) => run.map((p) => p.at_m))).toEqual([
    [0, 1],
    [6, 7],
  ]);
});
