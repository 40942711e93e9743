import type { Job } from "../formula/index.ts";
import type { Plot, Start } from "../site/index.ts";
import { footReach } from "./facts.ts";
import { makeFields } from "./fields.ts";
import { extendNetwork } from "./extend.ts";
import { finishLayout, type Finished } from "./finish.ts";
import { widestNeededGap } from "./gap.ts";
import { JointSpace } from "./joint-space.ts";
import { JointTable } from "./joint-table.ts";
import { latticeOf, layLattice, placeOf, type Lattice } from "./lattice.ts";
import { NetworkSearch, type Goal, type Network } from "./network.ts";
import type { SearchInput } from "./search-input.ts";
import { groundWindow, type GroundWindow } from "./standing.ts";
import type { Layout, LayoutChoice, UnreachedPlot } from "./types.ts";

/** Up to this many plots are joined exactly; each further one is joined to what then stands. */
export const MOST_JOINED_EXACTLY = 3;
/** Places given up on one lattice before the search turns to the next. */
const MOST_RETRIES = 12;
const NO_LIMIT = 0x7ffffff0;

interface Found {
  readonly layout: Omit<Layout, "unreached" | "notes" | "search">;
  readonly estimate: number;
  readonly whole: number;
}

/**
 * The least-cost walkway of the kit's real parts from the start to the plots, over the swept headings of the lattice.
 *
 * Up to three plots are joined exactly on each lattice (for the costs the search reckons with); further plots are
 * joined one after another to free platform exits. Overlaps and the deck's profile are held against the found
 * network; where one fails, the place is given up and the lattice searched again. Unreached plots say why.
 * Yields progress; the same input gives the same layout.
 */
export function* searchLayout(input: SearchInput): Job<Layout> {
  const { site, choice } = input;
  const window = groundWindow(site.terrain, input.facts.supports);
  const headings = headingsOf(choice);
  let best: Found | null = null;
  let settled = 0;
  let refusals: string[] = [];
  for (const start of site.starts)
    for (const [n, heading] of headings.entries()) {
      const note = `Heading ${n + 1} of ${headings.length}${site.starts.length > 1 ? ` from ${start.name}` : ""}`;
      const one = new HeadingSearch(input, window, start, heading, note);
      const found: Found | null = yield* one.run(best);
      settled += one.settled;
      refusals = refusals.concat(one.refusals);
      if (found !== null && isBetter(found, best)) best = found;
      yield { done: n + 1, total: headings.length, note };
    }
  const layout: Found["layout"] = best?.layout ?? nothing(input, headings[0]!);
  return {
    ...layout,
    unreached: site.plots
      .filter((p) => !layout.reached.some((r) => r.plot === p.id))
      .map((p) => explain(input, p)),
    notes: notesOf(input, headings.length, refusals),
    search: { headings: headings.length * site.starts.length, settled, estimate: best?.estimate ?? 0 },
  };
}

const isBetter = (a: Found, b: Found | null): boolean =>
  b === null ||
  a.layout.reached.length > b.layout.reached.length ||
  (a.layout.reached.length === b.layout.reached.length && a.whole < b.whole);

/** Headings from the first on, below a quarter turn: the lattice looks the same after 90 degrees. */
function headingsOf(choice: LayoutChoice): number[] {
  const step = choice.heading_step_deg > 0 ? choice.heading_step_deg : 90;
  return Array.from(
    { length: Math.max(1, Math.ceil(90 / step - 1e-9)) },
    (_, k) => choice.first_heading_deg + k * step,
  );
}

/** The search on one lattice. */
class HeadingSearch {
  settled = 0;
  readonly refusals: string[] = [];
  private readonly input: SearchInput;
  private readonly window: GroundWindow;
  private readonly start: Start;
  private readonly heading: number;
  private readonly note: string;

  constructor(input: SearchInput, window: GroundWindow, start: Start, heading: number, note: string) {
    this.input = input;
    this.window = window;
    this.start = start;
    this.heading = heading;
    this.note = note;
  }

  *run(best: Found | null): Job<Found | null> {
    const { site, choice, facts, costs, laying } = this.input;
    const l = layLattice(site.terrain, facts.lattice_m, this.heading, this.start.x, this.start.y);
    const fields = makeFields(l, site, laying.from, laying.to);
    const table = new JointTable(l, fields, site, this.window, facts, costs, {
      ...laying,
      min_clear_m: choice.min_clear_mm / 1000,
      contact_per_m2: choice.weights.contact_per_m2,
      money: choice.weights.money,
    });
    const space = new JointSpace(l, fields, table, facts, costs, {
      ...choice.weights,
      max_grade: choice.max_grade,
    });
    const goals = site.plots.map((p, n) => ({ plot: n, points: arrivalPoints(l, p) }));
    const most = best !== null && best.layout.reached.length === site.plots.length ? best.whole : NO_LIMIT;
    for (let attempt = 0; attempt < MOST_RETRIES; attempt++) {
      const network = yield* this.network(space, goals, most);
      if (network === null) return null;
      const finished: Finished = finishLayout({
        network,
        space,
        site,
        facts,
        costs,
        rules: { max_grade: choice.max_grade, min_clear_m: choice.min_clear_mm / 1000 },
        startId: this.start.id,
      });
      if (finished.ok)
        return { layout: finished.layout, whole: network.cost, estimate: network.cost * space.unit };
      this.refusals.push(finished.because);
      table.ban(finished.point);
      space.forget();
    }
    return null;
  }

