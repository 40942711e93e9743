import { expect, test } from "vitest";
import { levelOf, readyLevels, withHeight } from "./ready-levels.ts";

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
  const first = withHeight(levelOf("mhws", "", []), 1, [], "Gate");
  const second = withHeight(levelOf("mhws", " ", [first]), 2, [first], "Gate");
  const third = withHeight(levelOf("flood", "Storm of 1953", [first, second]), 3, [first, second], "Gate");
  const all = [first, second, third];
  expect(all.map((l) => l.id)).toEqual(["level-1", "level-2", "level-3"]);
  expect(all.map((l) => [l.name, l.role, l.basis])).toEqual([
    ["Mean high water springs", "mhws", "mean"],
    ["Mean high water springs 2", "mhws", "mean"],
    ["Storm of 1953", "flood", "recorded"],
  ]);
});
