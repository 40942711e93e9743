import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { groundAt, isInside, type Raster, type Zone } from "../site/index.ts";
import {
  correctedTerrain,
  habitatsWithoutShots,
  studentHalfWidth,
  terrainBias,
  type CheckShot,
  type Survey,
} from "./index.ts";

/** Repeatable noise of unit variance: the sum of twelve even numbers less six. */
function noise(seed: number): () => number {
  let state = seed;
  const next = (): number => (state = (state * 48271) % 2147483647) / 2147483647;
  return () => Array.from({ length: 12 }, next).reduce((a, b) => a + b, 0) - 6;
}

const ring = [
  [100, 0],
  [200, 0],
  [200, 100],
  [100, 100],
] as const;
const marsh: Zone = {
  id: "m",
  name: "Marsh",
  use: "habitat",
  polygons: [[ring]],
  hidden: false,
  source: "walked",
};
const truth = (x: number, y: number): number => 0.4 + 0.002 * x + 0.05 * Math.sin(y / 17);

/** Lidar that reads 0.12 m high in the marsh, with 0.03 m of noise, on a 1 m grid of 240 x 120. */
function lidar(bias: number, sigma: number): Raster {
  const [cols, rows] = [240, 120];
  const random = noise(7);
  const values = Float32Array.from({ length: cols * rows }, (_, k) => {
    const [x, y] = [k % cols, Math.floor(k / cols)];
    return truth(x, y) + (isInside(marsh.polygons, x, y) ? bias : 0) + sigma * random();
  });
  return { cols, rows, x0: 0, y0: 0, dx: 1, dy: 1, values };
}

const shot = (x: number, y: number, z_m: number, accuracy_m: number | null = null): CheckShot => ({
  id: `C${x}-${y}`,
  x,
  y,
  z_m,
  accuracy_m,
  date: null,
});
const grid = (count: number, x0: number): CheckShot[] =>
  Array.from({ length: count }, (_, i) => {
    const [x, y] = [x0 + 5 + ((i * 13) % 90), 5 + ((i * 29) % 90)];
    return shot(x, y, truth(x, y));
  });
const survey = (check_shots: readonly CheckShot[], more: Partial<Survey> = {}): Survey => ({
  benchmarks: [],
  check_shots,
  stations: [],
  correct_terrain: true,
  accuracy_m: null,
  date: null,
  ...more,
});

describe("bias of a terrain", () => {
  test("0.12 m too high in the marsh comes back within its own uncertainty; the other ground does not blur it", () => {
    const bias = terrainBias(lidar(0.12, 0.03), [...grid(40, 100), ...grid(20, 0)], [marsh]);
    expect(bias.n).toBe(40);
    expect(bias.elsewhere).toHaveLength(20);
    expect(Math.abs(bias.median_m! - 0.12)).toBeLessThan((3 * 0.03 * Math.sqrt(Math.PI / 2)) / Math.sqrt(40));
    expect(bias.sd_m!).toBeGreaterThan(0.02);
    expect(bias.sd_m!).toBeLessThan(0.04);
  });

  test("worked by hand: residuals 0.10, 0.12, 0.17 and accuracy 0.02", () => {
    const flat: Raster = {
      cols: 9,
      rows: 9,
      x0: 0,
      y0: 0,
      dx: 1,
      dy: 1,
      values: new Float32Array(81).fill(2),
    };
    const shots = [shot(1, 1, 1.9, 0.02), shot(2, 5, 1.88, 0.02), shot(6, 3, 1.83, 0.02)];
    const bias = terrainBias(flat, shots, []);
    expect(bias.median_m).toBeCloseTo(0.12, 9);
    expect(bias.mean_m).toBeCloseTo(0.13, 9);
    expect(bias.sd_m).toBeCloseTo(Math.sqrt(0.0013), 9);
    expect(bias.band_m).toBeCloseTo(4.30265 * Math.sqrt(0.0013 + 0.0004) * Math.sqrt(1 + Math.PI / 6), 5);
  });

  test("fewer than three shots give no band; none gives no bias; shots off the terrain are named", () => {
    const terrain = lidar(0, 0);
    expect(terrainBias(terrain, grid(2, 100), [marsh])).toMatchObject({ n: 2, band_m: null });
    expect(terrainBias(terrain, [], [])).toMatchObject({
      n: 0,
      median_m: null,
      mean_m: null,
      sd_m: null,
      band_m: null,
    });
    expect(terrainBias(terrain, [shot(900, 900, 1)], []).off_terrain).toEqual(["C900-900"]);
  });

  test("a wild shot is listed, does not move the median by more than its rank, and widens the band", () => {
    const shots = grid(20, 100);
    const terrain = lidar(0.12, 0.01);
    const clean = terrainBias(terrain, shots, [marsh]);
    const wild = terrainBias(terrain, [...shots, shot(150, 50, truth(150, 50) + 1)], [marsh]);
    expect(wild.outliers.map((o) => o.id)).toEqual(["C150-50"]);
    expect(clean.outliers.map((o) => o.id)).not.toContain("C150-50");
    expect(Math.abs(wild.median_m! - clean.median_m!)).toBeLessThan(0.01);
    expect(wild.band_m!).toBeGreaterThan(clean.band_m!);
  });

  test("property: terrain raised by any amount has the bias raised by it, the band unchanged", () => {
    fc.assert(
      fc.property(fc.integer({ min: -64, max: 64 }), (k) => {
        const by = k / 64;
        const flat = lidar(0, 0.02);
        const raised = { ...flat, values: flat.values.map((v) => v + by) };
        const [a, b] = [flat, raised].map((r) => terrainBias(r, grid(12, 100), [marsh]));
        expect(b!.median_m! - a!.median_m!).toBeCloseTo(by, 5);
        expect(b!.band_m!).toBeCloseTo(a!.band_m!, 5);
      }),
    );
  });
});

