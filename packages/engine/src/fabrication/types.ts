/** Lengths in whole millimetres: a tape and a stop block read no finer. */
export interface CuttingProblem {
  readonly kerf_mm: number;
  readonly stock: readonly {
    readonly length_mm: number;
    readonly price: number;
    readonly available?: number;
  }[];
  readonly pieces: readonly { readonly length_mm: number; readonly count: number }[];
}

export interface CuttingPattern {
  readonly stock_mm: number;
  /** How many sticks are sawn this way. */
  readonly times: number;
  readonly cuts: readonly { readonly length_mm: number; readonly count: number }[];
  readonly offcut_mm: number;
}

export interface CuttingPlan {
  readonly cost: number;
  /** No plan costs less than this; bound <= optimum <= cost. */
  readonly bound: number;
  /** True only when the gap is closed. */
  readonly proven: boolean;
  readonly stock_used: readonly { readonly length_mm: number; readonly count: number }[];
  readonly patterns: readonly CuttingPattern[];
}
