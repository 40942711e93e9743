import type { Job } from "../../formula/index.ts";
import type { Polygons } from "../../site/index.ts";
import { isArrival } from "../arrival.ts";
import type { SearchInput } from "../search-input.ts";
import type { Joint, LaidJoint, LaidParts, Layout, LineFit, Part, ReachedPlot } from "../types.ts";
import { branchGuides, type BranchGuide } from "./branch-guides.ts";
import { brokenRules } from "./broken-rules.ts";
import { drawnIn } from "./found-line.ts";
import type { Spot } from "./guide.ts";
import { deviationOf, endsOf, laidState, leadingTo, type LaidState } from "./laid-joints.ts";
import { putInPlace, type InPlace } from "./laid-parts.ts";
import { lineFigures } from "./line-figures.ts";
import { mergeStretch } from "./merge-stretch.ts";
import { planLines } from "./plan-lines.ts";
import { nearestOn } from "./polyline.ts";
import { refitStretch, type Stretch } from "./refit-stretch.ts";

/**
 * A layout with what already lies in the field: laid parts stay where they were read, and what leads on from a joint
 * that is off by more than the slop is fitted anew, on a lattice through that joint and in its heading, along the line
 * that was planned. What leads on from joints within the slop stays as planned: the crew takes the difference up there.
 * Every deviation is in `as_laid`; every rule broken by what lies or was fitted is marked in `line`.
 */
export function* refitFrom(layout: Layout, laid: readonly LaidJoint[], input: SearchInput): Job<Layout> {
  const state = laidState(layout, laid, input.choice.slop_mm / 1000);
  const place = putInPlace(layout, state, input);
  const stretches = offStretches(layout, state, place, input);
  const dropped = new Set(stretches.flatMap((s) => [...s.dropped]));
  let now: LaidParts = retained(layout, place, dropped);
  for (const { part, stretch } of stretches) {
    const fitted = yield* refitStretch(input, stretch, outlinesOf(now.parts, input));
    if (fitted !== null)
      now = mergeStretch(now, layout, part, stretch.from, walkTo(now, stretch.from.id, input), fitted);
  }
  const reached = stillReached(now, input);
  return {
    ...layout,
    ...now,
    reached,
    unreached: input.site.plots
      .filter((p) => !reached.some((r) => r.plot === p.id))
      .map(
        (p) =>
          layout.unreached.find((u) => u.plot === p.id) ?? {
            plot: p.id,
            because: "From where the joints lie, no line of parts was found to it.",
            gap: null,
          },
      ),
    notes: [...layout.notes, ...notesOf(state)],
    line: lineFit(layout, now, input),
    as_laid: {
      joints: state.deviations,
      kept: layout.parts.map((p) => p.id).filter((id) => state.kept.has(id)),
      refitted: layout.parts.map((p) => p.id).filter((id) => dropped.has(id)),
      unknown: state.unknown,
    },
  };
}

interface OffStretch {
  /** The planned part that led on from the joint. */
  readonly part: Part;
  readonly stretch: Stretch;
  readonly dropped: ReadonlySet<string>;
}

/** What leads on from the last laid joints that are off by more than the slop. */
function offStretches(layout: Layout, state: LaidState, place: InPlace, input: SearchInput): OffStretch[] {
  const lead = leadingTo(layout);
  const guides = branchGuides(layout);
  return layout.parts.flatMap((part): OffStretch[] => {
    if (state.kept.has(part.id) || !isOff(part.from, layout, state, lead, input)) return [];
    const from = place.joints.get(part.from)!;
    const dropped = beyond(part, layout);
    const since_m = sincePassing(part.from, lead, input);
    return [
      { part, dropped, stretch: { from, since_m, guides: guidesFrom(part, from, layout, guides, dropped) } },
    ];
  });
}

/** Whether a joint lies in the field, or at a platform that does, and its place is off by more than the slop. */
function isOff(
  id: string,
  layout: Layout,
  state: LaidState,
  lead: ReadonlyMap<string, Part>,
  input: SearchInput,
): boolean {
  const before = lead.get(id);
  const near = before && state.kept.has(before.id) ? [before.from, ...endsOf(before)] : [id];
  return layout.joints
    .filter((j) => near.includes(j.id) && state.shifts.has(j.id))
    .some((j) => !deviationOf(j, state.shifts.get(j.id)!, input.choice.slop_mm / 1000).within_slop);
}

/** A part and every part that leads on from it. */
function beyond(part: Part, layout: LaidParts): Set<string> {
  const found = new Set([part.id]);
  const joints = new Set(endsOf(part));
  // Parts come after those that lead to them.
  for (const p of layout.parts)
    if (joints.has(p.from)) {
      found.add(p.id);
      for (const id of endsOf(p)) joints.add(id);
    }
  return found;
}

function guidesFrom(
  part: Part,
  from: Joint,
  layout: LaidParts,
  guides: readonly BranchGuide[],
  dropped: ReadonlySet<string>,
): BranchGuide[] {
  const own = layout.branches.findIndex((b) => b.parts.includes(part.id));
  const first = guides[own]!;
  const stops = first.stops.slice(first.stops.findIndex((s) => s.joint === part.from));
  const rest: Spot = [from.x, from.y];
  const numbers = new Map([[own, 0]]);
  const found: BranchGuide[] = [
    {
      ...first,
      stops: [{ joint: from.id, at: rest }, ...stops.slice(1)],
      parent: null,
      arrivals: first.arrivals.filter((a) => stops.slice(1).some((s) => s.joint === a.joint)),
    },
  ];
  guides.forEach((guide, n) => {
    const line =
      guide.parent && dropped.has(guide.parent.platform) ? numbers.get(guide.parent.line) : undefined;
    if (line === undefined) return;
    numbers.set(n, found.length);
    found.push({ ...guide, parent: { ...guide.parent!, line } });
  });
  return found;
}

