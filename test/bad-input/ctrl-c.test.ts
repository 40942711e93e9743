import { readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { areaGeoJson } from "../support/bad-layers.ts";
import { entryIn, startCausey } from "../support/running.ts";
import { causey, folderOf, temporaryFolder } from "../support/shell.ts";
import { demoWith } from "../support/survey-plan.ts";
import { contentsOf } from "../support/unchanged.ts";

/** So much that its writing cannot be over before a signal comes. */
const BALLAST_BYTES = 300_000_000;
const isAside = (name: string): boolean => name.startsWith(".out-writing-");

// Windows has no signals: a console's Ctrl-C cannot be sent by another program.
describe.skipIf(process.platform === "win32")("causey import, which writes a plan folder of 300 MB", () => {
  let plan = "";
  let layer = "";
  beforeAll(() => {
    plan = demoWith(() => ({}));
    writeFileSync(join(plan, "photo.jpg"), new Uint8Array(BALLAST_BYTES).fill(7));
    layer = join(folderOf(new Map([["pans.geojson", areaGeoJson()]])), "pans.geojson");
  });
  afterAll(() => rmSync(plan, { recursive: true, force: true }));
  const args = (out: string): readonly string[] => [
    "import",
    plan,
    layer,
    "--as",
    "areas",
    "--use",
    "pool",
    "--out",
    out,
  ];

  /** Starts writing `out` anew and sends the signal as soon as the first bytes are laid beside it. */
  async function stopped(parent: string, signal: NodeJS.Signals) {
    const { child, ended } = startCausey(args(join(parent, "out")));
    await entryIn(parent, isAside);
    child.kill(signal);
    return ended;
  }

  test.each(["SIGINT", "SIGTERM"] as const)(
    "%s while it writes (Ctrl-C sends SIGINT): exit code 130, a word, no half-written folder, nothing left beside it",
    async (signal) => {
      const parent = temporaryFolder();
      const before = contentsOf(plan);
      expect(await stopped(parent, signal)).toEqual({
        code: 130,
        signal: null,
        error: expect.stringContaining("Stopped. Nothing was written.") as string,
      });
      expect(readdirSync(parent)).toEqual([]);
      expect(contentsOf(plan)).toEqual(before);
    },
  );

  test("Ctrl-C while it writes over an earlier output: that stays whole", async () => {
    const parent = temporaryFolder();
    const out = join(parent, "out");
    expect(causey(["new", out]).code).toBe(0);
    const before = contentsOf(out);
    expect((await stopped(parent, "SIGINT")).code).toBe(130);
    expect(contentsOf(out)).toEqual(before);
    expect(readdirSync(parent)).toEqual(["out"]);
  });

  test("killed while it writes: the earlier output stays whole, and the next run clears what was left beside it", async () => {
    const parent = temporaryFolder();
    const out = join(parent, "out");
    expect(causey(["new", out]).code).toBe(0);
    const before = contentsOf(out);
    expect((await stopped(parent, "SIGKILL")).signal).toBe("SIGKILL");
    expect(contentsOf(out)).toEqual(before);
    expect(readdirSync(parent).filter(isAside)).toHaveLength(1);
    expect(causey(["new", out]).code).toBe(0);
    expect(readdirSync(parent)).toEqual(["out"]);
  });
});

test("what a program that still runs lays beside a folder is left alone", () => {
  const parent = temporaryFolder();
  expect(causey(["new", join(parent, "out")]).code).toBe(0);
  const foreign = `.out-writing-ffffffff-${process.pid}-x`;
  writeFileSync(join(parent, foreign), "");
  expect(causey(["new", join(parent, "out")]).code).toBe(0);
  expect(readdirSync(parent).sort()).toEqual([foreign, "out"]);
});
