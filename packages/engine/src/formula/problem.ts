/** One thing wrong with what the user gave, in words that help: where it is, what stands there, how to mend it. */
export interface Problem {
  readonly code: string;
  readonly severity: "error" | "warning";
  /** File of the plan folder, or "input" for a calculation's input. */
  readonly file: string;
  /** Place inside the file: a JSON path, a feature id, a line number, a byte offset. */
  readonly place: string;
  /** What stands there now, shortened. */
  readonly value: string;
  readonly message: string;
  readonly mend: string;
}

/** Thrown by readers: carries every problem found, never only the first. */
export class ProblemError extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems.map((p) => `${p.file}, ${p.place}: ${p.message}`).join("\n"));
    this.name = "ProblemError";
    this.problems = problems;
  }
}
