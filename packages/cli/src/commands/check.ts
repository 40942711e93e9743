import { ProblemError } from "@causey/engine/formula";
import { problemLines, problemTally, readArgs, type Shell } from "../shell/index.ts";
import { readPlanFolder } from "./read-folder.ts";

/** `causey check DIR`: everything wrong with a plan folder, at once. */
export async function runCheck(args: readonly string[], shell: Shell): Promise<number> {
  const { values, places } = readArgs(
    args,
    { json: { type: "boolean" } },
    ["DIR"],
    "causey check DIR [--json]",
  );
  const read = await readPlanFolder(places[0]!).catch((error: unknown) => {
    if (error instanceof ProblemError) return { ok: false as const, problems: error.problems };
    throw error;
  });
  const problems = read.ok ? read.warnings : read.problems;
  if (values["json"] === true) shell.out(JSON.stringify({ ok: read.ok, problems }));
  else {
    if (problems.length > 0) shell.error(problemLines(problems));
    shell.out(
      read.ok
        ? `${places[0]}: nothing stands in the way of planning${problems.length > 0 ? `, ${problemTally(problems)}` : ""}.`
        : `${places[0]}: ${problemTally(problems)}.`,
    );
  }
  return read.ok ? 0 : 2;
}
