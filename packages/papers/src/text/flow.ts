import { stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { Block } from "./blocks.ts";
import { textWidth, wrap } from "./measure.ts";
import { HAND_LINE, LEADING, SIZE, type Piece, type Type } from "./piece.ts";
import { tablePieces } from "./table-pieces.ts";

/** Height that blocks take in one column of this width [mm]. */
export const flowHeight = (blocks: readonly Block[], width: number, size = SIZE): number =>
  blocks
    .flatMap((block) => piecesOf(block, width, { size, line: size * LEADING, scale: size / SIZE }))
    .reduce((sum, piece) => sum + piece.height, 0);

/** Lays blocks into as many boxes as they need, all of one size: one list of shapes for each page. */
export function flow(blocks: readonly Block[], box: Box, size = SIZE): Shape[][] {
  const type = { size, line: size * LEADING, scale: size / SIZE };
  const pieces = blocks.flatMap((block) => piecesOf(block, box.width, type));
  const pages: Shape[][] = [];
  let page: Shape[] = [];
  let y = box.y;
  const bottom = box.y + box.height;
  const turn = (): void => {
    pages.push(page);
    page = [];
    y = box.y;
  };
  pieces.forEach((piece, i) => {
    const next = piece.keepWithNext ? (pieces[i + 1]?.height ?? 0) : 0;
    if ((piece.turns || y + piece.height + next > bottom) && y > box.y) {
      turn();
      if (piece.head && piece.head !== piece) {
        page.push(...piece.head.draw(box.x, y));
        y += piece.head.height;
      }
    }
    page.push(...piece.draw(box.x, y));
    y += piece.height;
  });
  if (page.length > 0 || pages.length === 0) pages.push(page);
  return pages;
}

function piecesOf(block: Block, width: number, type: Type): Piece[] {
  switch (block.kind) {
    case "head":
      return [
        {
          height: 8 * type.scale,
          keepWithNext: true,
          draw: (x, y) => [
            words(block.text, [x, y + 5.6 * type.scale], { size: 3.4 * type.scale, weight: "semibold" }),
          ],
        },
      ];
    case "text":
      return textPieces(block, width, type);
    case "rows":
      return block.rows.map(([label, value]) => leaderPiece(label, value, width, type));
    case "table":
      return tablePieces(block, width, type);
    case "space":
      return [{ height: block.height, draw: () => [] }];
    case "page":
      return [{ height: 0, turns: true, draw: () => [] }];
    case "blank":
      return blankPieces(block.label, block.lines, width, type);
  }
}

function textPieces(
  block: Extract<Block, { kind: "text" }>,
  width: number,
  { size, line, scale }: Type,
): Piece[] {
  const inset = block.bullet ? 4 : 0;
  const ink = block.quiet ? "second" : "ink";
  return wrap(block.text, width - inset, size).map((text, i, all) => ({
    height: line + (i === all.length - 1 ? scale : 0),
    draw: (x, y) => [
      ...(block.bullet && i === 0 ? [words("•", [x + 1, y + size], { ink, size })] : []),
      words(text, [x + inset, y + size], { ink, size }),
    ],
  }));
}

/** A label, dots, and its value at the right edge; a long value takes lines of its own. */
function leaderPiece(label: string, value: string, width: number, { size, line, scale }: Type): Piece {
  const room = width * 0.58;
  const values = wrap(value, room, size, "semibold");
  const widest = Math.max(...values.map((text) => textWidth(text, size, "semibold")));
  const labels = wrap(label, width - Math.min(room, widest) - 4, size);
  const count = Math.max(values.length, labels.length);
  return {
    height: count * line + scale,
    draw: (x, y) => {
      const base = (i: number): number => y + size + i * line;
      const from = x + textWidth(labels.at(-1)!, size) + 1.5;
      const at = labels.length - 1;
      const first = values[at] ?? values[0]!;
      const to = x + width - textWidth(first, size, "semibold") - 1.5;
      const dots: Point[] = [
        [from, base(at) - 0.2],
        [to, base(at) - 0.2],
      ];
      return [
        ...labels.map((text, i) => words(text, [x, base(i)], { size })),
        ...(to - from > 3 ? [stroked(dots, { ink: "second", width: 0.2, dash: [0.2, 0.9] })] : []),
        ...values.map((text, i) =>
          words(text, [x + width, base(i)], { weight: "semibold", anchor: "end", size }),
        ),
      ];
    },
  };
}

function blankPieces(label: string, lines: number, width: number, { size }: Type): Piece[] {
  return Array.from({ length: lines }, (_, i): Piece => ({
    height: HAND_LINE,
    draw: (x, y) => {
      const from = i === 0 ? x + textWidth(label, size) + 2 : x;
      const foot = y + HAND_LINE - 0.5;
      return [
        ...(i === 0 ? [words(label, [x, y + HAND_LINE - 1], { size })] : []),
        stroked(
          [
            [from, foot],
            [x + width, foot],
          ],
          { ink: "second", width: 0.2 },
        ),
      ];
    },
  }));
}
