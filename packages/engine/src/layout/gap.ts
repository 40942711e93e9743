import type { SupportKind } from "../kit/index.ts";
import {
  groundAt,
  isInside,
  isShut,
  ruledArea,
  type Plot,
  type Polygons,
  type Raster,
  type Site,
  type Start,
} from "../site/index.ts";
import { isWater } from "./fields.ts";
import type { UnreachedPlot } from "./types.ts";

const STANDS = 1;
const SHUT = 2;
/** A border between supportable and other ground is found to this along a line [m]. */
const TRACE_STEP = 0.01;

type Gap = NonNullable<UnreachedPlot["gap"]>;

/**
 * The least clear width that would have to be bridged to get from the start to a plot: over all ways, the smallest
 * possible "widest gap between places where a support may stand". Ground is judged cell by cell of the terrain;
 * shut areas are never crossed. Null when the ways are not stopped by a gap wider than `bridged_m`.
 */
export function widestNeededGap(
  site: Site,
  kinds: readonly SupportKind[],
  laying: { readonly from: string; readonly to: string },
  start: Start,
  plot: Plot,
  bridged_m: number,
): Gap | null {
  const state = judgeCells(site, kinds, laying);
  const islands = label(site.terrain, state);
  const from = nearestIsland(site.terrain, islands, start.x, start.y, 2);
  const goals = islandsWithin(site.terrain, islands, plot);
  if (from < 0 || goals.size === 0 || goals.has(from)) return null;
  const hop = bottleneck(growBorders(site.terrain, state, islands), from, goals);
  if (hop === null) return null;
  const gap = traceGap(site, kinds, hop);
  return gap.width_m > bridged_m ? gap : null;
}

/** Where any support kind may stand, and where no part may pass. */
function judgeCells(
  site: Site,
  kinds: readonly SupportKind[],
  laying: { readonly from: string; readonly to: string },
): Uint8Array {
  const r = site.terrain;
  const state = new Uint8Array(r.values.length);
  const shut = site.zones.filter((z) => isShut(z, laying.from, laying.to)).map(ruledArea);
  for (let j = 0; j < r.rows; j++)
    for (let i = 0; i < r.cols; i++) {
      const k = j * r.cols + i;
      const x = r.x0 + i * r.dx;
      const y = r.y0 + j * r.dy;
      if (Number.isNaN(r.values[k]!) || shut.some((p) => isInside(p, x, y))) state[k] = SHUT;
      else if (standsAnywhere(site, kinds, x, y)) state[k] = STANDS;
    }
  return state;
}

function standsAnywhere(site: Site, kinds: readonly SupportKind[], x: number, y: number): boolean {
  const z = groundAt(site.terrain, x, y);
  return kinds.some(
    (kind) =>
      z >= (kind.stands.ground_above_m ?? -Infinity) &&
      !site.zones.some((zone) => kind.stands.not_in.includes(zone.use) && isInside(ruledArea(zone), x, y)),
  );
}

/** Numbers connected supportable ground, eight neighbours; -1 elsewhere. */
function label(r: Raster, state: Uint8Array): Int32Array {
  const island = new Int32Array(state.length).fill(-1);
  let count = 0;
  for (let k = 0; k < state.length; k++) {
    if (state[k] !== STANDS || island[k] !== -1) continue;
    const stack = [k];
    island[k] = count;
    for (let cell = stack.pop(); cell !== undefined; cell = stack.pop())
      for (const next of neighbours(r, cell))
        if (state[next] === STANDS && island[next] === -1) {
          island[next] = count;
          stack.push(next);
        }
    count++;
  }
  return island;
}

function neighbours(r: Raster, cell: number): number[] {
  const i = cell % r.cols;
  const j = (cell - i) / r.cols;
  const found: number[] = [];
  for (let dj = -1; dj <= 1; dj++)
    for (let di = -1; di <= 1; di++)
      if ((di !== 0 || dj !== 0) && i + di >= 0 && j + dj >= 0 && i + di < r.cols && j + dj < r.rows)
        found.push(cell + dj * r.cols + di);
  return found;
}

function nearestIsland(r: Raster, island: Int32Array, x: number, y: number, within: number): number {
  let best = -1;
  let least = within;
  for (let k = 0; k < island.length; k++) {
    if (island[k] === -1) continue;
    const d = Math.hypot(r.x0 + (k % r.cols) * r.dx - x, r.y0 + Math.floor(k / r.cols) * r.dy - y);
    if (d < least) {
      least = d;
      best = island[k]!;
    }
  }
  return best;
}

function islandsWithin(r: Raster, island: Int32Array, plot: Plot): Set<number> {
  const found = new Set<number>();
  const reach = plot.keep_off_m + plot.reach_m + Math.max(r.dx, r.dy);
  for (let k = 0; k < island.length; k++) {
    if (island[k] === -1) continue;
    const d = Math.hypot(r.x0 + (k % r.cols) * r.dx - plot.x, r.y0 + Math.floor(k / r.cols) * r.dy - plot.y);
    if (d <= reach) found.add(island[k]!);
  }
  return found;
}

