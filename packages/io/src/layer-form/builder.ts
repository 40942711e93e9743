import type { Json, JsonObject } from "@causey/engine/formula";
import { quote, type Findings } from "../problem/index.ts";
import { ShapeFault, readGeometry } from "./geometry.ts";
import {
  LAYER_LIMITS,
  type LayerBudget,
  type LayerCrs,
  type VectorFeature,
  type VectorLayer,
} from "./layer.ts";

const FAMILIES: Readonly<Record<string, string>> = {
  Point: "points",
  MultiPoint: "points",
  LineString: "lines",
  MultiLineString: "lines",
  Polygon: "areas",
  MultiPolygon: "areas",
};

/** Puts the features of one layer together; every reader reports shapes that cannot be used in the same words. */
export class LayerBuilder {
  readonly #found: Findings;
  readonly #budget: LayerBudget;
  readonly #name: string;
  readonly #features: VectorFeature[] = [];
  #count = 0;
  #empty = 0;
  #mixed = 0;

  constructor(found: Findings, name: string, budget: LayerBudget) {
    this.#found = found;
    this.#name = name;
    this.#budget = budget;
  }

  /** How a message names the feature that is added next. */
  placeOf(id: string | null): string {
    return `layer ${quote(this.#name)}, feature ${this.#count + 1}${id === null ? "" : ` (${quote(id)})`}`;
  }

  /**
   * Adds one feature. Its id is the property "id" when there is one, else `id`; a feature without a shape is counted
   * and left out; a collection of unlike shapes becomes one feature for each kind. Throws `ProblemError` only when
   * the file holds more than is read.
   */
  add(id: unknown, properties: JsonObject, geometry: unknown): void {
    if (--this.#budget.features < 0) this.#tooMany();
    const own = idOf(properties["id"]) ?? idOf(id);
    try {
      this.#take(own, properties, readGeometry(geometry, this.#budget));
    } catch (fault) {
      if (!(fault instanceof ShapeFault)) throw fault;
      this.#found.error({
        code: "shape",
        place: this.placeOf(own),
        value: own,
        message: `The shape ${fault.message}.`,
        mend: "Draw it again, or take it out, and export the file once more.",
      });
      if (this.#budget.positions < 0) this.#found.throwIfErrors();
    }
    this.#count += 1;
  }

  #take(id: string | null, properties: JsonObject, shapes: readonly VectorFeature["geometry"][]): void {
    if (shapes.length === 0) this.#empty += 1;
    if (shapes.length > 1) this.#mixed += 1;
    for (const geometry of shapes) {
      const own = shapes.length === 1 || id === null ? id : `${id}/${FAMILIES[geometry.type]!}`;
      this.#features.push({ id: own, properties, geometry });
    }
  }

  #tooMany(): never {
    return this.#found.stop({
      code: "too-many-features",
      place: `layer ${quote(this.#name)}`,
      value: `more than ${LAYER_LIMITS.features} features`,
      message: `The file holds more than the ${LAYER_LIMITS.features} features that are read.`,
      mend: "Keep those that touch the site.",
    });
  }

  /** The layer, with warnings about what was left out or taken apart. */
  layer(file: string, crs: LayerCrs): VectorLayer {
    const place = `layer ${quote(this.#name)}`;
    if (this.#empty > 0)
      this.#found.warn({
        code: "no-shape",
        place,
        value: `${this.#empty} of ${this.#count}`,
        message: `${this.#empty} of ${this.#count} features have no shape and were left out.`,
        mend: "Draw them if they are needed.",
      });
    if (this.#mixed > 0)
      this.#found.warn({
        code: "mixed-shapes",
        place,
        value: this.#mixed,
        message: `${this.#mixed} features join points, lines or areas; each kind became a feature of its own.`,
        mend: "Part them in the mapping program if this is not what is meant.",
      });
    return { name: this.#name, file, crs, features: this.#features };
  }
}

/** An id may be a number, as many programs write it. */
export const idOf = (v: unknown): string | null =>
  typeof v === "string" && v.trim() !== ""
    ? v.trim()
    : typeof v === "number" && Number.isFinite(v)
      ? String(v)
      : null;

/** Any value of a library as JSON: what JSON has no word for becomes null. */
export function jsonOf(value: unknown, depth = 0): Json {
  if (typeof value === "string" || typeof value === "boolean") return value;
  if (typeof value === "number") return Number.isFinite(value) ? value : null;
  if (typeof value !== "object" || value === null || depth > 20) return null;
  if (Array.isArray(value)) return value.map((v) => jsonOf(v, depth + 1));
  return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, jsonOf(v, depth + 1)]));
}
