import { expect, test } from "vitest";
import { otherLevel, readyLevels, withHeight } from "./ready-levels.ts";

test("a plan without levels is offered the three that most need; what it has is not offered again", () => {
  const [high, ...others] = readyLevels([]);
  expect([high!.name, ...others.map((l) => l.name)]).toEqual([
    "Mean high water",
    "Mean low water",
    "Highest predicted tide",
  ]);
  const level = withHeight(high!, 1.2, [], "Gate");
  expect(level).toMatchObject({ role: "mhw", basis: "mean", z_m: 1.2, datum: "Gate" });
  expect(readyLevels([level])).toEqual(others);
});

test("each level gets an id and a name of its own", () => {
  const first = withHeight(otherLevel([]), 1, [], "Gate");
  const second = withHeight(otherLevel([first]), 2, [first], "Gate");
  expect([first.id, second.id]).toEqual(["level-1", "level-2"]);
  expect([first.name, second.name]).toEqual(["Level 1", "Level 2"]);
});
