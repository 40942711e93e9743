import { expect, test } from "vitest";
import { withoutHidden } from "../src/results/index.ts";
import { planWithSecret, sampleResults, secret } from "./support/sample-results.ts";

const mark = (part: string, message: string) => ({
  rule: "shut-zone",
  part_or_joint: part,
  place: [10, 20] as const,
  message,
  mend: "Lead the line around it.",
});

test("a mark that a part breaks a rule in a hidden zone is left out: its place would show where the zone lies", () => {
  const line = {
    lines: [],
    broken: [
      mark("A1", `A1 touches closed "${secret.name}", which is shut while laying.`),
      mark("A2", 'A2 touches closed "Terns", which is shut while laying.'),
    ],
  };
  const results = { ...sampleResults, layout: { ...sampleResults.layout, line } };
  const shown = withoutHidden(results, planWithSecret.zones);
  expect(shown.layout.line!.broken.map((b) => b.part_or_joint)).toEqual(["A2"]);
  expect(withoutHidden(results, [])).toBe(results);
});
