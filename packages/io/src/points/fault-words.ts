import type { CellFault } from "./cell-number.ts";

/** Code, message and mend of a cell that holds no number, as the end of a sentence that begins with the cell. */
export function faultWords(
  fault: CellFault,
  isPoint: boolean,
): readonly [code: string, message: string, mend: string] {
  if (fault === "formula")
    return [
      "points-formula",
      "is a formula or its fault, not a value.",
      "Save the table with values in place of formulas.",
    ];
  if (fault === "other-decimal")
    return [
      "points-decimal",
      `has a decimal ${isPoint ? "comma" : "point"}; the file is read with decimal ${isPoint ? "points" : "commas"}.`,
      `Choose decimal ${isPoint ? "comma" : "point"}, or take out marks between thousands.`,
    ];
  return [
    "points-number",
    "is not a number that can stand here.",
    "Write digits and one decimal sign, without marks between thousands and without a unit.",
  ];
}
