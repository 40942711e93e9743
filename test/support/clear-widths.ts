import type { Heights } from "./stour-zones.ts";

/** Spacing of the points at which ground is read [m]. */
const STEP_M = 0.1;

export interface ClearWidth {
  readonly from: number;
  readonly to: number;
  readonly width_m: number;
  readonly at: readonly [readonly [number, number], readonly [number, number]];
}

/** Parts of the site above a level, and the least widths of lower ground between them. */
export interface HighGround {
  /** Area of each part over 2 m2, largest first [m2]. */
  readonly areas: readonly number[];
  /** Number of the part a point lies in; -1 for none. */
  readonly partAt: (x: number, y: number) => number;
  readonly widths: readonly ClearWidth[];
  /** The widest gap that must be crossed between two parts when every other is chosen as narrow as possible. */
  readonly hardest: (from: number, to: number) => ClearWidth | null;
}

/**
 * Finds the parts above `level`, ground blended between cell centres and read every 10 cm, joined by shared edges.
 * Widths run between the outermost read points of two parts, so they are at most two steps too wide.
 */
export function highGround(h: Heights, level: number): HighGround {
  const n = Math.round(h.cell / STEP_M);
  const [cols, rows] = [(h.cols - 1) * n + 1, (h.rows - 1) * n + 1];
  const up = new Uint8Array(cols * rows);
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < cols; i++) up[j * cols + i] = height(h, i / n, j / n) > level ? 1 : 0;
  const { part, sizes } = fill(up, cols, rows);
  const order = sizes.map((size, p) => [size, p] as const).filter(([size]) => size > 2 / STEP_M ** 2);
  order.sort((a, b) => b[0] - a[0]);
  const rank = new Map(order.map(([, p], r) => [p, r]));
  const place = (k: number): readonly [number, number] => [
    h.west + h.cell / 2 + (k % cols) * STEP_M,
    h.south + h.cell / 2 + Math.floor(k / cols) * STEP_M,
  ];
  const edges = order.map(([, p]) => edgePoints(part, p, cols, rows).map(place));
  const widths = edges.flatMap((own, a) => edges.slice(0, a).map((other, b) => narrowest(own, other, a, b)));
  widths.sort((a, b) => a.width_m - b.width_m);
  return {
    areas: order.map(([size]) => size * STEP_M ** 2),
    partAt: (x, y) => {
      const i = Math.round((x - h.west - h.cell / 2) / STEP_M);
      const j = Math.round((y - h.south - h.cell / 2) / STEP_M);
      return rank.get(part[j * cols + i] ?? -1) ?? -1;
    },
    widths,
    hardest: (from, to) => hardest(widths, edges.length, from, to),
  };
}

function height(h: Heights, u: number, v: number): number {
  const [i, j] = [Math.min(h.cols - 2, Math.floor(u)), Math.min(h.rows - 2, Math.floor(v))];
  const z = (p: number, q: number): number => h.values[q * h.cols + p]!;
  const mix = (a: number, b: number, t: number): number => (t === 0 ? a : t === 1 ? b : a * (1 - t) + b * t);
  return mix(mix(z(i, j), z(i + 1, j), u - i), mix(z(i, j + 1), z(i + 1, j + 1), u - i), v - j);
}

function fill(up: Uint8Array, cols: number, rows: number): { part: Int32Array; sizes: number[] } {
  const part = new Int32Array(up.length).fill(-1);
  const sizes: number[] = [];
  const stack = new Int32Array(up.length);
  for (let seed = 0; seed < up.length; seed++) {
    if (!up[seed] || part[seed] !== -1) continue;
    let [top, size] = [0, 0];
    const take = (k: number): void => {
      if (!up[k] || part[k] !== -1) return;
      part[k] = sizes.length;
      stack[top++] = k;
    };
    take(seed);
    while (top > 0) {
      const k = stack[--top]!;
      const i = k % cols;
      size++;
      if (i > 0) take(k - 1);
      if (i < cols - 1) take(k + 1);
      if (k >= cols) take(k - cols);
      if (k < cols * (rows - 1)) take(k + cols);
    }
    sizes.push(size);
  }
  return { part, sizes };
}

function edgePoints(part: Int32Array, p: number, cols: number, rows: number): number[] {
  const points: number[] = [];
  for (let j = 1; j < rows - 1; j++)
    for (let i = 1; i < cols - 1; i++) {
      const k = j * cols + i;
      if (part[k] !== p) continue;
      if ([k - 1, k + 1, k - cols, k + cols].some((m) => part[m] !== p)) points.push(k);
    }
  return points;
}

/** Sweeps both edges from west to east and compares only points whose eastings differ by less than the best so far. */
function narrowest(
  a: readonly (readonly [number, number])[],
  b: readonly (readonly [number, number])[],
  from: number,
  to: number,
): ClearWidth {
  const fromWest = (m: readonly [number, number], n: readonly [number, number]): number => m[0] - n[0];
  const [p, q] = [a.toSorted(fromWest), b.toSorted(fromWest)];
  let best: ClearWidth = { from, to, width_m: Infinity, at: [p[0]!, q[0]!] };
  let first = 0;
  for (const m of p) {
    while (first < q.length && q[first]![0] < m[0] - best.width_m) first++;
    for (let k = first; k < q.length && q[k]![0] <= m[0] + best.width_m; k++) {
      const width_m = Math.hypot(m[0] - q[k]![0], m[1] - q[k]![1]);
      if (width_m < best.width_m) best = { from, to, width_m, at: [m, q[k]!] };
    }
  }
  return best;
}

/** Opens gaps from the narrowest on until both parts are joined; the last one opened is the answer. */
function hardest(widths: readonly ClearWidth[], parts: number, from: number, to: number): ClearWidth | null {
  const group = Array.from({ length: parts }, (_, p) => p);
  if (from === to || group[from] === undefined || group[to] === undefined) return null;
  for (const gap of widths) {
    const [a, b] = [group[gap.from]!, group[gap.to]!];
    group.forEach((g, p) => g === a && (group[p] = b));
    if (group[from] === group[to]) return gap;
  }
  return null;
}
