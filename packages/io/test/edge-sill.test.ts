import type { Plan } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { readPlan } from "../src/plan/index.ts";
import { planJson, sampleFiles, sampleKit, samplePlan } from "./support/sample-plan.ts";

const edged: Plan = {
  ...samplePlan,
  kit: { ...sampleKit, platform: { ...sampleKit.platform, edge_sill_mm: 1200.5 } },
};

test("the length of a platform's edge sills survives writing and reading; left out it stays left out", async () => {
  for (const plan of [edged, { ...samplePlan, kit: sampleKit }]) {
    const answer = await readPlan(sampleFiles({}, plan), { readyKits: [] });
    if (!answer.ok) throw new Error(JSON.stringify(answer));
    expect(answer.plan.kit.platform).toEqual(plan.kit.platform);
  }
});

test("a length that is no number is refused with its place", async () => {
  const text = planJson((d) => {
    d["kit"] = { ...sampleKit, platform: { ...sampleKit.platform, edge_sill_mm: "long" } };
  });
  const answer = await readPlan(sampleFiles({ "plan.json": text }), { readyKits: [] });
  expect(answer.ok).toBe(false);
  expect(JSON.stringify(answer)).toContain("platform.edge_sill_mm");
});
