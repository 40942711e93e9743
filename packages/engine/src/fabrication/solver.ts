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
  /** Seconds of solver time; a solver that stops early says so in `status`. */
  readonly time_limit_s?: number;
  readonly relative_gap?: number;
}

export interface LinearSolution {
  readonly status: "optimal" | "time-limit" | "infeasible" | "unbounded" | "error";
  readonly objective: number;
  /** Best proven bound; equals the objective for a solved linear program. */
  readonly bound: number;
  readonly values: readonly number[];
  /** Dual price per row; empty for whole-number programs. */
  readonly duals: readonly number[];
}

/** The same input gives the same answer: fixed seed, one thread. */
export interface Solver {
  readonly name: string;
  readonly solve: (program: LinearProgram) => LinearSolution;
}