describe("corrected terrain", () => {
  test("the true ground lies within the band in 95 % of the marsh, and the upland is untouched", () => {
    const terrain = lidar(0.12, 0.03);
    const done = correctedTerrain(terrain, survey(grid(25, 100)), [marsh]);
    expect(done.lowered_m).toBe(terrainBias(terrain, grid(25, 100), [marsh]).median_m);
    let [within, cells] = [0, 0];
    for (let x = 101; x < 200; x++)
      for (let y = 1; y < 100; y++, cells++)
        within += Math.abs(groundAt(done.raster, x, y) - truth(x, y)) <= done.band_m! ? 1 : 0;
    expect(within / cells).toBeGreaterThan(0.93);
    for (let x = 0; x < 100; x += 7) expect(groundAt(done.raster, x, 50)).toBe(groundAt(terrain, x, 50));
    expect(done.note).toContain("high");
  });

  test("without the wish to correct, the raster is the same and the band holds the bias", () => {
    const terrain = lidar(0.12, 0.03);
    const [left, done] = [false, true].map((correct_terrain) =>
      correctedTerrain(terrain, survey(grid(25, 100), { correct_terrain }), [marsh]),
    );
    expect(left!.raster).toBe(terrain);
    expect(left!.band_m).toBeCloseTo(done!.band_m! + done!.lowered_m, 9);
  });

  test("everywhere when there is no habitat", () => {
    const terrain = lidar(0, 0);
    const high = { ...terrain, values: terrain.values.map((v) => v + 0.25) };
    const done = correctedTerrain(high, survey(grid(5, 0)), []);
    expect(groundAt(done.raster, 220, 110)).toBeCloseTo(truth(220, 110), 4);
  });

  test("two shots correct nothing; the maker's accuracy gives the band, or it is not known", () => {
    const terrain = lidar(0.12, 0);
    const shots = grid(2, 100);
    expect(correctedTerrain(terrain, survey(shots), [marsh])).toMatchObject({
      raster: terrain,
      band_m: null,
      lowered_m: 0,
    });
    expect(correctedTerrain(terrain, survey(shots, { accuracy_m: 0.1 }), [marsh]).band_m).toBeCloseTo(
      0.196,
      9,
    );
  });

  test("upland that is wrong too widens the band of the whole", () => {
    const terrain = lidar(0, 0.01);
    const wrongUpland = grid(10, 0).map((s) => ({ ...s, z_m: s.z_m - 0.5 }));
    const done = correctedTerrain(terrain, survey([...grid(10, 100), ...wrongUpland]), [marsh]);
    expect(done.band_m!).toBeGreaterThan(0.5);
  });

  test("cells are lowered exactly where a place counts as inside", () => {
    const terrain = lidar(0, 0);
    const odd: Zone = {
      ...marsh,
      polygons: [
        [
          [
            [20, 3],
            [90.5, 40],
            [50, 117],
            [3, 60],
          ],
          [
            [40, 40],
            [60, 45],
            [50, 70],
          ],
        ],
      ],
    };
    const shots = [
      shot(30, 40, truth(30, 40) - 1),
      shot(70, 50, truth(70, 50) - 1),
      shot(45, 90, truth(45, 90) - 1),
    ];
    const done = correctedTerrain(terrain, survey(shots), [odd]);
    for (let y = 0; y < terrain.rows; y++)
      for (let x = 0; x < terrain.cols; x++) {
        const k = y * terrain.cols + x;
        expect(done.raster.values[k]! < terrain.values[k]! - 0.5).toBe(isInside(odd.polygons, x, y));
      }
  });

  test("lidar warning only for habitats without a shot in them", () => {
    const reed: Zone = {
      ...marsh,
      id: "r",
      name: "Reed",
      polygons: [
        [
          [
            [0, 0],
            [50, 0],
            [50, 50],
            [0, 50],
          ],
        ],
      ],
    };
    const path: Zone = { ...reed, id: "p", use: "closed" };
    expect(habitatsWithoutShots([marsh, reed, path], grid(3, 100)).map((z) => z.id)).toEqual(["r"]);
  });
});

test("the band rests on Student's t: more shots of the same spread, a narrower band", () => {
  expect(studentHalfWidth(0.95, 2)).toBeGreaterThan(studentHalfWidth(0.95, 20));
});
