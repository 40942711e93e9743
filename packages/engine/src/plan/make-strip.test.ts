import { describe, expect, test } from "vitest";
import { levelSite, straightLayout } from "../../test/support/straight-walkway.ts";
import type { CheckResult } from "../checks/index.ts";
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

describe("what a cell says of its part", () => {
  const layout = straightLayout([3, 3]);
  const [first, second] = layout.parts.map((p) => p.id) as [string, string];
  const share = (utilisation: number, parts: readonly string[]): CheckResult =>
    ({
      id: `bearing.${utilisation}`,
      kind: "bearing",
      title: `Bearing ${utilisation}`,
      parts,
      status: utilisation > 1 ? "fail" : "pass",
      utilisation,
    }) as unknown as CheckResult;
  const edge = {
    id: "edge.rail.broken",
    kind: "edge",
    title: "Edge without a rail",
    parts: [first],
    status: "fail",
  };
  const cells = (...checks: unknown[]) =>
    makeStrip(layout, checks as CheckResult[], levelSite(), 0.005).cells.map((c) => [
      c.part,
      c.state,
      c.governs,
    ]);

  test("a part that breaks a rule is marked, though all that carries is within its limits", () => {
    expect(cells(share(0.5, [first, second]), edge)).toEqual([
      [first, "broken", "Edge without a rail"],
      [second, "within", "Bearing 0.5"],
    ]);
  });

  test("what is overloaded is said first; a rule that is met marks nothing", () => {
    expect(
      cells(share(1.2, [first]), share(0.9, [second]), edge, { ...edge, parts: [second], status: "pass" }),
    ).toEqual([
      [first, "over", "Bearing 1.2"],
      [second, "near", "Bearing 0.9"],
    ]);
  });
});
