import { execFileSync, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { readArchive } from "@causey/io/archive";
import { serve } from "@causey/server/serve";
import { causey, folderOf, temporaryFolder } from "./support/shell.ts";

const examples = resolve(import.meta.dirname, "../examples");

/** A demo's folder with its sweep cut to one heading: the search then takes seconds. */
function quickDemo(name: string): string {
  const folder = join(examples, name);
  const files = new Map(readdirSync(folder).map((f) => [f, new Uint8Array(readFileSync(join(folder, f)))]));
  const plan = JSON.parse(new TextDecoder().decode(files.get("plan.json")!)) as {
    layout: { heading_step_deg: number };
  };
  plan.layout.heading_step_deg = 90;
  files.set("plan.json", new TextEncoder().encode(JSON.stringify(plan)));
  return folderOf(files);
}

/** What the store gives out for a plan folder: taken in by one Causey, handed over as one archive. */
async function handedOver(folder: string): Promise<string> {
  const serving = await serve({
    dataFolder: temporaryFolder(),
    port: 0,
    open: false,
    staticFolder: temporaryFolder(),
    demoFolders: [folder],
  });
  try {
    const entered = await fetch(serving.url, { redirect: "manual" });
    const cookie = entered.headers.get("set-cookie")!.split(";")[0]!;
    const { origin } = new URL(serving.url);
    const list = await fetch(`${origin}/api/plans`, { headers: { cookie } });
    const { plans } = (await list.json()) as { plans: { id: string }[] };
    const archive = await fetch(`${origin}/api/plans/${plans[0]!.id}/archive`, { headers: { cookie } });
    return folderOf(readArchive(new Uint8Array(await archive.arrayBuffer())));
  } finally {
    await serving.close();
  }
}

const sums = (folder: string): readonly string[] =>
  readdirSync(folder)
    .sort()
    .filter((name) => !name.startsWith("."))
    .map(
      (name) =>
        `${createHash("sha256")
          .update(readFileSync(join(folder, name)))
          .digest("hex")} ${name}`,
    );

function planned(folder: string): string {
  const out = join(temporaryFolder(), "out");
  const ran = causey(["plan", folder, "--out", out, "--quiet"]);
  expect(ran.code, ran.error).toBe(0);
  return out;
}

test.each(["salt-meadow", "spring-fen"])(
  "%s, handed over as one archive and opened elsewhere: every file of the results has the same sum",
  async (name) => {
    const folder = quickDemo(name);
    const [here, there] = [planned(folder), planned(await handedOver(folder))];
    expect(sums(here).length).toBeGreaterThan(7);
    expect(sums(there)).toEqual(sums(here));
  },
);

const hasPoppler = spawnSync("pdftotext", ["-v"]).error === undefined;

test("the demo's rare plant is in no file that is shared: results, tables, GeoPackage, every page of the papers", () => {
  const folder = quickDemo("salt-meadow");
  const traces = /rare.?plant|plant records/i;
  expect(readFileSync(join(folder, "zones.geojson"), "utf8")).toMatch(traces);
  const out = planned(folder);
  for (const name of readdirSync(out))
    expect(readFileSync(join(out, name), "latin1"), name).not.toMatch(traces);
  const papers = join(temporaryFolder(), "papers");
  const drawn = causey(["papers", folder, "--out", papers, "--sheets", "all"]);
  expect(drawn.code, drawn.error).toBe(0);
  if (!hasPoppler) return;
  const text = execFileSync("pdftotext", ["-layout", join(papers, "papers.pdf"), "-"], {
    maxBuffer: 1e8,
  }).toString();
  expect(text).toContain("Quillet Creek");
  expect(text).not.toMatch(traces);
});
