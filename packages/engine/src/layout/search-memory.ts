import { canonicalJson, type Job } from "../formula/index.ts";
import type { Plot, Raster, Site, Start } from "../site/index.ts";
import { blockAlso, groundFields, keepOffAreas, type GroundFields } from "./fields.ts";
import { footReach } from "./facts.ts";
import { JointSpace } from "./joint-space.ts";
import type { Goal } from "./network.ts";
import { arrivalPoints } from "./arrival.ts";
import { JointTable } from "./joint-table.ts";
import { layLattice, type Lattice } from "./lattice.ts";
import type { SearchInput } from "./search-input.ts";
import { groundWindow, type GroundWindow } from "./standing.ts";

/** Bytes for every point of a lattice, and besides for every point on the terrain, where joints and parts are looked at. */
const BYTES_PER_POINT = 46;
const BYTES_PER_POINT_AND_PLOT = 4;
const BYTES_PER_JOINT_PLACE = 34;
const BYTES_PER_PLACE_AND_LENGTH = 8;

/** One lattice, ready to be searched for the plots of the moment. */
export interface ReadyLattice {
  readonly l: Lattice;
  readonly table: JointTable;
  readonly space: JointSpace;
  readonly goals: readonly Goal[];
}

interface KeptLattice extends ReadyLattice {
  readonly of: number;
  readonly start: string;
  readonly ground: GroundFields;
  readonly bytes: number;
  plots: readonly Plot[];
  goals: readonly Goal[];
}

/**
 * What searches of one ground share: fields, where supports may stand and what parts cost on each lattice. It stays
 * while only plots move and is dropped when anything else that the search reads changes. A search gives the same
 * layout with an empty memory; a filled one only spares work.
 */
export class SearchMemory {
  private readonly most: number;
  /** Counts the grounds; a lattice belongs to one. */
  private ground = 0;
  private key = "";
  private terrain: Raster | null = null;
  private window: GroundWindow | null = null;
  private lattices: KeptLattice[] = [];
  /** Joints settled and measured by all searches with this memory: how much work they were. */
  settled = 0;
  /** The lattice that gave the last layout: a good one to begin with. */
  best: { readonly start: string; readonly heading_deg: number } | null = null;

  /** `most_bytes`: lattices are kept up to this much, the first of a sweep before the last; 0 keeps none. */
  constructor(most_bytes: number) {
    this.most = most_bytes;
  }

  /**
   * Says what the next search reads. Forgets all when it is not what the last one read, plots aside, and lattices of
   * headings that are not asked for any more.
   */
  open(input: SearchInput, headings: readonly number[]): void {
    const key = keyOf(input);
    if (this.terrain !== null && key === this.key && isSame(this.terrain, input.site.terrain)) {
      this.lattices = this.lattices.filter((k) => headings.includes(k.l.heading_deg));
      return;
    }
    this.ground++;
    this.key = key;
    this.terrain = input.site.terrain;
    this.window = null;
    this.lattices = [];
    this.best = null;
  }

  /**
   * The lattice through a start at a heading; call `open` first, then `ready`. It is the caller's alone until `put`
   * back, so that two searches never share one.
   */
  take(input: SearchInput, start: Start, heading_deg: number): ReadyLattice {
    const at = this.lattices.findIndex((k) => k.start === start.id && k.l.heading_deg === heading_deg);
    return at < 0 ? this.make(input, start, heading_deg) : this.lattices.splice(at, 1)[0]!;
  }

  /** Puts the plots of `input` on a lattice and lets every place be used again that its last search gave up. */
  *ready(lattice: ReadyLattice, input: SearchInput, note: string): Job<void> {
    const kept = lattice as KeptLattice;
    for (const point of kept.table.lift()) kept.space.forgetAt(point);
    kept.goals = input.site.plots.map((p, plot) => ({ plot, points: arrivalPoints(kept.l, p) }));
    const points = kept.goals.map((g) => g.points);
    if (!points.every((p) => kept.space.fromStart.isMeasured(p))) {
      replot(kept, [], input);
      const before = kept.space.fromStart.measured;
      yield* kept.space.fromStart.measure(points, note);
      this.settled += kept.space.fromStart.measured - before;
    }
    replot(kept, input.site.plots, input);
    kept.space.bound.keepFields(points);
  }

