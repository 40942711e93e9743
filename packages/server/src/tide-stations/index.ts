export { tideStationsApi } from "./tide-stations-api.ts";
export { stationsNear } from "./stations-near.ts";
export type { StationAnswer } from "./station.ts";
