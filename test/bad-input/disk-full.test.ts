import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { serve } from "@causey/server/serve";
import { areaGeoJson } from "../support/bad-layers.ts";
import { causey, demoFolder, folderOf, program, temporaryFolder } from "../support/shell.ts";
import { contentsOf } from "../support/unchanged.ts";

const mount = (place: string, size: string): boolean =>
  spawnSync("mount", ["-t", "tmpfs", "-o", `size=${size}`, "none", place]).status === 0;
const unmount = (place: string): unknown => spawnSync("umount", [place]);

/** Only the machine's owner may make a small disk; elsewhere the limit on a file's size stands in for it below. */
const canMount = ((): boolean => {
  const place = temporaryFolder();
  const isMade = process.platform === "linux" && mount(place, "64k");
  if (isMade) unmount(place);
  return isMade;
})();

const layer = (): string => join(folderOf(new Map([["pans.geojson", areaGeoJson()]])), "pans.geojson");

describe.skipIf(!canMount)("a disk of 400 kB", () => {
  let disk = "";
  beforeAll(() => {
    disk = temporaryFolder();
    mount(disk, "400k");
  });
  afterAll(() => {
    unmount(disk);
    rmSync(disk, { recursive: true, force: true });
  });
  const importArgs = (out: string): readonly string[] => [
    "import",
    demoFolder,
    layer(),
    "--as",
    "areas",
    "--use",
    "pool",
    "--out",
    out,
  ];

  test("full while a plan folder is written: exit code 1, file and mend are named, nothing is half-written", () => {
    const ran = causey(importArgs(join(disk, "out")));
    expect(ran.code, ran.error).toBe(1);
    expect(ran.error).toMatch(/out, (\S+) \(ENOSPC\): The disk is full: "\1" cannot be written/);
    expect(ran.error).toMatch(/Nothing was changed in ".*out"/);
    expect(ran.error).toMatch(/Free at least \d+ MB on that disk, or choose a folder on another one/);
    expect(readdirSync(disk)).toEqual([]);
  });

  test("full while an earlier output is written over: that stays whole", () => {
    const out = join(disk, "plan");
    expect(causey(["new", out]).code).toBe(0);
    const before = contentsOf(disk);
    expect(Object.keys(before).length).toBeGreaterThan(3);
    const ran = causey(importArgs(out));
    expect(ran.code, ran.error).toBe(1);
    expect(ran.error).toContain("The disk is full");
    expect(contentsOf(disk)).toEqual(before);
    rmSync(out, { recursive: true });
  });

  test("full while the store is backed up: exit code 1 and a word, no half backup", async () => {
    const data = temporaryFolder();
    const serving = await serve({
      dataFolder: data,
      port: 0,
      open: false,
      staticFolder: temporaryFolder(),
      demoFolders: [demoFolder],
    });
    await serving.close();
    mkdirSync(join(disk, "backups"));
    writeFileSync(join(disk, "ballast"), new Uint8Array(250_000));
    const ran = causey(["backup", "--data", data, "--to", join(disk, "backups", "copy.sqlite")]);
    expect(ran.code, ran.error).toBe(1);
    expect(ran.error).toMatch(/The disk is full.*Free some space/);
    expect(readdirSync(join(disk, "backups")).filter((name) => /\.(sqlite|part)/.test(name))).toEqual([]);
  });
});

describe.skipIf(process.platform === "win32")("a limit on the size of a file, as quotas set it", () => {
  test("reached while a plan folder is written: file and mend are named, the earlier output stays whole", () => {
    const parent = temporaryFolder();
    const out = join(parent, "out");
    expect(causey(["new", out]).code).toBe(0);
    const before = contentsOf(parent);
    const command = `trap '' XFSZ; ulimit -f 100; exec "$0" "$@"`;
    const args = [program, "import", demoFolder, layer(), "--as", "areas", "--use", "pool", "--out", out];
    const ran = spawnSync("sh", ["-c", command, process.execPath, ...args], { encoding: "utf8" });
    expect(ran.status, ran.stderr).toBe(1);
    expect(ran.stderr).toMatch(/terrain\.asc \(EFBIG\): The disk is full: "terrain\.asc" cannot be written/);
    expect(contentsOf(parent)).toEqual(before);
  });
});
