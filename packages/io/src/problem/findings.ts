import { ProblemError, shorten, type Problem } from "@causey/engine/formula";

/** What a reader says about one thing that is wrong: the file is known to the collection. */
export interface FaultParts {
  readonly code: string;
  /** JSON path, feature, line number or byte offset. */
  readonly place: string;
  readonly value?: unknown;
  readonly message: string;
  readonly mend: string;
}

/** One finished problem. The value is shortened so that a hostile file cannot fill the screen. */
export const fault = (file: string, parts: FaultParts, severity: Problem["severity"] = "error"): Problem => ({
  code: parts.code,
  severity,
  file,
  place: parts.place,
  value: printable(shorten(parts.value)) || "(nothing)",
  message: parts.message,
  mend: parts.mend,
});

/** Control characters would garble a terminal; they are shown as a middle dot. */
const printable = (text: string): string => text.replace(/\p{Cc}/gu, "·");

/** A name from a file, cut to a readable length and set in quotation marks. */
export const quote = (text: string): string => `"${printable(shorten(text, 60))}"`;

/** Gathers the problems of one file, so that a reader reports them all at once. */
export class Findings {
  readonly file: string;
  readonly #problems: Problem[] = [];
  #left = 100;

  constructor(file: string) {
    this.file = file;
  }

  error(parts: FaultParts): void {
    this.#add(fault(this.file, parts));
  }

  warn(parts: FaultParts): void {
    this.#add(fault(this.file, parts, "warning"));
  }

  /** After a hundred, one line says that there are more: a broken file must not hide the other files' problems. */
  #add(problem: Problem): void {
    if (this.#left > 0) this.#problems.push(problem);
    else if (this.#left === 0)
      this.#problems.push({
        ...problem,
        code: "many-problems",
        value: "",
        message: "There are more problems in this file; the first hundred are listed.",
        mend: "Mend these first, then read the file again.",
      });
    this.#left -= 1;
  }

  get all(): readonly Problem[] {
    return this.#problems;
  }

  get warnings(): readonly Problem[] {
    return this.#problems.filter((p) => p.severity === "warning");
  }

  get hasErrors(): boolean {
    return this.#problems.some((p) => p.severity === "error");
  }

  /** Throws `ProblemError` with everything found, warnings too, when there is at least one error. */
  throwIfErrors(): void {
    if (this.hasErrors) throw new ProblemError(this.#problems);
  }

  /** Reports one more error and throws everything found: for faults after which nothing more can be read. */
  stop(parts: FaultParts): never {
    this.error(parts);
    throw new ProblemError(this.#problems);
  }
}
