import type { Network } from "../network.ts";
import { placeNetwork, type PlacedNetwork } from "../assemble.ts";
import { arrivalPoints } from "../arrival.ts";
import { standing, toLayout } from "../finish.ts";
import { deckProfile } from "../profile.ts";
import type { SearchInput } from "../search-input.ts";
import type { LaidParts } from "../types.ts";
import type { FoundLine, MutableVisit } from "./found-line.ts";
import type { FittedNetwork } from "./fit-network.ts";
import type { Frame } from "./frame.ts";
import { softProfile } from "./soft-profile.ts";
import { spotOf } from "./found-line.ts";

/** Root of fitted lines, with every plot arrived at that the usual rule lets count as reached. */
export function networkOf(input: SearchInput, frame: Frame, fitted: FittedNetwork): Network {
  const lines = fitted.lines.filter((line): line is FoundLine => line !== null);
  const joined = input.site.plots.flatMap((plot, k) => {
    const points = arrivalPoints(frame.l, plot);
    const off = (visit: MutableVisit): number => {
      const [x, y] = spotOf(frame.l, visit.node >> 2);
      return Math.hypot(x - plot.x, y - plot.y);
    };
    const nearest = lines
      .flatMap((line) => line.visits)
      .filter((visit) => points.has(visit.node >> 2))
      .sort((a, b) => off(a) - off(b))[0];
    nearest?.arrives.push(k);
    return nearest ? [k] : [];
  });
  return { cost: fitted.cost, root: lines[0]!.visits[0]!, joined };
}

/** Lays fitted lines out at real heights, rules or no rules: what is broken is marked afterwards. */
export function layAnyway(input: SearchInput, frame: Frame, network: Network, startId: string): LaidParts {
  const { site, facts, costs, choice } = input;
  const placed = onAnySupport(placeNetwork(network, frame.space, facts, startId), facts.supports.length);
  const rules = { max_grade: choice.max_grade, min_clear_m: choice.min_clear_mm / 1000 };
  const profile = deckProfile(placed, site.terrain, facts, costs, rules);
  const heights = profile.ok ? profile.heights : softProfile(placed, site.terrain, facts, costs, rules);
  const joints = placed.joints.map((j) => standing(j, heights.get(j.id)!, facts));
  return toLayout(placed, joints, { space: frame.space, site, facts });
}

/** Where no support may stand, each kind is thought to: there is one on the drawing, and the mark says it may not be there. */
export const onAnySupport = (placed: PlacedNetwork, kinds: number): PlacedNetwork => ({
  ...placed,
  joints: placed.joints.map((j) => (j.kinds === 0 ? { ...j, kinds: (1 << kinds) - 1 } : j)),
});
