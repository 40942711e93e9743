import { planCutting } from "@causey/engine/fabrication";
import { finish } from "@causey/engine/formula";
import { loadSolver } from "@causey/runtime/solver";
import { clock } from "./report.mjs";

/** Random order lists of 15 lengths on four priced stock lengths. */
export async function* rows() {
  const solver = await loadSolver();
  for (const pieces of [250, 500, 1000, 2000, 4000]) {
    let seed = pieces;
    const random = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
    const problem = {
      kerf_mm: 3,
      stock: [2438, 3048, 3658, 4877].map((length_mm, n) => ({
        length_mm,
        price: [7.2, 9.4, 11.1, 15.6][n],
      })),
      pieces: Array.from({ length: 15 }, () => ({
        length_mm: 200 + Math.floor(random() * 2000),
        count: Math.round(pieces / 15),
      })),
    };
    const { ms, value } = clock(() => finish(planCutting(problem, solver)), 2);
    yield {
      pieces: problem.pieces.reduce((n, p) => n + p.count, 0),
      ms,
      cost: value.cost,
      bound: value.bound,
      "gap %": 100 * (value.cost / value.bound - 1),
      proven: value.proven,
    };
  }
}
