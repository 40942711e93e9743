import { isInside, rectangle } from "@causey/engine/site";
import { expect, test } from "vitest";
import { labelPoint } from "./zone-label-point.ts";

const meadow = [[rectangle(100, 100, 0, 100, 200)]];
const everywhere = [-1000, -1000, 1000, 1000] as const;

test("a name stands in the middle of its zone, or of the part of it that is in view", () => {
  const middle = labelPoint(meadow, [], everywhere, 5)!;
  expect(Math.hypot(middle[0] - 100, middle[1] - 100)).toBeLessThan(60);
  const east = labelPoint(meadow, [], [150, -1000, 1000, 1000], 5)!;
  expect(east[0]).toBeGreaterThan(150);
  expect(labelPoint(meadow, [], [300, 300, 400, 400], 5)).toBeNull();
});

test("it keeps off a zone drawn above it with its whole width, while there is room", () => {
  const colony = [[rectangle(100, 100, 0, 60, 60)]];
  const [x, y] = labelPoint(meadow, [colony], everywhere, 20)!;
  for (const d of [-20, 0, 20]) expect(isInside(colony, x + d, y)).toBe(false);
  expect(labelPoint(meadow, [meadow], everywhere, 5)).not.toBeNull();
});
