import * as fc from "fast-check";
import { expect, test } from "vitest";
import { atLeast, extentOf, fit, pan, toGround, toPicture, zoomAt, type View } from "./view.ts";

const size = { width: 900, height: 600 };
const anyView = fc.record({
  x: fc.double({ min: 3e5, max: 7e5, noNaN: true }),
  y: fc.double({ min: 4e6, max: 6e6, noNaN: true }),
  scale: fc.double({ min: 0.1, max: 100, noNaN: true }),
});
const anyPoint = fc.tuple(
  fc.double({ min: 0, max: 900, noNaN: true }),
  fc.double({ min: 0, max: 600, noNaN: true }),
);

test("picture to ground and back is the same point", () => {
  fc.assert(
    fc.property(anyView, anyPoint, (view: View, at) => {
      const back = toPicture(view, size, toGround(view, size, at));
      expect(back[0]).toBeCloseTo(at[0], 3);
      expect(back[1]).toBeCloseTo(at[1], 3);
    }),
  );
});

test("zooming keeps the ground under the pointer", () => {
  fc.assert(
    fc.property(anyView, anyPoint, fc.double({ min: 0.2, max: 5, noNaN: true }), (view: View, at, factor) => {
      const before = toGround(view, size, at);
      const after = toGround(zoomAt(view, size, at, factor), size, at);
      expect(after[0]).toBeCloseTo(before[0], 4);
      expect(after[1]).toBeCloseTo(before[1], 4);
    }),
  );
});

test("fit shows the whole extent inside the margins, north up", () => {
  const view = fit([100, 200, 300, 260], size, { top: 90, right: 60, bottom: 10, left: 20 });
  expect(toPicture(view, size, [100, 230])[0]).toBeCloseTo(20, 6);
  expect(toPicture(view, size, [300, 230])[0]).toBeCloseTo(840, 6);
  expect(toPicture(view, size, [200, 230])[1]).toBeCloseTo(340, 6);
  expect(toPicture(view, size, [200, 260])[1]).toBeLessThan(toPicture(view, size, [200, 200])[1]);
});

test("panning by pixels moves the picture by those pixels", () => {
  const view: View = { x: 10, y: 20, scale: 4 };
  const [x, y] = toPicture(pan(view, 30, -12), size, [10, 20]);
  expect([x, y]).toEqual([480, 288]);
});

test("no points have no extent", () => {
  expect(extentOf([])).toBeNull();
  expect(
    extentOf([
      [1, 5],
      [3, 2],
    ]),
  ).toEqual([1, 2, 3, 5]);
});

test("a lone place is shown with its surroundings; what is wide already stays as it is", () => {
  expect(atLeast([5, 7, 5, 7], 20)).toEqual([-5, -3, 15, 17]);
  expect(atLeast([0, 0, 100, 4], 20)).toEqual([0, -8, 100, 12]);
  expect(atLeast([0, 0, 100, 40], 20)).toEqual([0, 0, 100, 40]);
});
