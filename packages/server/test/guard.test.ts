import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { access, cookie, HOST, PORT, problemsIn, testApp, type TestApp } from "./test-app.ts";

let t: TestApp;
beforeAll(async () => {
  t = await testApp();
});
afterAll(() => t.close());

const rename = { base: 1, edit: { type: "rename", name: "Taken over" } };

describe("only the server's own names", () => {
  test.each([
    "",
    "evil.example",
    `evil.example:${PORT}`,
    "127.0.0.1",
    "127.0.0.1:1",
    `127.0.0.1:${PORT}.evil.example`,
    `[::1]:${PORT}`,
    `0.0.0.0:${PORT}`,
  ])('Host "%s" is refused, on pages and on the API', async (host) => {
    for (const path of ["/", "/api/plans", `/?token=${access.token}`]) {
      const response = await t.ask(path, { headers: { host } });
      expect(response.status).toBe(421);
      expect(response.headers.get("set-cookie")).toBeNull();
    }
  });

  test.each([HOST, `localhost:${PORT}`])('Host "%s" is answered', async (host) => {
    expect((await t.ask("/api/plans", { headers: { host } })).status).toBe(200);
  });
});

describe("only a browser that came by the start address", () => {
  test.each(["", "causey_4317=", "causey_4317=wrong", `causey_1=${access.session}`, "other=1"])(
    'cookie "%s": the API answers 401 and tells what to do',
    async (given) => {
      const response = await t.ask("/api/plans", { headers: { cookie: given } });
      expect(response.status).toBe(401);
      expect(response.headers.get("content-type")).toBe("application/problem+json");
      expect(await problemsIn(response)).toEqual([["session", "Cookie"]]);
    },
  );

  test("every address of the API is shut without the cookie, also those that do not exist", async () => {
    for (const path of ["/api", "/api/plans/reed-corner", "/api/calc", "/api/none", "/api//plans"])
      expect((await t.ask(path, { headers: { cookie: "" } })).status).toBeGreaterThanOrEqual(401);
    const late = await t.post("/api/plans/reed-corner/edits", rename, { cookie: "" });
    expect(late.status).toBe(401);
  });

  test("the start address sets a cookie for this site alone and leads away from the token", async () => {
    const response = await t.ask(`/?token=${access.token}`, { headers: { cookie: "" } });
    expect(response.status).toBe(303);
    expect(response.headers.get("location")).toBe("/");
    expect(response.headers.get("set-cookie")).toBe(`${cookie}; Path=/; HttpOnly; SameSite=Strict`);
    expect(response.headers.get("cache-control")).toBe("no-store");
  });

  test.each(["", "wrong", access.session, `${access.token}x`])('token "%s" lets nobody in', async (token) => {
    const response = await t.ask(`/?token=${token}`, { headers: { cookie: "" } });
    expect(response.status).toBe(401);
    expect(response.headers.get("set-cookie")).toBeNull();
  });
});

