import { tables } from "@causey/data/tables";
import type { Progress } from "@causey/engine/formula";
import { derive } from "@causey/engine/plan";
import { exchangeFiles } from "@causey/io/exports";
import { resultFiles, withoutHidden } from "@causey/io/results";
import { drive } from "@causey/runtime/jobs";
import { loadSolver } from "@causey/runtime/solver";
import { resolve } from "node:path";
import { problemLines, problemTally, readArgs, UsageError, writeOut, type Shell } from "../shell/index.ts";
import { summary } from "@causey/papers/summary";
import { readPlanFolder } from "./read-folder.ts";

const form = "causey plan DIR --out OUT [--force] [--quiet]";

/** `causey plan DIR --out OUT`: reads the folder, derives the whole plan, writes the results and prints one page. */
export async function runPlan(args: readonly string[], shell: Shell): Promise<number> {
  const { values, places } = readArgs(
    args,
    { out: { type: "string" }, quiet: { type: "boolean" }, force: { type: "boolean" } },
    ["DIR"],
    form,
  );
  if (typeof values["out"] !== "string")
    throw new UsageError(`Say where the results go with --out OUT.\nForm: ${form}`);
  return planFolder(
    places[0]!,
    resolve(values["out"]),
    { isLoud: values["quiet"] !== true, force: values["force"] === true },
    shell,
  );
}

async function planFolder(
  folder: string,
  out: string,
  { isLoud, force }: { readonly isLoud: boolean; readonly force: boolean },
  shell: Shell,
): Promise<number> {
  const read = await readPlanFolder(folder);
  if (!read.ok) {
    shell.error(problemLines(read.problems));
    shell.error(`${folder}: ${problemTally(read.problems)}; nothing was written.`);
    return 2;
  }
  if (read.warnings.length > 0) shell.error(problemLines(read.warnings));
  const job = derive(read, { tables, solver: await loadSolver() });
  const done = await drive(job, { aborted: false }, isLoud ? progressTo(process.stderr) : () => {});
  if (!done.ok) return 1;
  const exchange = await exchangeFiles(withoutHidden(done.value, read.plan.zones), read.site.crs);
  if (exchange.warnings.length > 0) shell.error(problemLines(exchange.warnings));
  await writeOut(out, new Map([...resultFiles(done.value, read.plan), ...exchange.files]), force);
  shell.out(summary(done.value, read.plan));
  return 0;
}

/** One line of progress, rewritten in place; nothing where the output is not a terminal. */
function progressTo(stream: NodeJS.WriteStream): (p: Progress) => void {
  let last = "";
  return ({ note }) => {
    if (!stream.isTTY || note === last) return;
    last = note;
    stream.write(`\r\u001b[K${note}`);
  };
}
