export { readZones, WATER_KINDS, ZONE_USES, type ZonesRead } from "./zones.ts";
export { readPlaces, type PlaceDefaults, type PlacesRead } from "./places.ts";
export { closed, crsMember, featureCollection, type FeatureJson } from "./write-features.ts";
export { writePlaces, writeZones } from "./write-site.ts";
