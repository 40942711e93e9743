import type { Json, JsonObject } from "@causey/engine/formula";
import { readMonthDay, type Plot, type WaterKind, type ZoneUse } from "@causey/engine/site";
import type { VectorFeature } from "../layer-form/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import type { PlacedLayer } from "./place-layer.ts";
import { wordId } from "./word-id.ts";

/** One value for all features, or the field that holds each feature's own; `words` translates what stands there. */
export type Given<T extends Json> =
  T | { readonly field: string; readonly words?: Readonly<Record<string, T>> };

interface Named {
  /** Field of the id; null takes the id that the file itself gives each feature. What is no word becomes one. */
  readonly idField: string | null;
  readonly nameField: string;
}

/** How the features of a layer become starts or plots. */
export interface PlaceMapping extends Named {
  readonly kind: Given<"start" | "plot">;
  /** Needed for plots. */
  readonly keep_off_m?: Given<number>;
  readonly reach_m?: Given<number>;
  readonly arrive_from?: Given<NonNullable<Plot["arrive_from"]>>;
}

/** How the features of a layer become zones. */
export interface ZoneMapping extends Named {
  readonly use: Given<ZoneUse>;
  readonly source: Given<string>;
  readonly hidden: Given<boolean>;
  readonly sensitivity?: Given<number>;
  /** Month and day, "04-15" or "15 Apr"; a whole date gives its month and day. */
  readonly from?: Given<string>;
  readonly to?: Given<string>;
  readonly buffer_m?: Given<number>;
  readonly contact?: Given<string>;
  readonly owner?: Given<string>;
  /** What a channel or pool is in the field. */
  readonly water?: Given<WaterKind>;
}

const NUMBERS = new Set(["keep_off_m", "reach_m", "sensitivity", "buffer_m"]);
const DAYS = new Set(["from", "to"]);
const TEXTS = new Set(["id", "name", "source", "contact", "owner"]);

/** The properties of each feature as the plan folder's own files would hold them, in the order of the layer. */
export function mappedProperties(
  found: Findings,
  layer: PlacedLayer,
  mapping: PlaceMapping | ZoneMapping,
): readonly JsonObject[] {
  const { idField, nameField, ...rest } = mapping;
  const sources: readonly (readonly [string, Given<Json>])[] = [
    ["name", { field: nameField }],
    ...Object.entries(rest as Readonly<Record<string, Given<Json>>>),
    ...(idField === null ? [] : [["id", { field: idField }] as const]),
  ];
  const wanted = sources.flatMap(([, given]) => (isField(given) ? [given.field] : []));
  checkFields(found, layer, wanted);
  return layer.features.map((feature, i) => {
    const own: JsonObject = idField === null && feature.id !== null ? { id: wordId(feature.id) } : {};
    const read = sources.map(([key, given]) => [key, valueOf(found, feature, i, key, given)] as const);
    return { ...own, ...Object.fromEntries(read.filter(([, v]) => v !== null)) };
  });
}

const isField = (given: Given<Json>): given is { field: string; words?: Readonly<Record<string, Json>> } =>
  typeof given === "object" && given !== null && "field" in given;

/** A field that no feature has is a slip in the mapping: one message, with the fields there are. */
function checkFields(found: Findings, layer: PlacedLayer, wanted: readonly string[]): void {
  if (layer.features.length === 0) return;
  const there = new Set(layer.features.flatMap((f) => Object.keys(f.properties)));
  for (const field of new Set(wanted.filter((f) => !there.has(f))))
    found.error({
      code: "layer-field",
      place: `layer ${quote(layer.name)}`,
      value: field,
      message: `The layer has no field ${quote(field)}.`,
      mend:
        there.size === 0
          ? "It has no fields at all."
          : `It has: ${[...there].slice(0, 30).map(quote).join(", ")}.`,
    });
  found.throwIfErrors();
}

function valueOf(
  found: Findings,
  feature: VectorFeature,
  index: number,
  key: string,
  given: Given<Json>,
): Json {
  if (!isField(given)) return given;
  const raw = Object.hasOwn(feature.properties, given.field) ? feature.properties[given.field]! : null;
  if (given.words === undefined || raw === null) return asKind(key, raw);
  const word = (typeof raw === "string" ? raw : JSON.stringify(raw)).trim();
  if (Object.hasOwn(given.words, word)) return given.words[word]!;
  found.error({
    code: "layer-word",
    place: `feature ${index + 1}${feature.id === null ? "" : ` (${quote(feature.id)})`}, ${given.field}`,
    value: word,
    message: `The mapping has no word for ${quote(word)}.`,
    mend: `It knows: ${Object.keys(given.words).map(quote).join(", ")}. Add this one.`,
  });
  return null;
}

/** KML and GPX hold all values as text, tables hold names that look like numbers as numbers. */
function asKind(key: string, raw: Json): Json {
  if (typeof raw === "string") {
    const text = raw.trim();
    if (NUMBERS.has(key) && /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text)) return Number(text);
    if (key === "id") return text === "" ? text : wordId(text);
    return DAYS.has(key) ? (readMonthDay(text) ?? text) : text;
  }
  return TEXTS.has(key) && typeof raw === "number" ? String(raw) : raw;
}
