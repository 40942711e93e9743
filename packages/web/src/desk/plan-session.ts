import type { Problem } from "@causey/engine/formula";
import { describeEdit, type Edit, type Plan } from "@causey/engine/plan";
import {
  StoreError,
  type Change,
  type FileEntry,
  type PlanSnapshot,
  type PlanStore,
  type Trouble,
} from "../api/types.ts";
import { differingSections } from "./plan-difference.ts";
import { rebaseEdit } from "./rebase-edit.ts";
import { createStore, type Store } from "./store.ts";

/** Someone else saved first: the change is kept and waits for the user's word. */
export interface Clash {
  readonly change: Change;
  /** The change in words. */
  readonly words: string;
  readonly revision: number;
  /** Which sections of the plan differ from what was on this screen. */
  readonly sections: readonly string[];
}

export interface PlanState {
  readonly id: string | null;
  readonly status: "loading" | "none" | "ready";
  readonly snapshot: PlanSnapshot | null;
  readonly trouble: { readonly kind: Trouble; readonly message: string } | null;
  /** Changes that the store has not confirmed yet, oldest first. */
  readonly waiting: readonly Change[];
  readonly refused: readonly Problem[];
  readonly clash: Clash | null;
}

export interface PlanSession extends Store<PlanState> {
  readonly open: (id: string) => Promise<void>;
  /** With no plan in the address: the preferred one, else the first of the list; null when there is none. */
  readonly first: (preferred: string | null) => Promise<string | null>;
  readonly edit: (edit: Edit) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** A file was laid beside the plan: the next revision may name it. */
  readonly fileLaid: (file: FileEntry) => void;
  /** Sends what still waits, or loads again what could not be loaded. */
  readonly tryAgain: () => void;
  readonly settleClash: (choice: "again" | "leave") => void;
  readonly dismissRefusal: () => void;
}

const blank: PlanState = {
  id: null,
  status: "loading",
  snapshot: null,
  trouble: null,
  waiting: [],
  refused: [],
  clash: null,
};

/** One plan on the desk: loads it, sends changes one after another, keeps them until the store has confirmed. */
export function createPlanSession(plans: PlanStore): PlanSession {
  const store = createStore<PlanState>(blank);
  let sending = false;
  /** The plan on the screen when a change was made. */
  const seen = new WeakMap<Change, Plan>();

  async function first(preferred: string | null): Promise<string | null> {
    store.set(blank);
    try {
      const list = await plans.list();
      const chosen = list.find((p) => p.id === preferred) ?? list[0];
      if (!chosen) store.update({ status: "none" });
      return chosen?.id ?? null;
    } catch (error) {
      store.update({ trouble: troubleOf(error) });
      return null;
    }
  }

  async function open(id: string): Promise<void> {
    store.set({ ...blank, id });
    try {
      const snapshot = await plans.load(id);
      if (store.get().id === id) store.update({ snapshot, status: "ready" });
    } catch (error) {
      if (store.get().id === id) store.update({ trouble: troubleOf(error) });
    }
  }

  function add(change: Change): void {
    const { snapshot } = store.get();
    if (snapshot) seen.set(change, snapshot.plan);
    store.update({ waiting: [...store.get().waiting, change], refused: [] });
    void send();
  }

  async function send(): Promise<void> {
    if (sending) return;
    sending = true;
    try {
      while (store.get().waiting.length > 0 && !store.get().clash) await sendFirst();
      if (store.get().trouble) store.update({ trouble: null });
    } catch (error) {
      store.update({ trouble: troubleOf(error) });
    } finally {
      sending = false;
    }
  }

  async function sendFirst(): Promise<void> {
    const { id, snapshot, waiting } = store.get();
    const [change, ...rest] = waiting;
    if (id === null || !snapshot || !change) return store.update({ waiting: [] });
    const answer = await plans.change(id, snapshot.revision, onto(change, snapshot.plan));
    if (store.get().id !== id) return;
    const later = store.get().waiting.slice(waiting.length);
    const next = [...rest, ...later];
    if (answer.kind === "saved")
      store.update({ snapshot: { ...snapshot, ...answer.saved }, waiting: next, trouble: null });
    else if (answer.kind === "refused") store.update({ refused: answer.problems, waiting: next });
    else await meetClash(snapshot, change, next, answer.plan, answer.revision);
  }

  /** The change as it is made of the plan that the changes before it have led to. */
  function onto(change: Change, now: Plan): Change {
    const base = seen.get(change);
    return change.kind === "edit" && base
      ? { kind: "edit", edit: rebaseEdit(change.edit, base, now) }
      : change;
  }

  async function meetClash(
    mine: PlanSnapshot,
    change: Change,
    waiting: readonly Change[],
    plan: Plan,
    revision: number,
  ): Promise<void> {
    const theirs = await plans.load(mine.id).catch(() => ({ ...mine, plan, revision }));
    const words = change.kind === "edit" ? describeEdit(change.edit, mine.plan) : change.kind;
    const clash: Clash = { change, words, revision, sections: differingSections(mine.plan, plan) };
    store.update({ snapshot: theirs, clash, waiting });
  }

  return {
    ...store,
    open,
    first,
    edit: (edit) => add({ kind: "edit", edit }),
    fileLaid: (file) => {
      const { snapshot } = store.get();
      if (!snapshot || snapshot.files.some((f) => f.name === file.name)) return;
      store.update({ snapshot: { ...snapshot, files: [...snapshot.files, file] } });
    },
    undo: () => add({ kind: "undo" }),
    redo: () => add({ kind: "redo" }),
    tryAgain: () => {
      const { snapshot, id } = store.get();
      store.update({ trouble: null });
      if (snapshot) void send();
      else if (id !== null) void open(id);
    },
    settleClash: (choice) => {
      const { clash, waiting } = store.get();
      if (!clash) return;
      store.update({ clash: null, waiting: choice === "again" ? [clash.change, ...waiting] : waiting });
      void send();
    },
    dismissRefusal: () => store.update({ refused: [] }),
  };
}

const troubleOf = (error: unknown): { kind: Trouble; message: string } =>
  error instanceof StoreError
    ? { kind: error.trouble, message: error.message }
    : { kind: "unexpected", message: error instanceof Error ? error.message : String(error) };
