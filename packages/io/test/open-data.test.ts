import { describe, expect, test } from "vitest";
import { bounds, groundAt, isInside, polygonsArea, rasterExtent, type Raster } from "@causey/engine/site";
import { comparePrj, crsFromEpsg } from "../src/crs/index.ts";
import { readTerrain } from "../src/terrain/index.ts";
import { readZones } from "../src/vector/index.ts";
import { hasOpenData, openData } from "./support/open-data.ts";
import { utf8 } from "./support/problems.ts";

const METRES = { unit: "m" } as const;
const read = async (path: string): Promise<Raster> =>
  (await readTerrain(path.split("/").at(-1)!, openData(path), METRES)).raster;

interface Summary {
  readonly valid: number;
  readonly min: number;
  readonly max: number;
}

function summarise(r: Raster): Summary {
  const known = [...r.values].filter((v) => !Number.isNaN(v));
  return {
    valid: known.length / r.values.length,
    min: known.reduce((a, b) => Math.min(a, b)),
    max: known.reduce((a, b) => Math.max(a, b)),
  };
}

/** Largest difference, and cells that only one of the two knows. */
function compare(a: Raster, b: Raster): { readonly most: number; readonly unlike: number } {
  let most = 0;
  let unlike = 0;
  a.values.forEach((v, i) => {
    const w = b.values[i]!;
    if (Number.isNaN(v) !== Number.isNaN(w)) unlike += 1;
    else if (!Number.isNaN(v)) most = Math.max(most, Math.abs(v - w));
  });
  return { most, unlike };
}

const stour = hasOpenData("marsh-dem-stour");
const sweney = hasOpenData("marsh-dem-sweney");

describe.skipIf(!stour)(
  "Stour marsh, lidar by the Environment Agency as kept by Goodwin, Mudd and Clubb (2018)",
  () => {
    test("native grid: size, cells that are not square, no-data collar, heights", async () => {
      const { raster, crs, warnings } = await readTerrain(
        "dem-native.tif",
        openData("marsh-dem-stour/dem-native.tif"),
        {
          unit: "m",
          expectedCrs: { epsg: 27700 },
        },
      );
      expect(raster).toMatchObject({ cols: 224, rows: 246 });
      expect([raster.dx, raster.dy].map((v) => Number(v.toFixed(6)))).toEqual([1.000602, 1.000762]);
      const { valid, min, max } = summarise(raster);
      expect([valid.toFixed(3), min.toFixed(3), max.toFixed(3)]).toEqual(["0.813", "-0.668", "2.770"]);
      expect(crs?.code).toBe(27700);
      expect(warnings.map((w) => w.code)).toEqual([
        "terrain-not-square",
        "terrain-gaps",
        "terrain-edge-high",
      ]);
    });

    test("the same 1 m grid as GeoTIFF and as ESRI ASCII grid: same place, same gaps, heights to half a millimetre", async () => {
      const [tif, asc] = [await read("marsh-dem-stour/dem-1m.tif"), await read("marsh-dem-stour/dem-1m.asc")];
      expect(asc).toMatchObject({
        cols: tif.cols,
        rows: tif.rows,
        x0: tif.x0,
        y0: tif.y0,
        dx: tif.dx,
        dy: tif.dy,
      });
      const { most, unlike } = compare(tif, asc);
      expect(unlike).toBe(0);
      expect(most).toBeLessThanOrEqual(0.0005);
    });

    test("the resampled grid lies where the native one does: ground agrees to 5 cm at nine places in ten", async () => {
      const [native, square] = [
        await read("marsh-dem-stour/dem-native.tif"),
        await read("marsh-dem-stour/dem-1m.tif"),
      ];
      const differences: number[] = [];
      for (let x = 621_900; x < 622_080; x += 7)
        for (let y = 233_560; y < 233_760; y += 7) {
          const d = Math.abs(groundAt(native, x, y) - groundAt(square, x, y));
          if (Number.isFinite(d)) differences.push(d);
        }
      differences.sort((a, b) => a - b);
      expect(differences.length).toBeGreaterThan(300);
      expect(differences[Math.floor(differences.length * 0.9)]).toBeLessThan(0.05);
    });

    test("its .prj describes EPSG:27700 and no neighbour of it", async () => {
      const prj = new TextDecoder().decode(openData("marsh-dem-stour/dem-1m.prj"));
      expect(comparePrj(prj, await crsFromEpsg(27700))).toBe("agrees");
      for (const other of [32631, 3035, 29903])
        expect(comparePrj(prj, await crsFromEpsg(other))).toBe("differs");
    });

    test("the platform outline in longitude and latitude lands on the grid within metres", async () => {
      const text = new TextDecoder().decode(openData("marsh-dem-stour/platform.geojson"));
      const drawn = JSON.parse(text) as { features: { properties: Record<string, unknown> }[] };
      for (const f of drawn.features)
        Object.assign(f.properties, {
          name: `part ${String(f.properties["id"])}`,
          use: "habitat",
          sensitivity: 3,
          source: "open data",
        });
      const crs = await crsFromEpsg(27700);
      const { zones, warnings } = readZones("zones.geojson", utf8(JSON.stringify(drawn)), crs);
      expect(zones).toHaveLength(5);
      expect(warnings.map((w) => w.code)).toEqual(["datum-shift"]);
      const polygons = zones.flatMap((z) => z.polygons);
      expect(Math.abs(polygonsArea(polygons) - 25_474)).toBeLessThan(25_474 * 0.001);
      const mask = await read("marsh-dem-stour/platform-native.tif");
      const [west, south, east, north] = rasterExtent(mask);
      const box = bounds(polygons)!;
      expect(box[0]).toBeGreaterThan(west - 5);
      expect(box[1]).toBeGreaterThan(south - 5);
      expect(box[2]).toBeLessThan(east + 5);
      expect(box[3]).toBeLessThan(north + 5);
      let agreeing = 0;
      mask.values.forEach((v, i) => {
        const x = mask.x0 + (i % mask.cols) * mask.dx;
        const y = mask.y0 + Math.floor(i / mask.cols) * mask.dy;
        if ((v === 1) === isInside(polygons, x, y)) agreeing += 1;
      });
      expect(agreeing / mask.values.length).toBeGreaterThan(0.95);
    });
  },
);

describe.skipIf(!sweney)("Sweney Creek marsh, as kept by landlab and MarshMorpho2D", () => {
  test("ASCII grid whose no-data value is +999: 300 x 452 cells, 74.1 % known, no hill of 999 m", async () => {
    const raster = await read("marsh-dem-sweney/dem-2m.asc");
    expect(raster).toMatchObject({ cols: 300, rows: 452, dx: 2, dy: 2, x0: 1, y0: 1 });
    const { valid, min, max } = summarise(raster);
    expect([valid.toFixed(3), min.toFixed(3), max.toFixed(3)]).toEqual(["0.741", "-2.609", "8.461"]);
  });

  test("GeoTIFF of the same array: no system, same gaps, heights to 1e-6 m", async () => {
    const { raster, crs } = await readTerrain("dem-2m.tif", openData("marsh-dem-sweney/dem-2m.tif"), METRES);
    expect(crs).toBe(null);
    const { most, unlike } = compare(raster, await read("marsh-dem-sweney/dem-2m.asc"));
    expect(unlike).toBe(0);
    expect(most).toBeLessThanOrEqual(1e-6);
  });
});
