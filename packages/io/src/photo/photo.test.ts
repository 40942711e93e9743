import { zlibSync } from "fflate";
import { describe, expect, test } from "vitest";
import type { Photo } from "@causey/engine/plan";
import { isHelpful, problemsOf, utf8 } from "../../test/support/problems.ts";
import { geoTags, writeTiff, type TiffTag } from "../../test/support/tiff.ts";
import { photoHead, photoPixels, readPhoto, readWorldFile } from "./index.ts";

const SITE = { epsg: 27700 };
const photo = (more: Partial<Photo> = {}): Photo => ({ file: "site.tif", world: null, ...more });
const rgb: readonly TiffTag[] = [
  { tag: 258, type: 3, values: [8, 8, 8] },
  { tag: 262, type: 3, values: [2] },
  { tag: 277, type: 3, values: [3] },
  { tag: 339, type: 3, values: [1, 1, 1] },
];

/** A picture of `cols` x `rows` pixels: its samples are written as one row three times as wide. */
function picture(
  cols: number,
  rows: number,
  colours: readonly (readonly [number, number, number])[],
  more: readonly TiffTag[] = geoTags(621_000, 233_100, 0.5, 0.5, 27700),
  compression: "none" | "deflate" | "lzw" = "none",
): Uint8Array {
  return writeTiff(cols * 3, rows, colours.flat(), {
    kind: "uint",
    bits: 8,
    compression,
    tags: [...rgb, { tag: 256, type: 4, values: [cols] }, ...more],
  });
}
const four = [
  [255, 0, 0],
  [0, 255, 0],
  [0, 0, 255],
  [9, 9, 9],
] as const;

/** A PNG of one colour in size alone: what the head is read from. */
function png(cols: number, rows: number): Uint8Array {
  const bytes = new Uint8Array(60);
  bytes.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);
  new DataView(bytes.buffer).setUint32(16, cols);
  new DataView(bytes.buffer).setUint32(20, rows);
  bytes.set(zlibSync(new Uint8Array(1)), 41);
  return bytes;
}
const world = [0.25, 0, 0, -0.25, 1000.125, 1999.875] as const;

describe("a picture from above", () => {
  test.each(["none", "deflate", "lzw"] as const)(
    "GeoTIFF, RGB, %s: place, system and colours",
    async (compression) => {
      const bytes = picture(2, 2, four, undefined, compression);
      const read = readPhoto(photo(), bytes, SITE);
      expect(read.extent).toEqual([621_000, 233_099, 621_001, 233_100]);
      expect([read.kind, read.cols, read.rows, read.warnings]).toEqual(["tiff", 2, 2, []]);
      const pixels = (await photoPixels("site.tif", bytes, 2000))!;
      expect([...pixels.rgba]).toEqual(four.flatMap((c) => [...c, 255]));
    },
  );

  test("a picture larger than wanted comes in as means of whole blocks of pixels, edges too", async () => {
    const colours = Array.from({ length: 25 }, (_, i) => [10 * i, 100, 200] as const);
    const pixels = (await photoPixels("site.tif", picture(5, 5, colours), 3))!;
    expect([pixels.cols, pixels.rows]).toEqual([3, 3]);
    expect([...pixels.rgba.slice(0, 4)]).toEqual([(0 + 10 + 50 + 60) / 4, 100, 200, 255]);
    expect([...pixels.rgba.slice(-4)]).toEqual([240, 100, 200, 255]);
  });

  test("no system: refused until the user says that it is the plan's; another system is refused, and not reprojected", async () => {
    const bare = picture(2, 2, four, geoTags(621_000, 233_100, 0.5, 0.5, null));
    const [problem] = await problemsOf(() => readPhoto(photo(), bare, SITE));
    expect(problem).toMatchObject({ code: "photo-no-crs", file: "site.tif", place: "coordinate system" });
    expect(problem!.mend).toContain("EPSG:27700");
    expect(readPhoto(photo({ crs_confirmed: true }), bare, SITE).extent[0]).toBe(621_000);
    const other = await problemsOf(() =>
      readPhoto(photo({ crs_confirmed: true }), picture(2, 2, four), { epsg: 32631 }),
    );
    expect(other.map((p) => p.code)).toEqual(["crs-mismatch"]);
    expect([problem!, other[0]!].every(isHelpful)).toBe(true);
  });

  test("PNG with a world file on a local grid; without one it has no place, and both wants are told at once", async () => {
    const problems = await problemsOf(() =>
      readPhoto(photo({ file: "a.png" }), png(40, 20), { local: "Fen" }),
    );
    expect(problems.map((p) => p.code)).toEqual(["photo-no-crs", "photo-not-placed"]);
    expect(problems.every(isHelpful)).toBe(true);
    const told = photo({ file: "a.png", world, crs_confirmed: true });
    expect(readPhoto(told, png(40, 20), { local: "Fen" }).extent).toEqual([1000, 1995, 1010, 2000]);
  });

  test("JPEG: the size is read past other segments", () => {
    const jpeg = new Uint8Array([
      0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xc2, 0, 11, 8, 0, 30, 0, 50, 3, 0, 0, 0,
    ]);
    expect(photoHead("a.jpg", jpeg)).toMatchObject({ kind: "jpeg", cols: 50, rows: 30 });
  });

  test.each([
    ["a world file with five numbers", () => readWorldFile("a.jgw", utf8("1\n0\n0\n-1\n5\n")), "photo-world"],
    ["a world file with words", () => readWorldFile("a.jgw", utf8("1\n0\n0\n-1\nx\n5\n")), "photo-world"],
    [
      "a rotated picture",
      () => readPhoto(photo({ world: [1, 0.2, 0.2, -1, 0, 0], crs_confirmed: true }), png(4, 4), SITE),
      "photo-rotated",
    ],
    [
      "a world file in degrees",
      () => readPhoto(photo({ world: [1e-6, 0, 0, -1e-6, 1, 51], crs_confirmed: true }), png(4, 4), SITE),
      "photo-degrees",
    ],
    ["a picture of a billion pixels", () => photoHead("a.png", png(40_000, 40_000)), "photo-too-large"],
    ["a text", () => photoHead("a.jpg", utf8("no picture")), "photo-kind"],
    [
      "heights in the place of a picture",
      () => photoHead("a.tif", writeTiff(2, 2, [1, 2, 3, 4])),
      "photo-type",
    ],
    ["a picture cut off", () => photoHead("a.tif", picture(2, 2, four).slice(0, 40)), "photo-truncated"],
  ])("%s is refused with a mend", async (_, read, code) => {
    const problems = await problemsOf(read);
    expect(problems.map((p) => p.code)).toEqual([code]);
    expect(problems.every(isHelpful)).toBe(true);
    expect(problems[0]!.message + problems[0]!.mend).not.toMatch(/terrain|heights/);
  });
});
