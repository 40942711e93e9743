import type { Json } from "@causey/engine/formula";
import type { Crs, ZoneUse } from "@causey/engine/site";
import { planCrsOf } from "@causey/io/crs";
import type { PlaceOptions, VectorLayer } from "@causey/io/layers";
import { zoneUseWords } from "../../map/zone-style.ts";
import { layerTargets, type LayerTarget, type WantedValue } from "./layer-kinds.ts";

/** One value for all features (null = none, or not chosen yet), or the field where each has its own. */
export type GivenBy =
  | { readonly by: "all"; readonly value: Json }
  | {
      readonly by: "field";
      readonly field: string;
      readonly words: Readonly<Record<string, ZoneUse | null>>;
    };

/** Names out of a field, or the layer's name and a number; null = not chosen yet. */
export type NameBy = { readonly field: string } | "numbered" | null;

/** Ids made of the names, those of the file itself, or out of a field. */
export type IdBy = { readonly field: string } | "names" | "file";

/** The user's word for the system of a layer whose file does not say it; null = not chosen yet. */
export type SystemBy = "site" | "lon-lat" | { readonly epsg: number | null } | null;

/** How the user says that a layer is to be read. */
export interface LayerChoice {
  readonly system: SystemBy;
  readonly name: NameBy;
  readonly id: IdBy;
  readonly values: Readonly<Record<string, GivenBy>>;
  /** Features take the place of what has their id in the plan; otherwise such features stand against the import. */
  readonly replace: boolean;
  /** Shapes of another kind in the same layer are left out; otherwise they stand against the import. */
  readonly leave_out: boolean;
}

/** More different words than this are not rules but names. */
const MOST_WORDS = 40;

export const fieldsOf = (layer: VectorLayer): readonly string[] => [
  ...new Set(layer.features.flatMap((f) => Object.keys(f.properties))),
];

/** The different words of a field, as the mapping compares them. */
export function wordsOf(layer: VectorLayer, field: string): readonly string[] {
  const values = layer.features.map((f) => f.properties[field] ?? null).filter((v) => v !== null);
  return [...new Set(values.map((v) => (typeof v === "string" ? v : JSON.stringify(v)).trim()))];
}

/** A value out of a field; words that are rules already stand for themselves. */
export const byField = (layer: VectorLayer, field: string, as: WantedValue["as"]): GivenBy => ({
  by: "field",
  field,
  words:
    as === "use"
      ? Object.fromEntries(
          wordsOf(layer, field).map((w) => [w, Object.hasOwn(zoneUseWords, w) ? (w as ZoneUse) : null]),
        )
      : {},
});

const NAMES = ["name", "title", "label", "bezeichnung", "nom"];

/**
 * What the fields of a layer seem to mean: those that are called as the plan itself calls them. `defaults` stand where
 * the layer has no field for a value, in the value's own unit.
 */
export function guessChoice(
  target: LayerTarget,
  layer: VectorLayer,
  defaults: Readonly<Record<string, number>> = {},
): LayerChoice {
  const fields = fieldsOf(layer);
  const called = (...words: readonly string[]): string | undefined =>
    words.flatMap((word) => fields.filter((f) => f.toLowerCase() === word))[0];
  const [name, id] = [called(...NAMES), called("id")];
  const values = layerTargets[target].values.map(({ key, as }): readonly [string, GivenBy] => {
    const field = called(key);
    if (field !== undefined) return [key, byField(layer, field, as)];
    return [key, { by: "all", value: as === "yes" ? false : (defaults[key] ?? null) }];
  });
  return {
    system: null,
    name: name === undefined ? null : { field: name },
    id: id === undefined ? "names" : { field: id },
    values: Object.fromEntries(values),
    replace: false,
    leave_out: true,
  };
}

/** The values that have a use under the rules that are chosen. */
export function valuesInUse(target: LayerTarget, { values }: LayerChoice): readonly WantedValue[] {
  const use = values["use"];
  const uses = use === undefined ? [] : use.by === "all" ? [use.value] : Object.values(use.words);
  return layerTargets[target].values.filter((v) => !v.uses || v.uses.some((u) => uses.includes(u)));
}

/** What the import assumes about a layer that declares no system; null while that is still to be said. */
export function assumed(
  layer: VectorLayer,
  { system }: LayerChoice,
  crs: Crs,
): NonNullable<PlaceOptions["assume"]> | "declared" | null {
  if (layer.crs !== null) return "declared";
  if (system === "site") return planCrsOf(crs);
  if (system === null || system === "lon-lat") return system;
  return system.epsg === null ? null : { epsg: system.epsg };
}

/** What is still to be chosen before the layer can be read, in words; null when nothing is. */
export function stillMissing(
  target: LayerTarget,
  layer: VectorLayer,
  choice: LayerChoice,
  crs: Crs,
): string | null {
  if (assumed(layer, choice, crs) === null)
    return "The file does not say in which coordinate system the layer is. Say which it is.";
  if (choice.name === null) return "Choose the field of the names.";
  const open = valuesInUse(target, choice).filter(({ key, required }) => {
    const given = choice.values[key]!;
    return required === true && given.by === "all" && (given.value === null || given.value === "");
  });
  if (open.length > 0) return `Still to be given: ${open.map((v) => v.label).join(", ")}.`;
  const use = choice.values["use"];
  if (use?.by !== "field") return null;
  const words = Object.values(use.words);
  if (words.length > MOST_WORDS)
    return `The field "${use.field}" holds ${words.length} different words, so it is not one of rules. Choose another.`;
  return words.includes(null) ? `Say which rule each word of the field "${use.field}" means.` : null;
}
