import type { LevelBasis, LevelRole, WaterLevel } from "./types.ts";

export interface StationLevel {
  readonly role: LevelRole;
  readonly name: string;
  readonly basis: Extract<LevelBasis, "mean" | "predicted">;
  /** Above the land datum, or the chart's [m]. */
  readonly z_m: number;
}

/** What a tide station says of its levels. */
export interface LevelStation {
  readonly id: string;
  readonly name: string;
  readonly attribution: string;
  readonly licence: string;
  /** Years the means hold for; empty = the station does not say. */
  readonly epoch: string;
  /** Null: the station publishes no land datum, so its levels cannot be brought onto the land's heights. */
  readonly land_datum: string | null;
  /** Above the land datum. */
  readonly levels: readonly StationLevel[];
}

/**
 * A station's levels as levels of a plan, or why it has none on the plan's datum. Levels are never converted: the
 * difference between two land datums, or between the sea and the land, changes from place to place.
 */
export function levelsFromStation(
  station: LevelStation,
  datum: string,
): { readonly levels: readonly WaterLevel[] } | { readonly why: string } {
  if (station.land_datum === null)
    return { why: "It publishes no land datum: its levels cannot be brought onto the land's heights." };
  if (station.land_datum !== datum)
    return {
      why: `The plan is on ${datum}, the station on ${station.land_datum}: the difference at the site must be known first.`,
    };
  return {
    levels: station.levels.map((l) => ({
      id: `${station.id.replace(/[^\w-]/g, "-")}-${l.role}`,
      name: l.name,
      role: l.role,
      basis: l.basis,
      z_m: l.z_m,
      datum,
      source: `Tide station ${station.name}; ${station.attribution}; ${station.licence}`,
      epoch: station.epoch,
    })),
  };
}
