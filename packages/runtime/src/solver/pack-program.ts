import type { LinearProgram } from "@causey/engine/fabrication";
import { DomainError } from "@causey/engine/units";
import type { Highs, ModelData } from "highs";

/** Row-wise sparse form of a program. Throws `DomainError` on a value that is no number or a column out of range. */
export function packProgram(highs: Highs, program: LinearProgram): ModelData {
  program.columns.forEach(checkColumn);
  const matrix = packRows(program);
  const { objectiveSense, variableType } = highs.constants;
  const isWhole = program.columns.some((c) => c.integer);
  return {
    numCols: program.columns.length,
    numRows: program.rows.length,
    sense: program.sense === "min" ? objectiveSense.minimize : objectiveSense.maximize,
    colCost: program.columns.map((c) => c.cost),
    colLower: program.columns.map((c) => c.lower),
    colUpper: program.columns.map((c) => c.upper),
    rowLower: program.rows.map((r) => r.lower),
    rowUpper: program.rows.map((r) => r.upper),
    matrix,
    ...(isWhole
      ? {
          integrality: program.columns.map((c) =>
            c.integer ? variableType.integer : variableType.continuous,
          ),
        }
      : {}),
  };
}

function packRows(program: LinearProgram): ModelData["matrix"] {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  program.rows.forEach((row, r) => {
    if (Number.isNaN(row.lower) || Number.isNaN(row.upper))
      throw new DomainError("row-bound-not-a-number", { r });
    for (const [column, value] of mergeEntries(row.entries)) {
      if (!(column in program.columns) || !Number.isFinite(value))
        throw new DomainError("bad-row-entry", { row: r, column, value: String(value) });
      indices.push(column);
      values.push(value);
    }
    starts.push(indices.length);
  });
  return {
    format: "csr",
    numRows: program.rows.length,
    numCols: program.columns.length,
    starts,
    indices,
    values,
  };
}

/** A column named twice in one row counts with the sum of its values. */
function mergeEntries(entries: readonly (readonly [number, number])[]): Map<number, number> {
  const merged = new Map<number, number>();
  for (const [column, value] of entries) merged.set(column, (merged.get(column) ?? 0) + value);
  return merged;
}

function checkColumn(column: LinearProgram["columns"][number], index: number): void {
  if (!Number.isFinite(column.cost) || Number.isNaN(column.lower) || Number.isNaN(column.upper))
    throw new DomainError("bad-column", {
      index,
      cost: String(column.cost),
      lower: String(column.lower),
      upper: String(column.upper),
    });
}
