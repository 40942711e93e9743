import { expect, test } from "vitest";
import { withoutHidden } from "../../io/src/results/index.ts";
import { toSvg } from "../src/scene-svg/index.ts";
import { allSheets, paperPdf, paperSet, type PaperContext } from "../src/set/index.ts";
import { fonts } from "./support/fonts.ts";
import { contextOf, plan, results, secret } from "./support/marsh.ts";
import { hasPoppler, pdfPages } from "./support/poppler.ts";

const DRAWINGS = ["site-plan", "cross-section", "long-section", "parts"];
const context = contextOf("metric", "a4");
const cleared: PaperContext = { ...context, results: withoutHidden(results, plan.zones) };
const every = allSheets.map((s) => s.id);
const traces = /orchid/i;

const svgOf = (from: PaperContext, which: readonly string[]): string =>
  paperSet(from, which)
    .pages.map((page) => toSvg(page))
    .join("\n");

test("no drawing names a hidden zone, even when the results still do", () => {
  expect(JSON.stringify(results)).toMatch(traces);
  expect(svgOf(context, DRAWINGS)).not.toMatch(traces);
});

test("no sheet of the whole set names a hidden zone", () => {
  expect(svgOf(cleared, every)).not.toMatch(traces);
});

test.skipIf(!hasPoppler())("no page of the PDF names a hidden zone", async () => {
  const pages = pdfPages(await paperPdf(paperSet(cleared, every), cleared, fonts));
  expect(pages.length).toBeGreaterThan(10);
  expect(pages.join("\n")).not.toMatch(traces);
});

test("a drawing is the same with and without the hidden zone: its outline is nowhere", () => {
  const without = plan.zones.filter((z) => z.id !== secret.id);
  const bare: PaperContext = {
    ...context,
    plan: { ...context.plan, zones: without },
    site: { ...context.site, zones: without },
  };
  expect(svgOf(context, DRAWINGS)).toBe(svgOf(bare, DRAWINGS));
});

test("the same zone in the open is drawn and named", () => {
  const open = plan.zones.map((z) => (z.id === secret.id ? { ...z, hidden: false } : z));
  const shown: PaperContext = { ...context, plan: { ...context.plan, zones: open } };
  expect(svgOf(shown, ["site-plan"])).toMatch(traces);
});
