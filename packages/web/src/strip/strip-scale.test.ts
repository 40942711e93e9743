import type { StripModel } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { spread, stripScale, ticks } from "./strip-scale.ts";

const model = (parts: number): StripModel => ({
  length_m: parts * 3.6576,
  datum: "site",
  z_min_m: 0,
  z_max_m: 2,
  branches: [],
  ground: [],
  joints: [],
  levels: [],
  cells: Array.from({ length: parts }, (_, i) => ({
    part: `A${i + 1}`,
    kind: "module",
    from_m: i * 3.6576,
    to_m: (i + 1) * 3.6576,
    length_m: 3.6576,
    branch: "A",
    utilisation: 0.5,
    state: "within",
    governs: "",
  })),
});

test("a short walkway fills the room, a long one scrolls with cells that can be read and touched", () => {
  expect(stripScale(model(10), 1000, 120, false).width).toBeCloseTo(1000, 6);
  const long = stripScale(model(200), 1000, 120, false);
  expect(long.x(3.6576) - long.x(0)).toBeGreaterThanOrEqual(20);
  const touch = stripScale(model(10), 360, 64, true);
  expect(touch.x(3.6576) - touch.x(0)).toBeGreaterThanOrEqual(46);
});

test("higher ground is drawn higher, and the exaggeration is stated", () => {
  const scale = stripScale(model(10), 1000, 122, false);
  expect(scale.y(2)).toBeLessThan(scale.y(0));
  const [dy, dx] = [scale.y(0) - scale.y(1), scale.x(1) - scale.x(0)];
  expect(scale.exaggeration).toBeCloseTo(dy / dx, 9);
});

test("distances are round in the chosen unit", () => {
  expect(ticks(30.48, 10, "us").map((t) => t.text)).toEqual(["0", "50", "100"]);
  expect(ticks(30, 10, "metric").map((t) => t.text)).toEqual(["0", "10", "20", "30"]);
});

test("level names keep their line height apart", () => {
  const ys = spread(
    [
      { id: "a", y: 50 },
      { id: "b", y: 52 },
      { id: "c", y: 20 },
    ],
    14,
    120,
  ).map((l) => l.y);
  expect(ys).toEqual([52, 38, 20]);
});
