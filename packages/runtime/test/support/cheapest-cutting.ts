import type { CuttingProblem } from "@causey/engine/fabrication";

/**
 * Cost of the cheapest plan by trying everything; Infinity when the sticks do not suffice. For a dozen pieces.
 * The longest piece left goes on some stick, together with any other pieces that still fit: all ways are tried.
 */
export function cheapestCutting({ kerf_mm, stock, pieces }: CuttingProblem): number {
  const known = new Map<string, number>();
  const cheapest = (left: readonly number[], free: readonly number[]): number => {
    const first = left.findIndex((n) => n > 0);
    if (first < 0) return 0;
    const key = `${left.join(",")}|${free.join(",")}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = Infinity;
    stock.forEach((stick, s) => {
      if (free[s]! <= 0) return;
      const others = free.map((n, i) => (i === s ? n - 1 : n));
      for (const taken of fillings(left, first, stick.length_mm + kerf_mm))
        best = Math.min(
          best,
          stick.price +
            cheapest(
              left.map((n, k) => n - taken[k]!),
              others,
            ),
        );
    });
    known.set(key, best);
    return best;
  };
  const sorted = pieces.toSorted((a, b) => b.length_mm - a.length_mm);
  const fillings = (left: readonly number[], first: number, room: number): number[][] => {
    const found: number[][] = [];
    const grow = (kind: number, space: number, taken: readonly number[]): void => {
      if (kind === sorted.length) {
        if (taken[first]! > 0) found.push([...taken]);
        return;
      }
      const width = sorted[kind]!.length_mm + kerf_mm;
      for (let n = 0; n <= left[kind]! && n * width <= space; n++)
        grow(kind + 1, space - n * width, [...taken, n]);
    };
    grow(0, room, []);
    return found;
  };
  return cheapest(
    sorted.map((p) => p.count),
    stock.map((s) => s.available ?? Infinity),
  );
}
