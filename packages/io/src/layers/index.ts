export { readLayers, type LayersRead } from "./read-layers.ts";
export { placeLayer, type LayerPlaced, type PlaceOptions, type PlacedLayer } from "./place-layer.ts";
export { idFromName } from "./word-id.ts";
export { mergeById } from "./merge-by-id.ts";
export { toPlaces, toZones } from "./to-site.ts";
export type { Given, PlaceMapping, ZoneMapping } from "./mapping.ts";
export type {
  LayerCrs,
  Position,
  Positions,
  VectorFeature,
  VectorGeometry,
  VectorLayer,
} from "../layer-form/index.ts";
