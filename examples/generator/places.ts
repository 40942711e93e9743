import type { Spot } from "./polygon.ts";
import { onGrid, type Feature } from "./zones.ts";

const place = (spot: Spot, properties: Feature["properties"]): Feature => ({
  type: "Feature",
  properties,
  geometry: { type: "Point", coordinates: onGrid(spot) },
});

const plot = (id: string, name: string, spot: Spot): Feature =>
  place(spot, { kind: "plot", id, name, keep_off_m: 1, reach_m: 1.5 });

export const START: Spot = [128, 181];

/** One start on firm ground; three plots with sediment traps, the second beyond a creek that cannot be walked round. */
export const drawPlaces = (): Feature[] => [
  place(START, { kind: "start", id: "gate", name: "Field gate" }),
  plot("P1", "Trap plot 1, high meadow", [130, 118]),
  plot("P2", "Trap plot 2, beyond Quillet Creek", [60, 72]),
  plot("P3", "Trap plot 3, by the pools", [213, 80]),
];

/** A GeoJSON file in the site's own grid, one feature a line so that changes can be read. */
export const featureFile = (features: readonly Feature[]): string =>
  [
    '{"type":"FeatureCollection",',
    '"crs":{"type":"name","properties":{"name":"local"}},',
    '"features":[',
    features.map((f) => JSON.stringify(f)).join(",\n"),
    "]}\n",
  ].join("\n");
