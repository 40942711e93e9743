/** The best fillings of a stick of every capacity up to the largest, for one set of values. */
export interface Knapsack {
  /** Largest value that fits; exact, whole. */
  readonly best: (capacity: number) => number;
  /** A filling of that value, long pieces first, the room left over filled with pieces of no value. */
  readonly filling: (capacity: number) => number[];
  /**
   * Every filling worth at least `least` to which no piece can be added; null when there are more than `most`.
   */
  readonly fillingsWorth: (capacity: number, least: number, most: number) => number[][] | null;
}

/**
 * Exact bounded knapsack by dynamic programming over whole steps.
 *
 * widths, bounds  per kind, whole, 1 or more (bounds 0 or more)
 * values          per kind, whole, 0 or more; sums must stay under 2^53
 *
 * Layer k holds, for each capacity, the best value from kinds k, k + 1, ...: the last layer is all zero, and a
 * kind of no value shares the layer of its neighbour.
 */
export function solveKnapsack(
  widths: readonly number[],
  values: readonly number[],
  bounds: readonly number[],
  capacity: number,
): Knapsack {
  const layers: Float64Array[] = Array.from({ length: widths.length + 1 });
  layers[widths.length] = new Float64Array(capacity + 1);
  for (let k = widths.length - 1; k >= 0; k--) {
    const isWorthless = values[k]! <= 0 || bounds[k]! <= 0 || widths[k]! > capacity;
    layers[k] = isWorthless ? layers[k + 1]! : addKind(layers[k + 1]!, widths[k]!, values[k]!, bounds[k]!);
  }
  return {
    best: (room) => layers[0]![room]!,
    filling: (room) => readFilling(layers, widths, values, bounds, room),
    fillingsWorth: (room, least, most) => {
      const found: number[][] = [];
      const counts = widths.map(() => 0);
      const isComplete = visit(
        { layers, widths, values, bounds, counts, found, most, tries: 0 },
        0,
        room,
        least,
      );
      return isComplete ? found : null;
    },
  };
}

/** Bundles of 1, 2, 4, ... pieces make every count up to the bound. */
function addKind(next: Float64Array, width: number, value: number, bound: number): Float64Array {
  const layer = next.slice();
  const most = Math.min(bound, Math.floor((layer.length - 1) / width));
  for (let left = most, bundle = 1; left > 0; left -= bundle, bundle *= 2) {
    const size = Math.min(bundle, left);
    addBundle(layer, size * width, size * value);
    if (size < bundle) break;
  }
  return layer;
}

function addBundle(layer: Float64Array, width: number, value: number): void {
  for (let c = layer.length - 1; c >= width; c--) {
    const worth = layer[c - width]! + value;
    if (worth > layer[c]!) layer[c] = worth;
  }
}

function readFilling(
  layers: readonly Float64Array[],
  widths: readonly number[],
  values: readonly number[],
  bounds: readonly number[],
  room: number,
): number[] {
  let left = room;
  const counts = widths.map((width, k) => {
    if (layers[k] === layers[k + 1]) return 0;
    const worth = layers[k]![left]!;
    let count = Math.min(bounds[k]!, Math.floor(left / width));
    while (layers[k + 1]![left - count * width]! + count * values[k]! !== worth) count--;
    left -= count * width;
    return count;
  });
  widths.forEach((width, k) => {
    const more = Math.min(bounds[k]! - counts[k]!, Math.floor(left / width));
    counts[k]! += more;
    left -= more * width;
  });
  return counts;
}

interface Visit {
  readonly layers: readonly Float64Array[];
  readonly widths: readonly number[];
  readonly values: readonly number[];
  readonly bounds: readonly number[];
  readonly counts: number[];
  readonly found: number[][];
  readonly most: number;
  tries: number;
}

const TRIES_PER_FILLING = 50;

/** Depth first over the kinds; false as soon as there are too many fillings, or far too many tries. */
function visit(search: Visit, kind: number, room: number, least: number): boolean {
  const { layers, widths, values, bounds, counts, found, most } = search;
  if (layers[kind]![room]! < least) return true;
  if (search.tries++ > most * TRIES_PER_FILLING) return false;
  if (kind === widths.length) {
    if (widths.some((w, k) => counts[k]! < bounds[k]! && w <= room)) return true;
    found.push([...counts]);
    return found.length <= most;
  }
  const width = widths[kind]!;
  for (let count = Math.min(bounds[kind]!, Math.floor(room / width)); count >= 0; count--) {
    counts[kind] = count;
    if (!visit(search, kind + 1, room - count * width, least - count * values[kind]!)) return false;
  }
  return true;
}
