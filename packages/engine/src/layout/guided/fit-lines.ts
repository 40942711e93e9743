import type { Job } from "../../formula/index.ts";
import type { Plot } from "../../site/index.ts";
import { arrivalPoints } from "../arrival.ts";
import type { Lattice } from "../lattice.ts";
import { placeOf } from "../lattice.ts";
import type { SearchInput } from "../search-input.ts";
import { groundWindow } from "../standing.ts";
import type { BrokenRule, LaidParts, Layout, LineFit, UnreachedPlot } from "../types.ts";
import { brokenRules } from "./broken-rules.ts";
import { impossibleCorners } from "./corners.ts";
import { fitNetwork, marginOf, type FittedNetwork, type LineSpec } from "./fit-network.ts";
import type { FoundLine } from "./found-line.ts";
import { makeFrame, type Frame } from "./frame.ts";
import type { Spot } from "./guide.ts";
import { fitHeadings } from "./headings.ts";
import { latticeAround } from "./lattice-around.ts";
import { layAnyway, networkOf } from "./lay-network.ts";
import { lineFigures } from "./line-figures.ts";
import { passingGaps } from "./passing-gaps.ts";
import { planLines, reachOf, type LinePlan } from "./plan-lines.ts";

interface Best {
  readonly frame: Frame;
  readonly fitted: FittedNetwork;
}

const ALL_DIRECTIONS = [0, 1, 2, 3] as const;

/**
 * The kit's parts fitted along drawn lines: on each lattice tried, the parts whose middle lines deviate least, by
 * squared distance both ways, with every broken hard rule at a high price and marked in `line`. Yields progress; the
 * same input gives the same layout. Without a start, or a line with points, there is nothing but the reasons.
 */
export function* fitDrawnLines(input: SearchInput): Job<Layout> {
  const { site, choice, facts } = input;
  const planned = planLines(site, choice.lines);
  if (planned === null) return nothing(input);
  const { start, plans } = planned;
  const window = groundWindow(site.terrain, facts.supports);
  const guides = plans.map((p) => p.points);
  const headings = fitHeadings(guides, choice, 2 * (Math.max(...facts.lengths_m) + facts.gap_m));
  const margin = marginOf(input, Math.max(...plans.map((p) => p.line.corridor_m)));
  const frames = headings.map((heading) =>
    makeFrame(
      input,
      latticeAround(facts.lattice_m, heading, [start.x, start.y], reachOf(plans), margin),
      window,
    ),
  );
  const best = (yield* bestFit(input, plans, frames, false)) ?? (yield* bestFit(input, plans, frames, true));
  if (best === null) return nothing(input, plans);
  const network = networkOf(input, best.frame, best.fitted);
  const laid = layAnyway(input, best.frame, network, start.id);
  const estimate = best.fitted.lines.reduce((sum, line) => sum + (line?.path.price ?? 0), 0);
  return {
    ...laid,
    unreached: unreached(input, laid, plans, best.fitted),
    notes: notesOf(headings.length),
    search: { headings: headings.length, estimate },
    line: lineFit(input, laid, plans, best),
    as_laid: null,
  };
}

/** The least of the fits on some lattices: inside the corridors, or `beyond` them. */
function* bestFit(
  input: SearchInput,
  plans: readonly LinePlan[],
  frames: readonly Frame[],
  beyond: boolean,
): Job<Best | null> {
  const passing_m = input.choice.passing_every_m;
  const terms = {
    strict: false,
    beyond,
    passing_m,
    directions: ALL_DIRECTIONS,
    since_m: 0,
    isLaid: false,
    taken: [],
  };
  let best: Best | null = null;
  for (const [n, frame] of frames.entries()) {
    const note = `Heading ${n + 1} of ${frames.length}${beyond ? ", beyond the corridor" : ""}`;
    yield { done: n, total: frames.length, note };
    const most: number = best?.fitted.cost ?? Infinity;
    const fitted = yield* fitNetwork(input, frame, specsOf(input, frame.l, plans), terms, most, note);
    if (fitted !== null) best = { frame, fitted };
  }
  return best;
}

const specsOf = (input: SearchInput, l: Lattice, plans: readonly LinePlan[]): LineSpec[] =>
  plans.map(({ line, points, parent }) => {
    const plot = plotOf(input, line.plot);
    return {
      points,
      corridor_m: line.corridor_m,
      parent,
      ends: plot === undefined ? null : arrivalPoints(l, plot),
      touches: [],
    };
  });

const plotOf = (input: SearchInput, id: string | null): Plot | undefined =>
  input.site.plots.find((p) => p.id === id);

