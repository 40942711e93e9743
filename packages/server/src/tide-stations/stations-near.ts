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
function database(): Promise<Database> {
  loading ??= (import("@neaps/tide-database") as unknown as Promise<Database>).catch((error: unknown) => {
    // A failed load is tried again at the next question.
    loading = null;
    throw error;
  });
  return loading;
}

/**
 * Tide stations around a place, nearest first, of those whose numbers may be used freely.
 *
 * lon, lat  degrees, WGS 84
 * count     at most so many
 * Subordinate stations are left out: the database answers for their levels with those of another station, perhaps far off.
 */
export async function stationsNear(lon: number, lat: number, count: number): Promise<StationAnswer[]> {
  const { near } = await database();
  const found = near({
    latitude: lat,
    longitude: lon,
    maxResults: count,
    maxDistance: FARTHEST_KM,
    filter: (station) =>
      isFree(station) && (station.kind ?? "tide") === "tide" && station.type !== "subordinate",
  });
  return found.map(([station, distance]) => answerOf(station, distance));
}
