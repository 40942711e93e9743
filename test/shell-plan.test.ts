// Whole plans through the built shell: the invented demo and a real marsh (Goodwin, Mudd and Clubb 2018, lidar of the
// north shore of the Stour estuary; Environment Agency lidar, OGL v3).
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { dataFolder, hasData } from "../packages/engine/test/support/open-data.ts";
import type { Results } from "@causey/engine/plan";
import { M_PER_FT } from "@causey/engine/units";
import { causey, demoFolder, folderOf, temporaryFolder, type Ran } from "./support/shell.ts";
import { stourPlanFiles } from "./support/stour-plan.ts";

const read = (folder: string, name: string): string => readFileSync(join(folder, name), "utf8");
const results = (folder: string): Results => JSON.parse(read(folder, "results.json")) as Results;
const rows = (folder: string, name: string): string[] => read(folder, name).trim().split(/\r?\n/).slice(1);

/** Every rule kept, and none of them vacuous where it must apply. */
function expectAudit(plan: string, out: string): void {
  const ran = causey(["audit", plan, out, "--json"]);
  const audit = JSON.parse(ran.out) as {
    ok: boolean;
    rules: { rule: string; tested: number; problems: unknown[] }[];
  };
  expect(audit.rules.filter((r) => r.problems.length > 0)).toEqual([]);
  expect(ran.code).toBe(0);
  const tested = Object.fromEntries(audit.rules.map((r) => [r.rule, r.tested]));
  for (const rule of [
    "format",
    "feet",
    "foot-ground",
    "foot-level",
    "keep-off",
    "part-overlap",
    "pitch",
    "support-height",
    "deck-sum",
    "grade",
    "branch",
    "reached",
  ])
    expect(tested[rule], rule).toBeGreaterThan(0);
}

describe("the demo", () => {
  const [one, two] = [join(temporaryFolder(), "one"), join(temporaryFolder(), "two")];
  let ran: Ran;
  beforeAll(() => {
    ran = causey(["plan", demoFolder, "--out", one]);
    causey(["plan", demoFolder, "--out", two]);
  });

  test("is planned, and reaches all three plots, one over a creek", () => {
    expect(ran.code).toBe(0);
    const { layout, evaluation } = results(one);
    expect(layout.unreached).toEqual([]);
    expect(layout.reached.map((r) => r.plot).sort()).toEqual(["P1", "P2", "P3"]);
    expect(evaluation.crossings.map((c) => c.name)).toContain("Quillet Creek");
  });

  test("passes the audit", () => expectAudit(demoFolder, one));

  test("the same input twice gives the same bytes", () => {
    const names = readdirSync(one).sort();
    expect(readdirSync(two).sort()).toEqual(names);
    for (const name of names) expect(read(two, name), name).toBe(read(one, name));
  });

  test("one value everywhere: length, contact, shade and cost agree between files and summary", () => {
    const r = results(one);
    const figure = (id: string): number => r.figures.find((f) => f.id === id)!.value;
    const geojson = JSON.parse(read(one, "layout.geojson")) as { figures: Record<string, number> };
    const pairs = { length_m: "length", shaded_m2: "shaded", contact_m2: "contact", cost: "cost" } as const;
    for (const [key, id] of Object.entries(pairs))
      expect(geojson.figures[key], key).toBeCloseTo(figure(id), 6);
    expect(figure("length")).toBe(r.evaluation.length_m);
    expect(figure("cost")).toBe(r.cost.total);
    expect(ran.out).toContain(`USD ${r.cost.total.toLocaleString("en-US", { minimumFractionDigits: 2 })}`);
    expect(ran.out).toContain(
      `${Math.round(figure("shaded") / M_PER_FT ** 2).toLocaleString("en-US")} sq ft`,
    );
    for (const f of r.figures)
      for (const step of f.working.slice(-1)) expect(step.value, f.id).toBeCloseTo(f.value, 6);
  });

  test("order.csv adds up to the cost, every line rounded to the cent", () => {
    const { cost } = results(one);
    const amounts = cost.order.map((l) => l.amount);
    for (const a of [...amounts, ...cost.lines.map((l) => l.amount)])
      expect(Math.round(a * 100) / 100).toBe(a);
    const cents = (v: readonly number[]): number => v.reduce((sum, a) => sum + Math.round(a * 100), 0);
    expect(cents(amounts)).toBe(Math.round(cost.lines.find((l) => l.line === "materials")!.amount * 100));
    expect(cents(cost.lines.map((l) => l.amount))).toBe(Math.round(cost.total * 100));
    const head = read(one, "order.csv").split(/\r?\n/)[0]!.split(",");
    const at = head.findIndex((h) => h.startsWith("amount"));
    const written = rows(one, "order.csv").map((l) =>
      Number(l.match(/(?:"(?:[^"]|"")*"|[^,]*)(?:,|$)/g)![at]!.replace(/,$/, "")),
    );
    expect(cents(written)).toBe(Math.round(cost.total * 100));
  });

  test("every plan of cuts closes within a thousandth of its bound, and cutting.csv saws every piece", () => {
    const r = results(one);
    expect(r.cutting.length).toBeGreaterThan(2);
    for (const { size, plan } of r.cutting) {
      expect(plan.bound, size).toBeLessThanOrEqual(plan.cost + 1e-9);
      expect(plan.cost / plan.bound - 1, size).toBeLessThan(1e-3);
    }
    expect(rows(one, "cutting.csv").length).toBeGreaterThan(5);
  });

  test("no hidden zone is named in any file", () => {
    for (const name of readdirSync(one)) expect(read(one, name)).not.toMatch(/orchid|rare|hidden-/i);
  });
});

describe.skipIf(!hasData("marsh-dem-stour"))("a real marsh on the Stour (EPSG:27700)", () => {
  const plan = async (variant: "low" | "post-pairs") => {
    const folder = folderOf(await stourPlanFiles(dataFolder, variant));
    const out = join(temporaryFolder(), "out");
    const ran = causey(["plan", folder, "--out", out]);
    expect(ran.error).not.toContain("error");
    expect(ran.code).toBe(0);
    return { folder, out, results: results(out), ran };
  };

  test("low supports above 1.5 m: P1 and P2 are reached, P3 is cut off by the creek, about 7 m at its least", async () => {
    const { folder, out, results: r, ran } = await plan("low");
    expect(r.layout.reached.map((p) => p.plot).sort()).toEqual(["P1", "P2"]);
    const [unreached] = r.layout.unreached;
    expect(unreached!.plot).toBe("P3");
    expect(unreached!.gap!.over).toBe("Middle creek");
    expect(Math.abs(unreached!.gap!.width_m - 7)).toBeLessThan(0.3);
    expect(ran.out).toContain("Middle creek");
    expectAudit(folder, out);
  });

  test("with post pairs up to 2.0 m above 0.2 m, P3 is reached too", async () => {
    const { folder, out, results: r } = await plan("post-pairs");
    expect(r.layout.reached.map((p) => p.plot).sort()).toEqual(["P1", "P2", "P3"]);
    expect(r.layout.joints.some((j) => j.support.includes("post"))).toBe(true);
    expectAudit(folder, out);
  });
});
