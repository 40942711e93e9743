import { arrivalPoints } from "../arrival.ts";
import type { SearchInput } from "../search-input.ts";
import type { BranchGuide } from "./branch-guides.ts";
import type { LineSpec } from "./fit-network.ts";
import type { Frame } from "./frame.ts";

/** A branch to be fitted along itself: it ends where its last plot counts as reached, and has a joint where each other one does. */
export function branchSpec(
  input: SearchInput,
  frame: Frame,
  guide: BranchGuide,
  corridor_m: number,
): LineSpec {
  const goals = guide.arrivals.map((a) => ({
    at: a.at,
    points: arrivalPoints(
      frame.l,
      input.site.plots.find((p) => p.id === a.plot)!,
    ),
  }));
  return {
    points: guide.stops.map((s) => s.at),
    corridor_m,
    parent: guide.parent,
    ends: goals.at(-1)?.points ?? null,
    touches: goals.slice(0, -1),
  };
}
