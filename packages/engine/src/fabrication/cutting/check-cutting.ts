import { checkFields, inputProblem, type Field, type JsonObject, type Problem } from "../../formula/index.ts";
import type { CuttingProblem } from "../types.ts";

const LONGEST_MM = 100_000;
const WIDEST_KERF_MM = 100;
const MOST_ROWS = 1000;
const MOST_PIECES = 1_000_000;

/** Whole millimetres, or any decimals: what a length may be. */
export type LengthType = "integer" | "number";

const stockFields = (type: LengthType): readonly Field[] => [
  { key: "length_mm", title: "Stock length", type, min: 1, max: LONGEST_MM },
  { key: "price", title: "Price of one stick", type: "number", min: 0, max: 1e9 },
  { key: "available", title: "Sticks to be had", type: "integer", min: 0, optional: true },
];
const pieceFields = (type: LengthType): readonly Field[] => [
  { key: "length_mm", title: "Piece length", type, min: 1, max: LONGEST_MM },
  { key: "count", title: "Number of pieces", type: "integer", min: 1, max: MOST_PIECES },
];
const kerfField = (type: LengthType): Field => ({
  key: "kerf_mm",
  title: "Width of the saw cut",
  type,
  min: 0,
  max: WIDEST_KERF_MM,
});

/**
 * Everything wrong with a cutting problem, at once: lengths that are not whole millimetres (1 to 100,000),
 * counts below 1, prices below 0, no stock at all, a piece longer than every stick to be had, too many rows
 * (1,000 of each) or pieces (1,000,000). An empty list means that the problem can be planned.
 */
export const checkCutting = (problem: CuttingProblem): readonly Problem[] => checkLengths(problem, "integer");

/** The same for a problem whose lengths may have decimals. */
export function checkLengths(problem: CuttingProblem, type: LengthType): readonly Problem[] {
  const { kerf_mm, stock, pieces } = problem;
  const faults = [
    ...checkFields([kerfField(type)], { kerf_mm }),
    ...checkRows("stock", stock, stockFields(type)),
    ...checkRows("pieces", pieces, pieceFields(type)),
  ];
  return faults.length > 0 ? faults : checkTogether(problem);
}

function checkRows(name: string, rows: readonly unknown[], fields: readonly Field[]): Problem[] {
  if (rows.length > MOST_ROWS)
    return [
      inputProblem(name, `${rows.length} rows`, `more than ${MOST_ROWS} rows`, "Plan in several parts."),
    ];
  return rows.flatMap((row, i) => {
    const place = `${name}[${i}]`;
    if (typeof row !== "object" || row === null || Array.isArray(row))
      return [inputProblem(place, row, "must be an object", `Give ${fields.map((f) => f.key).join(", ")}.`)];
    return checkFields(fields, row as JsonObject).map((p) => ({ ...p, place: `${place}.${p.place}` }));
  });
}

function checkTogether({ stock, pieces }: CuttingProblem): Problem[] {
  const total = pieces.reduce((sum, p) => sum + p.count, 0);
  if (total > MOST_PIECES)
    return [inputProblem("pieces", total, `more than ${MOST_PIECES} pieces`, "Plan in several parts.")];
  if (pieces.length === 0) return [];
  const longest = Math.max(0, ...stock.filter((s) => s.available !== 0).map((s) => s.length_mm));
  if (longest === 0)
    return [
      inputProblem(
        "stock",
        stock,
        "there is no stock to cut from",
        "Give at least one stock length with a price.",
      ),
    ];
  return pieces.flatMap((piece, i) =>
    piece.length_mm > longest
      ? [
          inputProblem(
            `pieces[${i}].length_mm`,
            piece.length_mm,
            `the piece is longer than the longest stock, ${longest} mm`,
            "Add a longer stock length, or make the piece of two.",
          ),
        ]
      : [],
  );
}
