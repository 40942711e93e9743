import { stroked, words, type Shape, type Stroke } from "../scene/index.ts";
import type { Table } from "./blocks.ts";
import { wrap, type Weight } from "./measure.ts";
import { HAND_LINE, fine, firm, type Piece, type Type } from "./piece.ts";

/** Head and rows of a table; the head is drawn again where the table goes on. */
export function tablePieces(table: Table, width: number, type: Type): Piece[] {
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
      ...(table.toFill
        ? openRow(widths, cells, type)
        : rowPiece(table, widths, cells, isSum ? "semibold" : "regular", isSum ? firm : fine, type)),
      head,
    };
  });
  return [{ ...head, keepWithNext: true }, ...rows, { height: 2, draw: () => [] }];
}

/** A row to write in: its words stand at its foot, and a line parts each column from the next. */
function openRow(widths: readonly number[], cells: readonly string[], { size }: Type): Piece {
  return {
    height: HAND_LINE,
    draw: (x, y) => {
      const foot = y + HAND_LINE - 0.3;
      const lefts = widths.map((_, i) => x + widths.slice(0, i).reduce((sum, w) => sum + w, 0));
      const total = widths.reduce((sum, w) => sum + w, 0);
      return [
        ...cells.map((text, i) => words(text, [lefts[i]!, foot - 1.4], { size })),
        ...lefts.slice(1).map((left) =>
          stroked(
            [
              [left - PAD, y - 0.3],
              [left - PAD, foot],
            ],
            fine,
          ),
        ),
        stroked(
          [
            [x, foot],
            [x + total, foot],
          ],
          fine,
        ),
      ];
    },
  };
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