interface Hop {
  readonly a: number;
  readonly b: number;
  readonly from: number;
  readonly to: number;
  readonly width: number;
}

/** Grows every island outward over open ground; where two meet, the pair of shore cells is a hop between them. */
function growBorders(r: Raster, state: Uint8Array, island: Int32Array): Hop[] {
  const shore = new Int32Array(state.length).fill(-1);
  let ring: number[] = [];
  for (let k = 0; k < state.length; k++)
    if (island[k] !== -1) {
      shore[k] = k;
      ring.push(k);
    }
  const hops = new Map<string, Hop>();
  while (ring.length > 0) {
    const grown: number[] = [];
    for (const cell of ring)
      for (const next of neighbours(r, cell)) {
        if (state[next] === SHUT) continue;
        if (shore[next] === -1) {
          shore[next] = shore[cell]!;
          grown.push(next);
        } else if (distance(r, shore[cell]!, next) < distance(r, shore[next]!, next) - 1e-9) {
          shore[next] = shore[cell]!;
          grown.push(next);
        }
      }
    ring = grown;
  }
  for (let k = 0; k < state.length; k++) {
    if (shore[k] === -1) continue;
    for (const next of neighbours(r, k)) {
      const a = shore[k]!;
      const b = shore[next]!;
      if (b === -1 || island[a] === island[b]) continue;
      const key = `${island[a]},${island[b]}`;
      const width = distance(r, a, b);
      if (width < (hops.get(key)?.width ?? Infinity))
        hops.set(key, { a, b, from: island[a]!, to: island[b]!, width });
    }
  }
  return [...hops.values()];
}

const distance = (r: Raster, a: number, b: number): number =>
  Math.hypot(((a % r.cols) - (b % r.cols)) * r.dx, (Math.floor(a / r.cols) - Math.floor(b / r.cols)) * r.dy);

/** The widest hop on the way whose widest hop is least. */
function bottleneck(hops: readonly Hop[], from: number, goals: ReadonlySet<number>): Hop | null {
  const reached = new Set([from]);
  let widest: Hop | null = null;
  for (;;) {
    let next: Hop | null = null;
    for (const hop of hops)
      if (reached.has(hop.from) && !reached.has(hop.to) && (next === null || hop.width < next.width))
        next = hop;
    if (next === null) return null;
    reached.add(next.to);
    if (widest === null || next.width > widest.width) widest = next;
    if (goals.has(next.to)) return widest;
  }
}

/** The clear width between the two shores, read along the line between cells near the hop's ends. */
function traceGap(site: Site, kinds: readonly SupportKind[], hop: Hop): Gap {
  const r = site.terrain;
  const place = (cell: number): [number, number] => [
    r.x0 + (cell % r.cols) * r.dx,
    r.y0 + Math.floor(cell / r.cols) * r.dy,
  ];
  let best: Gap | null = null;
  for (const a of [hop.a, ...neighbours(r, hop.a)])
    for (const b of [hop.b, ...neighbours(r, hop.b)]) {
      const [p, q] = [place(a), place(b)];
      if (!standsAnywhere(site, kinds, ...p) || !standsAnywhere(site, kinds, ...q)) continue;
      const gap = clearAlong(site, kinds, p, q);
      if (best === null || gap.width_m < best.width_m) best = gap;
    }
  return best!;
}

function clearAlong(
  site: Site,
  kinds: readonly SupportKind[],
  p: [number, number],
  q: [number, number],
): Gap {
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const at = (d: number): [number, number] => [
    p[0] + ((q[0] - p[0]) * d) / length,
    p[1] + ((q[1] - p[1]) * d) / length,
  ];
  let first = 0;
  while (first < length && standsAnywhere(site, kinds, ...at(first))) first += TRACE_STEP;
  let last = length;
  while (last > first && standsAnywhere(site, kinds, ...at(last))) last -= TRACE_STEP;
  return {
    width_m: last - first,
    over: waterName(site, kinds, at((first + last) / 2)),
    from: at(first),
    to: at(last),
  };
}

function waterName(site: Site, kinds: readonly SupportKind[], [x, y]: [number, number]): string {
  const named = site.zones.find((z) => isWater(z) && isInside(z.polygons, x, y)) ?? nearestWater(site, x, y);
  if (named) return named.name;
  const least = Math.min(...kinds.map((k) => k.stands.ground_above_m ?? -Infinity));
  return Number.isFinite(least) ? `ground below ${least.toFixed(2)} m` : "ground where no support may stand";
}

/** A channel or pool within two metres, when the middle of the gap itself lies in none. */
function nearestWater(site: Site, x: number, y: number): { readonly name: string } | undefined {
  return site.zones.find((z) => isWater(z) && nearEdge(z.polygons, x, y, 2));
}

const nearEdge = (polygons: Polygons, x: number, y: number, within: number): boolean =>
  polygons.some((rings) => rings.some((ring) => ring.some((p) => Math.hypot(p[0] - x, p[1] - y) <= within)));
