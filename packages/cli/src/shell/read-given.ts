import { ProblemError, type Problem } from "@causey/engine/formula";
import { FILE_LIMITS } from "@causey/io/files";
import { readFile, stat } from "node:fs/promises";
import { basename, resolve } from "node:path";

/** The bytes of a file that the user names. Throws `ProblemError` for what is not there, no file, or too large. */
export async function readGiven(path: string): Promise<Uint8Array> {
  const status = await stat(resolve(path)).catch(() => null);
  if (status === null)
    throw refused(
      path,
      "missing",
      "There is no such file, or it may not be read.",
      "Give the path of a file.",
    );
  if (!status.isFile())
    throw refused(path, "no file", "This is a folder or a device, not a file.", "Give the path of a file.");
  if (status.size > FILE_LIMITS.file_bytes)
    throw refused(
      path,
      `${status.size} bytes`,
      `The file is larger than the ${FILE_LIMITS.file_bytes} bytes that are read.`,
      "Export only what touches the site.",
    );
  return new Uint8Array(await readFile(resolve(path)));
}

const refused = (path: string, value: string, message: string, mend: string): ProblemError => {
  const problem: Problem = {
    severity: "error",
    code: "file-given",
    file: basename(path) || path,
    place: path,
    value,
    message,
    mend,
  };
  return new ProblemError([problem]);
};
