import { freshPlanFiles } from "@causey/io/fresh";
import { basename, resolve } from "node:path";
import { readArgs, writeOut, type Shell } from "../shell/index.ts";

/** `causey new DIR`: a plan folder to start from. Never writes over a folder that is there. */
export async function runNew(args: readonly string[], shell: Shell): Promise<number> {
  const { values, places } = readArgs(
    args,
    { force: { type: "boolean" } },
    ["DIR"],
    "causey new DIR [--force]",
  );
  const folder = resolve(places[0]!);
  await writeOut(folder, freshPlanFiles(basename(folder)), values["force"] === true);
  shell.out(
    `${places[0]} holds a plan to start from. Read its README.txt, then run: causey check ${places[0]}`,
  );
  return 0;
}
