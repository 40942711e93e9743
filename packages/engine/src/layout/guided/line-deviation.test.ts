import { expect, test } from "vitest";
import { lineDeviation } from "./line-deviation.ts";

const run = (drawn: unknown, middle: unknown, corridor_m = 1) =>
  lineDeviation.run({ drawn, middle, corridor_m } as never, undefined);

test("a line one metre beside another deviates by one metre all along (by hand)", () => {
  const out = run(
    [
      [0, 0],
      [10, 0],
    ],
    [
      [0, 1],
      [10, 1],
    ],
  );
  expect(out).toMatchObject({
    ok: true,
    outputs: { max_deviation_m: 1, rms_deviation_m: 1, within_corridor: true, not_followed: [] },
  });
});

test("a line that leaves at a slope: the root mean square is the end's distance over the root of three (by hand)", () => {
  const out = run(
    [
      [0, 0],
      [30, 0],
    ],
    [
      [0, 0],
      [3, 3],
    ],
    5,
  );
  if (!out.ok) throw new Error("no outputs");
  expect(out.outputs["max_deviation_m"]).toBe(3);
  expect(out.outputs["at"]).toEqual([3, 3]);
  expect(out.outputs["rms_deviation_m"]).toBeCloseTo(3 / Math.sqrt(3), 3);
  // (3, 3) is 5 m from (7, 0): from there on nothing is near.
  const [open] = out.outputs["not_followed"] as { from_m: number; to_m: number }[];
  expect(open!.from_m).toBeCloseTo(7.1, 6);
  expect(open!.to_m).toBe(30);
});

test("what is no line is refused, both at once", () => {
  const out = run(
    [[0, 0]],
    [
      ["a", 1],
      [2, 3],
    ],
  );
  expect(out.ok).toBe(false);
  if (!out.ok) expect(out.problems.map((p) => p.place)).toEqual(["drawn", "middle"]);
});
