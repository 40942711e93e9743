import type { CheckResult } from "@causey/engine/checks";
import { expect, test } from "vitest";
import { foldChecks } from "./fold-checks.ts";

const check = (id: string, part: string, more: object): CheckResult =>
  ({
    id,
    kind: "bearing",
    title: `Bearing of the ground, joint ${part}`,
    parts: [part],
    ...more,
  }) as unknown as CheckResult;
const lacking = (id: string, part: string, ...missing: string[]): CheckResult =>
  check(id, part, { status: "cannot-check", missing });

test("what lacks the same is one row with every part; another lack, and what was judged, stand by themselves", () => {
  const failed = check("b4", "J4", { status: "fail", utilisation: 1.2 });
  const folded = foldChecks([
    failed,
    lacking("b1", "J1", "soil strength"),
    lacking("b2", "J2", "soil strength"),
    lacking("b3", "J3", "peat depth"),
  ]);
  expect(folded.map((c) => [c.id, c.title, c.parts])).toEqual([
    ["b4", "Bearing of the ground, joint J4", ["J4"]],
    ["b1", "Bearing of the ground", ["J1", "J2"]],
    ["b3", "Bearing of the ground, joint J3", ["J3"]],
  ]);
  expect(folded[0]).toBe(failed);
});

test("two kinds of check that lack the same are never one row", () => {
  const other = { ...lacking("u1", "J1", "soil strength"), kind: "uplift" } as CheckResult;
  expect(foldChecks([lacking("b1", "J1", "soil strength"), other])).toHaveLength(2);
});

test("checks that are met alike stay apart: each has figures of its own", () => {
  const met = (id: string) => check(id, id, { status: "pass", utilisation: 0.5 });
  expect(foldChecks([met("a"), met("b")])).toHaveLength(2);
});
