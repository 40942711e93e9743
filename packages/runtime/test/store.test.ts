import { cp, mkdtemp, readFile, readdir, rm, stat, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { PLAN_SCHEMA, type Edit } from "@causey/engine/plan";
import Database from "libsql";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { samplePlan } from "../../engine/test/plan/sample-plan.ts";
import { backupStore, openSqliteStore, type Store } from "../src/store/index.ts";
import { pragma, whenFree } from "../src/store/sqlite-connection.ts";
import { openDatabase } from "../src/store/sqlite.ts";
import { applyAndSave, countingIds, sampleFiles, storeContract, tickingClock } from "./store-contract.ts";

let root: string;
let count = 0;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "causey-store-"));
});
afterAll(() => rm(root, { recursive: true, force: true }));

const freshPath = (): string => join(root, String(++count), "causey.sqlite");
const openStore = (path: string): Promise<Store> =>
  openSqliteStore(path, { clock: tickingClock(), newId: countingIds() });
/** A backup carried to another place, as after a lost machine. */
async function openCopy(backup: string): Promise<Store> {
  const path = freshPath();
  await cp(backup, path);
  await cp(join(backup, "../files"), join(path, "../files"), { recursive: true });
  return openStore(path);
}
const rename = { type: "rename", name: "North path" } as const;

describe("SQLite: the store contract", () => {
  storeContract(() => openStore(freshPath()));
});

describe("SQLite: durability", () => {
  test("a commit is synced: write-ahead log, synchronous = FULL (2), read back from the connection", async () => {
    const { connection, close } = await openDatabase(freshPath());
    expect(pragma(connection, "journal_mode")).toBe("wal");
    expect(pragma(connection, "synchronous")).toBe(2);
    expect(pragma(connection, "fullfsync")).toBe(1);
    expect(pragma(connection, "foreign_keys")).toBe(1);
    await close();
  });

  test("plan, history, undo and redo are there after the store was closed and opened again", async () => {
    const path = freshPath();
    const store = await openStore(path);
    await store.createPlan(samplePlan(), sampleFiles());
    await applyAndSave(store, samplePlan(), 1, rename);
    await store.undo("reed-corner", 2);
    const before = await store.loadPlan("reed-corner");
    await store.close();
    const again = await openStore(path);
    expect(await again.loadPlan("reed-corner")).toEqual(before);
    expect(await again.redo("reed-corner", 3)).toMatchObject({
      ok: true,
      revision: 4,
      plan: { name: "North path" },
    });
    await again.close();
  });

  test("store and files are for their owner alone", async () => {
    const path = freshPath();
    const store = await openStore(path);
    await store.createPlan(samplePlan(), sampleFiles());
    await store.close();
    if (process.platform === "win32") return;
    const [blob] = await readdir(join(path, "../files"));
    for (const file of [path, join(path, "../files", blob!)]) expect((await stat(file)).mode & 0o077).toBe(0);
  });

  test("a file that changed on the disk is refused, and mended by storing it again", async () => {
    const path = freshPath();
    const store = await openStore(path);
    await store.createPlan(samplePlan(), sampleFiles());
    const file = (await store.loadPlan("reed-corner"))!.files.find((f) => f.name === "prices.csv")!;
    const blob = join(path, "../files", file.sha256);
    await writeFile(blob, "item,price\nfake,1\n");
    await expect(store.readFile("reed-corner", "prices.csv")).rejects.toMatchObject({ code: "damaged-file" });
    await rm(blob);
    await expect(store.readFile("reed-corner", "prices.csv")).rejects.toMatchObject({ code: "damaged-file" });
    await store.createPlan(samplePlan({ id: "second" }), sampleFiles());
    expect(await store.readFile("reed-corner", "prices.csv")).toEqual(sampleFiles().get("prices.csv"));
    await store.close();
  });

  test("equal files are kept once, and nothing half written stays", async () => {
    const path = freshPath();
    const store = await openStore(path);
    await store.createPlan(samplePlan(), sampleFiles());
    await store.createPlan(samplePlan(), sampleFiles());
    expect(await readdir(join(path, "../files"))).toHaveLength(3);
    await store.close();
  });
});

describe("SQLite: what is not a store is left alone", () => {
  test("a text file, and another program's database", async () => {
    const text = join(root, "notes.txt");
    await writeFile(text, "not a database");
    await expect(openStore(text)).rejects.toMatchObject({ code: "not-a-store" });
    expect(await readFile(text, "utf8")).toBe("not a database");
    const other = join(root, "other.sqlite");
    const db = new Database(other);
    db.exec("create table plan (something text)");
    db.close();
    const bytes = await readFile(other);
    await expect(openStore(other)).rejects.toMatchObject({ code: "not-a-store" });
    expect(await readFile(other)).toEqual(bytes);
  });

  test("a store of a newer version", async () => {
    const path = freshPath();
    const store = await openStore(path);
    await store.close();
    const db = new Database(path);
    db.prepare("insert into kysely_migration values ('9999-later', '2030-01-01')").run();
    db.close();
    await expect(openStore(path)).rejects.toMatchObject({ code: "newer-store" });
  });

  test("a plan of a newer schema", async () => {
    const path = freshPath();
    const store = await openStore(path);
    await store.createPlan(samplePlan(), new Map());
    const db = new Database(path);
    const [now, next] = [`"schema":${PLAN_SCHEMA}`, `"schema":${PLAN_SCHEMA + 1}`];
    db.prepare("update plan set document = replace(document, ?, ?)").run(now, next);
    db.close();
    await expect(store.loadPlan("reed-corner")).rejects.toMatchObject({ code: "newer-store" });
    await store.close();
  });
});

