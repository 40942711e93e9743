import type { Json, JsonObject } from "@causey/engine/formula";
import { parseJson } from "../json/index.ts";
import {
  LAYER_LIMITS,
  LayerBuilder,
  allPositions,
  layerName,
  type LayerBudget,
  type LayerCrs,
  type VectorLayer,
} from "../layer-form/index.ts";
import type { Findings } from "../problem/index.ts";

const EPSG_NAME =
  /^(?:urn:(?:x-)?ogc:def:crs:EPSG:[\d.]*:|EPSG:|https?:\/\/www\.opengis\.net\/def\/crs\/EPSG\/[\d.]+\/)(\d{1,7})$/i;
const CRS84_NAME = /^(?:urn:(?:x-)?ogc:def:crs:OGC:[\d.]*:CRS84|OGC:CRS84)$/i;

const isObject = (v: Json | undefined): v is JsonObject =>
  typeof v === "object" && v !== null && !Array.isArray(v);

/**
 * Reads GeoJSON (RFC 7946, and its older form with the member "crs"): a FeatureCollection, one Feature or one bare
 * shape. Without the member positions are longitude and latitude; numbers that cannot be degrees leave the system
 * open, with a warning. Throws `ProblemError`.
 */
export function readGeoJson(
  found: Findings,
  name: string,
  bytes: Uint8Array,
  budget: LayerBudget,
): VectorLayer {
  const root = parseJson(found, bytes, LAYER_LIMITS.text_bytes);
  const features = featuresOf(found, root);
  const crs = crsOf(found, isObject(root) ? root["crs"] : undefined);
  const builder = new LayerBuilder(found, titleOf(root) ?? layerName(name), budget);
  for (const raw of features) {
    const feature = isObject(raw) ? raw : {};
    if (feature["type"] !== "Feature") notAFeature(found, builder.placeOf(null), raw);
    const properties = isObject(feature["properties"]) ? feature["properties"] : {};
    builder.add(feature["id"], properties, feature["geometry"]);
  }
  const layer = builder.layer(found.file, crs);
  return crs === "lon-lat" && !isInDegrees(layer) ? withoutSystem(found, layer) : layer;
}

function featuresOf(found: Findings, root: Json): readonly Json[] {
  const type = isObject(root) ? root["type"] : undefined;
  if (isObject(root) && type === "FeatureCollection" && Array.isArray(root["features"]))
    return root["features"];
  if (type === "Feature") return [root];
  if (isObject(root) && ("coordinates" in root || "geometries" in root))
    return [{ type: "Feature", properties: {}, geometry: root }];
  return found.stop({
    code: "geojson",
    place: "type",
    value: type ?? null,
    message: "The file is not GeoJSON: it holds no features.",
    mend: 'Write {"type": "FeatureCollection", "features": [ ... ]}.',
  });
}

const titleOf = (root: Json): string | null => {
  const name = isObject(root) ? root["name"] : undefined;
  return typeof name === "string" && name.trim() !== "" ? name.trim() : null;
};

const notAFeature = (found: Findings, place: string, value: Json): void =>
  found.error({
    code: "geojson-feature",
    place,
    value,
    message: "This is not a feature.",
    mend: 'Give it "type": "Feature", "properties" and "geometry", or take it out.',
  });

function crsOf(found: Findings, member: Json | undefined): LayerCrs {
  if (member === undefined || member === null) return "lon-lat";
  const properties = isObject(member) ? member["properties"] : undefined;
  const name =
    isObject(properties) && typeof properties["name"] === "string" ? properties["name"].trim() : "";
  if (CRS84_NAME.test(name)) return "lon-lat";
  const code = EPSG_NAME.exec(name)?.[1];
  if (code !== undefined) return code === "4326" ? "lon-lat" : { epsg: Number(code) };
  if (name === "local" || name.startsWith("local:")) return { local: name.slice(6) };
  return found.stop({
    code: "geojson-crs",
    place: "crs",
    value: member,
    message: 'The member "crs" names no system that is known here.',
    mend: 'Name it as "urn:ogc:def:crs:EPSG::" and its code, or leave "crs" out and give longitude and latitude.',
  });
}

const isInDegrees = (layer: VectorLayer): boolean =>
  layer.features.every((f) =>
    allPositions(f.geometry).every(([lon, lat]) => Math.abs(lon) <= 180 && Math.abs(lat) <= 90),
  );

function withoutSystem(found: Findings, layer: VectorLayer): VectorLayer {
  found.warn({
    code: "geojson-degrees",
    place: "crs",
    message:
      "These numbers cannot be longitude and latitude; the file does not say in which system they are.",
    mend: "Say which system it is by its EPSG code, or export the file in longitude and latitude.",
  });
  return { ...layer, crs: null };
}
