import type { Problem, Progress } from "@causey/engine/formula";
import type { Results } from "@causey/engine/plan";
import type { Proposal } from "@causey/engine/proposals";
import type { PlanSnapshot } from "../api/types.ts";
import type { DeriveClient } from "../worker/derive-client.ts";
import type { FileShelf } from "./file-shelf.ts";
import { createStore, type Store } from "./store.ts";

export interface DeriveState {
  readonly phase: "idle" | "running" | "cancelled" | "failed";
  readonly progress: Progress | null;
  /** The last finished results; out of date while `phase` is not idle. */
  readonly results: Results | null;
  readonly revision: number | null;
  readonly warnings: readonly Problem[];
  readonly problems: readonly Problem[];
  /** Set when the worker itself broke, not the plan. */
  readonly broken: string | null;
  readonly asked: Asked | null;
}

/** What would make a failing check pass, as far as it has been asked for. */
export interface Asked {
  readonly check: string;
  readonly revision: number;
  readonly phase: "running" | "done" | "stopped";
  readonly progress: Progress | null;
  readonly proposals: readonly Proposal[];
}

export interface DeriveSession extends Store<DeriveState> {
  readonly run: (snapshot: PlanSnapshot) => Promise<void>;
  /** Looks for what would make a failing check pass; a change of the plan stops it. */
  readonly propose: (snapshot: PlanSnapshot, check: string) => Promise<void>;
  readonly cancel: () => void;
  readonly clear: () => void;
}

/** How shown results stand to the plan: of this revision, being worked out anew, or older and left so. */
export type Freshness = "current" | "pending" | "outdated";

export const freshnessOf = (phase: DeriveState["phase"]): Freshness =>
  phase === "idle" ? "current" : phase === "running" ? "pending" : "outdated";

const blank: DeriveState = {
  phase: "idle",
  progress: null,
  results: null,
  revision: null,
  warnings: [],
  problems: [],
  broken: null,
  asked: null,
};

/** Keeps results in step with the plan: the newest request wins, the last finished results stay in sight. */
export function createDeriveSession(client: DeriveClient, shelf: FileShelf): DeriveSession {
  const store = createStore<DeriveState>(blank);
  let turn = 0;

  async function run(snapshot: PlanSnapshot): Promise<void> {
    const mine = ++turn;
    const isCurrent = (): boolean => mine === turn;
    store.update({ phase: "running", progress: null, problems: [], broken: null, asked: null });
    try {
      const files = await shelf(snapshot.id, snapshot.files);
      if (!isCurrent()) return;
      const outcome = await client.derive({ plan: snapshot.plan, files }, (progress) => {
        if (isCurrent()) store.update({ progress });
      });
      if (!isCurrent()) return;
      if (outcome.ok)
        store.update({
          phase: "idle",
          progress: null,
          results: outcome.results,
          revision: snapshot.revision,
          warnings: outcome.warnings,
        });
      else if ("cancelled" in outcome) store.update({ phase: "cancelled", progress: null });
      else store.update({ phase: "failed", progress: null, problems: outcome.problems });
    } catch (error) {
      if (isCurrent())
        store.update({
          phase: "failed",
          progress: null,
          broken: error instanceof Error ? error.message : String(error),
        });
    }
  }

  async function propose(snapshot: PlanSnapshot, check: string): Promise<void> {
    const mine = turn;
    const update = (change: Partial<Asked>): void => {
      const { asked } = store.get();
      if (mine === turn && asked?.check === check) store.update({ asked: { ...asked, ...change } });
    };
    const { revision } = snapshot;
    store.update({ asked: { check, revision, phase: "running", progress: null, proposals: [] } });
    try {
      const files = await shelf(snapshot.id, snapshot.files);
      if (mine !== turn) return;
      const outcome = await client.derive({ plan: snapshot.plan, files, check }, (progress) =>
        update({ progress }),
      );
      if (outcome.ok) update({ phase: "done", proposals: outcome.proposals ?? [] });
      else update({ phase: "stopped" });
    } catch {
      update({ phase: "stopped" });
    }
  }

  return {
    ...store,
    run,
    propose,
    cancel: () => client.cancel(),
    clear: () => {
      turn++;
      store.set(blank);
    },
  };
}
