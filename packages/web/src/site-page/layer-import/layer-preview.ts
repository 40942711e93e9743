import { ProblemError, type Json, type Problem } from "@causey/engine/formula";
import type { Plan, SectionEdit } from "@causey/engine/plan";
import type { Zone } from "@causey/engine/site";
import { toPlaces, toZones, type Given, type PlacedLayer, type ZoneMapping } from "@causey/io/layers";
import { mergeItems } from "./merge-items.ts";
import { valuesInUse, type LayerChoice } from "./layer-choice.ts";
import { withIdsFromNames } from "./layer-ids.ts";
import { layerTargets, type LayerTarget } from "./layer-kinds.ts";
import { withFreeNames } from "./unique-names.ts";
import { isOfShape, shapeWords } from "./layer-words.ts";

export interface LayerPreview {
  /** Features that can be taken over, and how many of them have the id of something in the plan. */
  readonly count: number;
  readonly known: number;
  readonly problems: readonly Problem[];
  /** The change of the plan; null while something stands against it. */
  readonly edit: SectionEdit | null;
}

/** The field that holds names which are made here; no file has one that is called so. */
const MADE_NAME = "\u0000name";

/**
 * Reads a placed layer as chosen and says what would come of it. Nothing is thrown: problems are part of the answer,
 * and with one error among them nothing can be taken over.
 */
export function previewLayer(
  target: LayerTarget,
  placed: PlacedLayer,
  choice: LayerChoice,
  plan: Plan,
): LayerPreview {
  try {
    const { layer: named, nameField, notes: renamed } = prepared(target, placed, choice);
    const { layer, notes } = fitting(target, named, choice);
    const { items, warnings } = read(target, layer, choice, nameField);
    const merged = mergeItems(target, items, choice.replace, plan, `${layer.file}, layer "${layer.name}"`);
    const isRefused = merged.problems.some((p) => p.severity === "error") || items.length === 0;
    return {
      count: items.length,
      known: merged.known,
      problems: [...merged.problems, ...renamed, ...notes, ...warnings],
      edit: isRefused ? null : merged.edit,
    };
  } catch (error) {
    if (error instanceof ProblemError) return { count: 0, known: 0, problems: error.problems, edit: null };
    throw error;
  }
}

interface Prepared {
  readonly layer: PlacedLayer;
  readonly nameField: string;
  /** What is said of names that had to be changed. */
  readonly notes: readonly Problem[];
}

/** The layer with the names and ids that are made here. */
function prepared(target: LayerTarget, layer: PlacedLayer, { name, id }: LayerChoice): Prepared {
  const { noun } = layerTargets[target];
  const { names, notes } = namesOf(target, layer, name);
  const features = names
    ? layer.features.map((f, i) => ({ ...f, properties: { ...f.properties, [MADE_NAME]: names[i]! } }))
    : layer.features;
  const nameField = names ? MADE_NAME : fieldOf(name);
  return {
    layer: { ...layer, features: id === "names" ? withIdsFromNames(features, nameField, noun) : features },
    nameField,
    notes,
  };
}

/** Names made here, one a feature; null where those of the file stand: areas may share a name. */
function namesOf(
  target: LayerTarget,
  layer: PlacedLayer,
  name: LayerChoice["name"],
): { readonly names: readonly Json[] | null; readonly notes: readonly Problem[] } {
  if (name === "numbered")
    return { names: layer.features.map((_, i) => `${layer.name} ${i + 1}`), notes: [] };
  const given = layer.features.map((f) => f.properties[fieldOf(name)] ?? null);
  const { noun, shape } = layerTargets[target];
  if (target === "zones") return { names: null, notes: [] };
  const come = layer.features.flatMap((f, i) => {
    const word = given[i]!;
    const isName = (typeof word === "string" && word.trim() !== "") || typeof word === "number";
    return isName && isOfShape(f, shape)
      ? [{ at: i, id: f.id ?? `feature ${i + 1}`, name: String(word) }]
      : [];
  });
  const { items, notes } = withFreeNames(come, [], noun, `${layer.file}, layer "${layer.name}"`);
  const made = new Map(items.map((item) => [item.at, item.name]));
  return { names: given.map((word, i) => made.get(i) ?? word), notes };
}

/** The features of the shape that is wanted, and a warning that says what was left out. */
function fitting(
  target: LayerTarget,
  layer: PlacedLayer,
  { leave_out }: LayerChoice,
): { readonly layer: PlacedLayer; readonly notes: readonly Problem[] } {
  const { shape } = layerTargets[target];
  const others = layer.features.filter((f) => !isOfShape(f, shape));
  if (!leave_out || others.length === 0) return { layer, notes: [] };
  return {
    layer: { ...layer, features: layer.features.filter((f) => isOfShape(f, shape)) },
    notes: [
      {
        code: "layer-shapes",
        severity: "warning",
        file: layer.file,
        place: `layer "${layer.name}"`,
        value: shapeWords({ name: layer.name, features: others }),
        message: `Only its ${shape}s are brought in; other shapes are left out, and features are counted without them.`,
        mend: `Draw as ${shape}s what must come along.`,
      },
    ],
  };
}

const fieldOf = (name: LayerChoice["name"]): string =>
  typeof name === "object" && name !== null ? name.field : MADE_NAME;

interface Read {
  readonly items: readonly { readonly id: string; readonly name: string }[];
  readonly warnings: readonly Problem[];
}

function read(target: LayerTarget, layer: PlacedLayer, choice: LayerChoice, nameField: string): Read {
  const names = {
    idField: typeof choice.id === "object" ? choice.id.field : null,
    nameField,
  };
  const values = givenValues(target, choice);
  if (target === "zones") {
    // The list of wanted values asks for rule, source and hidden before a preview is made.
    const { zones, warnings } = toZones(layer, { ...names, ...values } as unknown as ZoneMapping);
    return { items: zones.map(withoutForeign), warnings };
  }
  const kind = target === "starts" ? "start" : "plot";
  const places = toPlaces(layer, { ...names, ...values, kind });
  return { items: places[target], warnings: places.warnings };
}

function givenValues(target: LayerTarget, choice: LayerChoice): Readonly<Record<string, Given<Json>>> {
  const given = valuesInUse(target, choice).flatMap(({ key, as }): (readonly [string, Given<Json>])[] => {
    const value = choice.values[key]!;
    if (value.by === "all") return value.value === null || value.value === "" ? [] : [[key, value.value]];
    const { field, words } = value;
    return [[key, as === "use" ? { field, words } : { field }]];
  });
  return Object.fromEntries(given);
}

/** Entries that only another rule has are left out: a pool has no days, a parcel no harm. */
function withoutForeign(zone: Zone): Zone {
  const foreign = layerTargets.zones.values.filter((v) => v.uses && !v.uses.includes(zone.use));
  const keys = new Set(foreign.map((v) => v.key));
  return Object.fromEntries(Object.entries(zone).filter(([key]) => !keys.has(key))) as unknown as Zone;
}
