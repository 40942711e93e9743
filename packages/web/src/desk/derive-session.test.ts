import type { Plan, Results } from "@causey/engine/plan";
import { expect, test } from "vitest";
import type { PlanSnapshot } from "../api/types.ts";
import type { DeriveClient } from "../worker/derive-client.ts";
import type { DeriveOutcome } from "../worker/protocol.ts";
import { createDeriveSession } from "./derive-session.ts";

const snapshot = (revision: number): PlanSnapshot => ({
  id: "p",
  plan: { id: "p" } as Plan,
  revision,
  undo: null,
  redo: null,
  files: [],
});
const finished = (name: string): DeriveOutcome => ({
  ok: true,
  results: { causey: name } as Results,
  warnings: [],
});

/** A client whose derivations end when the test says so. */
function heldClient() {
  const held: ((outcome: DeriveOutcome) => void)[] = [];
  const client: DeriveClient = {
    derive: (_request, report) => {
      report({ done: 1, total: 2, note: "half" });
      return new Promise((settle) => held.push(settle));
    },
    cancel: () => held.at(-1)!({ ok: false, cancelled: true }),
  };
  return { session: createDeriveSession(client, async () => []), held };
}

test("results belong to the revision that was asked for; progress shows until they are there", async () => {
  const { session, held } = heldClient();
  const run = session.run(snapshot(4));
  await Promise.resolve();
  await Promise.resolve();
  expect(session.get()).toMatchObject({ phase: "running", progress: { note: "half" } });
  held[0]!(finished("first"));
  await run;
  expect(session.get()).toMatchObject({ phase: "idle", revision: 4, results: { causey: "first" } });
});

test("an outcome that comes after a newer request is dropped", async () => {
  const { session, held } = heldClient();
  const older = session.run(snapshot(1));
  await Promise.resolve();
  await Promise.resolve();
  const newer = session.run(snapshot(2));
  await Promise.resolve();
  await Promise.resolve();
  held[1]!(finished("new"));
  await newer;
  held[0]!(finished("old"));
  await older;
  expect(session.get()).toMatchObject({ revision: 2, results: { causey: "new" } });
});

test("after a cancel and after a failure the last results stay, marked as not current", async () => {
  const { session, held } = heldClient();
  const first = session.run(snapshot(1));
  await Promise.resolve();
  await Promise.resolve();
  held[0]!(finished("first"));
  await first;
  const second = session.run(snapshot(2));
  await Promise.resolve();
  await Promise.resolve();
  session.cancel();
  await second;
  expect(session.get()).toMatchObject({ phase: "cancelled", revision: 1, results: { causey: "first" } });
  const third = session.run(snapshot(3));
  await Promise.resolve();
  await Promise.resolve();
  const problem = {
    code: "c",
    severity: "error",
    file: "f",
    place: "p",
    value: "v",
    message: "m",
    mend: "n",
  } as const;
  held[2]!({ ok: false, problems: [problem] });
  await third;
  expect(session.get()).toMatchObject({ phase: "failed", revision: 1, problems: [problem] });
});

test("a broken worker is said to be broken", async () => {
  const session = createDeriveSession(
    { derive: () => Promise.reject(new Error("out of memory")), cancel: () => {} },
    async () => [],
  );
  await session.run(snapshot(1));
  expect(session.get()).toMatchObject({ phase: "failed", broken: "out of memory", results: null });
});
