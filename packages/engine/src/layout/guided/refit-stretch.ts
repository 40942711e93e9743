import type { Job } from "../../formula/index.ts";
import type { Polygons } from "../../site/index.ts";
import { placeNetwork } from "../assemble.ts";
import { standing, toLayout } from "../finish.ts";
import type { SearchInput } from "../search-input.ts";
import { groundWindow } from "../standing.ts";
import type { Joint, LaidParts } from "../types.ts";
import type { BranchGuide } from "./branch-guides.ts";
import { branchSpec } from "./branch-spec.ts";
import { fitNetwork, marginOf, type FitTerms } from "./fit-network.ts";
import { makeFrame } from "./frame.ts";
import { latticeAround } from "./lattice-around.ts";
import { networkOf, onAnySupport } from "./lay-network.ts";
import type { Spot } from "./guide.ts";
import { softProfile } from "./soft-profile.ts";

/** What leads on from a joint that lies in the field: the rest of its branch, and the branches that leave it. */
export interface Stretch {
  /** The joint as it lies, heading the way it goes on. */
  readonly from: Joint;
  readonly since_m: number;
  readonly guides: readonly BranchGuide[];
}

/**
 * Fits what is still to be laid on a lattice through the last laid joint, in its heading. Hard rules are kept if they
 * can be, else broken ones are to be marked. Ids are the stretch's own; null when nothing can be laid on.
 *
 * taken  where other parts lie
 */
export function* refitStretch(
  input: SearchInput,
  stretch: Stretch,
  taken: readonly Polygons[],
): Job<LaidParts | null> {
  const { site, facts, costs, choice } = input;
  const { from, guides } = stretch;
  const corridor = Math.max(...facts.lengths_m) + facts.gap_m;
  const points: Spot[] = [[from.x, from.y], ...guides.flatMap((g) => g.stops.map((s) => s.at))];
  const margin = marginOf(input, corridor);
  const l = latticeAround(facts.lattice_m, from.heading_deg, [from.x, from.y], points, margin);
  const frame = makeFrame(input, l, groundWindow(site.terrain, facts.supports));
  const specs = guides.map((g) => branchSpec(input, frame, g, corridor));
  const terms: FitTerms = {
    strict: true,
    beyond: true,
    passing_m: choice.passing_every_m,
    directions: [0],
    since_m: stretch.since_m,
    isLaid: true,
    taken,
  };
  const fitted =
    (yield* fitNetwork(input, frame, specs, terms, Infinity, "Fitting to what lies")) ??
    (yield* fitNetwork(input, frame, specs, { ...terms, strict: false }, Infinity, "Fitting to what lies"));
  if (fitted === null) return null;
  const network = networkOf(input, frame, fitted);
  const placed = onAnySupport(placeNetwork(network, frame.space, facts, ""), facts.supports.length);
  const rules = { max_grade: choice.max_grade, min_clear_m: choice.min_clear_mm / 1000 };
  const fixed = new Map([[placed.joints[0]!.id, from.deck_m]]);
  const heights = softProfile(placed, site.terrain, facts, costs, rules, fixed);
  const joints = placed.joints.map((j) => standing(j, heights.get(j.id)!, facts));
  return toLayout(placed, joints, { space: frame.space, site, facts });
}
