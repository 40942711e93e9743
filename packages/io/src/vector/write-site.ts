import type { Plot, Start, Zone } from "@causey/engine/site";
import type { PlanCrs } from "../crs/index.ts";
import { jsonBytes } from "../json/index.ts";
import { closed, featureCollection, type FeatureJson } from "./write-features.ts";

/** `zones.geojson` in the site's own grid, exact to the last digit; `readZones` gives the same zones back. */
export const writeZones = (zones: readonly Zone[], crs: PlanCrs): Uint8Array =>
  jsonBytes(featureCollection(crs, zones.map(zoneFeature)), "as-given");

function zoneFeature({ polygons, ...properties }: Zone): FeatureJson {
  const rings = polygons.map((p) => p.map(closed));
  return {
    type: "Feature",
    properties: { ...properties },
    geometry:
      rings.length === 1
        ? { type: "Polygon", coordinates: rings[0]! }
        : { type: "MultiPolygon", coordinates: rings },
  };
}

/** `places.geojson` in the site's own grid, exact to the last digit; `readPlaces` gives the same places back. */
export const writePlaces = (starts: readonly Start[], plots: readonly Plot[], crs: PlanCrs): Uint8Array =>
  jsonBytes(
    featureCollection(crs, [
      ...starts.map((s) => placeFeature("start", s)),
      ...plots.map((p) => placeFeature("plot", p)),
    ]),
    "as-given",
  );

const placeFeature = (kind: "start" | "plot", { x, y, ...properties }: Start | Plot): FeatureJson => ({
  type: "Feature",
  properties: { kind, ...properties },
  geometry: { type: "Point", coordinates: [x, y] },
});
