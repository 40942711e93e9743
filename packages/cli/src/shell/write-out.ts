import { writeFolder } from "@causey/io/folder";
import type { PlanFiles } from "@causey/io/files";
import { resolve } from "node:path";

/** The user stopped the program while it wrote; nothing was kept of it. */
export class Stopped extends Error {}

const SIGNALS = ["SIGINT", "SIGTERM"] as const;

/**
 * Writes the folder that a command makes. Ctrl-C while it is written takes back what was written so far and ends the
 * command with `Stopped`; at any other time it ends the program at once, for then nothing is being written.
 */
export async function writeOut(dir: string, files: PlanFiles, force: boolean): Promise<void> {
  const stop = new AbortController();
  const onSignal = (): void => stop.abort(new Stopped());
  for (const signal of SIGNALS) process.on(signal, onSignal);
  try {
    await writeFolder(resolve(dir), files, { force, signal: stop.signal });
  } finally {
    for (const signal of SIGNALS) process.off(signal, onSignal);
  }
}
