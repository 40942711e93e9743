import { stroked, words, type Box, type Point, type Shape, type Stroke } from "../scene/index.ts";
import { textWidth, wrap, type Weight } from "./measure.ts";

/** A block of text or a table; flows from page to page. */
export type Block =
  | { readonly kind: "head"; readonly text: string }
  | { readonly kind: "text"; readonly text: string; readonly quiet?: boolean; readonly bullet?: boolean }
  | { readonly kind: "rows"; readonly rows: readonly (readonly [label: string, value: string])[] }
  | Table
  | { readonly kind: "space"; readonly height: number }
  /** Lines to write on. */
  | { readonly kind: "blank"; readonly label: string; readonly lines: number };

export interface Table {
  readonly kind: "table";
  readonly columns: readonly {
    readonly head: string;
    /** Share of the width. */
    readonly share: number;
    readonly align?: "start" | "end";
  }[];
  readonly rows: readonly (readonly string[])[];
  /** Rows, by number, that are sums: in semibold over a rule. */
  readonly sums?: readonly number[];
}

/** Height of ordinary type on a sheet [mm]. */
export const SIZE = 2.6;
const LEADING = 1.34;

/** Type of one flow: its height, and the height of a line [mm]. */
interface Type {
  readonly size: number;
  readonly line: number;
  /** Over one at ordinary height: heads and gaps shrink and grow with the type. */
  readonly scale: number;
}
const fine: Stroke = { ink: "rule", width: 0.15 };
const firm: Stroke = { ink: "ink", width: 0.25 };

interface Piece {
  readonly height: number;
  readonly draw: (x: number, y: number) => Shape[];
  /** Must not stand alone at the foot of a page. */
  readonly keepWithNext?: boolean;
  /** Drawn again at the head of the next page. */
  readonly head?: Piece;
}

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
    if (y + piece.height + next > bottom && y > box.y) {
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
  const gap = 8;
  return Array.from({ length: lines }, (_, i): Piece => ({
    height: gap,
    draw: (x, y) => {
      const from = i === 0 ? x + textWidth(label, size) + 2 : x;
      return [
        ...(i === 0 ? [words(label, [x, y + gap - 1], { size })] : []),
        stroked(
          [
            [from, y + gap - 0.5],
            [x + width, y + gap - 0.5],
          ],
          { ink: "second", width: 0.2 },
        ),
      ];
    },
  }));
}

function tablePieces(table: Table, width: number, type: Type): Piece[] {
  const sum = table.columns.reduce((s, c) => s + c.share, 0);
  const widths = table.columns.map((c) => (c.share / sum) * width);
  const head = rowPiece(
    table,
    widths,
    table.columns.map((c) => c.head),
    "semibold",
    firm,
    type,
  );
  const rows = table.rows.map((cells, n): Piece => {
    const isSum = table.sums?.includes(n) ?? false;
    return {
      ...rowPiece(table, widths, cells, isSum ? "semibold" : "regular", isSum ? firm : fine, type),
      head,
    };
  });
  return [{ ...head, keepWithNext: true }, ...rows, { height: 2, draw: () => [] }];
}

const PAD = 1.2;
/** Between a column that ends at the right and one that begins at the left: they would read as one [mm]. */
const WIDE_PAD = 3;

const padAfter = ({ columns }: Table, i: number): number =>
  columns[i]!.align === "end" && columns[i + 1] !== undefined && columns[i + 1]!.align !== "end"
    ? WIDE_PAD
    : PAD;

function rowPiece(
  table: Table,
  widths: readonly number[],
  cells: readonly string[],
  weight: Weight,
  rule: Stroke,
  { size, line }: Type,
): Piece {
  const wrapped = widths.map((w, i) => wrap(cells[i] ?? "", w - padAfter(table, i), size, weight));
  const lines = Math.max(...wrapped.map((w) => w.length));
  const height = lines * line + 1.1;
  return {
    height,
    draw: (x, y) => {
      const total = widths.reduce((a, b) => a + b, 0);
      let left = x;
      const shapes: Shape[] = wrapped.flatMap((column, i) => {
        const isEnd = table.columns[i]!.align === "end";
        const at = isEnd ? left + widths[i]! - padAfter(table, i) : left;
        left += widths[i]!;
        return column.map((text, k) =>
          words(text, [at, y + size + k * line], { weight, anchor: isEnd ? "end" : "start", size }),
        );
      });
      return [
        ...shapes,
        stroked(
          [
            [x, y + height - 0.3],
            [x + total, y + height - 0.3],
          ],
          rule,
        ),
      ];
    },
  };
}
