/** A linear program, columns may be whole numbers: the port through which a solver reaches the engine. */
export interface LinearProgram {
  readonly sense: "min" | "max";
  readonly columns: readonly {
    readonly cost: number;
    readonly lower: number;
    readonly upper: number;
    readonly integer: boolean;
  }[];
  readonly rows: readonly {
    readonly lower: number;
    readonly upper: number;
    readonly entries: readonly (readonly [column: number, value: number])[];
  }[];
  /** Seconds of solver time; a solver that stops early says so in `status`. The clock makes answers differ: prefer `node_limit`. */
  readonly time_limit_s?: number;
  /** Most branch-and-bound nodes: work that is the same on every machine. Stopping here is status "node-limit". */
  readonly node_limit?: number;
  /** Stop once (objective - bound) / |objective| is no more than this; 0 when absent. */
  readonly relative_gap?: number;
  /** Stop once objective - bound is no more than this; 1e-6 when absent. */
  readonly absolute_gap?: number;
  /** False switches off the search in neighbourhoods of good answers: for programs posed to prove, not to find. */
  readonly neighbourhoods?: boolean;
  /** A known feasible answer, one value per column, that a whole-number search starts from. */
  readonly start?: readonly number[];
}

export interface LinearSolution {
  readonly status: "optimal" | "time-limit" | "node-limit" | "infeasible" | "unbounded" | "error";
  /** Infinity (minus infinity for "max") when there is no feasible answer. */
  readonly objective: number;
  /** Best proven bound; equals the objective for a solved linear program. */
  readonly bound: number;
  /** Empty when no feasible answer is known. */
  readonly values: readonly number[];
  /** Dual price per row; empty for whole-number programs. */
  readonly duals: readonly number[];
}

/** The same input gives the same answer: fixed seed, one thread. */
export interface Solver {
  readonly name: string;
  readonly solve: (program: LinearProgram) => LinearSolution;
}
