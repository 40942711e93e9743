import { existsSync } from "node:fs";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { serve } from "@causey/server/serve";

export interface Running {
  /** The start address: whoever opens it is let in. */
  readonly url: string;
  /** Faults of the server; a test that went well leaves none. */
  readonly faults: readonly unknown[];
  readonly close: () => Promise<void>;
}

const root = resolve(import.meta.dirname, "../../..");
const pages = join(root, "packages/web/dist");

/** The demo's plan folder, which a fresh store opens with. */
export const demoFolder = join(root, "examples/salt-meadow");

/** Starts the real server on a free port, with a store of its own, the built pages and the demo plan. */
export async function startCausey(within: string = tmpdir()): Promise<Running> {
  if (!existsSync(join(pages, "index.html")))
    throw new Error("The pages are not built: run `npm run build` before the browser tests.");
  const dataFolder = await mkdtemp(join(within, "causey-browser-test-"));
  const faults: unknown[] = [];
  const serving = await serve({
    dataFolder,
    port: 0,
    open: false,
    staticFolder: pages,
    demoFolders: [demoFolder],
    report: (fault) => faults.push(fault),
  });
  return {
    url: serving.url,
    faults,
    close: async () => {
      await serving.close();
      await rm(dataFolder, { recursive: true, force: true });
    },
  };
}
