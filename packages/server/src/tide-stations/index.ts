export { tideStationsApi } from "./tide-stations-api.ts";
export type { StationAnswer, StationLevel } from "./station.ts";
