import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Plan } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { geoTags, writeTiff } from "../packages/io/test/support/tiff.ts";
import { hasOpenData, openDataPath } from "../packages/io/test/support/open-data.ts";
import { causey, temporaryFolder } from "./support/shell.ts";

const planIn = (folder: string): Plan => JSON.parse(readFileSync(join(folder, "plan.json"), "utf8")) as Plan;
const place = (): string => join(temporaryFolder(), "marsh");

/** 40 x 30 cells of 1 m at 2 m height. */
function geoTiff(epsg: number | null, west = 500_000, north = 200_030): string {
  const file = join(temporaryFolder(), "fen.tif");
  const tags = geoTags(west, north, 1, 1, epsg);
  writeFileSync(file, writeTiff(40, 30, new Float32Array(1200).fill(2), { tags }));
  return file;
}

test.skipIf(!hasOpenData("marsh-dem-stour"))(
  "a fresh folder with an ordinary GeoTIFF checks and plans without a word changed in it (Stour salt marsh, EPSG:27700)",
  () => {
    const folder = place();
    const terrain = openDataPath("marsh-dem-stour/dem-1m.tif");
    const made = causey([
      "new",
      folder,
      "--terrain",
      terrain,
      "--datum",
      "ODN",
      "--name",
      "Stour walkway",
      "--site",
      "Stour",
    ]);
    expect(made.error).not.toMatch(/^error/m);
    expect(made.code).toBe(0);
    expect(made.out).toContain("EPSG:27700");
    expect(planIn(folder)).toMatchObject({
      name: "Stour walkway",
      site_name: "Stour",
      crs: { epsg: 27700 },
      vertical_datum: "ODN",
      terrain: { file: "dem-1m.tif", datum: "ODN" },
    });
    expect(causey(["check", folder]).code).toBe(0);
    const planned = causey(["plan", folder, "--out", join(temporaryFolder(), "out"), "--quiet"]);
    expect(planned.code, planned.error).toBe(0);
  },
);

test("a file without a system takes the one of --crs; without it nothing is written and the missing thing is named", () => {
  const [file, folder] = [geoTiff(null), place()];
  const refused = causey(["new", folder, "--terrain", file]);
  expect(refused.code).toBe(2);
  expect(refused.error).toContain("does not say which coordinate system");
  expect(existsSync(folder)).toBe(false);
  expect(causey(["new", folder, "--terrain", file, "--crs", "EPSG:27700"]).code).toBe(0);
  expect(causey(["check", folder]).code).toBe(0);
  const local = place();
  expect(causey(["new", local, "--terrain", file, "--crs", "local", "--start", "500010,200010"]).code).toBe(
    0,
  );
  expect(causey(["check", local]).code).toBe(0);
  expect(planIn(local).crs).toEqual({ local: "Site grid" });
});

test("a system that the file contradicts, one in feet, and a start off the terrain are refused, and nothing is written", () => {
  const folder = place();
  const clash = causey(["new", folder, "--terrain", geoTiff(32_630), "--crs", "EPSG:27700"]);
  expect(clash.error).toMatch(/EPSG:32630.*EPSG:27700/);
  const feet = causey(["new", folder, "--terrain", geoTiff(null), "--crs", "EPSG:2263"]);
  expect(feet.error).toContain("EPSG:32118");
  const off = causey(["new", folder, "--terrain", geoTiff(32_630), "--start", "10,10"]);
  expect(off.error).toContain("outside the terrain");
  expect([clash.code, feet.code, off.code]).toEqual([2, 2, 2]);
  expect(existsSync(folder)).toBe(false);
});

test("a start off a phone: latitude and longitude lie where gdaltransform 3 (PROJ) puts them; what is no place is refused", () => {
  const [terrain, folder] = [geoTiff(32_630, 500_000, 5_700_050), place()];
  const made = (target: string, file: string, ...more: string[]) =>
    causey(["new", target, "--terrain", file, ...more]);
  expect(made(folder, terrain, "--start-lat-lon", "51.4514070,-2.9998561").code).toBe(0);
  const places = JSON.parse(readFileSync(join(folder, "places.geojson"), "utf8")) as {
    features: { geometry: { coordinates: [number, number] } }[];
  };
  const [x, y] = places.features[0]!.geometry.coordinates;
  expect(x).toBeCloseTo(500_010, 1);
  expect(y).toBeCloseTo(5_700_025, 1);

  const elsewhere = place();
  const faults = [
    made(elsewhere, terrain, "--start-lat-lon", "51.4514070;2.9998561"),
    made(elsewhere, terrain, "--start-lat-lon", "151,2"),
    made(elsewhere, terrain, "--start-lat-lon", "51,2", "--start", "1,2"),
    made(elsewhere, geoTiff(null), "--crs", "local", "--start-lat-lon", "51,2"),
  ];
  expect(faults.map((f) => f.code)).toEqual([2, 2, 2, 2]);
  expect(faults.map((f) => f.error)).toEqual([
    expect.stringContaining("give latitude and longitude"),
    expect.stringContaining("latitude comes first"),
    expect.stringContaining("not both"),
    expect.stringContaining("on a local grid use --start"),
  ]);
  expect(existsSync(elsewhere)).toBe(false);
});

test("with a system and no terrain, the terrain is all that check still asks for", () => {
  const folder = place();
  expect(causey(["new", folder, "--crs", "EPSG:27700", "--datum", "ODN"]).code).toBe(0);
  const { problems } = JSON.parse(causey(["check", folder, "--json"]).out) as {
    problems: { code: string; severity: string }[];
  };
  expect(problems.filter((p) => p.severity === "error").map((p) => p.code)).toEqual(["file-missing"]);
  expect(causey(["new", place(), "--datum", "ODN"]).error).toContain("--crs");
});
