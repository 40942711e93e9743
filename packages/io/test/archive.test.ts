import { deflateRawSync } from "node:zlib";
import * as fc from "fast-check";
import { unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { DomainError } from "@causey/engine/units";
import { readArchive, writeArchive } from "../src/archive/index.ts";
import { fileNameFault } from "../src/files/index.ts";
import { isHelpful, problemsOf, utf8 } from "./support/problems.ts";
import { craftZip, type CraftedEntry } from "./support/zip.ts";

const files = new Map([
  ["plan.json", utf8("{}")],
  ["photos/a b.jpg", Uint8Array.from([1, 2, 3])],
]);

test("an archive that was written is read back, and other programs read it too", () => {
  const zip = writeArchive(files);
  expect(readArchive(zip)).toEqual(files);
  expect(new Map(Object.entries(unzipSync(zip)))).toEqual(files);
});

test("equal files give equal bytes, whatever their order", () => {
  const turned = new Map([...files].reverse());
  expect(writeArchive(turned)).toEqual(writeArchive(files));
});

test("a folder around all files, folder entries and what macOS adds are taken off", () => {
  const zip = zipSync({
    "My plan/": new Uint8Array(0),
    "My plan/plan.json": utf8("{}"),
    "My plan/photos/x.jpg": utf8("x"),
    "My plan/.DS_Store": utf8("junk"),
    "__MACOSX/My plan/._plan.json": utf8("junk"),
  });
  expect([...readArchive(zip).keys()]).toEqual(["plan.json", "photos/x.jpg"]);
});

const entry = (name: string, more: Partial<CraftedEntry> = {}): CraftedEntry => ({
  name,
  data: utf8("hello"),
  ...more,
});
const bomb = deflateRawSync(new Uint8Array(20_000_000));

const refused: readonly (readonly [string, readonly CraftedEntry[], RegExp])[] = [
  ["a path that climbs out", [entry("../evil")], /climbs out/],
  ["a path that climbs out in its middle", [entry("a/../../evil")], /climbs out/],
  ["an absolute path", [entry("/etc/passwd")], /absolute/],
  ["a drive letter", [entry("C:/evil")], /not every system/],
  ["a backslash", [entry("..\\evil")], /backslash/],
  ["a NUL in the name", [entry("a\0b")], /control character/],
  ["an empty name", [entry("")], /empty/],
  ["a device of Windows", [entry("con.txt")], /reserved on Windows/],
  ["__proto__", [entry("__proto__")], /reserved/],
  ["a name of a kilometre", [entry("x".repeat(1000))], /longer than/],
  ["the same name twice", [entry("a.txt"), entry("A.TXT")], /stands twice/],
  ["an encrypted file", [entry("a", { flags: 1 })], /encrypted/],
  ["an unknown method", [entry("a", { method: 12 })], /unknown method/],
  [
    "a ratio too good to be true",
    [entry("a", { method: 8, packed: bomb, data: new Uint8Array(0), size: 20_000_000 })],
    /claim to unpack/,
  ],
  ["a file that claims 3 GB", [entry("a", { size: 3_000_000_000, method: 8 })], /3000000000 bytes/],
  [
    "a bomb that claims little",
    [entry("a", { method: 8, packed: bomb, data: new Uint8Array(0), size: 1000 })],
    /more than the 1000 bytes/,
  ],
  [
    "a file shorter than it claims",
    [entry("a", { method: 8, packed: deflateRawSync(utf8("hi")), size: 5 })],
    /not to the 5 it claims/,
  ],
  ["a wrong check sum", [entry("a", { crc: 1 })], /check sum/],
  ["damaged data", [entry("a", { method: 8, packed: utf8("hello"), size: 5 })], /damaged/],
  ["entries over the same bytes", [entry("a"), entry("b", { sharesWith: 0 })], /overlaps/],
];
test.each(refused)("refused: %s", async (_title, entries, message) => {
  const before = process.memoryUsage().arrayBuffers;
  const problems = await problemsOf(() => readArchive(craftZip(entries), "plan.zip"));
  expect(problems.map((p) => p.message).join("\n")).toMatch(message);
  expect(problems.every((p) => p.file === "plan.zip" && p.mend !== "" && p.place.length >= 0)).toBe(true);
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(60_000_000);
});

test("more files than are read are refused before their names are", async () => {
  const many = Object.fromEntries(Array.from({ length: 2001 }, (_, i) => [`f${i}`, new Uint8Array(0)]));
  const [problem] = await problemsOf(() => readArchive(zipSync(many)));
  expect(problem!.message).toContain("2001 files");
  expect(isHelpful(problem!)).toBe(true);
});

test.each([
  ["nothing", new Uint8Array(0)],
  ["a text", utf8("plan")],
  ["half an archive", writeArchive(files).subarray(0, 80)],
])("refused: %s", async (_title, bytes) => {
  const [problem] = await problemsOf(() => readArchive(bytes));
  expect(problem!.message).toMatch(/not a zip archive/);
});

test("many files that are each just small enough are a bomb together", async () => {
  const one = deflateRawSync(new Uint8Array(9_000_000));
  const many = Array.from({ length: 30 }, (_, i) =>
    entry(`f${i}`, { method: 8, packed: one, data: new Uint8Array(0), size: 9_000_000 }),
  );
  const problems = await problemsOf(() => readArchive(craftZip(many)));
  expect(problems).toMatchObject([{ code: "archive-size", value: "270000000 bytes" }]);
});

test("names that could not be read back are not written", () => {
  expect(() => writeArchive(new Map([["../x", utf8("x")]]))).toThrow(DomainError);
});

test("property: any files under fair names come back", () => {
  const fair = fc
    .string({ minLength: 1, maxLength: 30 })
    .map((s) => s.normalize("NFC"))
    .filter((s) => fileNameFault(s) === null && !/^__MACOSX|\.DS_Store$/.test(s));
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.tuple(fair, fc.uint8Array({ maxLength: 300 })), {
        selector: ([n]) => n.toLowerCase(),
        maxLength: 8,
      }),
      (pairs) => {
        const given = new Map([
          ["plan.json", utf8("{}")],
          ...pairs.filter(([n]) => n.toLowerCase() !== "plan.json"),
        ]);
        expect(readArchive(writeArchive(given))).toEqual(given);
      },
    ),
  );
});
