import type { Edit, Plan } from "@causey/engine/plan";
import { expect, test } from "vitest";
import {
  StoreError,
  type Change,
  type ChangeAnswer,
  type PlanSnapshot,
  type PlanStore,
} from "../api/types.ts";
import { createPlanSession, type PlanSession, type PlanState } from "./plan-session.ts";

const plan = (name: string): Plan => ({ id: "p", name, plots: [], zones: [], starts: [] }) as unknown as Plan;
const snapshot = (name: string, revision: number): PlanSnapshot => ({
  id: "p",
  plan: plan(name),
  revision,
  undo: null,
  redo: null,
  files: [],
});
const rename = (name: string): Change => ({ kind: "edit", edit: { type: "rename", name } });
const saved = (name: string, revision: number): ChangeAnswer => ({
  kind: "saved",
  saved: { plan: plan(name), revision, undo: "Renamed", redo: null },
});

type Answer = (change: Change, base: number) => Promise<ChangeAnswer>;

async function sessionOn(answer: Answer, load = async () => snapshot("A", 1)): Promise<PlanSession> {
  const store: PlanStore = {
    list: async () => [{ id: "p", name: "A", revision: 1 }],
    load,
    file: async () => new Uint8Array(),
    change: (_id, base, change) => answer(change, base),
    open: async () => ({ kind: "opened", id: "p" }),
    addFile: () => Promise.reject(new Error("no file is laid here")),
    archiveAddress: () => "",
  };
  const session = createPlanSession(store);
  await session.open("p");
  return session;
}

const until = (session: PlanSession, isSo: (state: PlanState) => boolean): Promise<PlanState> =>
  new Promise((resolve) => {
    const look = (): void => {
      if (isSo(session.get())) resolve(session.get());
    };
    session.subscribe(look);
    look();
  });

test("changes go one after another, each on the revision that the one before made", async () => {
  const bases: number[] = [];
  const session = await sessionOn(async (change, base) => {
    bases.push(base);
    const name = change.kind === "edit" && change.edit.type === "rename" ? change.edit.name : "";
    return saved(name, base + 1);
  });
  session.edit({ type: "rename", name: "B" });
  session.edit({ type: "rename", name: "C" });
  const state = await until(session, (s) => s.waiting.length === 0);
  expect(bases).toEqual([1, 2]);
  expect(state.snapshot).toMatchObject({ revision: 3, plan: { name: "C" } });
});

test("two fields of one form, filled while the first is on its way, both reach the store", async () => {
  const request = { requester: "", organisation: "" };
  const start = { ...snapshot("A", 1), plan: { ...plan("A"), request } as unknown as Plan };
  const sent: unknown[] = [];
  const session = await sessionOn(
    async (change, base) => {
      const edit = change.kind === "edit" && change.edit.type === "set-section" ? change.edit : null;
      sent.push(edit?.value);
      const next = { ...start.plan, request: edit?.value } as unknown as Plan;
      return { kind: "saved", saved: { plan: next, revision: base + 1, undo: "", redo: null } };
    },
    async () => start,
  );
  const set = (value: object): void =>
    session.edit({ type: "set-section", section: "request", value } as unknown as Edit);
  set({ ...request, requester: "Tern" });
  set({ ...request, organisation: "School" });
  await until(session, (s) => s.waiting.length === 0);
  expect(sent).toEqual([
    { requester: "Tern", organisation: "" },
    { requester: "Tern", organisation: "School" },
  ]);
});

test("with no answer the change is kept, said to be unsaved, and sent when tried again", async () => {
  let isAway = true;
  const session = await sessionOn(async (_change, base) => {
    if (isAway) throw new StoreError("no-answer", "away");
    return saved("B", base + 1);
  });
  session.edit({ type: "rename", name: "B" });
  const stuck = await until(session, (s) => s.trouble !== null);
  expect(stuck.waiting).toEqual([rename("B")]);
  isAway = false;
  session.tryAgain();
  const state = await until(session, (s) => s.waiting.length === 0);
  expect(state).toMatchObject({ trouble: null, snapshot: { revision: 2 } });
});

test("who saves on an older revision keeps the change, sees what differs, and may make it again or leave it", async () => {
  const theirs = { ...snapshot("Theirs", 5), undo: "Renamed" };
  let loads = 0;
  const answers: Answer = async (_change, base) =>
    base === 1 ? { kind: "older-base", plan: theirs.plan, revision: 5 } : saved("Mine", base + 1);
  const load = async (): Promise<PlanSnapshot> => (loads++ === 0 ? snapshot("A", 1) : theirs);
  const session = await sessionOn(answers, load);
  session.edit({ type: "rename", name: "Mine" });
  const clash = (await until(session, (s) => s.clash !== null)).clash!;
  expect(clash).toMatchObject({ revision: 5, change: rename("Mine"), sections: ["name"] });
  expect(session.get().snapshot).toMatchObject({ revision: 5, plan: { name: "Theirs" } });
  session.settleClash("again");
  const state = await until(session, (s) => s.snapshot?.revision === 6);
  expect(state).toMatchObject({ clash: null, waiting: [], snapshot: { plan: { name: "Mine" } } });
});

test("a refused change is taken out, with its problems, and the plan stays as it was", async () => {
  const problem = {
    code: "c",
    severity: "error",
    file: "f",
    place: "p",
    value: "v",
    message: "m",
    mend: "n",
  } as const;
  const session = await sessionOn(async () => ({ kind: "refused", problems: [problem] }));
  session.edit({ type: "rename", name: "" });
  const state = await until(session, (s) => s.refused.length > 0);
  expect(state).toMatchObject({ waiting: [], refused: [problem], snapshot: { revision: 1 } });
  session.dismissRefusal();
  expect(session.get().refused).toEqual([]);
});
