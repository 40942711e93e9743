import type { Plan } from "@causey/engine/plan";
import type { Extent } from "../map/view.ts";

interface At {
  readonly x: number;
  readonly y: number;
}

/** Clear ground around a new plot [m]: a decision of this project, room for a module and a platform. */
const CLEAR_M = 8;

/**
 * Where a new plot is put until it is dragged to its place: as near the middle of the terrain as starts and other plots
 * leave clear ground, so that it shuts no start in. Without a terrain the search begins at the first start.
 */
export function freshPlace(plan: Pick<Plan, "starts" | "plots">, terrain: Extent | null): At {
  const [west, south, east, north] = terrain ?? [-Infinity, -Infinity, Infinity, Infinity];
  const middle = terrain
    ? { x: (west + east) / 2, y: (south + north) / 2 }
    : (plan.starts[0] ?? { x: 0, y: 0 });
  const taken = [
    ...plan.starts.map((s) => ({ ...s, clear: CLEAR_M })),
    ...plan.plots.map((p) => ({ x: p.x, y: p.y, clear: CLEAR_M + p.keep_off_m })),
  ];
  const isClear = ({ x, y }: At): boolean =>
    taken.every((t) => Math.hypot(x - t.x, y - t.y) >= t.clear) &&
    x >= west &&
    x <= east &&
    y >= south &&
    y <= north;
  // Circles that grow by half the clear ground: each taken place can shut out only a few of them.
  for (let ring = 0; ring <= 4 * (taken.length + 1); ring++) {
    const radius = (ring * CLEAR_M) / 2;
    for (let k = 0; k < Math.max(1, ring * 6); k++) {
      const turn = (2 * Math.PI * k) / Math.max(1, ring * 6);
      const place = { x: middle.x + radius * Math.sin(turn), y: middle.y + radius * Math.cos(turn) };
      if (isClear(place)) return place;
    }
  }
  return middle;
}
