import type { Problem } from "@causey/engine/formula";
import { expect, test } from "vitest";
import { problemTally } from "./index.ts";

const of = (severity: Problem["severity"]): Problem => ({
  code: "x",
  severity,
  file: "plan.json",
  place: "name",
  value: "",
  message: "No name.",
  mend: "Give one.",
});

test("notes are not counted as problems, and one is not several", () => {
  expect(problemTally([of("error"), of("warning"), of("warning")])).toBe("1 problem, 2 notes");
  expect(problemTally([of("error"), of("error")])).toBe("2 problems");
  expect(problemTally([of("warning")])).toBe("1 note");
  expect(problemTally([])).toBe("");
});