  /** Keeps a lattice for the next search when there is room for it; one of other ground is dropped. */
  put(lattice: ReadyLattice): void {
    const kept = lattice as KeptLattice;
    const held = this.lattices.reduce((sum, k) => sum + k.bytes, 0);
    if (kept.of === this.ground && held + kept.bytes <= this.most) this.lattices.push(kept);
  }

  /** A lattice without plots. */
  private make(input: SearchInput, start: Start, heading_deg: number): KeptLattice {
    const { choice, facts, costs, laying } = input;
    const site: Site = { ...input.site, plots: [] };
    this.window ??= groundWindow(site.terrain, facts.supports);
    const l = layLattice(site.terrain, facts.lattice_m, heading_deg, start.x, start.y);
    const ground = groundFields(l, site, laying.from, laying.to);
    const table = new JointTable(l, ground, site, this.window, facts, costs, {
      ...laying,
      min_clear_m: choice.min_clear_mm / 1000,
      contact_per_m2: choice.weights.contact_per_m2,
      money: choice.weights.money,
    });
    const space = new JointSpace(l, blockAlso(l, ground, []), table, facts, costs, {
      ...choice.weights,
      max_grade: choice.max_grade,
    });
    const bytes = bytesOf(l, input);
    return { l, table, space, of: this.ground, start: start.id, ground, bytes, plots: [], goals: [] };
  }
}

/** Puts other plots on a lattice. */
function replot(kept: KeptLattice, plots: readonly Plot[], input: SearchInput): void {
  const moved = [...onlyIn(plots, kept.plots), ...onlyIn(kept.plots, plots)];
  kept.plots = plots;
  if (moved.length === 0) return;
  const reach = Math.max(...input.facts.supports.map((k) => footReach(k.feet)));
  kept.table.replot(plots, moved);
  kept.space.replot(blockAlso(kept.l, kept.ground, keepOffAreas(plots)), moved, reach);
}

/** What a lattice takes when everything on it has been looked at [bytes]. */
function bytesOf(l: Lattice, { site, facts }: SearchInput): number {
  const { cols, rows, dx, dy } = site.terrain;
  const places = Math.min(l.nx * l.ny, (cols * dx * rows * dy) / l.step ** 2);
  return (
    l.nx * l.ny * (BYTES_PER_POINT + BYTES_PER_POINT_AND_PLOT * site.plots.length) +
    places * (BYTES_PER_JOINT_PLACE + BYTES_PER_PLACE_AND_LENGTH * facts.lengths_m.length)
  );
}

const onlyIn = (these: readonly Plot[], those: readonly Plot[]): Plot[] =>
  these.filter((p) => !those.some((q) => p.x === q.x && p.y === q.y && p.keep_off_m === q.keep_off_m));

/** Everything the lattices depend on, plots and heights of the ground aside. */
const keyOf = ({ site, choice, laying, facts, costs }: SearchInput): string =>
  canonicalJson([
    site.zones,
    site.starts,
    choice.weights,
    choice.max_grade,
    choice.min_clear_mm,
    laying.from,
    laying.to,
    facts,
    costs,
  ]);

/** Whether two rasters hold the same heights in the same places; unknown equals unknown. */
function isSame(a: Raster, b: Raster): boolean {
  if (a === b) return true;
  for (const k of ["cols", "rows", "x0", "y0", "dx", "dy"] as const) if (a[k] !== b[k]) return false;
  return a.values.length === b.values.length && a.values.every((z, k) => Object.is(z, b.values[k]));
}
