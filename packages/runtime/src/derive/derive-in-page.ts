import { tables } from "@causey/data/tables";
import type { Problem, Progress } from "@causey/engine/formula";
import { derive, type Plan, type Results, type StageCache } from "@causey/engine/plan";
import { propose, type Proposal } from "@causey/engine/proposals";
import { writePlan } from "@causey/io/plan";
import type { Solver } from "@causey/engine/fabrication";
import { drive } from "../jobs/index.ts";
import { readWholePlan } from "./read-whole-plan.ts";

export interface DeriveRequest {
  readonly plan: Plan;
  /** Terrain and price list, by the names the plan gives them. */
  readonly files: ReadonlyMap<string, Uint8Array>;
  /** A failing check by id: what would make it pass is worked out as well. */
  readonly check?: string;
}

export interface DeriveHooks {
  readonly report: (progress: Progress) => void;
  readonly cancelled: () => boolean;
}

export type DeriveAnswer =
  | {
      readonly ok: true;
      readonly results: Results;
      readonly warnings: readonly Problem[];
      /** Asked for by `check`. */
      readonly proposals?: readonly Proposal[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly cancelled: true };

/**
 * Derives plan after plan with one solver and one cache of stages: what a change does not touch is not computed
 * again. The plan document goes through the very readers that a plan folder goes through, so an edit that makes no
 * sense gets the same problem on the page as in the shell.
 */
export class Deriver {
  private readonly cache: StageCache = new Map();
  private readonly solver: () => Promise<Solver>;

  constructor(solver: () => Promise<Solver>) {
    this.solver = solver;
  }

  async derive({ plan, files, check }: DeriveRequest, hooks: DeriveHooks): Promise<DeriveAnswer> {
    const read = await readWholePlan(new Map([...files, ...writePlan(plan)]));
    if (!read.ok) return { ok: false, problems: read.problems };
    const context = { tables, solver: await this.solver(), cache: this.cache };
    const cancel = {
      get aborted() {
        return hooks.cancelled();
      },
    };
    const done = await drive(derive(read, context), cancel, hooks.report);
    if (!done.ok) return { ok: false, cancelled: true };
    const answer = { ok: true, results: done.value, warnings: read.warnings } as const;
    if (check === undefined) return answer;
    const proposed = await drive(propose(read, done.value, check, context), cancel, hooks.report);
    return proposed.ok ? { ...answer, proposals: proposed.value } : { ok: false, cancelled: true };
  }
}
