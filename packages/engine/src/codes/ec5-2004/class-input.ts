import { inputProblem, type Field, type JsonObject, type Problem } from "../../formula/index.ts";
import type { StrengthClass, Tables } from "../../materials/index.ts";
import { millimetres } from "../../units/index.ts";
import type { Rectangle } from "./stability.ts";

/** Inputs that name a class of EN 338 and a free section, shared by this edition's methods. */
export const classFields: readonly Field[] = [
  { key: "class", title: "Strength class of EN 338, for example c24", type: "string" },
  { key: "b_mm", title: "Breadth of the section", type: "number", min: 1, max: 2000 },
  { key: "h_mm", title: "Depth of the section", type: "number", min: 1, max: 2000 },
];

export const rectangleFrom = (input: JsonObject): Rectangle => ({
  b: millimetres(input["b_mm"] as number),
  h: millimetres(input["h_mm"] as number),
});

/** The class by its id, large or small letters alike; an unknown one is a problem that lists the known ones. */
export function readClass(input: JsonObject, tables: Tables): StrengthClass | Problem {
  const id = (input["class"] as string).toLowerCase();
  const found = tables.strength_classes.find((c) => c.grade === id);
  if (found) return found;
  const known = tables.strength_classes.map((c) => c.grade).join(", ");
  return inputProblem("class", input["class"], `"${id}" is not in the tables`, `Use one of: ${known}.`);
}

export const isProblem = (v: StrengthClass | Problem): v is Problem => "mend" in v;
