import { ProblemError, type Problem } from "@causey/engine/formula";
import { FILE_LIMITS, fileNameFault, type PlanFiles } from "@causey/io/files";
import type { Context } from "hono";
import { requestProblem } from "./answers.ts";
import { contentType } from "./body.ts";
import type { PlanFormat } from "./options.ts";

const isArchive = (type: string): boolean =>
  type === "application/zip" || type === "application/octet-stream";
export const isUpload = (type: string): boolean => isArchive(type) || type === "multipart/form-data";

/** The files of a plan folder, from an archive or from a form with the folder's files. Throws `ProblemError`. */
export async function uploadedFiles(c: Context, plans: PlanFormat): Promise<PlanFiles> {
  if (isArchive(contentType(c))) return plans.readArchive(new Uint8Array(await c.req.arrayBuffer()));
  const files = await formFiles(c);
  const [only] = files;
  return files.size === 1 && only?.[0].toLowerCase().endsWith(".zip") ? plans.readArchive(only[1]) : files;
}

async function formFiles(c: Context): Promise<PlanFiles> {
  const form = await c.req.formData().catch((error: unknown) => {
    throw new ProblemError([
      requestProblem("form", "body", String(error), "The form cannot be read.", "Send the files again."),
    ]);
  });
  const files = new Map<string, Uint8Array>();
  const problems: Problem[] = [];
  for (const [field, part] of form) {
    if (typeof part === "string") problems.push(notAFile(field));
    else {
      problems.push(...nameProblems(part.name, files));
      files.set(part.name, new Uint8Array(await part.arrayBuffer()));
    }
  }
  if (problems.length > 0) throw new ProblemError(problems);
  return files;
}

const notAFile = (field: string): Problem =>
  requestProblem("form", field, "", "This part of the form is not a file.", "Send the plan's files only.");

function nameProblems(name: string, files: PlanFiles): Problem[] {
  const problem = (message: string, mend: string): Problem[] => [
    requestProblem("file-name", "file", name, message, mend),
  ];
  const fault = fileNameFault(name);
  if (fault) return problem(`The file's name is refused: ${fault}.`, "Rename the file.");
  if (files.has(name)) return problem("Two files have this name.", "Send one of them.");
  if (files.size >= FILE_LIMITS.entries)
    return problem(`More than ${FILE_LIMITS.entries} files are not taken in.`, "Leave some out.");
  return [];
}
