import { ProblemError, type Problem } from "@causey/engine/formula";
import { FILE_LIMITS } from "@causey/io/files";

/** Bytes of a file that was chosen. Throws `ProblemError` when it is larger than is read; `mend`: what to do then. */
export async function bytesOf(file: File, mend: string): Promise<Uint8Array> {
  if (file.size > FILE_LIMITS.file_bytes)
    throw new ProblemError([
      {
        code: "file-size",
        severity: "error",
        file: file.name,
        place: "file",
        value: `${Math.round(file.size / 1e6)} MB`,
        message: `The file is larger than the ${Math.round(FILE_LIMITS.file_bytes / 1e6)} MB that are read.`,
        mend,
      },
    ]);
  return new Uint8Array(await file.arrayBuffer());
}

/** What stopped the reading of a chosen file; `other`: how else to bring it in. */
export function problemsOf(name: string, error: unknown, other: string): readonly Problem[] {
  if (error instanceof ProblemError) return error.problems;
  return [
    {
      code: "file-unreadable",
      severity: "error",
      file: name,
      place: "file",
      value: "",
      message: `The file could not be read: ${error instanceof Error ? error.message : String(error)}`,
      mend: `Choose it once more; if that does not help, ${other}.`,
    },
  ];
}
