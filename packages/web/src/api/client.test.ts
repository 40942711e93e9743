import { expect, test } from "vitest";
import { createPlanStore } from "./client.ts";
import { StoreError } from "./types.ts";

interface Asked {
  readonly address: string;
  readonly init: RequestInit | undefined;
}

function storeAnswering(
  status: number,
  body: unknown,
): { asked: Asked[]; store: ReturnType<typeof createPlanStore> } {
  const asked: Asked[] = [];
  const store = createPlanStore("api", async (address, init) => {
    asked.push({ address, init });
    return new Response(JSON.stringify(body), { status });
  });
  return { asked, store };
}

const rename = { kind: "edit", edit: { type: "rename", name: "New" } } as const;

test("a change names the revision it was made on; a saved one brings the new state", async () => {
  const { asked, store } = storeAnswering(200, {
    plan: { name: "New" },
    revision: 8,
    undo: "Renamed",
    redo: null,
  });
  const answer = await store.change("a b", 7, rename);
  expect(asked[0]!.address).toBe("api/plans/a%20b/edits");
  expect(JSON.parse(asked[0]!.init!.body as string)).toEqual({ base: 7, edit: rename.edit });
  expect(answer).toMatchObject({ kind: "saved", saved: { revision: 8, undo: "Renamed" } });
});

test("undo and redo have their own addresses and send no edit", async () => {
  const { asked, store } = storeAnswering(200, { plan: {}, revision: 9, undo: null, redo: "Renamed" });
  await store.change("p", 8, { kind: "undo" });
  expect(asked[0]!.address).toBe("api/plans/p/undo");
  expect(JSON.parse(asked[0]!.init!.body as string)).toEqual({ base: 8 });
});

test("an older base and a refusal are answers, not errors", async () => {
  const older = storeAnswering(409, { plan: { name: "Theirs" }, revision: 12, problems: [] });
  expect(await older.store.change("p", 7, rename)).toMatchObject({ kind: "older-base", revision: 12 });
  const problem = { code: "x", message: "No", mend: "Yes" };
  const refused = storeAnswering(422, { problems: [problem] });
  expect(await refused.store.change("p", 7, rename)).toEqual({ kind: "refused", problems: [problem] });
  const large = storeAnswering(413, { problems: [problem] });
  expect(await large.store.open(new Uint8Array(1))).toEqual({ kind: "refused", problems: [problem] });
});

test("everything else is trouble of a kind that the page can explain", async () => {
  const kinds = [
    [401, "signed-out"],
    [403, "signed-out"],
    [404, "not-found"],
    [500, "unexpected"],
  ] as const;
  for (const [status, trouble] of kinds)
    await expect(storeAnswering(status, {}).store.load("p")).rejects.toMatchObject({ trouble });
  const away = createPlanStore("api", () => Promise.reject(new TypeError("Failed to fetch")));
  await expect(away.list()).rejects.toMatchObject({ trouble: "no-answer" });
  await expect(away.list()).rejects.toBeInstanceOf(StoreError);
});
