import { Settle, type SearchSpace } from "./settle.ts";

/**
 * Least cost from one cell to every other of a grid of cell costs, eight neighbours, a step costing the mean of its
 * two cells times its length: the geometric rule that public grid routers use, so that the settle loop can be
 * measured against one. Corners may be cut.
 *
 * cost       per cell, > 0, row by row
 * perUnit    whole units in one unit of cost; costs are exact to half a unit a step
 * returns    least cost of the far corner cell, and the number of cells settled
 */
export function settleGrid(
  width: number,
  height: number,
  cost: Float64Array,
  perUnit: number,
): { readonly corner: number; readonly settled: number } {
  const padded = new Float64Array((width + 2) * (height + 2)).fill(-1);
  for (let y = 0; y < height; y++)
    padded.set(cost.subarray(y * width, (y + 1) * width), (y + 1) * (width + 2) + 1);
  const row = width + 2;
  const straight = perUnit / 2;
  const diagonal = straight * Math.SQRT2;
  const offer = (settle: Settle, own: number, to: number, share: number): void => {
    const other = padded[to]!;
    if (other >= 0) settle.relax(to, Math.round((own + other) * share), 1);
  };
  const space: SearchSpace = {
    nodes: padded.length,
    ahead: () => 0,
    expand: (node, settle) => {
      const own = padded[node]!;
      offer(settle, own, node + 1, straight);
      offer(settle, own, node - 1, straight);
      offer(settle, own, node + row, straight);
      offer(settle, own, node - row, straight);
      offer(settle, own, node + row + 1, diagonal);
      offer(settle, own, node + row - 1, diagonal);
      offer(settle, own, node - row + 1, diagonal);
      offer(settle, own, node - row - 1, diagonal);
    },
  };
  const settle = new Settle(space);
  settle.seed(row + 1, 0, 0);
  settle.run(Infinity, () => false);
  return { corner: settle.costOf(height * row + width) / perUnit, settled: settle.settled };
}
