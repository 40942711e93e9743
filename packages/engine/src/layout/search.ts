import type { Job } from "../formula/index.ts";
import type { Start } from "../site/index.ts";
import { HeadingSearch, NO_LIMIT, type Found } from "./heading-search.ts";
import { plotsJoinedExactly } from "./join-size.ts";
import { layLattice } from "./lattice.ts";
import { SearchMemory } from "./search-memory.ts";
import { explainUnreached, notesOf } from "./search-notes.ts";
import type { SearchInput } from "./search-input.ts";
import type { Layout } from "./types.ts";

/** One lattice of the sweep: its number, the start it goes through, its heading. */
interface Turn {
  readonly n: number;
  readonly start: Start;
  readonly heading_deg: number;
}
interface Best extends Found {
  readonly turn: Turn;
}

/**
 * The least-cost walkway of the kit's real parts from the start to the plots, over the swept headings of the lattice.
 *
 * Up to four plots (three on a very large site) are joined exactly on each lattice, for the costs the search reckons
 * with; further plots are joined one after another to free platform exits. Overlaps and the deck's profile are held
 * against the found network; where one fails, the place is given up and the lattice searched again. Unreached plots
 * say why. Yields progress; the same input gives the same layout, whatever `memory` holds.
 *
 * memory  what earlier searches of the same ground found out: spares most of the work when only plots moved
 */
export function* searchNetwork(input: SearchInput, memory = new SearchMemory(0)): Job<Layout> {
  const { site } = input;
  const sweep = sweepOf(input);
  const joints = Math.max(0, ...sweep.map((turn) => jointsOf(input, turn)));
  const exactly = plotsJoinedExactly(joints);
  memory.open(
    input,
    sweep.map((t) => t.heading_deg),
  );
  let best: Best | null = null;
  let refusals: readonly string[] = [];
  let done = 0;
  for (const turn of beginningWith(sweep, memory.best)) {
    const most: number = best?.layout.reached.length === site.plots.length ? best.whole : NO_LIMIT;
    const note = `Heading ${++done} of ${sweep.length}${site.starts.length > 1 ? `, from ${turn.start.name}` : ""}`;
    const one = new HeadingSearch(input, turn.start, exactly, note);
    const lattice = memory.take(input, turn.start, turn.heading_deg);
    let found: Found | null = null;
    try {
      yield* memory.ready(lattice, input, note);
      found = yield* one.run(lattice, most);
    } finally {
      memory.put(lattice);
      memory.settled += one.settled;
    }
    if (found !== null && isBetter({ ...found, turn }, best)) best = { ...found, turn };
    if (found === null) refusals = [...refusals, ...one.refusals];
    yield { done, total: sweep.length, note };
  }
  if (best !== null) memory.best = { start: best.turn.start.id, heading_deg: best.turn.heading_deg };
  return toLayout(
    input,
    sweep,
    best,
    notesOf(input, sweep.length, exactly, joints, best?.refusals ?? refusals),
  );
}

function toLayout(
  input: SearchInput,
  sweep: readonly Turn[],
  best: Best | null,
  notes: readonly string[],
): Layout {
  const found: Found["layout"] = best?.layout ?? {
    heading_deg: input.choice.first_heading_deg,
    lattice_m: input.facts.lattice_m,
    joints: [],
    parts: [],
    branches: [],
    reached: [],
  };
  return {
    ...found,
    unreached: input.site.plots
      .filter((p) => !found.reached.some((r) => r.plot === p.id))
      .map((p) => explainUnreached(input, p)),
    notes,
    search: { headings: sweep.length, estimate: best?.estimate ?? 0 },
    line: null,
    as_laid: null,
  };
}

/** More plots first, then less cost, then the place in the sweep, so that the order of searching makes no difference. */
function isBetter(a: Best, b: Best | null): boolean {
  if (b === null) return true;
  const more = a.layout.reached.length - b.layout.reached.length;
  return more > 0 || (more === 0 && (a.whole < b.whole || (a.whole === b.whole && a.turn.n < b.turn.n)));
}

/** Every start with the headings from the first on, below a quarter turn: the lattice looks the same after 90 degrees. */
function sweepOf({ site, choice }: SearchInput): Turn[] {
  const step = choice.heading_step_deg > 0 ? choice.heading_step_deg : 90;
  const headings = Math.max(1, Math.ceil(90 / step - 1e-9));
  return site.starts.flatMap((start, s) =>
    Array.from({ length: headings }, (_, k) => ({
      n: s * headings + k,
      start,
      heading_deg: choice.first_heading_deg + k * step,
    })),
  );
}

/** The sweep with the lattice that gave the last layout first: its cost then limits the others. */
function beginningWith(sweep: readonly Turn[], kept: SearchMemory["best"]): readonly Turn[] {
  const isKept = (t: Turn): boolean => t.start.id === kept?.start && t.heading_deg === kept.heading_deg;
  return [...sweep].sort((a, b) => Number(isKept(b)) - Number(isKept(a)) || a.n - b.n);
}

function jointsOf({ site, facts }: SearchInput, { start, heading_deg }: Turn): number {
  const { nx, ny } = layLattice(site.terrain, facts.lattice_m, heading_deg, start.x, start.y);
  return 4 * nx * ny;
}
