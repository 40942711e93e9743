import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { groundAt } from "../site/index.ts";
import { surfaceAt, surfaceRaster, triangulate, type PointCloud, type Tin } from "./index.ts";

const cloud = (rows: readonly (readonly [number, number, number])[]): PointCloud => ({
  x: rows.map((r) => r[0]),
  y: rows.map((r) => r[1]),
  z: rows.map((r) => r[2]),
});
const far: readonly [number, number] = [2_688_000, 7_466_000];
/** Decimetre positions, so that points on one spot and on one circle turn up often. */
const row = fc.tuple(
  fc.integer({ min: 0, max: 120 }),
  fc.integer({ min: 0, max: 90 }),
  fc.integer({ min: -300, max: 300 }),
);
const rows = fc
  .array(row, { minLength: 3, maxLength: 60 })
  .map((list) => list.map(([x, y, z]) => [far[0] + x / 10, far[1] + y / 10, z / 100] as const));

const cornersOf = (tin: Tin, t: number): readonly (readonly [number, number])[] =>
  [0, 1, 2].map((k) => {
    const c = tin.triangles[3 * t + k]!;
    return [tin.xy[2 * c]!, tin.xy[2 * c + 1]!];
  });

describe("triangles", () => {
  test("property: no point lies inside the circle through the corners of a triangle (Delaunay's condition, by brute force)", () => {
    fc.assert(
      fc.property(rows, (list) => {
        const tin = triangulate(cloud(list));
        for (let t = 0; t < tin.triangles.length / 3; t++) {
          const [a, b, c] = cornersOf(tin, t) as [
            readonly [number, number],
            readonly [number, number],
            readonly [number, number],
          ];
          const d = 2 * (a[0] * (b[1] - c[1]) + b[0] * (c[1] - a[1]) + c[0] * (a[1] - b[1]));
          const q = [a, b, c].map((p) => p[0] ** 2 + p[1] ** 2);
          const ux = (q[0]! * (b[1] - c[1]) + q[1]! * (c[1] - a[1]) + q[2]! * (a[1] - b[1])) / d;
          const uy = (q[0]! * (c[0] - b[0]) + q[1]! * (a[0] - c[0]) + q[2]! * (b[0] - a[0])) / d;
          const radius = Math.hypot(a[0] - ux, a[1] - uy);
          for (let i = 0; i < tin.z.length; i++)
            expect(Math.hypot(tin.xy[2 * i]! - ux, tin.xy[2 * i + 1]! - uy)).toBeGreaterThan(
              radius * (1 - 1e-7) - 1e-7,
            );
        }
      }),
    );
  });

  test("points on one spot become one corner with their mean height", () => {
    const tin = triangulate(
      cloud([
        [0, 0, 1],
        [4, 0, 1],
        [0, 4, 1],
        [4, 4, 2],
        [4, 4, 4],
      ]),
    );
    expect(tin.merged).toBe(1);
    expect(surfaceAt(tin, 4, 4)).toBe(3);
  });

  test("points on one line, two points and none have no triangles", () => {
    for (const list of [
      [
        [0, 0, 1],
        [1, 1, 1],
        [5, 5, 2],
      ],
      [
        [0, 0, 1],
        [1, 1, 1],
      ],
      [],
    ] as const) {
      const tin = triangulate(cloud(list));
      expect(tin.triangles).toHaveLength(0);
      expect(surfaceAt(tin, 0.5, 0.5)).toBeNaN();
    }
  });

  test("a height that is not a number is a broken promise", () => {
    expect(() => triangulate(cloud([[0, 0, NaN]]))).toThrow("point-not-finite");
    expect(() => triangulate({ x: [1], y: [], z: [1] })).toThrow("points-of-unlike-length");
  });
});

