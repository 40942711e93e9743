import { tables } from "@causey/data/tables";
import { applyEdit, derive, revertEdit, type Plan, type Results } from "@causey/engine/plan";
import { familiesFor, propose, type Proposal } from "@causey/engine/proposals";
import { finish } from "@causey/engine/formula";
import { readWholePlan } from "@causey/runtime/derive";
import { loadSolver } from "@causey/runtime/solver";
import { beforeAll, describe, expect, test } from "vitest";
import { boardKit, laneFiles, type LanePlan } from "./support/lane-plan.ts";

/** A kit whose long modules are too weak, whose stakes are too short for the flood, and which few people must carry. */
const weak: LanePlan = {
  wide: 12,
  long: 28,
  laying: { carriers: 2 },
  kit: boardKit({
    stringers: { count: 2, size: "2x4", overall_mm: 711.2 },
    platform: { ...boardKit().platform, stringers: { size: "2x4", count: 4 } },
  }),
};

type Judged = Extract<Results["checks"][number], { readonly utilisation: number }>;
const judged = (results: Results, id: string): Judged => {
  const check = results.checks.find((c) => c.id === id);
  if (check?.status !== "pass" && check?.status !== "fail") throw new Error(`${id} is not judged`);
  return check;
};

describe("what would make it pass", () => {
  let derived: (plan: Plan) => Results;
  let plan: Plan;
  let results: Results;
  let proposed: ReadonlyMap<string, readonly Proposal[]>;
  beforeAll(async () => {
    const read = await readWholePlan(laneFiles(weak));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const solver = await loadSolver();
    const input = { site: read.site, prices: read.prices };
    derived = (p) => finish(derive({ ...input, plan: p }, { tables, solver }));
    plan = read.plan;
    results = derived(plan);
    const failing = results.checks.filter((c) => c.status === "fail");
    proposed = new Map(
      failing.map((c) => [c.id, finish(propose({ ...input, plan }, results, c.id, { tables, solver }))]),
    );
  });

  test("the long module's bending and the lift fail, and both have proposals of several kinds", () => {
    expect([...proposed.keys()]).toContain("stringer-bending.3645mm");
    const bending = proposed.get("stringer-bending.3645mm")!;
    expect(bending.map((p) => p.family)).toEqual(expect.arrayContaining(["deeper-stringers"]));
    expect(bending.find((p) => p.family === "deeper-stringers")!.words).toBe("2x8 stringers");
    const lift = [...proposed].find(([id]) => id.startsWith("lifting"));
    expect(lift?.[1].map((p) => p.family)).toContain("more-carriers");
  });

  test("every proposal, applied by its edit, gives the promised utilisation within 1e-9, cost and mass", () => {
    const all = [...proposed.values()].flat();
    expect(all.length).toBeGreaterThanOrEqual(4);
    for (const proposal of all) {
      const outcome = applyEdit(plan, proposal.edit);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      const after = derived(outcome.plan);
      const check = after.checks.find((c) => c.id === proposal.check);
      if (proposal.utilisation === 0 && check === undefined) continue;
      const { utilisation, status } = judged(after, proposal.check);
      expect(status, proposal.words).toBe("pass");
      expect(Math.abs(utilisation - proposal.utilisation)).toBeLessThanOrEqual(1e-9);
      expect(after.cost.total - results.cost.total).toBeCloseTo(proposal.added_cost!, 6);
      const passed = new Set(results.checks.filter((c) => c.status === "pass").map((c) => c.id));
      const now = after.checks.filter((c) => c.status === "fail" && passed.has(c.id)).map((c) => c.id);
      expect(proposal.worsens.map((c) => c.id)).toEqual(now);
    }
  });

  test("undo returns the plan and its figures", () => {
    const [proposal] = proposed.get("stringer-bending.3645mm")!;
    const outcome = applyEdit(plan, proposal!.edit);
    if (!outcome.ok) throw new Error("not applied");
    const back = revertEdit(outcome.plan, outcome.inverse);
    expect(back).toEqual(plan);
    expect(judged(derived(back), "stringer-bending.3645mm").utilisation).toBe(
      judged(results, "stringer-bending.3645mm").utilisation,
    );
  });

  test("a smaller step of the same family does not pass: what is proposed is the least", () => {
    const failing = results.checks.find((c) => c.id === "stringer-bending.3645mm")!;
    const families = familiesFor(failing, plan, tables);
    let tried = 0;
    for (const proposal of proposed.get(failing.id)!) {
      const { steps } = families.find((f) => f.id === proposal.family)!;
      const smaller = steps.slice(
        0,
        steps.findIndex((s) => s.words === proposal.words),
      );
      for (const step of smaller) {
        const outcome = applyEdit(plan, step.edit);
        if (!outcome.ok) continue;
        tried++;
        expect(judged(derived(outcome.plan), failing.id).utilisation, step.words).toBeGreaterThan(1);
      }
    }
    expect(tried).toBeGreaterThan(0);
  });

  test("a check that passes, and one that no part can mend, have none", () => {
    const passing = results.checks.find((c) => c.status === "pass")!;
    expect(finish(propose({ plan } as never, results, passing.id, { tables } as never))).toEqual([]);
    const rule = { ...passing, kind: "setback" } as const;
    expect(familiesFor(rule, plan, tables)).toEqual([]);
  });
});
