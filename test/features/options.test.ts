// Rows 21 and 22 of the feature list: kinds of walkway.
import { walkwayFacts } from "@causey/engine/options";
import type { Plan } from "@causey/engine/plan";
import { PERMIT_SET } from "@causey/papers/set";
import { expect, test } from "vitest";
import { flatPlan, folderFiles, paperWords, planned } from "../support/feature-plan.ts";

const probed = (probe_m: number): Plan["survey"] => ({
  ...flatPlan().survey,
  stations: [{ id: "T1", x: 20, y: 20, ground_m: 1, probe_m, water_m: null, date: null }],
});
const options: Plan["request"]["options"] = [
  { kind: "mats", status: "rejected", reason: "Covers the sedge wholly." },
  { kind: "sleepers", status: "chosen", reason: "Light." },
];

test("21 show each walkway kind with removable yes/no, reasons for reject: every kind has a status line (common practice, no source)", async () => {
  const plan = flatPlan({ request: { ...flatPlan().request, options } });
  const { results, papers } = await planned(folderFiles(plan));
  expect(results.options.map((o) => o.kind)).toEqual(walkwayFacts.map((f) => f.kind));
  expect(results.options).toHaveLength(10);
  for (const line of results.options) {
    expect(["yes", "no", "poorly", "nothing to remove"], line.kind).toContain(line.removable);
    expect(["chosen", "rejected", "open", "not looked at"], line.kind).toContain(line.status);
    expect(line.against, line.kind).not.toBe("");
  }
  const statusOf = (kind: string) => results.options.find((o) => o.kind === kind)!;
  expect(statusOf("mats")).toMatchObject({ status: "rejected", reason: "Covers the sedge wholly." });
  expect(statusOf("floats").status).toBe("not looked at");
  const words = paperWords(papers, ...PERMIT_SET);
  for (const { name } of walkwayFacts) expect(words).toContain(name);
});

const battens = ["sleepers", "floats", "ground-laid"];

test.each([
  [1, false],
  [1.05, true],
  [3, true],
])(
  "22 warn that float-on-battens failed on peat, needs anchoring: probe sank %d m, limit 1 m, warned %s (Fen Management Handbook, page 248)",
  async (depth, isWarned) => {
    const { results, papers } = await planned(folderFiles(flatPlan({ survey: probed(depth) })));
    for (const line of results.options) {
      const peat = line.warnings.filter((w) => w.text.startsWith("Peat is"));
      expect(peat.length > 0, line.kind).toBe(isWarned && battens.includes(line.kind));
      for (const w of peat) {
        expect(w.text).toContain("need stakes into firm ground");
        expect(w.source).toMatchObject({ id: "fen-handbook", status: "seen" });
      }
    }
    expect(paperWords(papers, "alternatives").includes("Warning: Peat is")).toBe(isWarned);
  },
);