describe("surface", () => {
  test("property: a plane comes back from any points of it, at cells and at places", () => {
    fc.assert(
      fc.property(
        rows,
        fc.double({ min: -0.2, max: 0.2, noNaN: true }),
        fc.double({ min: -0.2, max: 0.2, noNaN: true }),
        (list, gx, gy) => {
          const plane = (x: number, y: number): number => 1.5 + gx * (x - far[0]) + gy * (y - far[1]);
          const tin = triangulate(cloud(list.map(([x, y]) => [x, y, plane(x, y)])));
          const raster = surfaceRaster(tin, 0.5, Infinity);
          raster.values.forEach((v, k) => {
            if (Number.isNaN(v)) return;
            const x = raster.x0 + (k % raster.cols) * 0.5;
            const y = raster.y0 + Math.floor(k / raster.cols) * 0.5;
            expect(Math.abs(v - plane(x, y))).toBeLessThan(1e-5);
            expect(Math.abs(surfaceAt(tin, x, y) - plane(x, y))).toBeLessThan(1e-6);
          });
        },
      ),
      { numRuns: 40 },
    );
  });

  test("property: exact at the points, within their heights everywhere, and no cell inside the outline is missed", () => {
    fc.assert(
      fc.property(rows, (list) => {
        const tin = triangulate(cloud(list));
        if (tin.triangles.length === 0) return;
        for (let i = 0; i < tin.z.length; i++)
          expect(
            surfaceAt(tin, tin.xy[2 * i]! + tin.origin[0], tin.xy[2 * i + 1]! + tin.origin[1]),
          ).toBeCloseTo(tin.z[i]!, 6);
        const [low, high] = [Math.min(...tin.z), Math.max(...tin.z)];
        const raster = surfaceRaster(tin, 0.5, Infinity);
        raster.values.forEach((v, k) => {
          const x = raster.x0 + (k % raster.cols) * 0.5;
          const y = raster.y0 + Math.floor(k / raster.cols) * 0.5;
          expect(Number.isNaN(v)).toBe(Number.isNaN(surfaceAt(tin, x, y)));
          if (!Number.isNaN(v)) expect(v >= low - 1e-6 && v <= high + 1e-6).toBe(true);
        });
      }),
      { numRuns: 60 },
    );
  });

  test("property: the order of the points makes no difference", () => {
    fc.assert(
      fc.property(
        rows.chain((list) =>
          fc.tuple(fc.constant(list), fc.shuffledSubarray([...list], { minLength: list.length })),
        ),
        ([list, shuffled]) => {
          const [a, b] = [list, shuffled].map((l) => surfaceRaster(triangulate(cloud(l)), 0.5, 3));
          expect(b).toEqual(a);
        },
      ),
    );
  });

  test("a cell whose centre is a surveyed point has that point's height", () => {
    const list = [
      [0, 0, 1.25],
      [4, 0, 2.5],
      [4, 4, 0.75],
      [0, 4, 3.5],
      [2, 1, 9.25],
    ] as const;
    const raster = surfaceRaster(triangulate(cloud(list)), 1, Infinity);
    for (const [x, y, z] of list) expect(groundAt(raster, x, y)).toBe(z);
  });

  test("triangles with an edge past the longest hold no ground", () => {
    const tin = triangulate(
      cloud([
        [0, 0, 1],
        [2, 0, 1],
        [0, 2, 1],
        [30, 30, 1],
      ]),
    );
    expect(surfaceAt(tin, 0.5, 0.5, 5)).toBe(1);
    expect(surfaceAt(tin, 12, 12, 5)).toBeNaN();
    expect(surfaceAt(tin, 12, 12)).toBeCloseTo(1, 12);
    const raster = surfaceRaster(tin, 1, 5);
    expect(groundAt(raster, 0.5, 0.5)).toBe(1);
    expect(groundAt(raster, 12, 12)).toBeNaN();
  });

  test("piecewise linear interpolation error: at most half the squared circumradius times the largest second derivative (Waldron 1998, from memory); four times smaller at half the spacing", () => {
    const f = (x: number, y: number): number => Math.sin(x / 3) * Math.cos(y / 4);
    const worst = (h: number): number => {
      const list: [number, number, number][] = [];
      for (let x = 0; x <= 12.001; x += h) for (let y = 0; y <= 12.001; y += h) list.push([x, y, f(x, y)]);
      const raster = surfaceRaster(triangulate(cloud(list)), 0.125, Infinity);
      return raster.values.reduce((most, v, k) => {
        const [x, y] = [
          raster.x0 + (k % raster.cols) * 0.125,
          raster.y0 + Math.floor(k / raster.cols) * 0.125,
        ];
        return Number.isNaN(v) ? most : Math.max(most, Math.abs(v - f(x, y)));
      }, 0);
    };
    const [coarse, fine] = [worst(2), worst(1)];
    const secondDerivative = 1 / 9 + 1 / 16;
    expect(coarse).toBeLessThan(0.5 * (2 / Math.SQRT2) ** 2 * secondDerivative);
    expect(coarse / fine).toBeGreaterThan(3);
    expect(coarse / fine).toBeLessThan(5);
  });

  test("a cell size of nothing and a raster without end are refused", () => {
    const tin = triangulate(
      cloud([
        [0, 0, 1],
        [9000, 0, 1],
        [0, 9000, 1],
      ]),
    );
    expect(() => surfaceRaster(tin, 0, 9)).toThrow("cell-size");
    expect(() => surfaceRaster(tin, 0.5, 9)).toThrow("too-many-cells");
    expect(() => surfaceRaster(triangulate(cloud([])), 1, 9)).toThrow("no-points");
  });
});
