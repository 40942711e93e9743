export { tideStationsApi } from "./tide-stations-api.ts";
export { stationsNear } from "./stations-near.ts";
export { levelsFromStation, type StationAnswer, type StationLevel } from "./station.ts";