  /** Exact network over the first plots, then each further plot joined to it. */
  private *network(space: JointSpace, goals: readonly Goal[], most: number): Job<Network | null> {
    const alone = new NetworkSearch(space, goals, this.note);
    const costs = yield* alone.reach(most);
    this.settled += alone.settled;
    const reachable = goals.map((_, k) => k).filter((k) => costs[k] !== null);
    if (reachable.length === 0 || (most < NO_LIMIT && reachable.length < goals.length)) return null;
    const near = [...reachable].sort((a, b) => costs[a]! - costs[b]! || a - b);
    const first = near.slice(0, MOST_JOINED_EXACTLY);
    let network: Network | null = null;
    const least = most < NO_LIMIT ? first.length : 1;
    for (let size = first.length; size >= least && network === null; size--)
      network = yield* this.joinWithin(alone, first.slice(0, size), costs, space, most);
    this.settled += alone.settled;
    if (network === null) return null;
    const rest = near.filter((k) => !network!.joined.includes(k));
    return yield* extendNetwork(
      this.input,
      space,
      network,
      rest.map((k) => goals[k]!),
      this.note,
    );
  }

  /** Raises the cost limit until a network fits under it: whatever is cut off costs more than the limit. */
  private *joinWithin(
    search: NetworkSearch,
    plots: readonly number[],
    costs: readonly (number | null)[],
    space: JointSpace,
    most: number,
  ): Job<Network | null> {
    const mask = plots.reduce((m, k) => m | (1 << k), 0);
    const alone = plots.map((k) => costs[k]!);
    const platforms = space.whole(space.platformMoney) * plots.length;
    const ceiling = Math.min(most, 3 * (alone.reduce((a, b) => a + b, 0) + platforms));
    const least = Math.max(search.leastNetwork(plots), ...alone);
    for (let limit = Math.round(1.04 * least); ; limit = Math.round(1.06 * limit)) {
      const network = yield* search.join(mask, Math.min(limit, ceiling));
      if (network !== null || limit >= ceiling) return network;
    }
  }
}

/** Lattice points outside the keep-off line and within reach beyond it. */
function arrivalPoints(l: Lattice, plot: Plot): Set<number> {
  const [pi, pj] = latticeOf(l, plot.x, plot.y);
  const outer = (plot.keep_off_m + plot.reach_m) / l.step;
  const points = new Set<number>();
  for (let j = Math.max(0, Math.ceil(pj - outer)); j <= Math.min(l.ny - 1, Math.floor(pj + outer)); j++)
    for (let i = Math.max(0, Math.ceil(pi - outer)); i <= Math.min(l.nx - 1, Math.floor(pi + outer)); i++) {
      const [x, y] = placeOf(l, i, j);
      const d = Math.hypot(x - plot.x, y - plot.y);
      if (d >= plot.keep_off_m && d <= plot.keep_off_m + plot.reach_m) points.add(j * l.nx + i);
    }
  return points;
}

function nothing(input: SearchInput, heading: number): Found["layout"] {
  return {
    heading_deg: heading,
    lattice_m: input.facts.lattice_m,
    joints: [],
    parts: [],
    branches: [],
    reached: [],
  };
}

/** Why a plot is not reached, in words a steward can act on. */
function explain(input: SearchInput, plot: Plot): UnreachedPlot {
  const { site, facts } = input;
  const longest = Math.max(...facts.lengths_m) + facts.gap_m;
  const foot = Math.min(...facts.supports.map((k) => Math.max(...k.feet.map((f) => f.along_mm)))) / 1000;
  const start = site.starts[0];
  const gap = start ? widestNeededGap(site, facts.supports, input.laying, start, plot, longest - foot) : null;
  const because =
    gap === null
      ? "No line of the kit's parts was found on any searched heading: look at closed areas, room to turn, grade, and where supports may stand within reach of the plot."
      : `The way is cut by ${gap.over}: at its narrowest it leaves ${gap.width_m.toFixed(2)} m clear, and the longest module bridges ${(longest - foot).toFixed(2)} m between supports.`;
  return { plot: plot.id, because, gap };
}

function notesOf(input: SearchInput, headings: number, refusals: readonly string[]): string[] {
  const { site, costs, facts } = input;
  const notes = [
    site.plots.length <= MOST_JOINED_EXACTLY
      ? `Exact on each searched lattice: the ${site.plots.length === 1 ? "line to the plot" : "joining of the plots"}, for the costs the search reckons with (${headings === 1 ? "one heading" : `${headings} headings`} of the kit's lattice through the start).`
      : `The ${MOST_JOINED_EXACTLY} plots with the cheapest way of their own are joined exactly on each searched lattice; the others are joined one after another to free exits of platforms, which is heuristic.`,
    "Heuristic: headings and positions between the searched ones; the price of supports before the deck's heights are known; labour and purchase by the whole stick, which the order list settles afterwards.",
  ];
  if (refusals.length > 0)
    notes.push(
      `On the way ${refusals.length} found networks were given up (${[...new Set(refusals)].join("; ")}) and the search did without one place each time.`,
    );
  if (costs.module.some((c) => c === null) || costs.platform === null)
    notes.push("Some prices are missing: the line goes by length and harm, not by money.");
  if (footReach(facts.supports[0]!.feet) > facts.lattice_m * 6)
    notes.push("Supports are wide beside the lattice: places near closed areas are judged foot by foot.");
  return notes;
}
