import { regularWidths, semiboldWidths } from "./advance-widths.ts";

export type Weight = "regular" | "semibold";

/** Sign that stands for one the font lacks. */
const STAND_IN = "?".codePointAt(0)!;
const tables = { regular: regularWidths, semibold: semiboldWidths } as const;

/** Width of a line of text [mm] at a type size [mm], without kerning: the same on screen and paper. */
export function textWidth(text: string, size: number, weight: Weight = "regular"): number {
  const table = tables[weight];
  let thousandths = 0;
  for (const sign of text) thousandths += table[sign.codePointAt(0)!] ?? table[STAND_IN]!;
  return (thousandths * size) / 1000;
}

/** The text with every sign that the font lacks shown as a question mark, so that a gap is seen. */
export const inFont = (text: string): string =>
  Array.from(text, (sign) => (regularWidths[sign.codePointAt(0)!] === undefined ? "?" : sign)).join("");

/** Breaks text into lines no wider than `width` [mm]; a word that is wider by itself is broken inside. */
export function wrap(text: string, width: number, size: number, weight: Weight = "regular"): string[] {
  return text.split("\n").flatMap((paragraph) => wrapParagraph(paragraph, width, size, weight));
}

function wrapParagraph(paragraph: string, width: number, size: number, weight: Weight): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of paragraph.split(/\s+/).filter((w) => w !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textWidth(longer, size, weight) <= width) line = longer;
    else {
      if (line !== "") lines.push(line);
      const pieces = broken(word, width, size, weight);
      lines.push(...pieces.slice(0, -1));
      line = pieces.at(-1)!;
    }
  }
  return [...lines, line];
}

function broken(word: string, width: number, size: number, weight: Weight): string[] {
  const pieces: string[] = [];
  let piece = "";
  for (const sign of word) {
    if (piece !== "" && textWidth(piece + sign, size, weight) > width) {
      pieces.push(piece);
      piece = "";
    }
    piece += sign;
  }
  return [...pieces, piece];
}
