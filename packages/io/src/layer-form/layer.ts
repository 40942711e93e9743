import type { JsonObject } from "@causey/engine/formula";

/** East and north, or longitude and latitude: always the first two numbers of a position; heights are left out. */
export type Position = readonly [number, number];
export type Positions = readonly Position[];

/** Shapes as in GeoJSON (RFC 7946), in two dimensions, without collections. Rings stand as the file gives them. */
export type VectorGeometry =
  | { readonly type: "Point"; readonly coordinates: Position }
  | { readonly type: "MultiPoint" | "LineString"; readonly coordinates: Positions }
  | { readonly type: "MultiLineString" | "Polygon"; readonly coordinates: readonly Positions[] }
  | { readonly type: "MultiPolygon"; readonly coordinates: readonly (readonly Positions[])[] };

/**
 * The system that a file declares for a layer: an EPSG code, a well-known text, longitude and latitude on WGS 84
 * (longitude first), or a local grid by its name ("" when it has none). Null when the file says nothing.
 */
export type LayerCrs =
  { readonly epsg: number } | { readonly wkt: string } | { readonly local: string } | "lon-lat" | null;

export interface VectorFeature {
  readonly id: string | null;
  readonly properties: JsonObject;
  readonly geometry: VectorGeometry;
}

/** What every vector format is read into: features in the file's own coordinates, and the system it declares. */
export interface VectorLayer {
  readonly name: string;
  /** The file it came from, for messages. */
  readonly file: string;
  readonly crs: LayerCrs;
  readonly features: readonly VectorFeature[];
}

/** What one file may hold at most. */
export const LAYER_LIMITS = {
  layers: 200,
  features: 100_000,
  positions: 3_000_000,
  /** Attributes of one layer. */
  fields: 500,
  text_bytes: 50_000_000,
} as const;

/** Most that one file may still hold: shared by its layers, so that many small layers are no way around it. */
export interface LayerBudget {
  features: number;
  positions: number;
}

export const layerBudget = (): LayerBudget => ({
  features: LAYER_LIMITS.features,
  positions: LAYER_LIMITS.positions,
});

/** "folder/pools.shp" is the layer "pools". */
export const layerName = (file: string): string =>
  (file.split("/").at(-1) ?? file).replace(/\.[^.]*$/, "") || file;
