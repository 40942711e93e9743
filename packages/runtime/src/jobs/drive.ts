import type { Cancel, Job, Progress } from "@causey/engine/formula";

export type Driven<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly why: "cancelled" };

/**
 * Runs a job slice by slice: reports each progress, then pauses so that the thread can hear "cancel".
 *
 * A cancelled job is closed (its `finally` blocks run) and never resumed. What the job or `report` throws
 * comes out as a rejection; the job is closed then too.
 */
export async function drive<T>(
  job: Job<T>,
  cancel: Cancel,
  report: (progress: Progress) => void,
  pause: () => Promise<void> = nextTurn,
): Promise<Driven<T>> {
  try {
    while (!cancel.aborted) {
      const step = job.next();
      if (step.done) return { ok: true, value: step.value };
      report(step.value);
      await pause();
    }
    return { ok: false, why: "cancelled" };
  } finally {
    job.return(undefined as T);
  }
}

/** Gives the thread's message queue a turn: a resolved promise alone would not. */
export const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