describe("a change comes only from a page of this server", () => {
  test.each([
    "",
    "null",
    "http://evil.example",
    `https://${HOST}`,
    "http://127.0.0.1:8080",
    `http://localhost:${PORT}`,
    `http://${HOST}.evil.example`,
  ])('Origin "%s" is refused', async (origin) => {
    const response = await t.post("/api/plans/reed-corner/edits", rename, { origin });
    expect(response.status).toBe(403);
    expect((await t.store.loadPlan("reed-corner"))?.revision).toBe(1);
  });

  test("other methods are changes too", async () => {
    for (const method of ["PUT", "DELETE", "PATCH", "OPTIONS"])
      expect((await t.ask("/api/plans", { method, headers: { origin: "http://evil.example" } })).status).toBe(
        403,
      );
    expect((await t.ask("/api/plans", { method: "DELETE" })).status).toBe(404);
  });

  test("a form of a foreign page cannot pass for JSON", async () => {
    for (const type of ["text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""])
      expect((await t.post("/api/plans/reed-corner/edits", rename, { "content-type": type })).status).toBe(
        415,
      );
  });
});

describe("what the answers allow a browser to do", () => {
  test("the policy stands on every answer: page, API, refusal, missing page, fault", async () => {
    const answers = [
      await t.ask("/"),
      await t.ask("/api/plans"),
      await t.ask("/api/plans", { headers: { cookie: "" } }),
      await t.ask("/", { headers: { host: "evil.example" } }),
      await t.ask("/nothing-here"),
      await t.post("/api/calc/test.broken", {}),
    ];
    expect(answers.map((a) => a.status)).toEqual([503, 200, 401, 421, 404, 500]);
    for (const { headers } of answers) {
      const policy = new Map(
        headers
          .get("content-security-policy")!
          .split("; ")
          .map((line) => [line.split(" ")[0]!, line.split(" ").slice(1).join(" ")] as const),
      );
      expect(policy.get("default-src")).toBe("'self'");
      expect(policy.get("script-src")).toBe("'self' 'wasm-unsafe-eval'");
      expect(policy.get("worker-src")).toBe("'self' blob:");
      expect(policy.get("style-src")).toBe("'self'");
      expect(policy.get("img-src")).toBe("'self' blob: data:");
      expect(policy.get("frame-ancestors")).toBe("'none'");
      expect(policy.get("object-src")).toBe("'none'");
      expect(policy.get("base-uri")).toBe("'none'");
      expect(headers.get("x-content-type-options")).toBe("nosniff");
      expect(headers.get("referrer-policy")).toBe("no-referrer");
      expect(headers.get("cross-origin-resource-policy")).toBe("same-origin");
      expect(headers.get("access-control-allow-origin")).toBeNull();
    }
  });

  test("a fault of the server is reported inside and tells nothing outside", async () => {
    const before = t.reported.length;
    const response = await t.post("/api/calc/test.broken", {});
    expect(response.status).toBe(500);
    expect(await response.text()).not.toContain("secret detail");
    expect(t.reported).toHaveLength(before + 1);
  });
});

describe("pages", () => {
  beforeAll(async () => {
    const pages = join(t.folder, "pages");
    await mkdir(join(pages, "assets"), { recursive: true });
    await writeFile(join(pages, "index.html"), "<!doctype html><title>Causey</title>");
    await writeFile(join(pages, "mark.svg"), "<svg/>");
    await writeFile(join(pages, ".hidden.html"), "hidden");
    await writeFile(join(pages, "assets", "main-a1b2.js"), "1");
    await writeFile(join(pages, "assets", "highs-c3.wasm"), "2");
    await writeFile(join(t.folder, "outside.html"), "outside");
  });

  test("the page itself is never kept; what carries a hash in its name is kept for ever", async () => {
    const expected = {
      "/": ["text/html; charset=utf-8", "no-store"],
      "/index.html": ["text/html; charset=utf-8", "no-store"],
      "/mark.svg": ["image/svg+xml", "no-cache"],
      "/assets/main-a1b2.js": ["text/javascript; charset=utf-8", "public, max-age=31536000, immutable"],
      "/assets/highs-c3.wasm": ["application/wasm", "public, max-age=31536000, immutable"],
    };
    for (const [path, head] of Object.entries(expected)) {
      const { status, headers } = await t.ask(path, { headers: { cookie: "" } });
      expect([path, status, headers.get("content-type"), headers.get("cache-control")]).toEqual([
        path,
        200,
        ...head,
      ]);
    }
  });

  test.each([
    "/../outside.html",
    "/%2e%2e/outside.html",
    "/..%2foutside.html",
    "/assets/..%5c..%5coutside.html",
    "/assets//main-a1b2.js",
    "/.hidden.html",
    "/assets/main-a1b2.js%00.html",
    "/assets/",
    "/assets",
    "/causey.sqlite",
    "/index.html/x.html",
    "/none.js",
  ])("%s is not found", async (path) => {
    expect((await t.ask(path)).status).toBe(404);
  });
});
