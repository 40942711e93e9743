import { spawn, type ChildProcess } from "node:child_process";
import { watch } from "node:fs";
import { readdir } from "node:fs/promises";
import { program } from "./shell.ts";

export interface Running {
  readonly child: ChildProcess;
  /** Settles when the program has ended. */
  readonly ended: Promise<{
    readonly code: number | null;
    readonly signal: string | null;
    readonly error: string;
  }>;
}

/** Starts the built `causey` and lets it run. */
export function startCausey(args: readonly string[]): Running {
  const child = spawn(process.execPath, [program, ...args], { stdio: ["ignore", "ignore", "pipe"] });
  let error = "";
  child.stderr.setEncoding("utf8").on("data", (text: string) => (error += text));
  const ended = new Promise<Awaited<Running["ended"]>>((done, failed) => {
    child.once("error", failed);
    child.once("close", (code, signal) => done({ code, signal, error }));
  });
  return { child, ended };
}

/** Settles with the name of the first entry of `folder` that fits, as soon as it is there. */
export async function entryIn(folder: string, fits: (name: string) => boolean): Promise<string> {
  const watcher = watch(folder);
  try {
    return await new Promise<string>((found, failed) => {
      const look = (): void =>
        void readdir(folder).then((names) => {
          const name = names.find(fits);
          if (name !== undefined) found(name);
        }, failed);
      watcher.on("change", look).on("error", failed);
      look();
    });
  } finally {
    watcher.close();
  }
}
