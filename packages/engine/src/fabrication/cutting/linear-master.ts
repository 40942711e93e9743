import type { LinearProgram, Solver } from "../solver.ts";
import type { Column, CuttingModel, Rest } from "./model.ts";

/** What a stick costs and what a piece left uncut costs (null: every piece must be cut), in the master's own scale. */
export interface MasterCosts {
  readonly sticks: readonly number[];
  readonly uncut: readonly number[] | null;
}

export interface MasterAnswer {
  readonly objective: number;
  /** Per column. */
  readonly values: readonly number[];
  /** Dual price per kind, 0 or more; 0 for kinds that the rest does not want. */
  readonly piecePrices: readonly number[];
  /** Rent per stick kind, 0 or more: what one more stick of a limited kind would save. */
  readonly rents: readonly number[];
}

/** The columns in whole or broken amounts so that every piece of the rest is cut: null when they cannot. */
export function solveMaster(
  model: CuttingModel,
  rest: Rest,
  columns: readonly Column[],
  costs: MasterCosts,
  solver: Solver,
): MasterAnswer | null {
  const { program, kinds, limited } = masterProgram(model, rest, columns, costs);
  const answer = solver.solve(program);
  if (answer.status !== "optimal") return null;
  const piecePrices = rest.demand.map(() => 0);
  const rents = rest.limits.map(() => 0);
  kinds.forEach((kind, row) => (piecePrices[kind] = Math.max(0, answer.duals[row]!)));
  limited.forEach((stick, i) => (rents[stick] = Math.max(0, -answer.duals[kinds.length + i]!)));
  return { objective: answer.objective, values: answer.values.slice(0, columns.length), piecePrices, rents };
}

/** The same program with whole numbers asked for, for the callers that settle the plan. */
export function masterProgram(
  model: CuttingModel,
  rest: Rest,
  columns: readonly Column[],
  costs: MasterCosts,
  integer = false,
): {
  readonly program: LinearProgram;
  readonly kinds: readonly number[];
  readonly limited: readonly number[];
} {
  const kinds = model.widths.map((_, k) => k).filter((k) => rest.demand[k]! > 0);
  const limited = model.sticks.map((_, s) => s).filter((s) => rest.limits[s]! < Infinity);
  const entries = new Map<number, (readonly [number, number])[]>(kinds.map((k) => [k, []]));
  columns.forEach((column, c) => column.counts.forEach((n, k) => n > 0 && entries.get(k)?.push([c, n])));
  if (costs.uncut) kinds.forEach((k, i) => entries.get(k)!.push([columns.length + i, 1]));
  const ofStick = (s: number): (readonly [number, number])[] =>
    columns.flatMap((c, i) => (c.stick === s ? [[i, 1] as const] : []));
  const column = (cost: number): LinearProgram["columns"][number] => ({
    cost,
    lower: 0,
    upper: Infinity,
    integer,
  });
  return {
    kinds,
    limited,
    program: {
      sense: "min",
      columns: [
        ...columns.map((c) => column(costs.sticks[c.stick]!)),
        ...(costs.uncut ? kinds.map((k) => column(costs.uncut![k]!)) : []),
      ],
      rows: [
        ...kinds.map((k) => ({ lower: rest.demand[k]!, upper: Infinity, entries: entries.get(k)! })),
        ...limited.map((s) => ({ lower: -Infinity, upper: rest.limits[s]!, entries: ofStick(s) })),
      ],
    },
  };
}
