import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { samplePlan, square } from "../../engine/test/plan/sample-plan.ts";
import { problemsIn, testApp, type TestApp } from "./test-app.ts";

let t: TestApp;
beforeEach(async () => {
  t = await testApp();
});
afterEach(() => t.close());

const at = "/api/plans/reed-corner";
const plan = samplePlan();
const rename = (name: string): object => ({ type: "rename", name });
const json = async (response: Response): Promise<unknown> => response.json();

describe("edit, undo, redo", () => {
  test("each answers with the plan as it stands, and what can be taken back", async () => {
    const moved = await t.post(`${at}/edits`, {
      base: 1,
      edit: { type: "move-plot", plot: "p2", x: 1, y: 2 },
    });
    const next = { ...plan, plots: [plan.plots[0], { ...plan.plots[1], x: 1, y: 2 }] };
    expect(await json(moved)).toEqual({ plan: next, revision: 2, undo: "Moved Plot 2", redo: null });
    const undone = await t.post(`${at}/undo`, { base: 2 });
    expect(await json(undone)).toEqual({ plan, revision: 3, undo: null, redo: "Moved Plot 2" });
    const redone = await t.post(`${at}/redo`, { base: 3 });
    expect(await json(redone)).toEqual({ plan: next, revision: 4, undo: "Moved Plot 2", redo: null });
    expect(await json(await t.ask(`${at}/history`))).toMatchObject({
      revisions: [
        { number: 1, kind: "create" },
        { number: 2, kind: "edit", summary: "Moved Plot 2" },
        { number: 3, kind: "undo", of: 2 },
        { number: 4, kind: "redo", of: 2 },
      ],
    });
  });

  test("a zone is closed and opened again", async () => {
    const zone = { ...square("terns", "tern colony", 10, 10), use: "closed" };
    expect((await t.post(`${at}/edits`, { base: 1, edit: { type: "add-zone", zone } })).status).toBe(200);
    expect((await t.store.loadPlan("reed-corner"))?.plan.zones.at(-1)).toEqual(zone);
    expect(
      (await t.post(`${at}/edits`, { base: 2, edit: { type: "remove-zone", zone: "terns" } })).status,
    ).toBe(200);
    expect((await t.store.loadPlan("reed-corner"))?.plan).toEqual(plan);
  });

  test("nothing to take back, nothing to do again", async () => {
    for (const kind of ["undo", "redo"]) {
      const response = await t.post(`${at}/${kind}`, { base: 1 });
      expect(response.status).toBe(422);
      expect(await problemsIn(response)).toEqual([[`nothing-to-${kind}`, "body"]]);
    }
  });

  test("who comes late gets the plan that stands and keeps the work", async () => {
    await t.post(`${at}/edits`, { base: 1, edit: rename("North path") });
    for (const response of [
      await t.post(`${at}/edits`, { base: 1, edit: rename("Late") }),
      await t.post(`${at}/undo`, { base: 1 }),
      await t.post(`${at}/redo`, { base: 1 }),
    ]) {
      expect(response.status).toBe(409);
      expect(await json(response)).toMatchObject({ revision: 2, plan: { ...plan, name: "North path" } });
    }
    expect((await t.store.loadPlan("reed-corner"))?.plan.name).toBe("North path");
  });

  test("of several edits at once on one revision one is saved", async () => {
    const answers = await Promise.all(
      ["A", "B", "C", "D"].map((name) => t.post(`${at}/edits`, { base: 1, edit: rename(name) })),
    );
    expect(answers.filter((a) => a.status === 200)).toHaveLength(1);
    expect(answers.filter((a) => a.status === 409)).toHaveLength(3);
  });

  test("a plan that is not there", async () => {
    expect((await t.post("/api/plans/none/edits", { base: 1, edit: rename("x") })).status).toBe(404);
    expect((await t.post("/api/plans/none/undo", { base: 1 })).status).toBe(404);
  });
});

describe("what cannot be applied is refused whole", () => {
  test.each([
    ["an unknown plot", { type: "move-plot", plot: "p9", x: 1, y: 2 }, [["edit", "plot"]]],
    ["a document that would not be read back", rename("Refused"), [["fake", "name"]]],
    [
      "a recipe without a module",
      { type: "set-kit", kit: { ...plan.kit, lengths_mm: [] } },
      [["plan-schema", "kit.lengths_mm"]],
    ],
  ])("%s", async (_title, edit, problems) => {
    const response = await t.post(`${at}/edits`, { base: 1, edit });
    expect(response.status).toBe(422);
    expect(await problemsIn(response)).toEqual(problems);
    expect((await t.store.loadPlan("reed-corner"))?.revision).toBe(1);
  });

  test.each([
    ["no base", `{"edit":{"type":"rename","name":"x"}}`],
    ["half a base", `{"base":1.5,"edit":{"type":"rename","name":"x"}}`],
    ["no edit", `{"base":1}`],
    ["an edit of no known kind", `{"base":1,"edit":{"type":"drop-table"}}`],
    ["an edit with a strange key", `{"base":1,"edit":{"type":"rename","name":"x","by":"y"}}`],
    ["an edit with text for a number", `{"base":1,"edit":{"type":"move-plot","plot":"p1","x":"1","y":2}}`],
    ["a list", `[1]`],
    ["null", `null`],
    ["nothing", ``],
    ["broken JSON", `{"base":1,`],
    ["a number beyond all numbers", `{"base":1,"edit":{"type":"move-plot","plot":"p1","x":1e999,"y":2}}`],
    ["the key __proto__", `{"base":1,"__proto__":{"isAdmin":true},"edit":{"type":"rename","name":"x"}}`],
    ["the key __proto__ inside", `{"base":1,"edit":{"type":"rename","name":"x","__proto__":{"a":1}}}`],
    ["a key twice", `{"base":1,"base":2,"edit":{"type":"rename","name":"x"}}`],
    ["a deep well of brackets", `{"base":1,"edit":${"[".repeat(100_000)}`],
    ["bytes that are no text", Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d)],
  ])("%s", async (_title, body) => {
    const response = await t.post(`${at}/edits`, body);
    expect(response.status).toBe(422);
    expect((await problemsIn(response)).length).toBeGreaterThan(0);
    expect((await t.store.loadPlan("reed-corner"))?.revision).toBe(1);
    expect(({} as { isAdmin?: boolean }).isAdmin).toBeUndefined();
  });

  test("more than 5 MB of JSON", async () => {
    const response = await t.post(`${at}/edits`, { base: 1, edit: rename("x".repeat(5 * 1024 * 1024)) });
    expect(response.status).toBe(413);
  });
});
