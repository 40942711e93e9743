import { join } from "node:path";
import { tables } from "@causey/data/tables";
import { derive } from "@causey/engine/plan";
import { showQuantity } from "@causey/engine/units";
import { beforeAll, expect, test } from "vitest";
import { readFolder } from "../../io/src/folder/index.ts";
import { withoutHidden } from "../../io/src/results/index.ts";
import { readWholePlan } from "../../runtime/src/derive/index.ts";
import { loadSolver } from "../../runtime/src/solver/index.ts";
import { sceneTexts } from "../src/scene/index.ts";
import { toSvg } from "../src/scene-svg/index.ts";
import { allSheets, paperSet, type PaperContext } from "../src/set/index.ts";
import { extentOf } from "./support/extents.ts";

let context: PaperContext;
const textsOf = (id: string): string[] =>
  paperSet(context, [id]).pages.flatMap((page) => sceneTexts(page.shapes));

beforeAll(async () => {
  const read = await readWholePlan(
    await readFolder(join(import.meta.dirname, "../../../examples/salt-meadow")),
  );
  if (!read.ok) throw new Error(read.problems.map((p) => p.message).join("\n"));
  // One heading is enough for the papers, and quick.
  const plan = { ...read.plan, layout: { ...read.plan.layout, heading_step_deg: 90 } };
  const job = derive({ plan, site: read.site, prices: read.prices }, { tables, solver: await loadSolver() });
  let step = job.next();
  while (!step.done) step = job.next();
  context = { plan, site: read.site, tables, results: withoutHidden(step.value, plan.zones) };
});

test("the demo's rare plant is on no sheet", () => {
  const hidden = context.plan.zones.filter((z) => z.hidden);
  expect(hidden.map((z) => z.name)).toEqual(["Rare plant"]);
  const pages = paperSet(
    context,
    allSheets.map((s) => s.id),
  ).pages;
  expect(pages.map((page) => toSvg(page)).join("\n")).not.toMatch(/rare.?plant/i);
});

test("every part's tag stands on a plan sheet and on the long section", () => {
  const tags = context.results.layout.parts.map((p) => p.id);
  expect(tags.length).toBeGreaterThan(50);
  const plan = new Set(textsOf("site-plan"));
  const missing = tags.filter((tag) => !plan.has(tag));
  // A short part between two others may have no room for its tag.
  expect(missing.length).toBeLessThanOrEqual(tags.length * 0.03);
  const section = new Set(textsOf("long-section"));
  expect(tags.filter((tag) => !section.has(tag)).length).toBeLessThanOrEqual(tags.length * 0.03);
});

test("starts, plots, waters and owners are named on the site plan", () => {
  const texts = textsOf("site-plan").join("\n");
  const { plan } = context;
  for (const { name } of [...plan.starts, ...plan.plots]) expect(texts).toContain(name);
  for (const zone of plan.zones.filter((z) => z.use === "channel" || z.use === "pool"))
    expect(texts).toContain(zone.name);
  for (const owner of ["Tarrowmere Trust", "Quillet Bay Commoners"])
    expect(texts).toContain(`owner ${owner}`);
});

test("every crossing carries the clear width of the results", () => {
  const texts = textsOf("site-plan").join("\n");
  const along = textsOf("long-section");
  const { crossings } = context.results.evaluation;
  expect(crossings.length).toBeGreaterThan(0);
  for (const c of crossings) {
    const clear = showQuantity(c.clear_m, "m", "us");
    expect(texts).toContain(`${c.part} over ${c.name}, ${clear} clear`);
    expect(along).toContain(`${c.name}, ${clear} clear`);
  }
});

test("the least height over ground is one figure on plan, section and summary", () => {
  const height = showQuantity(context.results.evaluation.lowest_deck_clear_m, "m", "us");
  for (const id of ["summary", "site-plan", "cross-section"])
    expect(
      textsOf(id).some((t) => t.includes(height)),
      id,
    ).toBe(true);
});

test("details are joined by match lines that name one another", () => {
  const set = paperSet(context, ["site-plan"]);
  const details = set.pages.filter((p) => p.title.includes("detail"));
  expect(details.length).toBeGreaterThan(1);
  for (const page of details)
    expect(
      sceneTexts(page.shapes).some((t) => /^match line, see detail \d+$/.test(t)),
      page.title,
    ).toBe(true);
  const key = sceneTexts(set.pages[0]!.shapes);
  details.forEach((_, n) => expect(key).toContain(`detail ${n + 1}`));
});

test("no drawing leaves the margins: 1 in at the top, 1/2 in elsewhere", () => {
  for (const page of paperSet(context, ["site-plan", "cross-section", "long-section", "parts"]).pages)
    for (const shape of page.shapes) {
      const box = extentOf(shape);
      if (!box) continue;
      const what = `${page.title}: ${JSON.stringify(shape).slice(0, 120)}`;
      expect(box.x, what).toBeGreaterThan(12.1);
      expect(box.y, what).toBeGreaterThan(24.8);
      expect(box.x + box.width, what).toBeLessThan(page.width - 12.1);
      expect(box.y + box.height, what).toBeLessThan(page.height - 12.1);
    }
});

test("the lengths of a module's pieces are those that are sawn", () => {
  const texts = new Set(textsOf("parts"));
  const { take_off } = context.results;
  const stringers = take_off.timber.filter((row) => row.uses.some((u) => u.use === "stringer"));
  expect(stringers.length).toBeGreaterThan(0);
  for (const row of stringers) expect([...texts]).toContain(showQuantity(row.length_mm / 1000, "m", "us"));
});

test("the summary stays one page, also when six more warnings stand on it", () => {
  expect(paperSet(context, ["summary"]).pages).toHaveLength(1);
  const { results } = context;
  const more = Array.from(
    { length: 6 },
    (_, i) => `Warning ${i + 1}: a price of the list is much older than the others.`,
  );
  const full: PaperContext = {
    ...context,
    results: { ...results, budget: { ...results.budget, warnings: [...results.budget.warnings, ...more] } },
  };
  const pages = paperSet(full, ["summary"]).pages;
  expect(pages).toHaveLength(1);
  expect(pages.flatMap((page) => sceneTexts(page.shapes)).join(" ")).toContain("Warning 6");
});
