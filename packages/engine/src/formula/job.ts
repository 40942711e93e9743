/** Shaped like AbortSignal, needs no DOM types. */
export interface Cancel {
  readonly aborted: boolean;
}
export interface Progress {
  readonly done: number;
  readonly total: number;
  readonly note: string;
}
/** A long computation: yields progress, returns its value. No timer, clock or message in here. */
export type Job<T> = Generator<Progress, T, void>;

/** Runs a job to its end without pausing: for tests, the shell, and short jobs. */
export function finish<T>(job: Job<T>): T {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
  }
}
