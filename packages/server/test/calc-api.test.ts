import { afterAll, beforeAll, expect, test } from "vitest";
import { problemsIn, testApp, type TestApp } from "./test-app.ts";

let t: TestApp;
beforeAll(async () => {
  t = await testApp();
});
afterAll(() => t.close());

test("the list names each calculation with its inputs and sources", async () => {
  const list = (await (await t.ask("/api/calc")).json()) as object[];
  expect(list[0]).toEqual({
    id: "test.double",
    title: "Twice a length",
    kind: "method",
    inputs: [{ key: "length_mm", title: "Length", type: "number", min: 0 }],
    outputs: [{ key: "doubled_mm", title: "Twice the length", type: "number" }],
    sources: [],
  });
});

test("a calculation answers with its outputs and its working", async () => {
  const response = await t.post("/api/calc/test.double", { length_mm: 21 });
  expect(response.status).toBe(200);
  expect(await response.json()).toEqual({ ok: true, outputs: { doubled_mm: 42 }, working: [] });
});

test("a bad input gives every problem, as the command line does", async () => {
  const response = await t.post("/api/calc/test.double", { length_mm: -1, colour: "red" });
  expect(response.status).toBe(422);
  const body = (await response.clone().json()) as { ok: boolean };
  expect(body.ok).toBe(false);
  expect(await problemsIn(response)).toEqual([
    ["input", "colour"],
    ["input", "length_mm"],
  ]);
});

test("keys that name files are refused at any depth, before anything is computed", async () => {
  const response = await t.post("/api/calc/test.double", {
    length_mm: 1,
    terrain_file: "/etc/passwd",
    deep: [{ prices_file: "prices.csv" }],
  });
  expect(response.status).toBe(422);
  expect(await problemsIn(response)).toEqual([
    ["file-key", "terrain_file"],
    ["file-key", "deep[0].prices_file"],
  ]);
});

test("a calculation that is not registered", async () => {
  for (const id of ["none", "__proto__", "constructor"])
    expect((await t.post(`/api/calc/${id}`, {})).status).toBe(404);
});
