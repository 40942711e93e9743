import type { Field, JsonObject } from "../formula/index.ts";
import { CODE_FIELD_TITLE, designCode, type DesignCode, type Found } from "../codes/index.ts";
import type { CalcContext } from "../materials/index.ts";
import type { Cart } from "../plan/document.ts";
import type { UnitSystem } from "../units/index.ts";
import type { CheckContext, GradedLumber } from "./input.ts";
import type { WalkDemand } from "./walk-demand.ts";

/** Short forms of the fields that the checks' calculations share. */
export const number = (key: string, title: string, min = 0, max = 1e6): Field => ({
  key,
  title,
  type: "number",
  min,
  max,
});
export const optional = (field: Field): Field => ({ ...field, optional: true });
export const text = (key: string, title: string, choices?: readonly string[]): Field => ({
  key,
  title,
  type: "string",
  ...(choices ? { choices } : {}),
});
export const yes = (key: string, title: string): Field => ({ key, title, type: "boolean" });

export const codeField = text("code", CODE_FIELD_TITLE);
export const unitsField = optional(text("units", "Units of the words in the answer", ["us", "metric"]));
export const lumberFields: readonly Field[] = [
  text("species", "Species group"),
  text("grade", "Grade"),
  yes("incised", "Incised for the preservative"),
];

/** One visit: people in file, and a cart when `cart_kg` is given. */
export const demandFields: readonly Field[] = [
  { key: "people", title: "People walking in file", type: "integer", min: 0, max: 50 },
  number("person_kg", "Mass of one person with the pack", 1, 500),
  number("spacing_mm", "Distance between people", 1, 100_000),
  optional(number("cart_empty_kg", "Mass of the empty cart", 0, 5000)),
  optional(number("cart_load_kg", "Load of the cart", 0, 5000)),
  optional({ key: "cart_axles", title: "Axles of the cart", type: "integer", min: 1, max: 2 }),
  optional(number("cart_axle_distance_mm", "Axles apart along the walkway", 0, 10_000)),
  optional(number("cart_track_mm", "Wheels apart, centre to centre", 0, 5000)),
  optional(number("cart_wheel_width_mm", "Width of a wheel", 1, 1000)),
  optional(number("cart_wheel_contact_mm", "Contact length of a wheel", 1, 1000)),
];

/** The answer of a check as fields; the keys of demand and capacity carry their unit. */
export const answerFields = (suffix: string): readonly Field[] => [
  text("status", "pass, fail, not-applicable or cannot-check"),
  number("utilisation", "Demand over capacity"),
  number(`demand${suffix}`, "Demand"),
  number(`capacity${suffix}`, "Capacity"),
  text("governs", "Load case that governs"),
  text("carries", "What it does carry"),
  { key: "change", title: "Smallest change that would pass, null when it passes", type: "any" },
  yes("from_memory", "Whether any value of the working is from memory"),
  text("caution", "What the check leaves out"),
];

const value = (input: JsonObject, key: string, otherwise: number): number =>
  (input[key] as number | undefined) ?? otherwise;

function cartFrom(input: JsonObject): Cart | null {
  if (input["cart_empty_kg"] === undefined && input["cart_load_kg"] === undefined) return null;
  return {
    name: "cart",
    empty_kg: value(input, "cart_empty_kg", 0),
    load_kg: value(input, "cart_load_kg", 0),
    wet_kg: 0,
    width_mm: null,
    length_mm: null,
    axles: value(input, "cart_axles", 1) === 2 ? 2 : 1,
    axle_distance_mm: value(input, "cart_axle_distance_mm", 0),
    track_mm: value(input, "cart_track_mm", 0),
    wheel_width_mm: value(input, "cart_wheel_width_mm", 50),
    wheel_contact_mm: value(input, "cart_wheel_contact_mm", 50),
  };
}

/** Reads the demand fields into one visit. */
export const demandFrom = (input: JsonObject): WalkDemand => ({
  name: "visit",
  people: input["people"] as number,
  person_kg: input["person_kg"] as number,
  spacing_mm: input["spacing_mm"] as number,
  cart: cartFrom(input),
});

export const lumberFrom = (input: JsonObject): GradedLumber => ({
  species: input["species"] as string,
  grade: input["grade"] as string,
  incised: input["incised"] as boolean,
});

/** Finds the code and makes the context of a check, or the problems. */
export function contextFrom(input: JsonObject, { tables }: CalcContext): Found<CheckContext> {
  const code: Found<DesignCode> = designCode(input["code"] as string);
  if (!code.ok) return code;
  const units = (input["units"] as UnitSystem | undefined) ?? "metric";
  return { ok: true, value: { tables, code: code.value, units } };
}
