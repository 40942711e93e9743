import { ProblemError, type Problem } from "@causey/engine/formula";

/** The problems that a reader throws; fails when it throws anything else, or nothing. */
export async function problemsOf(read: () => unknown): Promise<readonly Problem[]> {
  try {
    await read();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
  throw new Error("the reader accepted what it should refuse");
}

/** What a reader makes of hostile bytes: its value, or null for a refusal by ProblemError. Anything else escapes. */
export async function valueOrRefusal<T>(read: () => T | Promise<T>): Promise<T | null> {
  try {
    return await read();
  } catch (error) {
    if (error instanceof ProblemError && error.problems.length > 0) return null;
    throw error;
  }
}

/** A problem must help: file, place, message and mend are never empty. */
export const isHelpful = (p: Problem): boolean =>
  [p.code, p.file, p.place, p.value, p.message, p.mend].every((text) => text.length > 0);

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
