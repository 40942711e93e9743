import type { Job } from "../../formula/index.ts";
import { finishLayout } from "../finish.ts";
import type { SearchInput } from "../search-input.ts";
import { groundWindow } from "../standing.ts";
import type { LaidParts, Layout } from "../types.ts";
import { branchGuides } from "./branch-guides.ts";
import { branchSpec } from "./branch-spec.ts";
import { fitNetwork, marginOf, type FitTerms, type FittedNetwork } from "./fit-network.ts";
import { makeFrame } from "./frame.ts";
import { latticeAround } from "./lattice-around.ts";
import { networkOf } from "./lay-network.ts";
import { passingGaps, type PassingGap } from "./passing-gaps.ts";

/** Places given up before a network is left without some places to pass. */
const MOST_RETRIES = 12;
const ALL_DIRECTIONS = [0, 1, 2, 3] as const;

/**
 * Puts platforms for passing into a layout, so that no two places to pass or turn lie farther apart along the walkway
 * than the plan's interval: every branch is fitted anew with itself as the guide, on the same lattice. All hard rules
 * and every plot stay kept. Where no platform finds room, the layout is as good as it can be and a note says where.
 */
export function* keepPassing(layout: Layout, input: SearchInput): Job<Layout> {
  const { choice } = input;
  const before = passingGaps(layout, input);
  if (before.length === 0) return layout;
  const fitted = yield* refit(layout, input);
  const isBetter =
    fitted !== null &&
    fitted.laid.reached.length === layout.reached.length &&
    passingGaps(fitted.laid, input).length < before.length;
  const laid: LaidParts = isBetter ? fitted.laid : layout;
  const every = `${choice.passing_every_m!.toFixed(1)} m`;
  const added = isBetter
    ? [
        `Every branch was fitted along itself again, with a place to pass at least every ${every}; its cost was not searched anew.`,
      ]
    : [];
  const left = passingGaps(laid, input).map((gap) => noteOf(gap, every));
  return {
    ...layout,
    ...laid,
    notes: [...layout.notes, ...added, ...left],
    search: { ...layout.search, estimate: isBetter ? fitted.estimate : layout.search.estimate },
  };
}

const noteOf = (gap: PassingGap, every: string): string =>
  `No place to pass at least every ${every}: from ${gap.from} to ${gap.to} on branch ${gap.branch} it is ${gap.length_m.toFixed(1)} m, and no platform finds room around ${gap.place.map((v) => v.toFixed(1)).join(", ")}.`;

function* refit(layout: Layout, input: SearchInput): Job<{ laid: LaidParts; estimate: number } | null> {
  const { site, facts, costs, choice } = input;
  const guides = branchGuides(layout);
  const start = site.starts.find((s) => s.id === layout.branches[0]?.from);
  if (!start || guides.length === 0) return null;
  const points = guides.flatMap((g) => g.stops.map((s) => s.at));
  const corridor = Math.max(...facts.lengths_m) + facts.gap_m;
  const l = latticeAround(
    facts.lattice_m,
    layout.heading_deg,
    [start.x, start.y],
    points,
    marginOf(input, corridor),
  );
  const frame = makeFrame(input, l, groundWindow(site.terrain, facts.supports));
  const specs = guides.map((g) => branchSpec(input, frame, g, corridor));
  const terms: FitTerms = {
    strict: true,
    beyond: true,
    passing_m: choice.passing_every_m,
    directions: ALL_DIRECTIONS,
    since_m: 0,
    isLaid: false,
    taken: [],
  };
  for (let attempt = 0; attempt < MOST_RETRIES; attempt++) {
    const fitted: FittedNetwork | null = yield* fitNetwork(
      input,
      frame,
      specs,
      terms,
      Infinity,
      "Places to pass",
    );
    if (fitted === null) return null;
    const finished = finishLayout({
      network: networkOf(input, frame, fitted),
      space: frame.space,
      site,
      facts,
      costs,
      rules: { max_grade: choice.max_grade, min_clear_m: choice.min_clear_mm / 1000 },
      startId: start.id,
    });
    if (finished.ok)
      return {
        laid: finished.layout,
        estimate: fitted.lines.reduce((sum, line) => sum + (line?.path.price ?? 0), 0),
      };
    frame.table.ban(finished.point);
    frame.rules.forget();
  }
  return null;
}
