import { showQuantity } from "@causey/engine/units";
import { beforeAll, describe, expect, test } from "vitest";
import { levelText } from "../src/drawings/show.ts";
import { sceneTexts, type TextShape } from "../src/scene/index.ts";
import { toSvg } from "../src/scene-svg/index.ts";
import { paperPdf, paperSet, type PaperSet } from "../src/set/index.ts";
import { extentOf } from "./support/extents.ts";
import { fonts } from "./support/fonts.ts";
import { contextOf, results } from "./support/marsh.ts";
import { hasPoppler, pdfPages, pdfPicture } from "./support/poppler.ts";

const DRAWINGS = ["site-plan", "cross-section", "long-section", "parts"] as const;
const isPopplerHere = hasPoppler();

/** Every item of the checklists: US Army Corps district drawing checklist, Maryland and shoreline pier guides. */
const onSheet = (units: "us" | "metric"): Readonly<Record<string, readonly string[]>> => {
  const level = (z: number): string => levelText(z, { units });
  return {
    "title block: file number": ["SF-77"],
    "title block: applicant": ["Sedge Trust"],
    "title block: waterbody": ["Sedge Water"],
    "title block: activity": ["Fen plots"],
    "title block: sheet x of n": ["sheet 1 of"],
    "title block: date": ["2027-02-15"],
    "title block: prepared by": ["The warden"],
    "plan view with scale": ["Site plan", units === "us" ? "1 in = " : "1 : "],
    "cross-section": ["Cross-section at joint"],
    "elevation along the line": ["Long section"],
    "vicinity map": ["Vicinity and key map"],
    "north arrow": ["grid north"],
    legend: ["Legend"],
    "every regulated resource under its own symbol": ["habitat: Fen", "channel"],
    "limit of disturbance": ["limit of work"],
    "parcels, owners and neighbours": ["Glebe", "Parish of Sedge", "Widow Reed, Dyke Road"],
    contours: ["contours,"],
    "water levels with values": [
      `Mean low water ${level(0.2)}`,
      `Mean high water ${level(1.02)}`,
      `Highest predicted tide ${level(1.31)}`,
    ],
    datum: ["Gate bench mark"],
    "coordinate system": ["Fen grid"],
    "existing ground and structure heights": ["Top of deck", "Underside of module", "Ground "],
    "depth at the levels": ["Water at this place"],
    caution: ["does not replace a licensed engineer"],
    "print check": ["100 mm: measure it"],
  };
};

/** Longest run of dark pixels. */
function longestRun(line: Uint8Array): number {
  let [longest, run] = [0, 0];
  for (const grey of line) {
    run = grey < 128 ? run + 1 : 0;
    longest = Math.max(longest, run);
  }
  return longest;
}

describe.each([
  ["metric", "a4", 595.28, 841.89],
  ["us", "letter", 612, 792],
] as const)("drawings in %s on %s", (units, paper, short_pt, long_pt) => {
  const context = contextOf(units, paper);
  let set: PaperSet;
  let pdf: Uint8Array;
  beforeAll(async () => {
    set = paperSet(context, DRAWINGS);
    pdf = await paperPdf(set, context, fonts);
  });

  test.each(Object.entries(onSheet(units)))("%s stands in the drawings", (_, items) => {
    const texts = set.pages.flatMap((page) => sceneTexts(page.shapes)).join("\n");
    for (const item of items) expect(texts).toContain(item);
  });

  test.skipIf(!isPopplerHere)("the same items can be read out of the PDF", () => {
    const flat = pdfPages(pdf).join("\n").replaceAll(/\s+/g, " ");
    const missing = Object.values(onSheet(units))
      .flat()
      .filter((item) => !flat.includes(item.trim()));
    expect(missing).toEqual([]);
  });

  test("every page carries the whole title block, numbered through", () => {
    set.pages.forEach((page, i) => {
      const texts = sceneTexts(page.shapes);
      for (const item of [
        "SF-77",
        "Sedge Trust",
        "Sedge Water",
        "Fen plots",
        "2027-02-15",
        "Gate bench mark",
      ])
        expect(texts).toContain(item);
      expect(texts).toContain(`sheet ${i + 1} of ${set.pages.length}`);
    });
  });

  test("pages have the size of the paper in the PDF", () => {
    const boxes = [
      ...Buffer.from(pdf)
        .toString("latin1")
        .matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g),
    ];
    expect(boxes.length).toBe(set.pages.length);
    for (const [, w, h] of boxes) {
      const sides = [Number(w), Number(h)].sort((a, b) => a - b);
      expect(sides[0]).toBeCloseTo(short_pt, 1);
      expect(sides[1]).toBeCloseTo(long_pt, 1);
    }
  });

  test("nothing stands in the margins: 1 in at the top, 1/2 in elsewhere", () => {
    const LINE = 0.6;
    for (const page of set.pages)
      for (const shape of page.shapes) {
        const box = extentOf(shape);
        if (!box) continue;
        const what = JSON.stringify(shape).slice(0, 160);
        expect(box.x, what).toBeGreaterThan(12.7 - LINE);
        expect(box.y, what).toBeGreaterThan(25.4 - LINE);
        expect(box.x + box.width, what).toBeLessThan(page.width - 12.7 + LINE);
        expect(box.y + box.height, what).toBeLessThan(page.height - 12.7 + LINE);
      }
  });

  test("figures on the sheets are those of the results", () => {
    const texts = set.pages
      .flatMap((page) => sceneTexts(page.shapes))
      .join(" ")
      .replaceAll(/\s+/g, " ");
    const { evaluation: e } = results;
    for (const figure of [
      showQuantity(e.length_m, "m", units),
      showQuantity(e.shaded_m2, "m2", units),
      showQuantity(e.contact_m2, "m2", units),
      showQuantity(e.lowest_deck_clear_m, "m", units),
      `A-1 over Ditch, ${showQuantity(2, "m", units)} clear`,
    ])
      expect(texts).toContain(figure);
  });

  test.skipIf(!isPopplerHere)("the print check bar measures 100 mm on the page", () => {
    const dpi = 254;
    const { width, grey } = pdfPicture(pdf, 1, dpi);
    const label = set.pages[0]!.shapes.find((s) => s.kind === "text" && s.text.startsWith("100 mm: "));
    const row = Math.round((label as TextShape).at[1] * 10);
    const runs = [row - 1, row, row + 1].map((y) => longestRun(grey.subarray(y * width, (y + 1) * width)));
    expect(Math.abs(Math.max(...runs) / 10 - 100)).toBeLessThan(0.5);
  });

  test("the same plan gives the same bytes", async () => {
    const again = await paperPdf(paperSet(context, DRAWINGS), context, fonts);
    expect(Buffer.from(again).equals(Buffer.from(pdf))).toBe(true);
  });

  test("the PDF names its language, its title and its structure", () => {
    const raw = Buffer.from(pdf).toString("latin1");
    const asked = [
      "/Lang (en)",
      "/MarkInfo",
      "/StructTreeRoot",
      "(D:20270215000000Z)",
      "(Fen plots, Lower fen)",
    ];
    expect(asked.filter((item) => !raw.includes(item))).toEqual([]);
  });

  test("an SVG sheet has the paper's size in millimetres", () => {
    const [page] = set.pages;
    const svg = toSvg(page!);
    expect(svg).toContain(`width="${page!.width}mm" height="${page!.height}mm"`);
    expect(svg).toContain(`viewBox="0 0 ${page!.width} ${page!.height}"`);
  });
});
