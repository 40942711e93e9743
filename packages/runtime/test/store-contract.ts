import { applyEdit, type Edit, type Plan } from "@causey/engine/plan";
import { DomainError } from "@causey/engine/units";
import * as fc from "fast-check";
import { afterEach, beforeEach, expect, test } from "vitest";
import { samplePlan } from "../../engine/test/plan/sample-plan.ts";
import { StoreError, type Store } from "../src/store/index.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
export const sampleFiles = (): Map<string, Uint8Array> =>
  new Map([
    ["terrain.asc", bytes("ncols 2\nnrows 2\n")],
    ["prices.csv", bytes("item,price\n")],
    ["photos/søndre vad.jpg", Uint8Array.from([255, 216, 0, 1, 2])],
  ]);

/** The time is 1000 ms later at each look, so that saves can be told apart. */
export function tickingClock(start = 1_800_000_000_000): { readonly now: () => number } {
  let now = start - 1000;
  return { now: () => (now += 1000) };
}

export function countingIds(): () => string {
  let n = 0;
  return () => `new-${++n}`;
}

export async function applyAndSave(store: Store, plan: Plan, base: number, edit: Edit): Promise<Plan> {
  const result = applyEdit(plan, edit);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  expect(await store.saveEdit(plan.id, base, edit, result.inverse, result.plan)).toEqual({
    ok: true,
    revision: base + 1,
  });
  return result.plan;
}

const rename = (name: string): Edit => ({ type: "rename", name });
const move = (x: number, y: number): Edit => ({ type: "move-plot", plot: "p2", x, y });

