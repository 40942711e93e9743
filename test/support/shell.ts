import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";

const root = resolve(import.meta.dirname, "../..");
export const program = join(root, "packages/cli/bin/causey.mjs");

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly error: string;
}

/** Runs the built `causey`, as a user does. `npm test` builds first. */
export function causey(args: readonly string[], input?: string): Ran {
  if (!existsSync(join(root, "packages/cli/dist/main/index.js")))
    throw new Error("Causey is not built: run `npm run build`.");
  const ran = spawnSync(process.execPath, [program, ...args], {
    encoding: "utf8",
    input,
    maxBuffer: 256 * 1024 * 1024,
  });
  return { code: ran.status, out: ran.stdout, error: ran.stderr };
}

export const temporaryFolder = (): string => mkdtempSync(join(tmpdir(), "causey-test-"));

/** Writes files of a plan folder into a new temporary folder. */
export function folderOf(files: ReadonlyMap<string, string | Uint8Array>): string {
  const folder = temporaryFolder();
  for (const [name, content] of files) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}

/** The demo folder in the repository. */
export const demoFolder = join(root, "examples/salt-meadow");
