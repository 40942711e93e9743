import { runCalc } from "../commands/calc.ts";
import { runAudit } from "../commands/audit.ts";
import { runBackup } from "../commands/backup.ts";
import { runCheck } from "../commands/check.ts";
import { runImport } from "../commands/import.ts";
import { runNew } from "../commands/new.ts";
import { runPapers } from "../commands/papers.ts";
import { runPlan } from "../commands/plan.ts";
import { runServe } from "../commands/serve.ts";
import { FormAsked, problemLines, Stopped, UsageError, type Shell } from "../shell/index.ts";
import { ProblemError } from "@causey/engine/formula";
import { FolderWriteError } from "@causey/io/folder";
import { CAUSEY_VERSION } from "@causey/engine/plan";
import { isDiskFull, StoreError } from "@causey/runtime/store";

const commands: Readonly<Record<string, (args: readonly string[], shell: Shell) => Promise<number>>> = {
  new: runNew,
  import: runImport,
  check: runCheck,
  plan: runPlan,
  papers: runPapers,
  audit: runAudit,
  calc: runCalc,
  serve: runServe,
  backup: runBackup,
};

const help = `Causey plans temporary, removable walkways over fragile wetlands.

  causey new DIR                         make a plan folder to start from; --terrain FILE takes a GeoTIFF or ASCII grid
                                         in, with its coordinate system (--crs EPSG:CODE where it names none, --datum)
  causey import DIR FILE --as areas|starts|plots --out OUT   add what a mapping program's file holds (zipped shapefile,
                                         KML, GPX, GeoPackage, GeoJSON); "causey import" alone lists the options
  causey check DIR                       list everything wrong with a plan folder
  causey plan DIR --out OUT [--force]    find, check and price the walkway; write the results; --force moves aside what
                                         stands in OUT and was not written by Causey; --quiet shows no progress
  causey papers DIR --out OUT [--sheets permit|all|ID,ID] [--force]   draw the permit set, or other sheets, as one PDF
  causey audit DIR OUT                   hold a finished layout against every hard rule, independently
  causey serve [--data DIR] [--port N] [--open]   open Causey in the browser, on this machine only
  causey backup --to FILE [--data DIR]   copy the store while it is in use
  causey calc --list [--json]            list every calculation
  causey calc ID                         its inputs and outputs, with their sources
  causey calc ID --in FILE [--json]      run one calculation on a JSON file, or - for standard input

Each command tells its form with --help, as in: causey new --help
Exit codes: 0 done, 1 something failed, 2 the input has problems (all of them are listed), 130 stopped with Ctrl-C.
Causey supports judgement. It does not replace a licensed engineer, the local code or the permit officer.`;

/** Runs one command line and returns its exit code. */
export async function main(args: readonly string[], shell: Shell = realShell): Promise<number> {
  const [name, ...rest] = args;
  process.stdout.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") process.exit(0);
    throw error;
  });
  if (name === "--version") {
    shell.out(CAUSEY_VERSION);
    return 0;
  }
  if (name === undefined || name === "help" || name === "--help" || name === "-h") {
    shell.out(help);
    return 0;
  }
  const command = commands[name];
  if (!command) {
    shell.error(
      `"${name}" is not a command. ${Object.keys(commands).join(", ")} are; "causey help" explains them.`,
    );
    return 2;
  }
  try {
    return await command(rest, shell);
  } catch (error) {
    if (error instanceof FormAsked) {
      shell.out(`${error.message}\nCausey's own help: causey help`);
      return 0;
    }
    return told(error, shell);
  }
}

/** Says what went wrong, and the exit code for it; what no user could mend is thrown on. */
function told(error: unknown, shell: Shell): number {
  if (error instanceof Stopped) {
    shell.error("Stopped. Nothing was written.");
    return STOPPED;
  }
  if (error instanceof ProblemError) shell.error(problemLines(error.problems));
  else if (error instanceof FolderWriteError) shell.error(problemLines([error.problem]));
  else if (error instanceof UsageError || error instanceof StoreError) shell.error(error.message);
  else if (isDiskFull(error))
    shell.error(
      "The disk is full: nothing was kept. Free some space on it, or choose another disk, and run it again.",
    );
  else if (isFileError(error))
    shell.error(
      `${error.path}: cannot be read or written (${error.code}). Give a place that is there and yours.`,
    );
  else throw error;
  return error instanceof StoreError || error instanceof FolderWriteError || isDiskFull(error) ? 1 : 2;
}

/** As shells count a program that Ctrl-C ended: 128 and the number of the signal. */
const STOPPED = 130;

interface FileError extends Error {
  readonly code: string;
  readonly path: string;
}
const isFileError = (error: unknown): error is FileError =>
  error instanceof Error && "code" in error && "path" in error && typeof error.path === "string";

const realShell: Shell = {
  out: (text) => process.stdout.write(`${text}\n`),
  error: (text) => process.stderr.write(`${text}\n`),
};
