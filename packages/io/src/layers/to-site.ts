import { ProblemError, type JsonObject, type Problem } from "@causey/engine/formula";
import { planCrsOf } from "../crs/index.ts";
import { jsonBytes } from "../json/index.ts";
import type { Position, Positions, VectorGeometry } from "../layer-form/index.ts";
import { Findings, quote } from "../problem/index.ts";
import {
  featureCollection,
  readPlaces,
  readZones,
  type FeatureJson,
  type PlacesRead,
  type ZonesRead,
} from "../vector/index.ts";
import { mappedProperties, type PlaceMapping, type ZoneMapping } from "./mapping.ts";
import type { PlacedLayer } from "./place-layer.ts";

/** A ring whose ends lie closer than this is closed without asking [m]: rounding of a program, not a slip. */
const CLOSE_GAP_M = 0.001;

/**
 * The features of a placed layer as zones. Rings must be closed: a gap below 1 mm is closed with a warning, a wider
 * one is an error that names feature and gap. All rules of `zones.geojson` hold (ids, uses, days, rings that cross
 * themselves), for its own reader is used. Throws `ProblemError` with every problem.
 */
export function toZones(layer: PlacedLayer, mapping: ZoneMapping): ZonesRead {
  const found = new Findings(fileOf(layer));
  const properties = mappedProperties(found, layer, mapping);
  const features = layer.features.map((f, i) => ({
    ...f,
    geometry: closedShape(found, placeOf(i, f.id), f.geometry),
  }));
  return read(found, { ...layer, features }, properties, (bytes) => readZones(found.file, bytes, layer.crs));
}

/**
 * The points of a placed layer as starts and plots, by all rules of `places.geojson`. Throws `ProblemError` with
 * every problem.
 */
export function toPlaces(layer: PlacedLayer, mapping: PlaceMapping): PlacesRead {
  const found = new Findings(fileOf(layer));
  const properties = mappedProperties(found, layer, mapping);
  return read(found, layer, properties, (bytes) => readPlaces(found.file, bytes, layer.crs, {}));
}

const fileOf = (layer: PlacedLayer): string => `${layer.file}, layer ${quote(layer.name)}`;

const placeOf = (index: number, id: string | null): string =>
  `feature ${index + 1}${id === null ? "" : ` (${quote(id)})`}`;

/** Hands the features to the reader of the plan folder's own file, and joins its problems with those found before. */
function read<T extends { readonly warnings: readonly Problem[] }>(
  found: Findings,
  layer: PlacedLayer,
  properties: readonly JsonObject[],
  reader: (bytes: Uint8Array) => T,
): T {
  const crs = planCrsOf(layer.crs);
  const features = layer.features.map((f, i): FeatureJson => ({
    type: "Feature",
    properties: properties[i]!,
    geometry: f.geometry as FeatureJson["geometry"],
  }));
  const answer = attempt(() => reader(jsonBytes(featureCollection(crs, features), "as-given")));
  if ("problems" in answer) throw new ProblemError([...found.all, ...answer.problems]);
  if (found.hasErrors) throw new ProblemError([...found.all, ...answer.value.warnings]);
  return { ...answer.value, warnings: [...found.warnings, ...answer.value.warnings] };
}

function attempt<T>(run: () => T): { readonly value: T } | { readonly problems: readonly Problem[] } {
  try {
    return { value: run() };
  } catch (fault) {
    if (fault instanceof ProblemError) return { problems: fault.problems };
    throw fault;
  }
}

function closedShape(found: Findings, place: string, shape: VectorGeometry): VectorGeometry {
  const close = (rings: readonly Positions[], part: string): readonly Positions[] =>
    rings.map((ring, i) => closedRing(found, `${place}${part}, ring ${i + 1}`, ring));
  if (shape.type === "Polygon") return { ...shape, coordinates: close(shape.coordinates, "") };
  if (shape.type !== "MultiPolygon") return shape;
  return { ...shape, coordinates: shape.coordinates.map((rings, i) => close(rings, `, part ${i + 1}`)) };
}

function closedRing(found: Findings, place: string, ring: Positions): Positions {
  const [first, last] = [ring[0], ring.at(-1)];
  if (first === undefined || last === undefined || ring.length < 2) return ring;
  const gap = distance(first, last);
  if (gap === 0) return ring;
  if (gap >= CLOSE_GAP_M) {
    found.error({
      code: "ring-open",
      place,
      value: `gap of ${metres(gap)}`,
      message: `The outline is not closed: its end lies ${metres(gap)} from its beginning.`,
      mend: "Close it in your mapping program: its last corner must be its first.",
    });
    return [...ring, first];
  }
  found.warn({
    code: "ring-closed",
    place,
    value: `gap of ${metres(gap)}`,
    message:
      "The outline was not closed; its end lies less than 1 mm from its beginning and was moved there.",
    mend: "Close it in your mapping program if this is not what is meant.",
  });
  return [...ring.slice(0, -1), first];
}

const distance = ([a, b]: Position, [c, d]: Position): number => Math.hypot(c - a, d - b);

const metres = (gap: number): string =>
  gap < 0.001
    ? `${(gap * 1000).toPrecision(2)} mm`
    : gap < 1
      ? `${(gap * 1000).toFixed(1)} mm`
      : `${gap.toFixed(2)} m`;
