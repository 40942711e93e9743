import type { VectorFeature } from "@causey/io/layers";
import { count } from "../../show/show.ts";

export type Shape = "area" | "line" | "point";

const shapeOf = (type: string): Shape =>
  type.endsWith("Polygon") ? "area" : type.endsWith("Point") ? "point" : "line";

interface Features {
  readonly name: string;
  readonly features: readonly VectorFeature[];
}

export const isOfShape = (feature: VectorFeature, shape: Shape): boolean =>
  shapeOf(feature.geometry.type) === shape;

const shapes: readonly Shape[] = ["area", "line", "point"];

const howMany = (layer: Features, shape: Shape): number =>
  layer.features.filter((f) => isOfShape(f, shape)).length;

/** `12 areas, 3 points`. */
export function shapeWords(layer: Features): string {
  const parts = shapes
    .map((shape) => [shape, howMany(layer, shape)] as const)
    .filter(([, n]) => n > 0)
    .map(([shape, n]) => count(n, shape));
  return parts.length > 0 ? parts.join(", ") : "empty";
}

/** A layer in a list: `pools: 12 areas, 3 points`. */
export const layerWords = (layer: Features): string => `${layer.name}: ${shapeWords(layer)}`;

/** The first layer that holds such a shape, else the first. */
export const firstFitting = (layers: readonly Features[], shape: Shape): number =>
  Math.max(
    0,
    layers.findIndex((layer) => howMany(layer, shape) > 0),
  );
