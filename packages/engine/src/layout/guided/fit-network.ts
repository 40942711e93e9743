import type { Job } from "../../formula/index.ts";
import type { Polygons } from "../../site/index.ts";
import { blockAlso, keepOffAreas } from "../fields.ts";
import { DX, DY, latticeOf, placeOf } from "../lattice.ts";
import type { SearchInput } from "../search-input.ts";
import { freeExits, lineOf, takenBy, type FoundLine, type FreeExit } from "./found-line.ts";
import type { Frame } from "./frame.ts";
import { Guide, type Spot } from "./guide.ts";
import { GuidedSearch, type Demand, type FitTask, type FittedPath, type Seed } from "./guided-search.ts";
import type { PartRules } from "./part-rules.ts";
import { between, lengthOf, nearestOn } from "./polyline.ts";
import { fitPrices, type FitPrices } from "./prices.ts";

/** One guide of a network and what its line must have. */
export interface LineSpec {
  readonly points: readonly Spot[];
  readonly corridor_m: number;
  /** The earlier line it branches off, and where; null = it begins at the lattice's own place. */
  readonly parent: { readonly line: number; readonly at: Spot } | null;
  /** Lattice points at which it should end; null = beside its last point. */
  readonly ends: ReadonlySet<number> | null;
  /** Joints that it must have on the way. */
  readonly touches: readonly { readonly at: Spot; readonly points: ReadonlySet<number> }[];
}

export interface FitTerms {
  readonly strict: boolean;
  /** Whether parts may leave the corridor, at a price, where nothing can be built inside it. */
  readonly beyond: boolean;
  readonly passing_m: number | null;
  /** Directions in which the first line may set out. */
  readonly directions: readonly number[];
  /** Since the last place to pass, at the first joint [m]. */
  readonly since_m: number;
  /** The first joint lies in the field: no rule can be broken by what stands already. */
  readonly isLaid: boolean;
  /** Where parts lie that are not fitted. */
  readonly taken: readonly Polygons[];
}

export interface FittedNetwork {
  readonly cost: number;
  /** Per spec; null = nothing could be fitted to it. */
  readonly lines: readonly (FoundLine | null)[];
  readonly settled: number;
}

/** Joints looked at for one line, at most: on a fine lattice the search keeps nearer to its guide. */
const MOST_JOINTS = 3_000_000;
/** A line that nothing could be fitted to counts as so many missing things. */
const NO_LINE = 10;

/**
 * Fits guides one after another on one lattice, later ones from platforms of earlier ones. Each line is fitted exactly
 * for its prices; that earlier lines do not make room for later ones, but for the platform, is heuristic.
 * Null when all cost `most` or more; when the rules are strict and a line cannot be fitted; or when a line cannot be
 * followed from end to end inside its corridor and may not leave it.
 */
export function* fitNetwork(
  input: SearchInput,
  frame: Frame,
  specs: readonly LineSpec[],
  terms: FitTerms,
  most: number,
  note: string,
): Job<FittedNetwork | null> {
  const lines: (FoundLine | null)[] = [];
  const taken: Polygons[] = [...terms.taken];
  let cost = 0;
  let settled = 0;
  for (const [n, spec] of specs.entries()) {
    const fitter = new LineFitter(input, frame, spec, terms, demandsOf(specs, n), taken);
    const line: FoundLine | null = yield* fitter.fit(lines, most - cost, note);
    settled += fitter.settled;
    if (line === null && (terms.strict || !terms.beyond || n === 0)) return null;
    lines.push(line);
    if (line !== null) taken.push(...takenBy(line, frame.l, input.facts));
    cost += line === null ? NO_LINE * fitter.prices.missing : line.path.cost;
    if (cost >= most) return null;
  }
  return { cost, lines, settled };
}

/** Places on a line from which later ones branch off. */
const demandsOf = (specs: readonly LineSpec[], n: number): Spot[] =>
  specs.flatMap((s) => (s.parent?.line === n ? [s.parent.at] : []));

class LineFitter {
  settled = 0;
  readonly prices: FitPrices;
  private readonly input: SearchInput;
  private readonly frame: Frame;
  private readonly spec: LineSpec;
  private readonly terms: FitTerms;
  private readonly platforms: readonly Spot[];
  private readonly rules: PartRules;

  constructor(
    input: SearchInput,
    frame: Frame,
    spec: LineSpec,
    terms: FitTerms,
    platforms: readonly Spot[],
    taken: readonly Polygons[],
  ) {
    this.input = input;
    this.frame = frame;
    this.spec = spec;
    this.terms = terms;
    this.platforms = platforms;
    this.prices = fitPrices(spec.corridor_m);
    this.rules =
      taken.length === 0
        ? frame.rules
        : frame.rules.with(blockAlso(frame.l, frame.ground, [...keepOffAreas(input.site.plots), ...taken]));
  }

  *fit(before: readonly (FoundLine | null)[], most: number, note: string): Job<FoundLine | null> {
    const { parent } = this.spec;
    if (parent === null) return yield* this.search(this.spec.points, null, most, note);
    const exits = this.exitsNear(before[parent.line] ?? null, parent.at);
    if (exits.length === 0) return null;
    const { platform } = exits[0]!;
    const middle = placeOf(this.frame.l, platform.ci, platform.cj);
    const own = this.spec.points;
    const points = between(middle, own[0]!) <= this.spec.corridor_m ? own.slice(1) : own;
    const line = yield* this.search([middle, ...(points.length === 0 ? own : points)], exits, most, note);
    if (line === null || (line.path.steps.length === 0 && this.spec.ends === null)) return null;
    const exit = exits.find((e) => this.exitNode(e) === line.path.first)!;
    exit.platform[exit.name] = line.visits[0]!;
    return { ...line, middle: [middle, ...line.middle] };
  }