/** From a joint back to the last place to pass [m]. */
function sincePassing(id: string, lead: ReadonlyMap<string, Part>, { facts }: SearchInput): number {
  let since = 0;
  for (let part = lead.get(id); part; part = lead.get(part.from)) {
    if (part.kind === "platform") return since + (part.side_m + facts.gap_m) / 2;
    since += part.length_m + facts.gap_m;
  }
  return since;
}

/** From the start to a joint along the walkway [m]. */
function walkTo(laid: LaidParts, id: string, { facts }: SearchInput): number {
  const lead = leadingTo(laid);
  let walk = 0;
  for (let part = lead.get(id); part; part = lead.get(part.from))
    walk += (part.kind === "module" ? part.length_m : part.side_m) + facts.gap_m;
  return walk;
}

/** The layout without the parts that are fitted anew, everything else as it lies or as planned. */
function retained(layout: LaidParts, place: InPlace, dropped: ReadonlySet<string>): LaidParts {
  const gone = new Set(layout.parts.filter((p) => dropped.has(p.id)).flatMap(endsOf));
  const parts = layout.parts.filter((p) => !dropped.has(p.id)).map((p) => place.parts.get(p.id)!);
  const stay = new Set(parts.map((p) => p.id));
  return {
    heading_deg: layout.heading_deg,
    lattice_m: layout.lattice_m,
    joints: layout.joints.filter((j) => !gone.has(j.id)).map((j) => place.joints.get(j.id)!),
    parts,
    branches: layout.branches.flatMap((b) => {
      const own = b.parts.filter((id) => stay.has(id));
      const begins = b.from === layout.branches[0]!.from || stay.has(b.from);
      if (!begins || (own.length === 0 && b.parts.length > 0)) return [];
      const length_m = own.length === b.parts.length ? b.length_m : lengthAt(layout, b.parts[own.length]!);
      return [{ ...b, parts: own, length_m, to_plot: own.length === b.parts.length ? b.to_plot : "" }];
    }),
    reached: layout.reached.filter((r) => !gone.has(r.joint)),
  };
}

const lengthAt = (layout: LaidParts, part: string): number =>
  layout.parts.find((p) => p.id === part)!.along_m;

const outlinesOf = (parts: readonly Part[], { facts }: SearchInput): Polygons[] =>
  parts.map((p) => {
    const ring = p.outline[0]![0]!;
    const [x, y] = [(ring[0]![0] + ring[2]![0]) / 2, (ring[0]![1] + ring[2]![1]) / 2];
    const [long, wide] = p.kind === "module" ? [p.length_m, facts.width_m] : [p.side_m, p.side_m];
    return drawnIn(x, y, p.heading_deg, long, wide, facts.lattice_m);
  });

/** A laid joint may have moved out of a plot's reach, or a refitted one into it. */
function stillReached(now: LaidParts, { site }: SearchInput): ReachedPlot[] {
  const joints = new Map(now.joints.map((j) => [j.id, j]));
  return now.reached.flatMap((r) => {
    const plot = site.plots.find((p) => p.id === r.plot)!;
    const joint = joints.get(r.joint)!;
    if (!isArrival(plot, joint.x, joint.y)) return [];
    return [{ ...r, distance_m: Math.hypot(joint.x - plot.x, joint.y - plot.y) }];
  });
}

function lineFit(before: Layout, now: LaidParts, input: SearchInput): LineFit | null {
  const broken = brokenRules(now, input);
  const plans = before.line === null ? null : planLines(input.site, input.choice.lines);
  if (plans === null) return broken.length === 0 ? null : { lines: [], broken };
  const joints = new Map(now.joints.map((j) => [j.id, [j.x, j.y] as Spot]));
  const used = new Set(now.parts.map((p) => p.from));
  const middles = now.parts.flatMap((p): Spot[][] => {
    if (p.kind === "module") return [[joints.get(p.from)!, joints.get(p.to)!]];
    const out = endsOf(p).filter((id) => used.has(id));
    return [[joints.get(p.from)!, [p.x, p.y]], ...out.map((id): Spot[] => [[p.x, p.y], joints.get(id)!])];
  });
  const nearestLine = ([a, b]: readonly Spot[]): number => {
    const middle: Spot = [(a![0] + b![0]) / 2, (a![1] + b![1]) / 2];
    const off = plans.plans.map((p) => nearestOn(p.points, middle).distance_m);
    return off.indexOf(Math.min(...off));
  };
  const lines = plans.plans.map(({ line, points }, n) =>
    lineFigures(
      line.id,
      points,
      middles.filter((m) => nearestLine(m) === n),
      line.corridor_m,
    ),
  );
  return { lines, broken };
}

const notesOf = (state: LaidState): string[] =>
  state.guessed.length === 0
    ? []
    : [
        `Joints ${state.guessed.join(", ")} lie before one that was read but were not read themselves: their places are blended between their neighbours.`,
      ];
