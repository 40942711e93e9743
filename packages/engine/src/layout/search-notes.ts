import type { Plot } from "../site/index.ts";
import { footReach } from "./facts.ts";
import { widestNeededGap } from "./gap.ts";
import { MOST_JOINED_EXACTLY, MOST_JOINING_BYTES, joiningBytes } from "./join-size.ts";
import type { SearchInput } from "./search-input.ts";
import { shutOnWay, shutWords } from "./shut-way.ts";
import type { UnreachedPlot } from "./types.ts";

/** Why a plot is not reached, in words a steward can act on. */
export function explainUnreached(input: SearchInput, plot: Plot): UnreachedPlot {
  const { site, facts } = input;
  const longest = Math.max(...facts.lengths_m) + facts.gap_m;
  const foot = Math.min(...facts.supports.map((k) => Math.max(...k.feet.map((f) => f.along_mm)))) / 1000;
  const start = site.starts[0];
  const gap = start ? widestNeededGap(site, facts.supports, input.laying, start, plot, longest - foot) : null;
  const shut = start && gap === null ? shutOnWay(site, input.laying, start, plot) : [];
  const because =
    shut.length > 0
      ? shutWords(shut, input.laying)
      : gap === null
        ? "No line of the kit's parts was found on any searched heading: look at closed areas, room to turn, grade, and where supports may stand within reach of the plot."
        : `The way is cut by ${gap.over}: at its narrowest it leaves ${gap.width_m.toFixed(2)} m clear, and the longest module bridges ${(longest - foot).toFixed(2)} m between supports.`;
  return { plot: plot.id, because, gap };
}

/**
 * What in the layout is exact and what is not.
 *
 * exactly   so many plots are joined exactly
 * joints    of the largest lattice
 * refusals  why networks were given up on the lattice of the layout
 */
export function notesOf(
  input: SearchInput,
  headings: number,
  exactly: number,
  joints: number,
  refusals: readonly string[],
): string[] {
  const { site, costs, facts } = input;
  const notes = [
    site.plots.length <= exactly
      ? `Exact on each searched lattice: the ${site.plots.length === 1 ? "line to the plot" : "joining of the plots"}, for the costs the search reckons with (${headings === 1 ? "one heading" : `${headings} headings`} of the kit's lattice through the start).`
      : `The ${exactly} plots with the cheapest way of their own are joined exactly on each searched lattice; the others are joined one after another to free exits of platforms, which is heuristic.`,
    "Heuristic: headings and positions between the searched ones; the price of supports before the deck's heights are known; labour and purchase by the whole stick, which the order list settles afterwards.",
  ];
  if (exactly < MOST_JOINED_EXACTLY && site.plots.length > exactly)
    notes.push(
      `The site is too large to join ${MOST_JOINED_EXACTLY} plots exactly: their tables would take ${gigabytes(joiningBytes(joints, MOST_JOINED_EXACTLY))} of memory, and ${gigabytes(MOST_JOINING_BYTES)} are set aside. A smaller site file, cut to where the walkway can go, is searched further.`,
    );
  if (refusals.length > 0)
    notes.push(
      `On the way ${refusals.length} found networks were given up (${[...new Set(refusals)].join("; ")}) and the search did without one place each time: the least network without these places is exact, not the least of all.`,
    );
  if (costs.module.some((c) => c === null) || costs.platform === null)
    notes.push("Some prices are missing: the line goes by length and harm, not by money.");
  if (footReach(facts.supports[0]!.feet) > facts.lattice_m * 6)
    notes.push("Supports are wide beside the lattice: places near closed areas are judged foot by foot.");
  return notes;
}

const gigabytes = (bytes: number): string => `${(bytes / 1e9).toFixed(1)} GB`;
