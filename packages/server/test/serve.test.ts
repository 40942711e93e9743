import { mkdtemp, readFile, rm, stat, writeFile } from "node:fs/promises";
import { request } from "node:http";
import { networkInterfaces, tmpdir } from "node:os";
import { join } from "node:path";
import { ProblemError } from "@causey/engine/formula";
import type { Plan } from "@causey/engine/plan";
import type { Zone } from "@causey/engine/site";
import { readArchive } from "@causey/io/archive";
import { readFolder } from "@causey/io/folder";
import { backupStore } from "@causey/runtime/store";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { square } from "../../engine/test/plan/sample-plan.ts";
import { serve, type ServeOptions, type Serving } from "../src/serve/index.ts";
import { problemsIn } from "./test-app.ts";

const demoFolder = join(import.meta.dirname, "../../../examples/salt-meadow");
let root: string;
let running: Serving;
let cookie: string;
const reported: unknown[] = [];

const options = (name = "data"): ServeOptions => ({
  dataFolder: join(root, name),
  port: 0,
  open: false,
  staticFolder: join(root, "pages"),
  demoFolders: [demoFolder],
  report: (error) => reported.push(error),
});

/** Opens a start address as a browser does and keeps the cookie. */
async function enter({ url }: Serving): Promise<string> {
  const response = await fetch(url, { redirect: "manual" });
  expect([response.status, response.headers.get("location")]).toEqual([303, "/"]);
  return response.headers.get("set-cookie")!.split(";")[0]!;
}

const origin = ({ port }: Serving): string => `http://127.0.0.1:${port}`;
const ask = (path: string, init: RequestInit = {}, from = running, as = cookie): Promise<Response> =>
  fetch(`${origin(from)}${path}`, {
    ...init,
    headers: { origin: origin(from), cookie: as, ...(init.headers as Record<string, string>) },
  });
const post = (path: string, body: object): Promise<Response> =>
  ask(path, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) });

interface Snapshot {
  readonly plan: Plan;
  readonly revision: number;
}
const load = async (id: string): Promise<Snapshot> =>
  (await (await ask(`/api/plans/${id}`)).json()) as Snapshot;
const ids = async (): Promise<readonly string[]> => {
  const { plans } = (await (await ask("/api/plans")).json()) as { plans: { id: string }[] };
  return plans.map((p) => p.id);
};

let demoId: string;
beforeAll(async () => {
  root = await mkdtemp(join(tmpdir(), "causey-serve-"));
  running = await serve(options());
  cookie = await enter(running);
  [demoId] = (await ids()) as [string];
});
afterAll(async () => {
  await running.close();
  await rm(root, { recursive: true, force: true });
});

describe("the demo plan in an empty store", () => {
  test("is there once, whole, with its files byte for byte", async () => {
    expect(reported).toEqual([]);
    expect(await ids()).toHaveLength(1);
    const files = await readFolder(demoFolder);
    const { plan } = await load(demoId);
    const terrain = await ask(`/api/plans/${demoId}/files/${"terrain.asc"}`);
    expect(Buffer.from(await terrain.arrayBuffer()).equals(files.get("terrain.asc")!)).toBe(true);
    expect(plan.plots.length).toBeGreaterThan(0);
  });

  test("given out as an archive and read again it is the same plan", async () => {
    const archive = new Uint8Array(await (await ask(`/api/plans/${demoId}/archive`)).arrayBuffer());
    expect([...readArchive(archive).keys()].sort()).toEqual(
      [...(await readFolder(demoFolder)).keys()].sort(),
    );
    const taken = await ask("/api/plans", {
      method: "POST",
      headers: { "content-type": "application/zip" },
      body: archive,
    });
    expect(taken.status).toBe(201);
    const { id } = (await taken.json()) as { id: string };
    expect((await load(id)).plan).toEqual({ ...(await load(demoId)).plan, id });
  });

  test("an archive with faults in several files is refused with all of them", async () => {
    const before = await ids();
    const form = new FormData();
    for (const [name, bytes] of await readFolder(demoFolder)) {
      const broken =
        name === "prices.csv" || name === "zones.geojson" ? new TextEncoder().encode("?") : bytes;
      form.append("file", new File([broken as Uint8Array<ArrayBuffer>], name));
    }
    const response = await ask("/api/plans", { method: "POST", body: form });
    expect(response.status).toBe(422);
    const { problems } = (await response.json()) as { problems: { file: string }[] };
    expect(new Set(problems.map((p) => p.file))).toEqual(new Set(["prices.csv", "zones.geojson"]));
    expect(await ids()).toEqual(before);
  });
});

