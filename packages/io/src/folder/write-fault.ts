import type { Problem } from "@causey/engine/formula";
import { fault, quote } from "../problem/index.ts";

/** The system could not write: the disk is full, or the place may not be written. Nothing of the folder was changed. */
export class FolderWriteError extends Error {
  readonly problem: Problem;
  constructor(problem: Problem, cause: unknown) {
    super(problem.message, { cause });
    this.name = "FolderWriteError";
    this.problem = problem;
  }
}

const FULL = new Set(["ENOSPC", "EDQUOT", "EFBIG"]);
const SHUT = new Set(["EACCES", "EPERM", "EROFS"]);

/** What the system says of a file, in words for the user; any other fault as it is. */
export function writeFault(dir: string, place: string, bytes: number, error: unknown): unknown {
  const code = error instanceof Error && "code" in error ? String(error.code) : "";
  if (!/^E[A-Z0-9]+$/.test(code)) return error;
  const [message, mend] = FULL.has(code)
    ? [
        `The disk is full: ${quote(place)} cannot be written`,
        `Free at least ${megabytes(bytes)} MB on that disk, or choose a folder on another one, and run it again.`,
      ]
    : SHUT.has(code)
      ? [
          `Nothing may be written where ${quote(dir)} should stand`,
          "Choose a folder of your own, or have the rights of this one changed.",
        ]
      : [`The disk refuses to keep ${quote(place)}`, "Check the disk, or choose a folder on another one."];
  const problem = {
    code: "folder-write",
    place,
    value: code,
    message: `${message}. Nothing was changed in ${quote(dir)}.`,
    mend,
  };
  return new FolderWriteError(fault(dir, problem), error);
}

/** All files of the folder together, rounded up. */
const megabytes = (bytes: number): number => Math.max(1, Math.ceil(bytes / 1e6));
