import { serve } from "@causey/server/serve";
import { homedir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { readArgs, UsageError, type Shell } from "../shell/index.ts";

const form = "causey serve [--data DIR] [--port N] [--open]";
const root = fileURLToPath(new URL("../../../..", import.meta.url));

/** Where the store lies unless the user says otherwise. */
export const defaultDataFolder = (): string => process.env["CAUSEY_STORE"] ?? join(homedir(), ".causey");

/** `causey serve`: Causey in the browser, bound to this machine. Ends on Ctrl-C. */
export async function runServe(args: readonly string[], shell: Shell): Promise<number> {
  const { values } = readArgs(
    args,
    { data: { type: "string" }, port: { type: "string" }, open: { type: "boolean" } },
    [],
    form,
  );
  const port = values["port"] === undefined ? 4170 : Number(values["port"]);
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new UsageError(`"${String(values["port"])}" is not a port.\nForm: ${form}`);
  const { url, close } = await serve({
    dataFolder: resolve(typeof values["data"] === "string" ? values["data"] : defaultDataFolder()),
    port,
    open: values["open"] === true && !process.env["CI"],
    staticFolder: join(root, "packages/web/dist"),
    demoFolders: ["spring-fen", "salt-meadow"].map((name) => join(root, "examples", name)),
  });
  shell.out(`Causey is open at ${url}\nOnly this machine can reach it. Stop it with Ctrl-C.`);
  await new Promise<void>((done) => {
    process.once("SIGINT", done);
    process.once("SIGTERM", done);
  });
  await close();
  return 0;
}