describe("SQLite: several users of one store", () => {
  test("a save waits while another program writes, and then goes through", async () => {
    const path = freshPath();
    const { connection, close } = await openDatabase(path);
    const store = await openStore(path);
    await store.createPlan(samplePlan(), new Map());
    connection.exec("begin immediate");
    const saved = applyAndSave(store, samplePlan(), 1, rename);
    await pause(200);
    expect((await store.loadPlan("reed-corner"))?.revision).toBe(1);
    connection.exec("rollback");
    await saved;
    expect((await store.loadPlan("reed-corner"))?.revision).toBe(2);
    await store.close();
    await close();
  });

  test("a lock that is not given back ends in words, and the connection can be used afterwards", async () => {
    const path = freshPath();
    const first = await openDatabase(path);
    const second = await openDatabase(path);
    first.connection.exec("begin immediate");
    const write = (): Promise<void> =>
      second.db.transaction().execute(async (trx) => {
        await trx.deleteFrom("plan_file").execute();
      });
    await expect(whenFree(write, 2)).rejects.toMatchObject({ name: "StoreError", code: "busy" });
    first.connection.exec("rollback");
    await whenFree(write, 1);
    await second.close();
    await first.close();
  });

  test("two handles that save at the same time lose nothing", async () => {
    const path = freshPath();
    const handles = [await openStore(path), await openStore(path)] as const;
    await handles[0].createPlan(samplePlan(), new Map());
    const saveMany = async (store: Store, who: string): Promise<void> => {
      for (let n = 0; n < 20;) {
        const { plan, revision } = (await store.loadPlan("reed-corner"))!;
        const [edit, inverse] = [`${who} ${n}`, plan.name].map((name): Edit => ({ type: "rename", name }));
        const next = { ...plan, name: `${who} ${n}` };
        if ((await store.saveEdit(plan.id, revision, edit!, inverse!, next)).ok) n++;
      }
    };
    await Promise.all([saveMany(handles[0], "A"), saveMany(handles[1], "B")]);
    const words = (await handles[0].history("reed-corner")).map((r) => r.summary);
    for (const who of ["A", "B"])
      expect(words.filter((w) => w.startsWith(`Renamed the plan: ${who}`))).toHaveLength(20);
    expect(words).toHaveLength(41);
    for (const handle of handles) await handle.close();
  });
});

describe("backup", () => {
  test("a backup of a store in use opens as a store of its own, with every file", async () => {
    const path = freshPath();
    const target = join(root, "backups", "monday.sqlite");
    const store = await openStore(path);
    await store.createPlan(samplePlan(), sampleFiles());
    await applyAndSave(store, samplePlan(), 1, rename);
    expect(await store.backup(target)).toMatchObject({ file: target, plans: 1, files: 3 });
    await store.undo("reed-corner", 2);
    const copy = await openCopy(target);
    expect(await copy.loadPlan("reed-corner")).toMatchObject({ revision: 2, plan: { name: "North path" } });
    expect(await copy.history("reed-corner")).toHaveLength(2);
    for (const [name, bytes] of sampleFiles())
      expect(await copy.readFile("reed-corner", name)).toEqual(bytes);
    await copy.close();
    // from a second connection, over the earlier backup of the same name
    expect(await backupStore(join(path, ".."), target)).toMatchObject({ plans: 1 });
    const newer = await openCopy(target);
    expect(await newer.loadPlan("reed-corner")).toMatchObject({ revision: 3 });
    await newer.close();
    await store.close();
  });

  test("refusals: no store, the store itself, another program's file, a backup in use, a damaged blob", async () => {
    const path = freshPath();
    const store = await openStore(path);
    await store.createPlan(samplePlan(), sampleFiles());
    await expect(backupStore(join(root, "none"), join(root, "b"))).rejects.toMatchObject({
      code: "cannot-open",
    });
    await expect(stat(join(root, "none"))).rejects.toMatchObject({ code: "ENOENT" });
    await expect(store.backup(path)).rejects.toMatchObject({ code: "cannot-back-up" });
    await expect(store.backup(root)).rejects.toMatchObject({ code: "cannot-back-up" });
    const letter = join(root, "letter.txt");
    await writeFile(letter, "Dear warden");
    await expect(store.backup(letter)).rejects.toMatchObject({ code: "cannot-back-up" });
    expect(await readFile(letter, "utf8")).toBe("Dear warden");

    const folder = join(root, "refusals");
    const target = join(folder, "a.sqlite");
    await store.backup(target);
    const inUse = await openStore(target);
    await expect(store.backup(target)).rejects.toMatchObject({ code: "cannot-back-up" });
    await inUse.close();

    const second = join(folder, "b.sqlite");
    await store.backup(second);
    const [blob] = await readdir(join(path, "../files"));
    await writeFile(join(path, "../files", blob!), "damaged");
    const before = await readFile(second);
    await expect(store.backup(second)).rejects.toMatchObject({ code: "damaged-file" });
    expect(await readFile(second)).toEqual(before);
    expect((await readdir(folder)).filter((name) => name.endsWith(".part"))).toEqual([]);
    await store.close();
  });
});
