import type { Plan, Results } from "@causey/engine/plan";
import { afterEach, expect, test, vi } from "vitest";
import { answerDerive } from "./answer-derive.ts";
import { createDeriveClient, type WorkerPort } from "./derive-client.ts";
import type { Derive, FromWorker, ToWorker } from "./protocol.ts";

afterEach(() => vi.useRealTimers());

const plan = { id: "p" } as Plan;
const file = { name: "terrain.asc", sha256: "aa", bytes: new Uint8Array([1, 2, 3]) };
const results = { schema: 1 } as Results;
const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 1));

/** Both sides of the protocol with the messages between them, as a worker would carry them. */
function connect(derive: Derive) {
  const sent: ToWorker[] = [];
  let started = 0;
  const client = createDeriveClient(() => {
    started++;
    const port: WorkerPort = { onmessage: null, onerror: null, terminate: () => {}, postMessage: () => {} };
    const answer = answerDerive(
      derive,
      (message: FromWorker) =>
        queueMicrotask(() => port.onmessage?.({ data: message } as MessageEvent<FromWorker>)),
      () => Infinity,
    );
    return Object.assign(port, {
      postMessage: (message: ToWorker) => {
        sent.push(message);
        queueMicrotask(() => answer(message));
      },
    });
  });
  return { client, sent, starts: () => started };
}

test("the pipeline gets the plan and its files by name; contents travel once", async () => {
  const seen: [string, number[]][][] = [];
  const { client, sent } = connect(async ({ files }) => {
    seen.push([...files].map(([name, bytes]) => [name, [...bytes]]));
    return { ok: true, results, warnings: [] };
  });
  const first = await client.derive({ plan, files: [file] }, () => {});
  await client.derive({ plan, files: [file] }, () => {});
  expect(first).toEqual({ ok: true, results, warnings: [] });
  expect(seen).toEqual([[["terrain.asc", [1, 2, 3]]], [["terrain.asc", [1, 2, 3]]]]);
  expect(sent.filter((m) => m.type === "keep")).toHaveLength(1);
});

test("progress comes through and a cancel is heard between two slices", async () => {
  const notes: string[] = [];
  const { client } = connect(async (_request, hooks) => {
    for (let k = 0; ; k++) {
      if (hooks.cancelled()) return { ok: false, cancelled: true };
      hooks.report({ done: k, total: 100, note: `slice ${k}` });
      await pause();
    }
  });
  const running = client.derive({ plan, files: [] }, (p) => {
    notes.push(p.note);
    client.cancel();
  });
  expect(await running).toEqual({ ok: false, cancelled: true });
  expect(notes[0]).toBe("slice 0");
});

test("a newer request ends the older one as cancelled, and late messages of it are not heard", async () => {
  let turn = 0;
  const { client } = connect(async (_request, hooks) => {
    const mine = ++turn;
    if (mine === 1) while (!hooks.cancelled()) await pause();
    return { ok: true, results: { ...results, causey: `run ${mine}` }, warnings: [] };
  });
  const first = client.derive({ plan, files: [] }, () => {});
  await pause();
  const second = client.derive({ plan, files: [] }, () => {});
  expect(await first).toEqual({ ok: false, cancelled: true });
  expect(await second).toMatchObject({ ok: true, results: { causey: "run 2" } });
});

test("a worker that does not listen is ended, and the next request starts a fresh one with all contents", async () => {
  vi.useFakeTimers();
  const { client, sent, starts } = connect(() => new Promise(() => {}));
  const stuck = client.derive({ plan, files: [file] }, () => {});
  client.cancel();
  await vi.advanceTimersByTimeAsync(2000);
  expect(await stuck).toEqual({ ok: false, cancelled: true });
  void client.derive({ plan, files: [file] }, () => {});
  expect(starts()).toBe(2);
  expect(sent.filter((m) => m.type === "keep")).toHaveLength(2);
});

test("what breaks in the worker is told, not swallowed", async () => {
  const { client } = connect(() => Promise.reject(new Error("no memory left")));
  await expect(client.derive({ plan, files: [] }, () => {})).rejects.toThrow("no memory left");
});
