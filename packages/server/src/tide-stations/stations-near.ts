import { answerOf, isFree, type StationAnswer, type StationRecord } from "./station.ts";

/** Farther stations say nothing about a marsh [km]. */
const FARTHEST_KM = 150;

interface Database {
  readonly near: (options: {
    readonly latitude: number;
    readonly longitude: number;
    readonly maxResults: number;
    readonly maxDistance: number;
    readonly filter: (station: StationRecord) => boolean;
  }) => readonly (readonly [StationRecord, number])[];
}

let loading: Promise<Database> | null = null;

/** The database takes half a second and 150 MB: it is loaded when somebody asks for it. */
const database = (): Promise<Database> =>
  (loading ??= import("@neaps/tide-database") as unknown as Promise<Database>);

/**
 * Tide stations around a place, nearest first, of those whose numbers may be used freely.
 *
 * lon, lat  degrees, WGS 84
 */
export async function stationsNear(lon: number, lat: number, count: number): Promise<StationAnswer[]> {
  const { near } = await database();
  const found = near({
    latitude: lat,
    longitude: lon,
    maxResults: count,
    maxDistance: FARTHEST_KM,
    filter: (station) => isFree(station) && (station.kind ?? "tide") === "tide",
  });
  return found.map(([station, distance]) => answerOf(station, distance));
}
