import { tables } from "@causey/data/tables";
import { derive } from "@causey/engine/plan";
import { withoutHidden } from "@causey/io/results";
import { allSheets, paperPdf, paperSet, PERMIT_SET } from "@causey/papers/set";
import { drive } from "@causey/runtime/jobs";
import { loadSolver } from "@causey/runtime/solver";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { problemLines, readArgs, UsageError, writeOut, type Shell } from "../shell/index.ts";
import { readPlanFolder } from "./read-folder.ts";

const form = "causey papers DIR --out OUT [--sheets permit|all|ID,ID] [--force]";

/** `causey papers DIR --out OUT`: draws the sheets of a plan as one PDF. */
export async function runPapers(args: readonly string[], shell: Shell): Promise<number> {
  const { values, places } = readArgs(
    args,
    { out: { type: "string" }, sheets: { type: "string" }, force: { type: "boolean" } },
    ["DIR"],
    form,
  );
  if (typeof values["out"] !== "string")
    throw new UsageError(`Say where the papers go with --out OUT.\nForm: ${form}`);
  const which = sheetsOf(typeof values["sheets"] === "string" ? values["sheets"] : "permit");
  const read = await readPlanFolder(places[0]!);
  if (!read.ok) {
    shell.error(problemLines(read.problems));
    shell.error(`${places[0]!}: ${read.problems.length} problems; nothing was written.`);
    return 2;
  }
  const job = derive(read, { tables, solver: await loadSolver() });
  const done = await drive(job, { aborted: false }, () => {});
  if (!done.ok) return 1;
  const context = {
    plan: read.plan,
    site: read.site,
    tables,
    results: withoutHidden(done.value, read.plan.zones),
  };
  const set = paperSet(context, which);
  const pdf = await paperPdf(set, context, await fonts());
  await writeOut(values["out"], new Map([["papers.pdf", pdf]]), values["force"] === true);
  shell.out(
    set.sheets
      .map((s) => `${s.title}: ${s.pages.length} ${s.pages.length === 1 ? "page" : "pages"}`)
      .join("\n"),
  );
  return 0;
}

/** Ids of the wanted sheets. Throws `UsageError` for one that is not known. */
function sheetsOf(words: string): readonly string[] {
  if (words === "permit") return PERMIT_SET;
  const known = allSheets.map((s) => s.id);
  if (words === "all") return known;
  const wanted = words.split(",").map((w) => w.trim());
  const unknown = wanted.filter((w) => !known.includes(w));
  if (unknown.length > 0)
    throw new UsageError(
      `${unknown.join(", ")}: no such sheet. There are ${known.join(", ")}.\nForm: ${form}`,
    );
  return wanted;
}

/** The text face, whole: the PDF carries what it uses. */
async function fonts(): Promise<{ readonly regular: Uint8Array; readonly semibold: Uint8Array }> {
  const read = async (address: string): Promise<Uint8Array> =>
    new Uint8Array(await readFile(fileURLToPath(address)));
  return {
    regular: await read(
      import.meta.resolve("@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf"),
    ),
    semibold: await read(
      import.meta.resolve("@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf"),
    ),
  };
}
