import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Box, Point } from "../scene/index.ts";
import { clipLine, clipRing } from "./clip.ts";
import { LabelRoom } from "./label-room.ts";
import { coverWithTiles, neighbours } from "./tiles.ts";
import type { Extent } from "./view.ts";

const box: Box = { x: 10, y: 20, width: 40, height: 30 };
const coordinate = fc.double({ min: -20, max: 90, noNaN: true });
const point = fc.tuple(coordinate, coordinate);

const isInside = ([x, y]: Point): boolean =>
  x >= box.x - 1e-9 && x <= box.x + box.width + 1e-9 && y >= box.y - 1e-9 && y <= box.y + box.height + 1e-9;
const length = (line: readonly Point[]): number =>
  line.reduce(
    (sum, p, i) => (i === 0 ? 0 : sum + Math.hypot(p[0] - line[i - 1]![0], p[1] - line[i - 1]![1])),
    0,
  );

/** Length of a segment inside the box, by cutting it at many places. */
const sampled = (a: Point, b: Point): number => {
  const n = 4000;
  const at = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  const count = Array.from({ length: n }, (_, i) => isInside(at((i + 0.5) / n))).filter(Boolean).length;
  return (count / n) * length([a, b]);
};

describe("cutting at the map's edge", () => {
  test("a line keeps just what lies inside", () => {
    fc.assert(
      fc.property(point, point, (a, b) => {
        const runs = clipLine([a, b], box);
        for (const run of runs) for (const p of run) expect(isInside(p)).toBe(true);
        expect(Math.abs(runs.reduce((sum, run) => sum + length(run), 0) - sampled(a, b))).toBeLessThan(0.1);
      }),
    );
  });

  test("a line that leaves and comes back makes two runs", () => {
    const runs = clipLine(
      [
        [20, 30],
        [20, 10],
        [30, 10],
        [30, 30],
      ],
      box,
    );
    expect(runs).toEqual([
      [
        [20, 30],
        [20, 20],
      ],
      [
        [30, 20],
        [30, 30],
      ],
    ]);
  });

  test("a ring around the whole map fills it; one beside it fills nothing", () => {
    const ring = (x: number, y: number, size: number): Point[] => [
      [x, y],
      [x + size, y],
      [x + size, y + size],
      [x, y + size],
    ];
    const area = (r: readonly Point[]): number =>
      Math.abs(
        r.reduce(
          (sum, p, i) => sum + p[0] * r[(i + 1) % r.length]![1] - r[(i + 1) % r.length]![0] * p[1],
          0,
        ) / 2,
      );
    expect(area(clipRing(ring(-100, -100, 400), box))).toBeCloseTo(box.width * box.height, 9);
    expect(area(clipRing(ring(40, 40, 100), box))).toBeCloseTo(10 * 10, 9);
    expect(clipRing(ring(60, 60, 5), box)).toEqual([]);
  });
});

describe("detail sheets", () => {
  const extent = fc
    .tuple(fc.double({ min: 0, max: 300, noNaN: true }), fc.double({ min: 0, max: 200, noNaN: true }))
    .map(([x, y]): Extent => [x, y, x + 4, y + 4]);
  const [w, h] = [70, 50];

  test("every corner of every part lies on a sheet", () => {
    fc.assert(
      fc.property(fc.array(extent, { minLength: 1, maxLength: 30 }), (parts) => {
        const tiles = coverWithTiles(parts, [w, h]);
        for (const [west, south, east, north] of parts)
          for (const [x, y] of [
            [west, south],
            [east, north],
          ] as const)
            expect(
              tiles.some(
                (t) => Math.abs(x - t.middle[0]) <= w / 2 + 1e-6 && Math.abs(y - t.middle[1]) <= h / 2 + 1e-6,
              ),
            ).toBe(true);
      }),
    );
  });

  test("what fits on one sheet needs one", () => {
    expect(
      coverWithTiles(
        [
          [100, 100, 110, 110],
          [130, 120, 140, 130],
        ],
        [w, h],
      ),
    ).toHaveLength(1);
  });

  test("a match line on one sheet leads to the sheet that leads back", () => {
    const opposite = { west: "east", east: "west", north: "south", south: "north" } as const;
    const tiles = coverWithTiles(
      Array.from({ length: 40 }, (_, i): Extent => [i * 6, 3 * i, i * 6 + 4, 3 * i + 4]),
      [w, h],
    );
    expect(tiles.length).toBeGreaterThan(2);
    tiles.forEach((tile, n) => {
      for (const [side, other] of Object.entries(neighbours(tile, tiles)) as [
        keyof typeof opposite,
        number,
      ][])
        expect(neighbours(tiles[other]!, tiles)[opposite[side]]).toBe(n);
    });
  });
});

test("labels never cover one another and never leave the map", () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(point, fc.integer({ min: 1, max: 12 })), { maxLength: 40 }), (asked) => {
      const room = new LabelRoom(box);
      const placed = asked.flatMap(([at, signs]) => room.label("m".repeat(signs), [at], { size: 2 }));
      const boxes = placed.flatMap((s) =>
        s.kind === "text" ? [{ x: s.at[0], y: s.at[1], half: s.text.length * 0.8 }] : [],
      );
      for (const b of boxes) expect(isInside([b.x, b.y])).toBe(true);
      boxes.forEach((a, i) =>
        boxes.slice(i + 1).forEach((b) => {
          const isApart = Math.abs(a.y - b.y) >= 2.3 - 1e-9 || Math.abs(a.x - b.x) >= a.half + b.half;
          expect(isApart).toBe(true);
        }),
      );
    }),
  );
});
