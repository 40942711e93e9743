import { DOMParser } from "@xmldom/xmldom";
import { expect, test } from "vitest";
import { toSvg } from "../src/scene-svg/index.ts";
import { allSheets, paperPdf, paperSet, type PaperContext } from "../src/set/index.ts";
import { extentOf } from "./support/extents.ts";
import { fonts } from "./support/fonts.ts";
import { contextOf } from "./support/marsh.ts";

const every = allSheets.map((s) => s.id);
const hostile = `<script>alert("x")</script>&amp;\u0000\u0008]]> 水 ${"very ".repeat(80)}`;
const base = contextOf("us", "letter");
const context: PaperContext = {
  ...base,
  plan: {
    ...base.plan,
    name: hostile,
    site_name: hostile,
    zones: base.plan.zones.map((z) => ({ ...z, name: hostile, ...(z.owner ? { owner: hostile } : {}) })),
    plots: base.plan.plots.map((p) => ({ ...p, name: hostile })),
    levels: base.plan.levels.map((l) => ({ ...l, name: hostile.slice(0, 60) })),
    papers: { ...base.plan.papers, applicant: hostile, waterbody: hostile, adjoining: [hostile] },
  },
};
const pages = paperSet(context, every).pages;

test("names are words in the picture, never markup, and every sheet is well-formed XML", () => {
  for (const page of pages) {
    const svg = toSvg(page);
    expect(svg).not.toContain("<script");
    const faults: string[] = [];
    const document = new DOMParser({
      onError: (level, message) => faults.push(`${level}: ${message}`),
    }).parseFromString(svg, "image/svg+xml");
    expect(faults).toEqual([]);
    expect(document.documentElement!.tagName).toBe("svg");
    expect(document.getElementsByTagName("script").length).toBe(0);
  }
});

test("a picture reaches for nothing outside itself", () => {
  for (const page of pages) {
    const targets = [...toSvg(page).matchAll(/(?:href|src|url\()\s*=?\s*["']?([^"')\s>]+)/g)].map(
      (m) => m[1]!,
    );
    for (const target of targets) expect(target.startsWith("#"), target).toBe(true);
  }
});

test("the PDF takes them too", async () => {
  const pdf = await paperPdf({ pages, sheets: [] }, context, fonts);
  expect(Buffer.from(pdf.subarray(0, 5)).toString()).toBe("%PDF-");
});

test("ordinary words never stand outside the paper on any sheet", () => {
  for (const page of paperSet(base, every).pages)
    for (const shape of page.shapes) {
      const box = extentOf(shape);
      if (!box || shape.kind !== "text") continue;
      expect(box.x, `${page.id}: ${shape.text}`).toBeGreaterThan(12);
      expect(box.x + box.width, `${page.id}: ${shape.text}`).toBeLessThan(page.width - 12);
      expect(box.y + box.height, `${page.id}: ${shape.text}`).toBeLessThan(page.height - 12);
    }
});
