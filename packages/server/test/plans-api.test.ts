import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { samplePlan } from "../../engine/test/plan/sample-plan.ts";
import { sampleFiles } from "../../runtime/test/store-contract.ts";
import { folderOf, readFakeArchive, writeFakeArchive } from "./fake-format.ts";
import { problemsIn, testApp, type TestApp } from "./test-app.ts";

let t: TestApp;
beforeEach(async () => {
  t = await testApp();
});
afterEach(() => t.close());

const json = async (response: Response): Promise<unknown> => response.json();
const plan = samplePlan();
const upload = (bytes: Uint8Array, type = "application/zip"): Promise<Response> =>
  t.ask("/api/plans", {
    method: "POST",
    headers: { "content-type": type },
    body: bytes as Uint8Array<ArrayBuffer>,
  });

describe("reading", () => {
  test("the list of plans", async () => {
    const { plans } = (await json(await t.ask("/api/plans"))) as { plans: object[] };
    expect(plans).toMatchObject([{ id: "reed-corner", name: "Reed Corner", revision: 1 }]);
  });

  test("a plan with its revision, its files and what can be taken back", async () => {
    expect(await json(await t.ask("/api/plans/reed-corner"))).toMatchObject({
      plan,
      revision: 1,
      undo: null,
      redo: null,
      files: [{ name: "photos/søndre vad.jpg" }, { name: "prices.csv" }, { name: "terrain.asc", size: 16 }],
    });
  });

  test("a file comes back as inert bytes, also when its name has a folder in it", async () => {
    for (const [name, bytes] of sampleFiles()) {
      const response = await t.ask(`/api/plans/reed-corner/files/${encodeURIComponent(name)}`);
      expect(new Uint8Array(await response.arrayBuffer())).toEqual(bytes);
      expect(response.headers.get("content-type")).toBe("application/octet-stream");
      expect(response.headers.get("content-disposition")).toMatch(/^attachment; /);
      expect(response.headers.get("content-security-policy")).toBe(
        "default-src 'none'; sandbox; frame-ancestors 'none'",
      );
      expect(response.headers.get("x-content-type-options")).toBe("nosniff");
    }
  });

  test("the name of a saved file is written as RFC 6266 and RFC 8187 say", async () => {
    const response = await t.ask(
      `/api/plans/reed-corner/files/${encodeURIComponent("photos/søndre vad.jpg")}`,
    );
    expect(response.headers.get("content-disposition")).toBe(
      `attachment; filename="s_ndre vad.jpg"; filename*=UTF-8''s%C3%B8ndre%20vad.jpg`,
    );
  });

  test.each([
    "/api/plans/none",
    "/api/plans/none/archive",
    "/api/plans/none/history",
    "/api/plans/none/files/prices.csv",
    "/api/plans/reed-corner/files/none.csv",
    "/api/plans/reed-corner/files/..%2f..%2fcausey.sqlite",
    "/api/plans/__proto__",
    "/api/none",
  ])("%s is not found", async (path) => {
    const response = await t.ask(path);
    expect(response.status).toBe(404);
    expect(response.headers.get("content-type")).toBe("application/problem+json");
  });
});

describe("taking in a plan", () => {
  const other = samplePlan({ id: "alder", name: "Alder carr" });

  test("an archive becomes a plan, and comes back as the same archive", async () => {
    const files = folderOf(other, sampleFiles());
    const created = await upload(writeFakeArchive(files));
    expect(created.status).toBe(201);
    expect(await json(created)).toEqual({ id: "alder", revision: 1, warnings: [] });
    const archive = await t.ask("/api/plans/alder/archive");
    expect(archive.headers.get("content-type")).toBe("application/zip");
    expect(archive.headers.get("content-disposition")).toContain('filename="Alder carr.zip"');
    const back = readFakeArchive(new Uint8Array(await archive.arrayBuffer()));
    expect(back.size).toBe(files.size);
    for (const [name, bytes] of files) expect(back.get(name)).toEqual(bytes);
  });

  test("the same plan a second time is kept beside the first", async () => {
    const archive = writeFakeArchive(folderOf(plan, sampleFiles()));
    const { id } = (await json(await upload(archive))) as { id: string };
    expect(id).not.toBe("reed-corner");
    expect(await json(await t.ask(`/api/plans/${id}`))).toMatchObject({ plan: { ...plan, id } });
  });

  const form = (parts: Iterable<readonly [string, Uint8Array | string]>): Promise<Response> => {
    const data = new FormData();
    for (const [name, part] of parts)
      if (typeof part === "string") data.append(name, part);
      else data.append("file", new File([part as Uint8Array<ArrayBuffer>], name));
    return t.ask("/api/plans", { method: "POST", body: data });
  };

  test("the files of a folder, or one archive, in a form", async () => {
    const files = folderOf(other, sampleFiles());
    expect((await form(files)).status).toBe(201);
    expect(await t.store.readFile("alder", "photos/søndre vad.jpg")).toEqual(
      sampleFiles().get("photos/søndre vad.jpg"),
    );
    expect((await form([["plan.zip", writeFakeArchive(files)]])).status).toBe(201);
    expect(await t.store.listPlans()).toHaveLength(3);
  });

  test("all problems at once, and nothing is stored", async () => {
    for (const response of [
      await upload(writeFakeArchive(new Map([["notes.txt", new Uint8Array(1)]]))),
      await form([["notes.txt", new Uint8Array(1)]]),
    ]) {
      expect(response.status).toBe(422);
      expect(response.headers.get("content-type")).toBe("application/problem+json");
      expect((await problemsIn(response)).map(([, place]) => place)).toEqual([
        "plan.json",
        "terrain",
        "prices",
      ]);
    }
    expect(await t.store.listPlans()).toHaveLength(1);
  });

  test("an archive that is none, and a form that is none", async () => {
    expect((await upload(new TextEncoder().encode("PK?"))).status).toBe(422);
    const broken = await t.ask("/api/plans", {
      method: "POST",
      headers: { "content-type": "multipart/form-data; boundary=x" },
      body: "--y\r\n",
    });
    expect(broken.status).toBe(422);
    expect(await problemsIn(broken)).toEqual([["form", "body"]]);
  });

  test("hostile names in a form are refused, each by its name", async () => {
    const one = new Uint8Array(1);
    const response = await form([
      ["../../start.sh", one],
      ["/etc/passwd", one],
      ["con.txt", one],
      ["a.csv", one],
      ["a.csv", one],
      ["words", "not a file"],
    ]);
    expect(response.status).toBe(422);
    expect((await problemsIn(response)).map(([code]) => code)).toEqual([
      "file-name",
      "file-name",
      "file-name",
      "file-name",
      "form",
    ]);
  });

  test("other kinds of content, and more than 100 MB", async () => {
    expect((await upload(new Uint8Array(3), "text/html")).status).toBe(415);
    const big = new Uint8Array(100 * 1024 * 1024 + 1);
    expect((await upload(big)).status).toBe(413);
    const announced = await t.ask("/api/plans", {
      method: "POST",
      headers: { "content-type": "application/zip", "content-length": "99999999999" },
      body: "x",
    });
    expect(announced.status).toBe(413);
    expect(await t.store.listPlans()).toHaveLength(1);
  });
});