/** What every store must do, whatever database is behind it. `make` gives an empty store each time. */
export function storeContract(make: () => Promise<Store>): void {
  let store: Store;
  beforeEach(async () => {
    store = await make();
  });
  afterEach(() => store.close());

  const create = async (): Promise<Plan> => {
    const plan = samplePlan();
    expect(await store.createPlan(plan, sampleFiles())).toEqual({ id: plan.id, revision: 1 });
    return plan;
  };

  test("an empty store has no plans, and says so", async () => {
    expect(await store.listPlans()).toEqual([]);
    expect(await store.loadPlan("reed-corner")).toBeNull();
    expect(await store.readFile("reed-corner", "terrain.asc")).toBeNull();
  });

  test("a plan comes back as it went in, with its files byte for byte", async () => {
    const plan = await create();
    const loaded = await store.loadPlan(plan.id);
    expect(loaded).toMatchObject({ plan, revision: 1, undo: null, redo: null });
    expect(loaded?.files.map(({ name, size }) => [name, size])).toEqual([
      ["photos/søndre vad.jpg", 5],
      ["prices.csv", 11],
      ["terrain.asc", 16],
    ]);
    // SHA-256 of "abc": FIPS 180-2, appendix B.1
    await store.createPlan(samplePlan({ id: "abc" }), new Map([["a.txt", bytes("abc")]]));
    expect((await store.loadPlan("abc"))?.files[0]?.sha256).toBe(
      "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    );
    for (const [name, content] of sampleFiles()) expect(await store.readFile(plan.id, name)).toEqual(content);
    expect(await store.readFile(plan.id, "../plan.json")).toBeNull();
  });

  test("plans are listed with the last saved first", async () => {
    await store.createPlan(samplePlan({ id: "a", name: "First" }), new Map());
    await store.createPlan(samplePlan({ id: "b", name: "Second" }), new Map());
    expect((await store.listPlans()).map((p) => p.name)).toEqual(["Second", "First"]);
    await applyAndSave(store, samplePlan({ id: "a", name: "First" }), 1, rename("First again"));
    const [top] = await store.listPlans();
    expect(top).toMatchObject({ id: "a", name: "First again", site_name: "Reed Corner fen", revision: 2 });
    expect(top!.saved_at).toBeGreaterThan(top!.created_at);
  });

  test("a second plan of the same id is kept under a new id, and the first is left alone", async () => {
    const plan = await create();
    const copy = await store.createPlan({ ...plan, name: "Other" }, sampleFiles());
    expect(copy.id).not.toBe(plan.id);
    expect((await store.loadPlan(copy.id))?.plan).toEqual({ ...plan, id: copy.id, name: "Other" });
    expect((await store.loadPlan(plan.id))?.plan).toEqual(plan);
    expect(await store.listPlans()).toHaveLength(2);
  });

  test("an edit makes the next revision, and the words of its undo", async () => {
    const plan = await create();
    const next = await applyAndSave(store, plan, 1, move(1, 2));
    expect(await store.loadPlan(plan.id)).toMatchObject({
      plan: next,
      revision: 2,
      undo: { revision: 2, summary: "Moved Plot 2" },
      redo: null,
    });
  });

  test("who saves on an old revision changes nothing and is told what stands there", async () => {
    const plan = await create();
    const first = await applyAndSave(store, plan, 1, move(1, 2));
    const late = { ...plan, name: "Late" };
    const answer = await store.saveEdit(plan.id, 1, rename("Late"), rename(plan.name), late);
    expect(answer).toEqual({ ok: false, conflict: { revision: 2, plan: first } });
    const ahead = await store.saveEdit(plan.id, 9, rename("Late"), rename(plan.name), late);
    expect(ahead).toEqual({ ok: false, conflict: { revision: 2, plan: first } });
    expect((await store.loadPlan(plan.id))?.plan).toEqual(first);
    expect(await store.history(plan.id)).toHaveLength(2);
  });

  test("of ten saves at once on one revision exactly one wins", async () => {
    const plan = await create();
    const answers = await Promise.all(
      Array.from({ length: 10 }, (_, i) =>
        store.saveEdit(plan.id, 1, rename(`By ${i}`), rename(plan.name), { ...plan, name: `By ${i}` }),
      ),
    );
    expect(answers.filter((a) => a.ok)).toHaveLength(1);
    const winner = `By ${answers.findIndex((a) => a.ok)}`;
    expect((await store.loadPlan(plan.id))?.plan.name).toBe(winner);
    expect((await store.history(plan.id)).map((r) => r.number)).toEqual([1, 2]);
  });

  test("undo and redo are revisions of their own; a new edit ends the redo", async () => {
    const plan = await create();
    const two = await applyAndSave(store, plan, 1, move(1, 2));
    const three = await applyAndSave(store, two, 2, rename("North path"));
    expect(await store.undo(plan.id, 3)).toEqual({ ok: true, revision: 4, plan: two });
    expect(await store.undo(plan.id, 4)).toEqual({ ok: true, revision: 5, plan });
    expect(await store.undo(plan.id, 5)).toEqual({ ok: false, why: "nothing" });
    expect(await store.redo(plan.id, 5)).toEqual({ ok: true, revision: 6, plan: two });
    expect(await store.loadPlan(plan.id)).toMatchObject({
      undo: { revision: 2, summary: "Moved Plot 2" },
      redo: { summary: "Renamed the plan: North path" },
    });
    expect(await store.redo(plan.id, 6)).toEqual({ ok: true, revision: 7, plan: three });
    expect(await store.redo(plan.id, 7)).toEqual({ ok: false, why: "nothing" });
    expect(await store.undo(plan.id, 7)).toMatchObject({ ok: true, revision: 8 });
    await applyAndSave(store, two, 8, move(7, 7));
    expect(await store.loadPlan(plan.id)).toMatchObject({ revision: 9, redo: null });
    expect((await store.history(plan.id)).map((r) => [r.number, r.kind, r.of])).toEqual([
      [1, "create", null],
      [2, "edit", null],
      [3, "edit", null],
      [4, "undo", 3],
      [5, "undo", 2],
      [6, "redo", 2],
      [7, "redo", 3],
      [8, "undo", 3],
      [9, "edit", null],
    ]);
  });

  test("an undo on an old revision is a conflict, not an undo of somebody else's edit", async () => {
    const plan = await create();
    const two = await applyAndSave(store, plan, 1, move(1, 2));
    for (const answer of [await store.undo(plan.id, 1), await store.redo(plan.id, 1)])
      expect(answer).toEqual({ ok: false, why: "conflict", conflict: { revision: 2, plan: two } });
    expect((await store.loadPlan(plan.id))?.revision).toBe(2);
  });

  test("any mix of edits, undos and redos gives what two plain stacks give", async () => {
    const steps = fc.array(fc.constantFrom("edit", "edit", "undo", "redo"), { maxLength: 25 });
    let n = 0;
    await fc.assert(
      fc.asyncProperty(steps, async (kinds) => {
        const id = `mix-${n++}`;
        let now = samplePlan({ id });
        let revision = (await store.createPlan(now, new Map())).revision;
        const done: Plan[] = [];
        const undone: Plan[] = [];
        for (const kind of kinds) {
          if (kind === "edit") {
            done.push(now);
            undone.length = 0;
            now = await applyAndSave(store, now, revision, rename(`Edit ${revision}`));
            revision++;
            continue;
          }
          const [from, to] = kind === "undo" ? [done, undone] : [undone, done];
          const answer = await store[kind](id, revision);
          const expected = from.pop();
          if (!expected) {
            expect(answer).toEqual({ ok: false, why: "nothing" });
            continue;
          }
          to.push(now);
          now = expected;
          expect(answer).toEqual({ ok: true, revision: ++revision, plan: now });
        }
        const loaded = await store.loadPlan(id);
        expect(loaded?.plan).toEqual(now);
        expect([loaded?.undo !== null, loaded?.redo !== null]).toEqual([done.length > 0, undone.length > 0]);
      }),
      { numRuns: 25, seed: 3 },
    );
  });

  test("the history leads from the newest revision back to the first, and forward again", async () => {
    const plan = await create();
    let now = await applyAndSave(store, plan, 1, { type: "remove-zone", zone: "sedge" });
    now = await applyAndSave(store, now, 2, move(3, 4));
    await store.undo(plan.id, 3);
    const records = await store.history(plan.id);
    let back = (await store.loadPlan(plan.id))!.plan;
    for (const record of records.slice(1).reverse()) back = applied(back, record.inverse!);
    expect(back).toEqual(plan);
    let forth = plan;
    for (const record of records.slice(1)) forth = applied(forth, record.edit!);
    expect(forth).toEqual((await store.loadPlan(plan.id))?.plan);
    expect(records[1]?.summary).toBe("Removed a habitat: tall sedge");
  });

  test("a plan that is not there cannot be changed", async () => {
    const plan = samplePlan();
    for (const attempt of [
      () => store.saveEdit(plan.id, 1, rename("x"), rename(plan.name), plan),
      () => store.undo(plan.id, 1),
      () => store.redo(plan.id, 1),
      () => store.history(plan.id),
    ])
      await expect(attempt()).rejects.toMatchObject({ name: "StoreError", code: "no-such-plan" });
    await create();
    await expect(
      store.saveEdit(plan.id, 1, rename("x"), rename(plan.name), samplePlan({ id: "other" })),
    ).rejects.toThrow(DomainError);
  });

  test("names and words of any script and any quoting go in and come back", async () => {
    const name = `Røde mose '); drop table plan;-- "\\\u0000 沼 🌾`;
    const plan = samplePlan({ id: name, name });
    await store.createPlan(plan, new Map([[name, bytes("x")]]));
    expect((await store.loadPlan(name))?.plan).toEqual(plan);
    expect(await store.readFile(name, name)).toEqual(bytes("x"));
  });

  test("faults of the store are told apart by their code", () => {
    const cause = new Error("disk");
    expect(new StoreError("busy", "wait", cause)).toMatchObject({ code: "busy", message: "wait", cause });
  });
}

function applied(plan: Plan, edit: Edit): Plan {
  const result = applyEdit(plan, edit);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.plan;
}
