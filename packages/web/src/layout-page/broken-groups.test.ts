import type { BrokenRule } from "@causey/engine/layout";
import { expect, test } from "vitest";
import { brokenGroups } from "./broken-groups.ts";

const shut = (id: string, zone: string): BrokenRule => ({
  rule: "shut-zone",
  part_or_joint: id,
  place: [0, 0],
  message: `${id} touches closed "${zone}", which is shut while laying.`,
  mend: "Lead the line around it, or lay at another time.",
});
const steep = (id: string, percent: string): BrokenRule => ({
  rule: "grade",
  part_or_joint: id,
  place: [0, 0],
  message: `${id} rises ${percent} %; at most 5.0 % is allowed.`,
  mend: "Lead the line along the slope, or allow steeper modules.",
});

test("parts that touch one area stand in one line, those that touch another in their own", () => {
  const groups = brokenGroups([
    shut("A49", "Nest"),
    shut("A50", "Nest"),
    shut("B1", "Pool"),
    shut("A51", "Nest"),
  ]);
  expect(groups.map((g) => [g.where, g.count, g.message])).toEqual([
    ["A49 to A51", 3, 'touches closed "Nest", which is shut while laying.'],
    ["B1", 1, 'touches closed "Pool", which is shut while laying.'],
  ]);
});

test("where the figures differ the first is given whole, and none is lost", () => {
  const [group, ...more] = brokenGroups([steep("A2", "6.1"), steep("A3", "9.0")]);
  expect(more).toEqual([]);
  expect(group).toMatchObject({ isSame: false, message: "A2 rises 6.1 %; at most 5.0 % is allowed." });
  expect(group!.all).toHaveLength(2);
});
