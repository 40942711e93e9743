import type { LevelRole } from "@causey/engine/water";

/** Land datums that a station may tie its levels to. */
const LAND_DATUMS = [
  "NAVD88",
  "NAVD",
  "ODN",
  "IGLD85",
  "CGVD28",
  "CGVD2013",
  "AHD",
  "NAP",
  "DHHN2016",
] as const;

const ROLES: readonly (readonly [key: string, role: LevelRole, name: string])[] = [
  ["HAT", "highest-predicted", "Highest predicted tide"],
  ["MHHW", "mhhw", "Mean higher high water"],
  ["MHW", "mhw", "Mean high water"],
  ["MSL", "msl", "Mean sea level"],
  ["MLW", "mlw", "Mean low water"],
  ["MLLW", "mllw", "Mean lower low water"],
  ["LAT", "lowest-predicted", "Lowest predicted tide"],
];

/** A station as the database holds it, as far as it is read here. */
export interface StationRecord {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly kind?: string;
  readonly type?: string;
  readonly datums?: Readonly<Record<string, number>>;
  readonly epoch?: { readonly start?: string; readonly end?: string };
  readonly license?: { readonly type?: string; readonly commercial_use?: boolean; readonly url?: string };
  readonly attribution?: string;
  readonly source?: { readonly name?: string; readonly url?: string };
}

export interface StationLevel {
  readonly role: LevelRole;
  readonly name: string;
  readonly basis: "mean" | "predicted";
  /** Above the land datum [m]. */
  readonly z_m: number;
}

/** A station as the page shows it. */
export interface StationAnswer {
  readonly id: string;
  readonly name: string;
  readonly distance_km: number;
  readonly attribution: string;
  readonly licence: string;
  /** Years the means hold for; empty = the station does not say. */
  readonly epoch: string;
  /** Null: the station publishes no land datum, so its levels cannot be brought onto the land's heights. */
  readonly land_datum: string | null;
  readonly levels: readonly StationLevel[];
}

/** Whether a station's numbers may be used freely, also for money. */
export const isFree = (station: StationRecord): boolean =>
  station.license?.commercial_use === true && !/(^|[^a-z])nc([^a-z]|$)/i.test(station.license.type ?? "");

/** Levels of a station above the land datum that it publishes itself; none is converted by guess. */
export function answerOf(station: StationRecord, distance_km: number): StationAnswer {
  const datums = station.datums ?? {};
  const land = LAND_DATUMS.find((d) => typeof datums[d] === "number") ?? null;
  const { start, end } = station.epoch ?? {};
  const years = [start, end].map((day) => day?.slice(0, 4) ?? "").filter((y) => y !== "");
  return {
    id: station.id,
    name: station.name,
    distance_km: Math.round(distance_km * 10) / 10,
    attribution: [station.source?.name, station.attribution].filter((t) => t).join("; "),
    licence: [station.license?.type, station.license?.url].filter((t) => t).join(", "),
    epoch: years.join(" to "),
    land_datum: land,
    levels: land === null ? [] : levelsOver(datums, datums[land]!),
  };
}

const levelsOver = (datums: Readonly<Record<string, number>>, land: number): StationLevel[] =>
  ROLES.flatMap(([key, role, name]) => {
    const z = datums[key];
    if (typeof z !== "number" || !Number.isFinite(z)) return [];
    const basis = key === "HAT" || key === "LAT" ? "predicted" : "mean";
    return [{ role, name, basis, z_m: Math.round((z - land) * 1000) / 1000 }];
  });
