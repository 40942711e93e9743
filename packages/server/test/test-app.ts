import { randomUUID } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineMethod } from "@causey/engine/formula";
import { openSqliteStore, type Store } from "@causey/runtime/store";
import type { Hono } from "hono";
import { samplePlan } from "../../engine/test/plan/sample-plan.ts";
import { sampleFiles } from "../../runtime/test/store-contract.ts";
import { calcDesk, createApp } from "../src/app/index.ts";
import { fakeFormat } from "./fake-format.ts";

export const PORT = 4317;
export const HOST = `127.0.0.1:${PORT}`;
export const access = { port: PORT, token: "start-token", session: "session-secret" };
export const cookie = `causey_${PORT}=${access.session}`;

const double = defineMethod<{ readonly factor: number }>(
  {
    id: "test.double",
    title: "Twice a length",
    inputs: [{ key: "length_mm", title: "Length", type: "number", min: 0 }],
    outputs: [{ key: "doubled_mm", title: "Twice the length", type: "number" }],
    validity: "Any length.",
    sources: [],
  },
  (input, { factor }) => ({ doubled_mm: (input["length_mm"] as number) * factor }),
);
const broken = defineMethod<{ readonly factor: number }>(
  { id: "test.broken", title: "Broken", inputs: [], outputs: [], validity: "Never.", sources: [] },
  () => {
    throw new Error("secret detail of the machine");
  },
);

const isRaw = (body: unknown): body is string | Uint8Array<ArrayBuffer> =>
  typeof body === "string" || body instanceof Uint8Array;

export interface TestApp {
  readonly app: Hono;
  readonly store: Store;
  readonly folder: string;
  readonly reported: readonly unknown[];
  /** A request as the signed-in page sends it; headers given here win, an empty one is left out. */
  readonly ask: (path: string, init?: RequestInit) => Promise<Response>;
  readonly post: (path: string, body: unknown, headers?: Record<string, string>) => Promise<Response>;
  readonly close: () => Promise<void>;
}

/** The app over a real store with the sample plan in it. */
export async function testApp(): Promise<TestApp> {
  const folder = await mkdtemp(join(tmpdir(), "causey-server-"));
  const store = await openSqliteStore(join(folder, "causey.sqlite"), { clock: Date, newId: randomUUID });
  await store.createPlan(samplePlan(), sampleFiles());
  const reported: unknown[] = [];
  const app = createApp({
    store,
    access,
    plans: fakeFormat,
    calc: calcDesk([double, broken], { factor: 2 }),
    staticFolder: join(folder, "pages"),
    report: (error) => reported.push(error),
  });
  const ask = async (path: string, init: RequestInit = {}): Promise<Response> => {
    const usual = { host: HOST, origin: `http://${HOST}`, cookie };
    const headers = new Headers({ ...usual, ...(init.headers as Record<string, string>) });
    for (const [name, value] of [...headers]) if (value === "") headers.delete(name);
    return app.request(`http://${HOST}${path}`, { ...init, headers });
  };
  return {
    app,
    store,
    folder,
    reported,
    ask,
    post: (path, body, headers = {}) =>
      ask(path, {
        method: "POST",
        headers: { "content-type": "application/json", ...headers },
        body: isRaw(body) ? body : JSON.stringify(body),
      }),
    close: async () => {
      await store.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

export interface ProblemBody {
  readonly title: string;
  readonly status: number;
  readonly problems: readonly { readonly code: string; readonly place: string; readonly message: string }[];
}

/** The codes and places of an `application/problem+json` answer. */
export async function problemsIn(response: Response): Promise<readonly (readonly [string, string])[]> {
  const body = (await response.json()) as ProblemBody;
  return body.problems.map((p) => [p.code, p.place]);
}