  /** Free exits of the platform that was put where this line branches off. */
  private exitsNear(line: FoundLine | null, at: Spot): FreeExit[] {
    const { facts } = this.input;
    const far = this.spec.corridor_m + Math.max(...facts.lengths_m) + facts.platform_side_m;
    const near = (line?.platforms ?? [])
      .map((platform) => ({ platform, off: between(placeOf(this.frame.l, platform.ci, platform.cj), at) }))
      .filter(({ platform, off }) => off <= far && freeExits(platform).length > 0)
      .sort((a, b) => a.off - b.off)[0];
    return near ? freeExits(near.platform) : [];
  }

  private exitNode = (e: FreeExit): number =>
    this.frame.space.exitOf(e.platform.ci, e.platform.cj, e.direction);

  private *search(
    points: readonly Spot[],
    exits: readonly FreeExit[] | null,
    most: number,
    note: string,
  ): Job<FoundLine | null> {
    const { l } = this.frame;
    const { facts } = this.input;
    const guide = new Guide(l, points, Math.max(2, Math.max(...facts.lengths_m) + facts.gap_m));
    const task: FitTask = {
      guide,
      rules: this.rules,
      prices: this.prices,
      seeds: exits === null ? this.startSeeds() : exits.flatMap((e) => this.exitSeed(guide, e)),
      corridor_m: this.spec.corridor_m,
      width_m: this.widthFor(points),
      demands: this.demands(guide),
      ends: this.spec.ends,
      passing: this.terms.passing_m === null ? null : Math.floor(this.terms.passing_m / l.step + 1e-9),
      strict: this.terms.strict,
    };
    const path = yield* this.within(task, most, note);
    return path === null ? null : lineOf(path, l, this.rules.half);
  }

  /** Inside the corridor if anything can be built there; else with what lies beside it, where leaving it has its price. */
  private *within(task: FitTask, most: number, note: string): Job<FittedPath | null> {
    const inside = yield* this.run({ ...task, width_m: task.corridor_m + 1e-6 }, most, note);
    if (inside?.isWhole) return inside;
    if (!this.terms.beyond) return null;
    return (yield* this.run(task, inside?.cost ?? most, note)) ?? inside;
  }

  private *run(task: FitTask, most: number, note: string): Job<FittedPath | null> {
    const search = new GuidedSearch(task, most);
    const path = yield* search.run(note);
    this.settled += search.settled;
    return path;
  }

  private startSeeds(): Seed[] {
    const { l } = this.frame;
    const point = l.sj * l.nx + l.si;
    const since = Math.round(this.terms.since_m / l.step);
    return this.terms.directions.flatMap((d) => {
      const broken = this.terms.isLaid ? 0 : this.rules.joint(point, d & 1).broken;
      if (broken === Infinity || (this.terms.strict && broken > 0)) return [];
      return [{ node: point * 4 + d, beside: 0, since, cost: broken * this.prices.rule }];
    });
  }

  /** From the middle of a platform to the joint at its edge: that way deviates too. */
  private exitSeed(guide: Guide, { platform, direction: d }: FreeExit): Seed[] {
    const { step } = this.frame.l;
    const { half } = this.rules;
    let beside = 0;
    let off2 = guide.near2(0, platform.ci, platform.cj);
    let cost = 0;
    for (let s = 1; s <= half; s++) {
      const u = platform.ci + DX[d]! * s;
      const v = platform.cj + DY[d]! * s;
      beside = guide.walk(beside, off2, u - DX[d]!, v - DY[d]!, u, v);
      off2 = guide.off2;
      cost += guide.deviation * step ** 3;
    }
    const node = this.frame.space.exitOf(platform.ci, platform.cj, d);
    return [{ node, beside, since: half, cost }];
  }

  private demands(guide: Guide): Demand[] {
    const place = (at: Spot): number => Math.max(1, guide.nearest(...latticeOf(this.frame.l, ...at)));
    return [
      ...this.platforms.map((at): Demand => ({ kind: "platform", at: place(at) })),
      ...this.spec.touches.map((t): Demand => ({ kind: "joint", at: place(t.at), points: t.points })),
    ].sort((a, b) => a.at - b.at);
  }

  private widthFor(points: readonly Spot[]): number {
    const { facts } = this.input;
    const longest = Math.max(...facts.lengths_m) + facts.gap_m;
    const wanted = this.spec.corridor_m + longest + facts.platform_side_m + facts.gap_m;
    const joints = (8 * Math.max(longest, lengthOf(points))) / this.frame.l.step ** 2;
    return Math.max(longest, Math.min(wanted, MOST_JOINTS / joints));
  }
}

/** How far a fitted network may reach beyond its guides, so that the lattice holds all of it [m]. */
export const marginOf = (input: SearchInput, corridor_m: number): number =>
  corridor_m + 3 * (Math.max(...input.facts.lengths_m) + input.facts.platform_side_m + input.facts.gap_m);

/** Farthest that a place lies off any of some polylines [m]. */
export const offGuides = (guides: readonly (readonly Spot[])[], at: Spot): number =>
  Math.min(...guides.map((g) => nearestOn(g, at).distance_m));
