import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { DomainError } from "@causey/engine/units";
import { readFolder, writeFolder } from "../src/folder/index.ts";
import { isHelpful, problemsOf, utf8 } from "./support/problems.ts";

let root = "";
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), "causey-io-"));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const files = new Map([
  ["results.json", utf8("{}")],
  ["photos/a.jpg", Uint8Array.from([1, 2, 3])],
]);
const other = new Map([["results.json", utf8('{"b": 1}')]]);
const leftovers = (): string[] => readdirSync(root).filter((n) => n !== "out");

test("what is written is read back, folders and all, and nothing is left beside it", async () => {
  const out = join(root, "out");
  expect(await writeFolder(out, files)).toMatchObject({ moved_aside: null });
  expect(await readFolder(out)).toEqual(files);
  expect(leftovers()).toEqual([]);
});

test("an earlier output is replaced as a whole", async () => {
  const out = join(root, "out");
  await writeFolder(out, files);
  await writeFolder(out, other);
  expect(await readFolder(out)).toEqual(other);
  expect(existsSync(join(out, "photos"))).toBe(false);
  expect(leftovers()).toEqual([]);
});

test("an empty folder is taken; a folder of someone else's, a file and a link are not", async () => {
  mkdirSync(join(root, "out"));
  await writeFolder(join(root, "out"), files);
  mkdirSync(join(root, "mine"));
  writeFileSync(join(root, "mine", "notes.txt"), "years of work");
  writeFileSync(join(root, "file"), "x");
  symlinkSync(join(root, "out"), join(root, "link"));
  for (const name of ["mine", "file", "link"]) {
    const [problem] = await problemsOf(() => writeFolder(join(root, name), files));
    expect(problem).toMatchObject({ code: "folder-in-the-way" });
    expect(isHelpful(problem!)).toBe(true);
  }
  expect(readFileSync(join(root, "mine", "notes.txt"), "utf8")).toBe("years of work");
});

test("an output to which someone has added a file, or in which someone has changed one, is not replaced", async () => {
  const out = join(root, "out");
  await writeFolder(out, files);
  writeFileSync(join(out, "results.json"), "{} changed by hand");
  expect((await problemsOf(() => writeFolder(out, other)))[0]!.message).toContain("was changed");
  writeFileSync(join(out, "results.json"), "{}");
  writeFileSync(join(out, "notes.txt"), "mine");
  expect((await problemsOf(() => writeFolder(out, other)))[0]!.message).toContain('holds "notes.txt"');
  expect(await readFolder(out)).toEqual(new Map([...files, ["notes.txt", utf8("mine")]]));
});

test("forced, what stands in the way is moved aside, never deleted", async () => {
  const mine = join(root, "mine");
  mkdirSync(mine);
  writeFileSync(join(mine, "notes.txt"), "years of work");
  const { moved_aside } = await writeFolder(mine, files, { force: true });
  expect(moved_aside).toMatch(/mine\.before-1$/);
  expect(readFileSync(join(moved_aside!, "notes.txt"), "utf8")).toBe("years of work");
  expect(await readFolder(mine)).toEqual(files);
});

test("a failure in the middle leaves the old folder whole and nothing beside it", async () => {
  const out = join(root, "out");
  await writeFolder(out, files);
  const broken = new Map<string, Uint8Array>([...other, ["results.json/inner", utf8("x")]]);
  await expect(writeFolder(out, broken)).rejects.toThrow();
  expect(await readFolder(out)).toEqual(files);
  expect(leftovers()).toEqual([]);
});

test("names that leave the folder, and a parent that is not there, are refused", async () => {
  await expect(writeFolder(join(root, "out"), new Map([["../evil", utf8("x")]]))).rejects.toThrow(
    DomainError,
  );
  const [problem] = await problemsOf(() => writeFolder(join(root, "no", "out"), files));
  expect(problem!.mend).toBe("Make that folder first.");
  expect(readdirSync(root)).toEqual([]);
});

test("others may read the folder as they may read any new folder", async () => {
  const out = join(root, "out");
  await writeFolder(out, files);
  mkdirSync(join(root, "plain"));
  const { statSync } = await import("node:fs");
  expect(statSync(out).mode).toBe(statSync(join(root, "plain")).mode);
});

test("links that lead out of the folder or nowhere are refused; links inside it are read", async () => {
  const dir = join(root, "plan");
  mkdirSync(dir);
  writeFileSync(join(root, "secret"), "x");
  writeFileSync(join(dir, "terrain-2026.tif"), "t");
  symlinkSync(join(dir, "terrain-2026.tif"), join(dir, "terrain.tif"));
  expect([...(await readFolder(dir)).keys()]).toEqual(["terrain-2026.tif", "terrain.tif"]);
  symlinkSync(join(root, "secret"), join(dir, "plan.json"));
  symlinkSync(join(root, "nowhere"), join(dir, "zones.geojson"));
  symlinkSync(dir, join(dir, "circle"));
  const problems = await problemsOf(() => readFolder(dir));
  expect(problems.map((p) => p.place).sort()).toEqual(["circle", "plan.json", "zones.geojson"]);
  expect(problems.every(isHelpful)).toBe(true);
});

test("hidden files are left out; missing folders and files in their place are told", async () => {
  const dir = join(root, "plan");
  mkdirSync(join(dir, ".git"), { recursive: true });
  writeFileSync(join(dir, ".git", "config"), "x");
  writeFileSync(join(dir, "plan.json"), "{}");
  expect([...(await readFolder(dir)).keys()]).toEqual(["plan.json"]);
  for (const name of ["nowhere", "plan/plan.json"]) {
    const [problem] = await problemsOf(() => readFolder(join(root, name)));
    expect(problem).toMatchObject({ code: "folder-missing" });
  }
});

test("folders too deep and too many files are refused", async () => {
  const dir = join(root, "plan");
  mkdirSync(join(dir, "a/b/c/d/e/f"), { recursive: true });
  writeFileSync(join(dir, "a/b/c/d/e/f/x"), "x");
  expect((await problemsOf(() => readFolder(dir)))[0]!.message).toContain("too deep");
  const many = join(root, "many");
  mkdirSync(many);
  for (let i = 0; i < 2001; i++) writeFileSync(join(many, `f${i}`), "");
  expect((await problemsOf(() => readFolder(many)))[0]!.message).toContain("more than the 2000 files");
});

test("a file that cannot be read is an error of the system, not a wrong plan", async () => {
  const dir = join(root, "plan");
  mkdirSync(dir);
  writeFileSync(join(dir, "plan.json"), "{}");
  chmodSync(join(dir, "plan.json"), 0o000);
  const isRoot = process.getuid?.() === 0;
  const reading = readFolder(dir);
  if (isRoot) expect((await reading).size).toBe(1);
  else await expect(reading).rejects.toThrow(/EACCES/);
});

test("stopped, a writing rejects with the reason and leaves the old folder whole", async () => {
  const out = join(root, "out");
  await writeFolder(out, files);
  const stop = new AbortController();
  stop.abort(new Error("stopped by hand"));
  await expect(writeFolder(out, other, { signal: stop.signal })).rejects.toThrow("stopped by hand");
  expect(await readFolder(out)).toEqual(files);
  expect(leftovers()).toEqual([]);
});
