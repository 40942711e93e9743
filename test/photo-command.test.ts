import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { geoTags, writeTiff } from "../packages/io/test/support/tiff.ts";
import { causey, demoFolder, temporaryFolder } from "./support/shell.ts";

const WORLD = "0.5\n0\n0\n-0.5\n1000.25\n2099.75\n";

/** A GeoTIFF of 4 x 2 green pixels of half a metre on the demo's site. */
const greenTiff = (epsg: number | null): Uint8Array =>
  writeTiff(12, 2, Array.from({ length: 8 }, () => [60, 140, 70]).flat(), {
    kind: "uint",
    bits: 8,
    tags: [
      ...geoTags(1000, 2100, 0.5, 0.5, epsg),
      { tag: 256, type: 4, values: [4] },
      { tag: 258, type: 3, values: [8, 8, 8] },
      { tag: 262, type: 3, values: [2] },
      { tag: 277, type: 3, values: [3] },
      { tag: 339, type: 3, values: [1, 1, 1] },
    ],
  });

/** The head of a PNG of 4 x 2 pixels: what the import looks at. */
function pngHead(): Uint8Array {
  const bytes = new Uint8Array(60);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  new DataView(bytes.buffer).setUint32(16, 4);
  new DataView(bytes.buffer).setUint32(20, 2);
  return bytes;
}

function pictures(files: Readonly<Record<string, Uint8Array | string>>): string {
  const folder = join(temporaryFolder(), "pictures");
  mkdirSync(folder, { recursive: true });
  for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes);
  return folder;
}
const photoIn = (folder: string): unknown =>
  (JSON.parse(readFileSync(join(folder, "plan.json"), "utf8")) as { photo: unknown }).photo;

test("causey import --as photo lays a picture under the map of a copy; without a word on its system it is refused, and nothing is written", () => {
  const file = join(pictures({ "air.tif": greenTiff(null) }), "air.tif");
  const out = join(temporaryFolder(), "with-photo");
  const args = ["import", demoFolder, file, "--as", "photo", "--out", out];
  const bare = causey(args);
  expect(bare.code).toBe(2);
  expect(bare.error).toContain("does not say which coordinate system it lies in");
  expect(bare.error).toContain("When you have checked that it lies in");
  expect(() => readFileSync(join(out, "plan.json"))).toThrow();
  const laid = causey([...args, "--system", "site", "--opacity", "0.6"]);
  expect(laid.error + laid.out).toContain("air.tif (4 x 2 pixels) under its map");
  expect(laid.code).toBe(0);
  expect(photoIn(out)).toEqual({ file: "air.tif", world: null, crs_confirmed: true, opacity: 0.6 });
  expect(photoIn(demoFolder)).toBe(null);
  expect(readFileSync(join(out, "air.tif")).equals(Buffer.from(greenTiff(null)))).toBe(true);
  expect(causey(["check", out]).code).toBe(0);
});

test("the world file beside a PNG is taken, another one may be named; without any the picture has no place", () => {
  const folder = pictures({ "a.png": pngHead(), "a.pgw": WORLD, "b.png": pngHead(), "far.txt": WORLD });
  const run = (name: string, ...more: readonly string[]) => {
    const out = join(temporaryFolder(), "out");
    const args = [
      "import",
      demoFolder,
      join(folder, name),
      "--as",
      "photo",
      "--system",
      "site",
      "--out",
      out,
    ];
    return { ...causey([...args, ...more]), out_folder: out };
  };
  const beside = run("a.png");
  expect(beside.code).toBe(0);
  expect(photoIn(beside.out_folder)).toMatchObject({
    file: "a.png",
    world: [0.5, 0, 0, -0.5, 1000.25, 2099.75],
  });
  const none = run("b.png");
  expect(none.code).toBe(2);
  expect(none.error).toContain("does not say where it lies");
  expect(run("b.png", "--world", join(folder, "far.txt")).code).toBe(0);
});

test("a picture in another system is refused, and so are an opacity of 2 and a file that is none", () => {
  const folder = pictures({ "air.tif": greenTiff(27700), "air.txt": "no picture" });
  const out = join(temporaryFolder(), "out");
  const args = (name: string): string[] => [
    "import",
    demoFolder,
    join(folder, name),
    "--as",
    "photo",
    "--out",
    out,
  ];
  const other = causey(args("air.tif"));
  expect([other.code, /in EPSG:27700, the plan in the local grid/.test(other.error)]).toEqual([2, true]);
  const said = causey([...args("air.tif"), "--system", "EPSG:27700"]);
  expect(said.error).toContain("Pictures are not reprojected");
  expect(causey([...args("air.tif"), "--opacity", "2"]).error).toContain("a share above 0");
  expect(causey(args("air.txt")).error).toContain("not a picture that is read here");
});
