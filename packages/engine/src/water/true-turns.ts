/** A high or a low water. */
export interface TurningPoint {
  readonly t_s: number;
  readonly z_m: number;
  readonly high: boolean;
}

/** Neighbours count as high and low only when they differ by this much [m], and lie this far apart [s] (CO-OPS practice, from memory). */
const LEAST_RISE_M = 0.03;
const LEAST_APART_S = 2 * 3600;

interface Rise {
  readonly rise: number;
  /** The two points, by their place in the raw list. */
  readonly from: number;
  readonly to: number;
}

/**
 * Takes out the smallest rise until every neighbour is a real high or low. Highs and lows of `points` alternate, and
 * so do those that are left. A pair in the middle goes whole; at an end only the outer point, for the other may be a
 * true turn. A heap keeps the smallest rise at hand: noisy years have hundreds of thousands of raw turns.
 */
export function trueTurns(points: readonly TurningPoint[]): TurningPoint[] {
  const count = points.length;
  const next = Int32Array.from({ length: count }, (_, i) => (i + 1 < count ? i + 1 : -1));
  const before = Int32Array.from({ length: count }, (_, i) => i - 1);
  const gone = new Uint8Array(count);
  const heap: Rise[] = [];
  const offer = (from: number, to: number): void => {
    if (from < 0 || to < 0) return;
    const [p, q] = [points[from]!, points[to]!];
    const rise = Math.abs(q.z_m - p.z_m);
    if (rise < LEAST_RISE_M || q.t_s - p.t_s < LEAST_APART_S) push(heap, { rise, from, to });
  };
  const remove = (i: number): void => {
    const [a, b] = [before[i]!, next[i]!];
    gone[i] = 1;
    if (a >= 0) next[a] = b;
    if (b >= 0) before[b] = a;
  };
  for (let i = 0; i + 1 < count; i++) offer(i, i + 1);
  for (let least = pop(heap); least !== undefined; least = pop(heap)) {
    const { from, to } = least;
    if (gone[from] || gone[to] || next[from] !== to) continue;
    const [a, b] = [before[from]!, next[to]!];
    if (a < 0) remove(from);
    else if (b < 0) remove(to);
    else {
      remove(from);
      remove(to);
      offer(a, b);
    }
  }
  return points.filter((_, i) => gone[i] === 0);
}

const isLess = (a: Rise, b: Rise): boolean => a.rise < b.rise || (a.rise === b.rise && a.from < b.from);

function push(heap: Rise[], item: Rise): void {
  let at = heap.length;
  heap.push(item);
  while (at > 0) {
    const up = (at - 1) >> 1;
    if (!isLess(item, heap[up]!)) break;
    heap[at] = heap[up]!;
    at = up;
  }
  heap[at] = item;
}

function pop(heap: Rise[]): Rise | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (top === undefined || last === undefined || heap.length === 0) return top;
  let at = 0;
  for (;;) {
    const left = 2 * at + 1;
    const child = left + 1 < heap.length && isLess(heap[left + 1]!, heap[left]!) ? left + 1 : left;
    if (child >= heap.length || !isLess(heap[child]!, last)) break;
    heap[at] = heap[child]!;
    at = child;
  }
  heap[at] = last;
  return top;
}
