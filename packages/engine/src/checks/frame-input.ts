import type { JsonObject } from "../formula/index.ts";
import { M_PER_IN, showQuantity } from "../units/index.ts";
import type { Frame } from "./frame.ts";
import type { CheckContext } from "./input.ts";
import { lumberFrom, number, text, yes } from "./method-fields.ts";

/** Fields that describe the stringers of one part. */
export const frameFields = [
  text("size", "Size of the stringers"),
  { key: "stringers", title: "Number of stringers", type: "integer", min: 2, max: 12 },
  number("overall_mm", "Outside to outside of the stringers", 50, 20_000),
  number("clear_width_mm", "Clear width of the deck", 50, 20_000),
  number("span_mm", "Body length of the module", 100, 100_000),
  number("cross_piece_spacing_mm", "Longest distance between cross pieces", 1, 100_000),
  yes("boards", "Deck of boards across the stringers"),
  number("dead_kg_per_m", "Soaked mass of the part along its length", 0, 1000),
] as const;

/** Stringers spread evenly, the outer two flush with the overall width. */
export function frameFrom(input: JsonObject, { tables, units }: CheckContext): Frame {
  const metre = (key: string): number => (input[key] as number) / 1000;
  const size = input["size"] as string;
  const thickness = (tables.sizes.find((s) => s.id === size)?.thickness_in ?? 0) * M_PER_IN;
  const count = input["stringers"] as number;
  const width = metre("overall_mm") - thickness;
  return {
    name: `${showQuantity(metre("span_mm"), "m", units)} module`,
    span_m: metre("span_mm"),
    positions_m: Array.from({ length: count }, (_, i) => -width / 2 + (i * width) / (count - 1)),
    size,
    lumber: lumberFrom(input),
    clear_width_m: metre("clear_width_mm"),
    brace_m: metre("cross_piece_spacing_mm"),
    has_boards: input["boards"] as boolean,
    dead_kg_m: input["dead_kg_per_m"] as number,
  };
}
