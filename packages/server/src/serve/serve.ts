import { randomUUID } from "node:crypto";
import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import { calculations } from "@causey/engine/plan";
import { readFolder } from "@causey/io/folder";
import { loadSolver } from "@causey/runtime/solver";
import { databaseOf, openSqliteStore } from "@causey/runtime/store";
import { calcDesk, createApp, planFormat, type AppOptions } from "../app/index.ts";
import { listen } from "./listen.ts";
import { openBrowser } from "./open-browser.ts";
import { seedDemo } from "./seed-demo.ts";
import { freshSecret, sessionSecret } from "./session-secret.ts";

export interface ServeOptions {
  /** Where everything is kept; made when it is not there. */
  readonly dataFolder: string;
  /** 0 for any free port. */
  readonly port: number;
  /** Whether to open the start address in the user's browser. */
  readonly open: boolean;
  /** Folder of the built pages. */
  readonly staticFolder: string;
  /** Plan folders of the demos, for a store that has no plan yet; the last one is opened first. */
  readonly demoFolders?: readonly string[];
  /** Hears of faults of the server; it goes on without what failed. Standard error when left out. */
  readonly report?: (error: unknown) => void;
}

export interface Serving {
  /** The start address with its token: whoever opens it is let in. */
  readonly url: string;
  readonly port: number;
  readonly close: () => Promise<void>;
}

/**
 * Starts the server on this machine alone. The token of the start address is new at every start; the browsers that
 * came by it stay let in (see `sessionSecret`).
 * Throws `StoreError` when the data folder holds no store of this version, `ProblemError` when the port is taken.
 */
export async function serve(options: ServeOptions): Promise<Serving> {
  const { dataFolder, staticFolder, demoFolders = [], report = console.error } = options;
  const plans = planFormat(readyKits, tables);
  const store = await openSqliteStore(databaseOf(dataFolder), { clock: Date, newId: randomUUID });
  try {
    const demos = demoFolders.map((folder) => () => readFolder(folder));
    await seedDemo(store, plans, demos, report);
    const calc = calcDesk(calculations, { tables, solver: await loadSolver() });
    const parts = { store, plans, calc, staticFolder, report };
    return await start(options, parts);
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function start(options: ServeOptions, parts: Omit<AppOptions, "access">): Promise<Serving> {
  const token = freshSecret();
  const session = await sessionSecret(options.dataFolder);
  const listening = await listen(options.port, (port) => {
    const app = createApp({ ...parts, access: { port, token, session } });
    return (request) => app.fetch(request);
  });
  const url = `http://127.0.0.1:${listening.port}/?token=${token}`;
  if (options.open) openBrowser(url);
  return {
    url,
    port: listening.port,
    close: async () => {
      await listening.close();
      await parts.store.close();
    },
  };
}
