import { hashJson, type Job } from "../formula/index.ts";
import type { StageRecord } from "./results.ts";

/** What stages made before, by name: handed from one derivation to the next. */
export type StageCache = Map<string, { readonly key: string; readonly value: unknown }>;

/**
 * Runs the stages of a derivation. A stage's key is a hash of its inputs, its code version and the tables it read;
 * what has the key of the last time is not computed again.
 */
export class Stages {
  readonly records: StageRecord[] = [];
  private readonly cache: StageCache;
  private readonly tables: string;

  constructor(cache: StageCache, tables: string) {
    this.cache = cache;
    this.tables = tables;
  }

  /** `inputs`: plain data or keys of earlier stages; `version`: raised whenever the stage's code changes its answer. */
  *run<T>(stage: string, version: number, inputs: unknown, work: () => Job<T>): Job<T> {
    const key = hashJson([stage, version, this.tables, inputs]);
    this.records.push({ stage, key });
    const kept = this.cache.get(stage);
    if (kept?.key === key) return kept.value as T;
    const value = yield* work();
    this.cache.set(stage, { key, value });
    return value;
  }

  /** Key of a stage that has run. */
  keyOf(stage: string): string {
    return this.records.find((r) => r.stage === stage)!.key;
  }
}

/** A stage short enough to need no progress. */
export function* atOnce<T>(value: () => T): Job<T> {
  yield { done: 0, total: 0, note: "" };
  return value();
}
