import fc from "fast-check";
import { expect, test } from "vitest";
import { smallTerrain } from "../../test/support/small-site.ts";
import { isInside, signedDistance, type Polygons } from "../site/index.ts";
import { AreaSum } from "./area-sum.ts";
import { layLattice, latticeOf, placeOf } from "./lattice.ts";
import { overlappingPairs } from "./overlap.ts";
import { Settle, type SearchSpace } from "./settle.ts";
import { INSIDE, NEAR, markZone } from "./zone-mask.ts";

test("property: a rectangle's sum equals adding its points one by one", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 48, maxLength: 48 }),
      fc.nat(7),
      fc.nat(5),
      fc.nat(7),
      fc.nat(5),
      (v, a, b, c, d) => {
        const sum = new AreaSum(8, 6, (p) => v[p]!, true);
        const [i0, i1, j0, j1] = [Math.min(a, c), Math.max(a, c), Math.min(b, d), Math.max(b, d)];
        let hand = 0;
        for (let j = j0; j <= j1; j++) for (let i = i0; i <= i1; i++) hand += v[j * 8 + i]!;
        expect(sum.over(i0, j0, i1, j1)).toBe(hand);
      },
    ),
  );
});

test("property: lattice and place are each other's inverse, at every heading", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 90, noNaN: true }), fc.nat(20), fc.nat(20), (heading, i, j) => {
      const l = layLattice(
        smallTerrain(40, 30, () => 0),
        0.3048,
        heading,
        17.3,
        11.1,
      );
      const [u, v] = latticeOf(l, ...placeOf(l, i, j));
      expect(u).toBeCloseTo(i, 8);
      expect(v).toBeCloseTo(j, 8);
      expect(placeOf(l, l.si, l.sj)).toEqual([17.3, 11.1]);
    }),
  );
});

test("property: the zone mask is exact inside and never misses a point near an edge", () => {
  const l = layLattice(
    smallTerrain(20, 20, () => 0),
    0.5,
    31,
    10,
    10,
  );
  const corner = fc.tuple(
    fc.double({ min: 3, max: 17, noNaN: true }),
    fc.double({ min: 3, max: 17, noNaN: true }),
  );
  fc.assert(
    fc.property(
      fc.tuple(corner, corner, corner),
      fc.double({ min: 0.1, max: 1.5, noNaN: true }),
      (triangle, radius) => {
        const polygons: Polygons = [[triangle]];
        const mask = new Uint8Array(l.nx * l.ny);
        markZone(l, polygons, radius, mask);
        for (let k = 0; k < mask.length; k++) {
          const [x, y] = placeOf(l, k % l.nx, Math.floor(k / l.nx));
          const d = Math.abs(signedDistance(polygons, x, y));
          if (d > 1e-9) expect((mask[k]! & INSIDE) !== 0).toBe(isInside(polygons, x, y));
          if (d <= radius) expect(mask[k]! & NEAR).toBe(NEAR);
        }
      },
    ),
    { numRuns: 40 },
  );
});

test("the settle loop stops at a key, goes on from there, and gives the same costs as in one run", () => {
  const space: SearchSpace = {
    nodes: 400,
    ahead: () => 0,
    expand: (n, s) => {
      for (const step of [1, 7, 20]) if (n + step < 400) s.relax(n + step, 3 + ((n * step) % 11), 1);
    },
  };
  const whole = new Settle(space);
  whole.seed(0, 0, 0);
  whole.run(Infinity, () => false);
  const pieces = new Settle(space);
  pieces.seed(0, 0, 0);
  for (let key = 10; pieces.run(50, () => false, key) !== -1 || key < 2000; key += 10);
  expect([...pieces.cost]).toEqual([...whole.cost]);
});

test("outlines that touch along an edge do not overlap; a centimetre of overlap is found", () => {
  const box = (x: number): Polygons => [
    [
      [
        [x, 0],
        [x + 1, 0],
        [x + 1, 1],
        [x, 1],
      ],
    ],
  ];
  expect(overlappingPairs([box(0), box(1), box(2)])).toEqual([]);
  expect(overlappingPairs([box(0), box(0.99), box(5)])).toEqual([[0, 1]]);
});
