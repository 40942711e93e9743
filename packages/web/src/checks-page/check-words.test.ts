import type { CheckResult } from "@causey/engine/checks";
import { expect, test } from "vitest";
import { groupChecks, statusLine, tagWords, tally } from "./check-words.ts";

const rule = { id: "rule", title: "A rule", status: "seen" } as const;
const base = { title: "Check", rule, caution: "" } as const;
const judged = (id: string, utilisation: number, parts: string[]): CheckResult => ({
  ...base,
  id,
  kind: "stringer-bending",
  parts,
  status: utilisation <= 1 ? "pass" : "fail",
  demand: utilisation,
  capacity: 1,
  unit: "N*m",
  utilisation,
  governs: "",
  working: [],
  backwards: { carries: "", change: null },
  from_memory: false,
});
const unknown: CheckResult = {
  ...base,
  id: "bearing",
  kind: "bearing",
  parts: ["J3"],
  status: "cannot-check",
  missing: ["soil strength", "water level"],
};
const checks = [
  judged("low", 0.2, ["A1"]),
  judged("high", 0.9, ["A2"]),
  judged("over", 1.2, ["A3"]),
  unknown,
];

test("groups follow the parts; in each the failed and the most used come first", () => {
  const grouped = groupChecks(checks, null);
  expect(grouped.map((g) => g.title)).toEqual(["Stringers", "Supports and ground"]);
  expect(grouped[0]!.checks.map((c) => c.id)).toEqual(["over", "high", "low"]);
});

test("a chosen part leaves the checks of its own tags", () => {
  expect(groupChecks(checks, new Set(["A2", "J3"])).flatMap((g) => g.checks.map((c) => c.id))).toEqual([
    "high",
    "bearing",
  ]);
});

test("what cannot be checked names what is missing and is never counted as met", () => {
  expect(statusLine(unknown)).toBe("cannot be checked: missing soil strength, water level");
  expect(tally(checks)).toEqual({ pass: 2, fail: 1, "cannot-check": 1, "not-applicable": 0 });
});

test("runs of tags are drawn together in their order", () => {
  expect(tagWords(["A2", "A1", "A10", "A3", "B4", "B5"])).toBe("A1 to A3, A10, B4, B5");
});
