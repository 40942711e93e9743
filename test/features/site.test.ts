// placeholder
import { expect, test } from "vitest";
import { flatPlan, folderFiles, planned } from "../support/feature-plan.ts";
test("smoke", async () => {
  const p = await planned(folderFiles(flatPlan()));
  console.log(
    JSON.stringify(p.results.evaluation, null, 1).slice(0, 1500),
    p.results.layout.parts.length,
    p.warnings.map((w) => w.code),
  );
  expect(p.results.layout.unreached).toEqual([]);
});