describe("edits are held against what lies beside the plan", () => {
  const tryEdit = async (edit: object): Promise<Response> => {
    const { revision } = await load(demoId);
    return post(`/api/plans/${demoId}/edits`, { base: revision, edit });
  };

  test("a plot is moved on the terrain, but not off it", async () => {
    const { plan, revision } = await load(demoId);
    const { id, x, y } = plan.plots[0]!;
    const off = await tryEdit({ type: "move-plot", plot: id, x: x + 1e6, y });
    expect(off.status).toBe(422);
    expect(await problemsIn(off)).toEqual([["place-off-terrain", expect.stringContaining(id)]]);
    expect((await load(demoId)).revision).toBe(revision);
    expect((await tryEdit({ type: "move-plot", plot: id, x: x + 0.5, y })).status).toBe(200);
  });

  test("an area is closed where no plot lies, and taken back", async () => {
    const { plan, revision } = await load(demoId);
    const { x, y } = plan.plots[0]!;
    const zone = (at: number): Zone => ({ ...square("terns", "tern colony", at, at, 4), use: "closed" });
    const over = { ...zone(0), polygons: square("", "", x - 2, y - 2, 4).polygons };
    const refused = await tryEdit({ type: "add-zone", zone: over });
    expect([refused.status, (await problemsIn(refused))[0]?.[0]]).toEqual([422, "place-in-shut-zone"]);
    const beside = { ...zone(0), polygons: square("", "", x + 20, y + 20, 4).polygons };
    expect((await tryEdit({ type: "add-zone", zone: beside })).status).toBe(200);
    expect((await post(`/api/plans/${demoId}/undo`, { base: revision + 1 })).status).toBe(200);
    expect((await load(demoId)).plan).toEqual(plan);
  });

  test("a recipe that cannot be built, and a cart that does not fit, are refused with the kit's own words", async () => {
    const { plan } = await load(demoId);
    const kit = { ...plan.kit, joint_gap_mm: 0.37 };
    const lattice = await tryEdit({ type: "set-kit", kit });
    expect([lattice.status, (await problemsIn(lattice)).map(([code]) => code)]).toEqual([
      422,
      expect.arrayContaining(["kit-lattice"]),
    ]);
    const cart = {
      name: "Hay wagon",
      empty_kg: 300,
      load_kg: 300,
      wet_kg: 0,
      width_mm: 2600,
      length_mm: 4000,
      track_mm: 2500,
      axle_distance_mm: 0,
      axles: 1,
      wheel_width_mm: 100,
      wheel_contact_mm: 100,
    };
    const wide = await tryEdit({ type: "set-visit", visit: { ...plan.visits[0]!, cart } });
    expect(await problemsIn(wide)).toEqual([["kit-cart", "visits[0].cart"]]);
  });
});

test("the registered calculations answer as they do in the shell", async () => {
  const list = (await (await ask("/api/calc")).json()) as { id: string; inputs: { key: string }[] }[];
  expect(list.length).toBeGreaterThan(10);
  const wrong = await post(`/api/calc/${list[0]!.id}`, { colour: "red" });
  expect(wrong.status).toBe(422);
  expect(await problemsIn(wrong)).toContainEqual(["input", "colour"]);
});

