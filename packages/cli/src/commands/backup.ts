import { backupStore } from "@causey/runtime/store";
import { resolve } from "node:path";
import { readArgs, UsageError, type Shell } from "../shell/index.ts";
import { defaultDataFolder } from "./serve.ts";

const form = "causey backup --to FILE [--data DIR]";

/** `causey backup --to FILE`: a whole copy of the store, taken while it may be in use. */
export async function runBackup(args: readonly string[], shell: Shell): Promise<number> {
  const { values } = readArgs(args, { to: { type: "string" }, data: { type: "string" } }, [], form);
  if (typeof values["to"] !== "string")
    throw new UsageError(`Say where the copy goes with --to FILE.\nForm: ${form}`);
  const data = resolve(typeof values["data"] === "string" ? values["data"] : defaultDataFolder());
  const report = await backupStore(data, resolve(values["to"]));
  shell.out(
    `The store in ${data} is copied to ${report.file}: ${report.plans} plans, ${report.files} files, ${report.bytes} bytes. The files lie in "files" beside it and belong to it.`,
  );
  return 0;
}
