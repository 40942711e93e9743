import type { Json, JsonObject } from "@causey/engine/formula";
import type { Crs } from "@causey/engine/site";
import { parseJson } from "../json/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { readPlacement, type Placement } from "./placement.ts";

/** Largest GeoJSON that is read [bytes], and most features in it. */
const BYTE_LIMIT = 50_000_000;
const FEATURE_LIMIT = 10_000;

/** One feature as the file gives it, with the words that name it in a message. */
export interface RawFeature {
  readonly place: string;
  readonly properties: JsonObject;
  readonly id: string | null;
  readonly geometry: JsonObject;
}

export interface RawCollection {
  readonly features: readonly RawFeature[];
  /** Turns the file's coordinates into the site's grid; reports those it cannot. */
  readonly placement: Placement;
}

const isObject = (v: Json | undefined): v is JsonObject =>
  typeof v === "object" && v !== null && !Array.isArray(v);

/**
 * Reads a FeatureCollection (RFC 7946) and finds out in which system its coordinates are. Features without a geometry
 * are reported and left out. Throws `ProblemError` for what is no FeatureCollection at all.
 */
export function readCollection(found: Findings, bytes: Uint8Array, crs: Crs): RawCollection {
  const root = parseJson(found, bytes, BYTE_LIMIT);
  const list = isObject(root) && root["type"] === "FeatureCollection" ? root["features"] : undefined;
  if (!isObject(root) || !Array.isArray(list))
    return found.stop({
      code: "geojson",
      place: "type",
      value: isObject(root) ? (root["type"] ?? null) : root,
      message: "The file is not a GeoJSON FeatureCollection.",
      mend: 'Write {"type": "FeatureCollection", "features": [ ... ]}; an empty list is allowed.',
    });
  if (list.length > FEATURE_LIMIT)
    found.stop({
      code: "geojson-too-many",
      place: "features",
      value: `${list.length} features`,
      message: `The file holds ${list.length} features; at most ${FEATURE_LIMIT} are read.`,
      mend: "Keep those that touch the site.",
    });
  const placement = readPlacement(found, root["crs"], crs);
  const features = list.flatMap((raw: Json, i) => readFeature(found, raw, i) ?? []);
  return { features, placement };
}

function readFeature(found: Findings, raw: Json, index: number): RawFeature | null {
  const feature = isObject(raw) ? raw : {};
  const properties = isObject(feature["properties"]) ? feature["properties"] : {};
  const id = idOf(properties["id"]) ?? idOf(feature["id"]);
  const place = `feature ${index + 1}${id === null ? "" : ` (${quote(id)})`}`;
  const geometry = feature["geometry"];
  if (feature["type"] === "Feature" && isObject(geometry)) return { place, properties, id, geometry };
  found.error({
    code: "geojson-feature",
    place,
    value: feature["type"] === "Feature" ? (geometry ?? null) : (feature["type"] ?? null),
    message: "This is not a feature with a geometry.",
    mend: "Draw its shape, or take it out of the file.",
  });
  return null;
}

/** An id may be a number, as many programs write it. */
const idOf = (v: Json | undefined): string | null =>
  typeof v === "string" && v.trim() !== "" ? v.trim() : typeof v === "number" ? String(v) : null;
