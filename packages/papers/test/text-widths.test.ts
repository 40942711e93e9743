import fc from "fast-check";
import { default as PDFDocument } from "pdfkit";
import { describe, expect, test } from "vitest";
import { regularWidths } from "../src/text/advance-widths.ts";
import { allShapes, type TextShape } from "../src/scene/index.ts";
import { flow, inFont, textWidth, wrap, type Block } from "../src/text/index.ts";
import { extentOf } from "./support/extents.ts";
import { fonts } from "./support/fonts.ts";

const doc = new PDFDocument({ autoFirstPage: false, font: null as unknown as string });
doc.registerFont("regular", fonts.regular as never);
doc.registerFont("semibold", fonts.semibold as never);

const codes = Object.keys(regularWidths).map(Number);
const isLetter = (code: number): boolean => /\p{L}/u.test(String.fromCodePoint(code));
/** Letters of one script with common signs: among letters of another script the face changes some shapes. */
const scripts = [/\p{Script=Latin}/u, /\p{Script=Greek}/u, /\p{Script=Cyrillic}/u].map((script) =>
  codes.map((c) => String.fromCodePoint(c)).filter((s) => !isLetter(s.codePointAt(0)!) || script.test(s)),
);
const line = fc
  .constantFrom(...scripts)
  .chain((signs) => fc.array(fc.constantFrom(...signs), { maxLength: 40 }))
  .map((signs) => signs.join(""));
const prose = fc.array(
  fc.string({ minLength: 1, maxLength: 14 }).map((w) => inFont(w).replaceAll(/\s/g, "x")),
  {
    minLength: 1,
    maxLength: 40,
  },
);

describe("the table of widths", () => {
  test.each(["regular", "semibold"] as const)("agrees with the %s face as the PDF sets it", (weight) => {
    doc.font(weight).fontSize(10);
    const plain = { kern: false, liga: false, clig: false, calt: false } as never;
    fc.assert(
      fc.property(line, (text) => {
        expect(textWidth(text, 10, weight)).toBeCloseTo(doc.widthOfString(text, { features: plain }), 1);
      }),
    );
  });

  test("knows the signs that the drawings use", () => {
    for (const sign of "ÄÖÜäöüßéèñçåøŵẅșłő°²³½×·–’“”…≤≥±µΩαβγφσπЖж") expect(inFont(sign), sign).toBe(sign);
  });

  test("shows a sign that the face lacks as a question mark", () => {
    expect(inFont("a水b")).toBe("a?b");
  });
});

describe("wrapping", () => {
  test("no line is wider than asked and no word is lost", () => {
    fc.assert(
      fc.property(prose, fc.double({ min: 8, max: 90, noNaN: true }), (list, width) => {
        const lines = wrap(list.join(" "), width, 2.6);
        for (const text of lines) expect(textWidth(text, 2.6)).toBeLessThanOrEqual(width + 1e-9);
        expect(lines.join("").replaceAll(" ", "")).toBe(list.join(""));
      }),
    );
  });
});

describe("flow over pages", () => {
  const box = { x: 20, y: 30, width: 120, height: 60 };
  const table = (rows: number): Block => ({
    kind: "table",
    columns: [
      { head: "Item", share: 3 },
      { head: "Count", share: 1, align: "end" },
    ],
    rows: Array.from({ length: rows }, (_, i) => [`piece number ${i}`, String(i)]),
  });
  const textsOf = (page: Parameters<typeof allShapes>[0]): string[] =>
    [...allShapes(page)].filter((s): s is TextShape => s.kind === "text").map((s) => s.text);

  test("a long table repeats its head on every page and loses no row", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 120 }), (rows) => {
        const pages = flow([{ kind: "text", text: "Before the table." }, table(rows)], box).map(textsOf);
        for (const texts of pages) expect(texts.filter((t) => t === "Item")).toHaveLength(1);
        const counted = pages.flat().filter((t) => t.startsWith("piece number"));
        expect(counted).toEqual(Array.from({ length: rows }, (_, i) => `piece number ${i}`));
      }),
      { numRuns: 40 },
    );
  });

  test("nothing leaves the box", () => {
    const blocks: Block[] = [
      { kind: "head", text: "Part one" },
      { kind: "text", text: "long words and short ones ".repeat(60), bullet: true },
      {
        kind: "rows",
        rows: Array.from({ length: 30 }, (_, i) => [`label ${i}`, `value ${i} `.repeat(i % 9)]),
      },
      table(45),
      { kind: "blank", label: "Name", lines: 3 },
    ];
    for (const page of flow(blocks, box))
      for (const shape of page) {
        const extent = extentOf(shape);
        if (!extent) continue;
        const what = JSON.stringify(shape).slice(0, 140);
        expect(extent.x, what).toBeGreaterThanOrEqual(box.x - 0.01);
        expect(extent.x + extent.width, what).toBeLessThanOrEqual(box.x + box.width + 0.01);
        expect(extent.y, what).toBeGreaterThanOrEqual(box.y - 0.01);
        expect(extent.y + extent.height, what).toBeLessThanOrEqual(box.y + box.height + 0.01);
      }
  });

  test("a head never stands alone at the foot of a page", () => {
    for (let lines = 1; lines < 40; lines++) {
      const blocks: Block[] = [
        { kind: "text", text: Array.from({ length: lines }, (_, i) => `line ${i}`).join("\n") },
        { kind: "head", text: "The head" },
        { kind: "text", text: "its first line" },
      ];
      const page = flow(blocks, box)
        .map(textsOf)
        .find((texts) => texts.includes("The head"))!;
      expect(page).toContain("its first line");
    }
  });
});
