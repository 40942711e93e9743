import { canonicalJson, type Job } from "../formula/index.ts";
import type { Plot, Raster, Site, Start } from "../site/index.ts";
import { blockAlso, groundFields, keepOffAreas, type GroundFields } from "./fields.ts";
import { footReach } from "./facts.ts";
import { JointSpace } from "./joint-space.ts";
import { JointTable } from "./joint-table.ts";
import { layLattice, type Lattice } from "./lattice.ts";
import type { SearchInput } from "./search-input.ts";
import { groundWindow, type GroundWindow } from "./standing.ts";

/** Bytes that a lattice keeps for every point, all tables filled: fields, joints, bounds, and strips by length. */
const bytesOf = (l: Lattice, lengths: number): number => l.nx * l.ny * (84 + 8 * lengths);

/** One lattice, ready to be searched for the plots of the moment. */
export interface ReadyLattice {
  readonly l: Lattice;
  readonly table: JointTable;
  readonly space: JointSpace;
}

interface KeptLattice extends ReadyLattice {
  readonly of: number;
  readonly start: string;
  readonly ground: GroundFields;
  readonly bytes: number;
  plots: readonly Plot[];
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
  /** Least recently used first. */
  private lattices: KeptLattice[] = [];
  /** The lattice that gave the last layout: a good one to begin with. */
  best: { readonly start: string; readonly heading_deg: number } | null = null;

  /** `most_bytes`: lattices are kept up to this much; 0 keeps none. */
  constructor(most_bytes: number) {
    this.most = most_bytes;
  }

  /** Says what the next search reads; forgets all when it is not what the last one read, plots aside. */
  open(input: SearchInput): void {
    const key = keyOf(input);
    if (this.terrain !== null && key === this.key && isSame(this.terrain, input.site.terrain)) return;
    this.ground++;
    this.key = key;
    this.terrain = input.site.terrain;
    this.window = null;
    this.lattices = [];
    this.best = null;
  }

  /**
   * The lattice through a start at a heading, with the plots of `input`; call `open` first. It is the caller's alone
   * until `put` back, so that two searches never share one.
   */
  *take(input: SearchInput, start: Start, heading_deg: number, note: string): Job<ReadyLattice> {
    const at = this.lattices.findIndex((k) => k.start === start.id && k.l.heading_deg === heading_deg);
    const kept = at < 0 ? yield* this.make(input, start, heading_deg, note) : this.lattices.splice(at, 1)[0]!;
    replot(kept, input);
    return kept;
  }

  /** Keeps a lattice for the next search, as far as there is room; one of other ground is dropped. */
  put(lattice: ReadyLattice): void {
    const kept = lattice as KeptLattice;
    if (kept.of !== this.ground || kept.bytes > this.most) return;
    this.lattices.push(kept);
    let bytes = this.lattices.reduce((sum, k) => sum + k.bytes, 0);
    while (bytes > this.most) bytes -= this.lattices.shift()!.bytes;
  }

  /** A lattice without plots: what is measured on it holds wherever they lie. */
  private *make(input: SearchInput, start: Start, heading_deg: number, note: string): Job<KeptLattice> {
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
    yield* space.measure(note);
    const bytes = bytesOf(l, facts.lengths_m.length);
    return { l, table, space, of: this.ground, start: start.id, ground, bytes, plots: [] };
  }
}

/** Puts other plots on a kept lattice, and lets the places be used again that its last search gave up. */
function replot(kept: KeptLattice, input: SearchInput): void {
  const { plots } = input.site;
  for (const point of kept.table.lift()) kept.space.forgetAt(point);
  const moved = [...onlyIn(plots, kept.plots), ...onlyIn(kept.plots, plots)];
  kept.plots = plots;
  const reach = Math.max(...input.facts.supports.map((k) => footReach(k.feet)));
  kept.table.replot(plots, moved);
  if (moved.length > 0) kept.space.replot(blockAlso(kept.l, kept.ground, keepOffAreas(plots)), moved, reach);
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
