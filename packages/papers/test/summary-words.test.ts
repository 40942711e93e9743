import { expect, test } from "vitest";
import { sceneTexts } from "../src/scene/index.ts";
import { paperSet, type PaperContext } from "../src/set/index.ts";
import { contextOf } from "./support/marsh.ts";

const context = contextOf("us", "a4");
const { results, plan } = context;

const pagesOf = (change: Partial<PaperContext["results"]>, sheet: "a4" | "letter" = "a4") =>
  paperSet(
    {
      ...context,
      plan: { ...plan, papers: { ...plan.papers, sheet } },
      results: { ...results, ...change },
    },
    ["summary"],
  ).pages;
const wordsOf = (change: Partial<PaperContext["results"]>): string =>
  pagesOf(change)
    .flatMap((page) => sceneTexts(page.shapes))
    .join(" ");

test.each(["a4", "letter"] as const)(
  "one page on %s with the picture of the line, its key and north",
  (sheet) => {
    const pages = pagesOf({}, sheet);
    expect(pages).toHaveLength(1);
    const texts = sceneTexts(pages[0]!.shapes);
    for (const words of ["The line", "line of the walkway", "grid north"]) expect(texts).toContain(words);
  },
);

test("a sum stands once: years and volunteers that change nothing get no row of their own", () => {
  const { cost, budget } = results;
  const alone = { ...budget, mid: cost.total, low: cost.total - 10, high: cost.total + 10, cash: cost.total };
  const same = wordsOf({ budget: alone });
  expect(same).toContain("The whole project");
  expect(same).not.toContain("Laid and taken out, the lines above together");
  expect(same).not.toContain("volunteers' hours");
  const more = wordsOf({ budget: { ...alone, mid: cost.total + 500, high: cost.total + 900, cash: 100 } });
  expect(more).toContain("Laid and taken out, the lines above together");
  expect(more).toContain("500.00");
  expect(more).toMatch(/of it to be paid in money/);
});

test("open checks name what is missing most often, and how many lack it", () => {
  const open = results.checks.find((c) => c.status === "cannot-check")!;
  const lack = (...missing: string[]) => ({ ...open, status: "cannot-check", missing }) as typeof open;
  const words = wordsOf({
    checks: [lack("ground strength"), lack("a cart"), lack("ground strength", "a cart width")],
  });
  expect(words).toContain("3 cannot be checked (for want of ground strength, 2 of them)");
});

test("shaded ground in no habitat is named as plain ground", () => {
  const evaluation = {
    ...results.evaluation,
    shaded_m2: 115,
    shaded_by_zone: [{ zone: "z2", name: "2", area_m2: 68.4 }],
  };
  const words = wordsOf({ evaluation });
  expect(words).toContain("of it habitat 2");
  expect(words).toContain("of it plain ground");
});
