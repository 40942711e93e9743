import type { Plan } from "@causey/engine/plan";
import type { LevelStation } from "@causey/engine/water";

/** A tide station as the server answers it. */
export interface Station extends LevelStation {
  readonly distance_km: number;
  /** Why levels are missing, and what is doubtful about those that are there. */
  readonly notes: readonly string[];
}

/** Where the site lies on the earth: its first start, or plot. The projection is fetched only when it is asked for. */
export async function siteLonLat({
  crs,
  starts,
  plots,
}: Plan): Promise<{ readonly lon: number | null; readonly lat: number | null }> {
  const place = starts[0] ?? plots[0];
  if (!("epsg" in crs) || !place) return { lon: null, lat: null };
  const { crsFromEpsg, toLonLat } = await import("@causey/io/crs");
  const at = toLonLat(await crsFromEpsg(crs.epsg))(place.x, place.y);
  return at === null ? { lon: null, lat: null } : { lon: at[0], lat: at[1] };
}

export async function stationsAround(lon: number, lat: number): Promise<readonly Station[]> {
  const answer = await fetch(`api/tide-stations?lon=${lon}&lat=${lat}`);
  if (!answer.ok) throw new Error("The server could not look for stations there.");
  return ((await answer.json()) as { stations: readonly Station[] }).stations;
}