function lineFit(input: SearchInput, laid: LaidParts, plans: readonly LinePlan[], best: Best): LineFit {
  const { l } = best.frame;
  const broken: BrokenRule[] = brokenRules(laid, input);
  const lines = plans.map(({ line, points, parent }, n) => {
    const found = best.fitted.lines[n]!;
    const figures = lineFigures(line.id, points, found ? [found.middle] : [], line.corridor_m);
    const near = line.corridor_m + Math.max(...input.facts.lengths_m) + input.facts.platform_side_m;
    if (found === null) broken.push(noLine(line.id, points[0]!, parent === null));
    else
      broken.push(
        ...impossibleCorners(line.id, points, found.middle, turnsOf(found, l), near, l.heading_deg),
      );
    if (found !== null && !figures.within_corridor)
      broken.push(outOfCorridor(line.id, figures.at, figures.max_deviation_m!, line.corridor_m));
    const plot = plotOf(input, line.plot);
    if (plot && !laid.reached.some((r) => r.plot === plot.id)) broken.push(notReached(line.id, points, plot));
    return figures;
  });
  broken.push(...passingBroken(input, laid));
  return { lines, broken };
}

const turnsOf = (found: FoundLine, l: Lattice): Spot[] =>
  found.platforms
    .filter((p) => found.visits.some((v) => v === p.left || v === p.right))
    .map((p) => placeOf(l, p.ci, p.cj));

const noLine = (line: string, place: Spot, isFirst: boolean): BrokenRule => ({
  rule: "no-parts",
  part_or_joint: line,
  place,
  message: isFirst
    ? `No part of the kit could be laid along line "${line}".`
    : `No part of the kit could be laid along line "${line}": no platform with a free side lies where it branches off.`,
  mend: "Draw the line over known ground, beginning where a platform has room.",
});

const outOfCorridor = (line: string, place: Spot, off: number, corridor_m: number): BrokenRule => ({
  rule: "corridor",
  part_or_joint: line,
  place,
  message: `The parts lie up to ${off.toFixed(2)} m off line "${line}"; its corridor allows ${corridor_m.toFixed(2)} m.`,
  mend: "Draw the line along headings that the parts can take, or agree on a wider corridor.",
});

const notReached = (line: string, points: readonly Spot[], plot: Plot): BrokenRule => ({
  rule: "reached",
  part_or_joint: line,
  place: points.at(-1)!,
  message: `Line "${line}" does not bring a joint within ${plot.reach_m.toFixed(2)} m of the keep-off line of plot "${plot.name}"${plot.arrive_from ? ` on its ${plot.arrive_from} side` : ""}.`,
  mend: "Draw the line on to the plot, or give the plot a longer reach.",
});

const passingBroken = (input: SearchInput, laid: LaidParts): BrokenRule[] =>
  passingGaps(laid, input).map((gap) => ({
    rule: "passing",
    part_or_joint: gap.part,
    place: gap.place,
    message: `From ${gap.from} to ${gap.to} it is ${gap.length_m.toFixed(1)} m without a place to pass; at most ${input.choice.passing_every_m!.toFixed(1)} m are asked for.`,
    mend: "Make room for a platform beside the line, or allow a longer way between places to pass.",
  }));

function unreached(
  input: SearchInput,
  laid: LaidParts,
  plans: readonly LinePlan[],
  fitted: FittedNetwork,
): UnreachedPlot[] {
  return input.site.plots
    .filter((p) => !laid.reached.some((r) => r.plot === p.id))
    .map((p) => {
      const n = plans.findIndex(({ line }) => line.plot === p.id);
      const because =
        n < 0
          ? "No drawn line leads to it."
          : fitted.lines[n] === null
            ? `No part of the kit could be laid along line "${plans[n]!.line.id}".`
            : `Line "${plans[n]!.line.id}" was followed, but no joint on it lies within reach of the plot.`;
      return { plot: p.id, because, gap: null };
    });
}

const notesOf = (headings: number): string[] => [
  `The line was drawn, not searched. Exact on each of ${headings} lattices tried: the parts that follow each line with the least squared deviation, for the prices of turns and broken rules.`,
  "Heuristic: headings and positions between those tried; lines after the first are fitted to what the earlier ones left free; deck heights are found after the parts.",
];

/** Nothing could be fitted at all: the reasons, line by line. */
function nothing(input: SearchInput, plans: readonly LinePlan[] = []): Layout {
  const lines = plans.map(({ line, points }) => lineFigures(line.id, points, [], line.corridor_m));
  return {
    heading_deg: input.choice.first_heading_deg,
    lattice_m: input.facts.lattice_m,
    joints: [],
    parts: [],
    branches: [],
    reached: [],
    unreached: input.site.plots.map((p) => ({
      plot: p.id,
      because:
        plans.length === 0
          ? "The plan has no start, or its lines have no points."
          : "No part of the kit could be laid along the drawn lines.",
      gap: null,
    })),
    notes: [],
    search: { headings: 0, estimate: 0 },
    line: {
      lines,
      broken: plans.map(({ line, points, parent }) => noLine(line.id, points[0]!, parent === null)),
    },
    as_laid: null,
  };
}
