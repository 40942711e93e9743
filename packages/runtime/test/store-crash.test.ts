import { spawn, spawnSync } from "node:child_process";
import { randomUUID } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { samplePlan } from "../../engine/test/plan/sample-plan.ts";
import { openSqliteStore, type Store } from "../src/store/index.ts";
import { connect, pragma } from "../src/store/sqlite-connection.ts";
import { sampleFiles } from "./store-contract.ts";

const script = join(import.meta.dirname, "save-many.ts");
const nodeFlags = ["--import", "tsx", "--conditions=source", script];
const hasStrace = spawnSync("strace", ["-f", "-o", "/dev/null", process.execPath, "-e", "0"]).status === 0;
if (!hasStrace) console.warn("store: syncs are not counted, because strace is not here or may not trace");

let root: string;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "causey-crash-"));
});
afterAll(() => rm(root, { recursive: true, force: true }));

const openStore = (path: string): Promise<Store> => openSqliteStore(path, { clock: Date, newId: randomUUID });

async function storeWithOnePlan(name: string): Promise<string> {
  const path = join(root, name, "causey.sqlite");
  const store = await openStore(path);
  await store.createPlan(samplePlan(), sampleFiles());
  await store.close();
  return path;
}

/** Numbers 0 <= x < 1 from a seed (mulberry32). */
function seeded(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

interface Run {
  readonly acknowledged: readonly number[];
  readonly killed: boolean;
  readonly errors: string;
}

/** Runs the saving process and kills it `delay` ms after its `after`-th confirmation. */
function saveUntilKilled(path: string, count: number, after: number, delay: number): Promise<Run> {
  const child = spawn(process.execPath, [...nodeFlags, path, String(count)]);
  let out = "";
  let errors = "";
  let isDoomed = false;
  child.stderr.on("data", (chunk) => (errors += String(chunk)));
  child.stdout.on("data", (chunk) => {
    out += String(chunk);
    if (isDoomed || out.split("\n").length <= after) return;
    isDoomed = true;
    void pause(delay).then(() => child.kill("SIGKILL"));
  });
  return new Promise((resolve, reject) => {
    child.on("error", reject);
    child.on("close", (_code, signal) => {
      // a last line without its end was not acknowledged
      const acknowledged = out.split("\n").slice(0, -1).map(Number);
      resolve({ acknowledged, killed: signal === "SIGKILL", errors });
    });
  });
}

const integrity = (path: string): unknown => {
  const connection = connect(path);
  try {
    return pragma(connection, "integrity_check");
  } finally {
    connection.close();
  }
};

describe("a killed process loses no confirmed save", () => {
  test("500 saves, killed at random moments: every confirmed revision is there, whole and in order", async () => {
    const path = await storeWithOnePlan("killed");
    const random = seeded(20270405);
    let attempted = 0;
    let kills = 0;
    let before = 1;
    while (attempted < 500) {
      const after = 1 + Math.floor(random() * 110);
      const run = await saveUntilKilled(path, 500, after, random() * 12);
      expect(run.errors).toBe("");
      expect(run.acknowledged.length).toBeGreaterThanOrEqual(after);
      kills += Number(run.killed);
      attempted += run.acknowledged.length;

      expect(integrity(path)).toBe("ok");
      const store = await openStore(path);
      const loaded = (await store.loadPlan("reed-corner"))!;
      const numbers = (await store.history("reed-corner")).map((r) => r.number);
      const last = run.acknowledged.at(-1)!;
      expect(run.acknowledged[0]).toBe(before + 1);
      // at most the one save that was under way when the process was killed may be there unconfirmed
      expect([last, last + 1]).toContain(loaded.revision);
      expect(numbers).toEqual(Array.from({ length: loaded.revision }, (_, i) => i + 1));
      expect(loaded.plan).toEqual(samplePlan({ name: `Edit ${loaded.revision}` }));
      before = loaded.revision;
      await store.close();
    }
    expect(kills).toBeGreaterThanOrEqual(4);

    const store = await openStore(path);
    expect(await store.readFile("reed-corner", "terrain.asc")).toEqual(sampleFiles().get("terrain.asc"));
    for (let revision = before; revision < before + 20; revision++)
      expect(await store.undo("reed-corner", revision)).toMatchObject({ ok: true });
    expect((await store.loadPlan("reed-corner"))?.plan.name).toBe(`Edit ${before - 20}`);
    await store.close();
  });

  test("two processes save on one store at the same time: each save is there once", async () => {
    const path = await storeWithOnePlan("two");
    const save = (name: string): Promise<readonly number[]> =>
      new Promise((resolve, reject) => {
        const child = spawn(process.execPath, [...nodeFlags, path, "40", name]);
        let out = "";
        child.stdout.on("data", (chunk) => (out += String(chunk)));
        child.on("error", reject);
        child.on("close", (code) =>
          code === 0 ? resolve(out.trim().split("\n").map(Number)) : reject(new Error(`${name}: ${code}`)),
        );
      });
    const [a, b] = await Promise.all([save("A"), save("B")]);
    const confirmed = [...a, ...b].sort((x, y) => x - y);
    expect(confirmed).toEqual(Array.from({ length: 80 }, (_, i) => i + 2));
    const store = await openStore(path);
    const history = await store.history("reed-corner");
    for (const n of a) expect(history[n - 1]?.summary).toBe(`Renamed the plan: A ${n}`);
    for (const n of b) expect(history[n - 1]?.summary).toBe(`Renamed the plan: B ${n}`);
    await store.close();
  });
});

describe("a confirmed save is on the disk", () => {
  test.skipIf(!hasStrace)(
    "100 saves call the kernel's sync at least 100 times, counted by strace",
    async () => {
      const path = await storeWithOnePlan("traced");
      const syncs = (count: number): number => {
        const trace = ["-f", "-c", "-e", "trace=fsync,fdatasync", process.execPath, ...nodeFlags];
        const { stdout, stderr, status } = spawnSync("strace", [...trace, path, String(count)], {
          encoding: "utf8",
        });
        expect(status).toBe(0);
        expect(stdout.trim().split("\n").filter(Boolean)).toHaveLength(count);
        return countOf(stderr);
      };
      const idle = syncs(0);
      expect(syncs(100) - idle).toBeGreaterThanOrEqual(100);
    },
  );
});

/** Calls of fsync and fdatasync in the table that `strace -c` prints: share, seconds, per call, calls, name. */
function countOf(table: string): number {
  const rows = table.matchAll(/^\s*[\d.]+\s+[\d.]+\s+\d+\s+(\d+)\s+(?:\d+\s+)?f(?:data)?sync$/gm);
  return [...rows].reduce((sum, [, calls]) => sum + Number(calls), 0);
}
