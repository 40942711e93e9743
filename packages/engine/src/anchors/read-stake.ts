import type { Field, JsonObject, Problem } from "../formula/index.ts";
import { choice, metresOf, number, optional, refuse } from "../formula/fields.ts";
import { metres } from "../units/index.ts";
import type { StakeSection } from "./section.ts";
import { leastEmbedment } from "./stakes-needed.ts";

/** Section of a stake: round by its diameter, or a rectangle. */
export const sectionFields: readonly Field[] = [
  choice("shape", "Section of the stake", ["round", "square"]),
  number("size_mm", "Diameter, or the side that faces the load", 5, 1000),
  optional(number("along_mm", "Other side of a rectangle; as the first when left out", 5, 1000)),
];
export const strengthField = number("su_kpa", "Undrained strength of the ground", 0.1, 500);
export const embedmentField = number("embedment_mm", "Length of the stake in the ground", 1, 20_000);

export function sectionFrom(input: JsonObject): StakeSection {
  const size = metres(metresOf(input, "size_mm"));
  if (input["shape"] === "round") return { shape: "round", diameter: size };
  const along = input["along_mm"] === undefined ? size : metres(metresOf(input, "along_mm"));
  return { shape: "rectangle", facing: size, along };
}

/** A side beside the diameter of a round stake. */
export const sectionFaults = (input: JsonObject, place = ""): Problem[] =>
  input["shape"] === "round" && input["along_mm"] !== undefined
    ? [
        refuse(
          `${place}along_mm`,
          input["along_mm"],
          "a round stake has one size",
          'Leave "along_mm" out, or give the shape "square".',
        ),
      ]
    : [];

/** A stake no longer than the top of the ground that is ignored holds nothing. `above_m` of it stays over the ground. */
export function shortFaults(section: StakeSection, length_m: number, place: string, above_m = 0): Problem[] {
  const least = leastEmbedment(section);
  if (length_m - above_m > least) return [];
  const needed = Math.ceil((least + above_m) * 1000 - 1e-6);
  return [
    refuse(
      place,
      length_m * 1000,
      `is no longer than what does not hold: the top ${Math.round(least * 1000)} mm of the ground are ignored`,
      `Give more than ${needed} mm.`,
    ),
  ];
}
