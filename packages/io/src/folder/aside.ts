import { createHash, randomUUID } from "node:crypto";
import { mkdir, readdir, rm } from "node:fs/promises";
import { hostname } from "node:os";
import { basename, dirname, join } from "node:path";

/** Which machine, in eight signs: a process number means nothing on another one that shares the disk. */
const host = (): string => createHash("sha256").update(hostname()).digest("hex").slice(0, 8);

const beginning = (target: string): string => `.${basename(target)}-writing-${host()}-`;

/** Makes an empty folder beside `target` to write into, named by machine and process. Its path. */
export async function makeAside(target: string): Promise<string> {
  const aside = join(dirname(target), `${beginning(target)}${process.pid}-${randomUUID()}`);
  await mkdir(aside);
  return aside;
}

/** Takes away what runs left beside `target` that were killed while they wrote: their processes are gone. */
export async function clearLeftovers(target: string): Promise<void> {
  const start = beginning(target);
  const names = await readdir(dirname(target)).catch(() => []);
  for (const name of names) {
    const pid = name.startsWith(start) ? /^\d+(?=-)/.exec(name.slice(start.length))?.[0] : undefined;
    if (pid !== undefined && !isRunning(Number(pid)))
      await rm(join(dirname(target), name), { recursive: true, force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && "code" in error && error.code === "EPERM";
  }
}
