import type { Solver } from "../fabrication/solver.ts";
import type { Tables } from "./tables.ts";

/** What every registered method may use: the tables, and a solver where the shell has one. Nothing global. */
export interface CalcContext {
  readonly tables: Tables;
  readonly solver?: Solver;
}
