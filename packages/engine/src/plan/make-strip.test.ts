import { expect, test } from "vitest";
import { levelSite, straightLayout } from "../../test/support/straight-walkway.ts";
import type { Layout } from "../layout/index.ts";
import { makeStrip } from "./index.ts";

const lifted = (layout: Layout, by_m: number): Layout => ({
  ...layout,
  joints: layout.joints.map((j) => ({ ...j, deck_m: j.deck_m + by_m, ground_m: j.ground_m + by_m })),
});
const siteAt = (by_m: number) => {
  const site = levelSite();
  return levelSite({ levels: site.levels.map((l) => ({ ...l, z_m: l.z_m + by_m })) });
};

test.each([-40, 0, 42])(
  "the heights of the strip are those that are drawn, %d m from the datum too",
  (by) => {
    const layout = lifted(straightLayout([3, 3]), by);
    const site = siteAt(by);
    const strip = makeStrip(layout, [], site, 0.005);
    const drawn = [
      ...strip.ground.flatMap((g) => (g.z_m === null ? [] : [g.z_m])),
      ...strip.joints.map((j) => j.deck_m),
      ...strip.levels.map((l) => l.z_m),
    ];
    expect(strip.z_min_m).toBe(Math.min(...drawn));
    expect(strip.z_max_m).toBe(Math.max(...drawn));
  },
);