describe("the port", () => {
  const raw = (host: string, headers: Record<string, string>): Promise<number> =>
    new Promise((resolve, reject) => {
      const call = request(
        { host, port: running.port, path: "/api/plans", headers, timeout: 2000 },
        (answer) => {
          answer.resume();
          resolve(answer.statusCode!);
        },
      );
      call.on("error", reject);
      call.on("timeout", () => call.destroy(new Error("no answer")));
      call.end();
    });

  test("a name that points at this machine is not the server's name", async () => {
    expect(await raw("127.0.0.1", { host: `attack.example:${running.port}`, cookie })).toBe(421);
    expect(await raw("127.0.0.1", { host: `127.0.0.1:${running.port}`, cookie })).toBe(200);
  });

  test("other addresses of this machine do not answer", async () => {
    const others = Object.values(networkInterfaces())
      .flatMap((list) => list ?? [])
      .filter((a) => !a.internal && a.family === "IPv4")
      .map((a) => a.address);
    for (const address of [...others, "127.0.0.2"])
      await expect(raw(address, { host: `127.0.0.1:${running.port}`, cookie })).rejects.toThrow(
        /REFUSED|no answer/,
      );
  });

  test("a body without end is cut off at the limit", async () => {
    const status = await new Promise<number>((resolve, reject) => {
      const headers = { host: `127.0.0.1:${running.port}`, origin: origin(running), cookie };
      const call = request(
        {
          port: running.port,
          host: "127.0.0.1",
          path: "/api/plans",
          method: "POST",
          headers: { ...headers, "content-type": "application/zip", "transfer-encoding": "chunked" },
        },
        (answer) => {
          answer.resume();
          resolve(answer.statusCode!);
          call.destroy();
        },
      );
      call.on("error", reject);
      const chunk = Buffer.alloc(1 << 20);
      const send = (): void => {
        if (!call.destroyed) call.write(chunk, send);
      };
      send();
    });
    expect(status).toBe(413);
  });

  test("a port that is taken is a problem in words", async () => {
    const second = serve({ ...options("second"), port: running.port });
    await expect(second).rejects.toThrow(ProblemError);
    await expect(second).rejects.toThrow("another program listens on this port");
  });
});

describe("stopped and started again", () => {
  test("a page that was let in goes on; the old start address is worth nothing; the demo comes once", async () => {
    const first = await serve(options("again"));
    const kept = await enter(first);
    await first.close();
    const second = await serve({ ...options("again"), port: first.port });
    const list = await ask("/api/plans", {}, second, kept);
    expect(((await list.json()) as { plans: object[] }).plans).toHaveLength(1);
    expect((await fetch(first.url, { redirect: "manual" })).status).toBe(401);
    expect(second.url).not.toBe(first.url);
    await second.close();

    const secret = join(root, "again", "session");
    if (process.platform !== "win32") expect((await stat(secret)).mode & 0o777).toBe(0o600);
    await writeFile(secret, "broken");
    const third = await serve({ ...options("again"), port: first.port });
    expect((await ask("/api/plans", {}, third, kept)).status).toBe(401);
    await third.close();
    expect(await readFile(secret, "utf8")).toMatch(/^[0-9a-f]{64}$/);
  });

  test("a demo that cannot be read is reported and left out", async () => {
    const errors: unknown[] = [];
    const server = await serve({
      ...options("no-demo"),
      demoFolders: [join(root, "nowhere")],
      report: (error) => errors.push(error),
    });
    const list = await ask("/api/plans", {}, server, await enter(server));
    expect(await list.json()).toEqual({ plans: [] });
    expect(errors).toEqual([expect.any(ProblemError)]);
    await server.close();
  });

  test("a backup taken while the server runs is served as a store of its own", async () => {
    const before = await load(demoId);
    const target = join(root, "restored", "causey.sqlite");
    const { plans } = await backupStore(join(root, "data"), target);
    expect(plans).toBe((await ids()).length);
    const server = await serve(options("restored"));
    const restored = await ask(`/api/plans/${demoId}`, {}, server, await enter(server));
    expect(await restored.json()).toEqual(JSON.parse(JSON.stringify(before)));
    await server.close();
  });
});
