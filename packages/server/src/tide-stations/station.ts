import type { LevelRole, LevelStation, StationLevel } from "@causey/engine/water";

/** Land datums that the database's stations tie their levels to. */
const LAND_DATUMS = ["NAVD88", "NN2000", "PRVD02", "VIVD09", "GUVD04", "NMVD03"] as const;

const ROLES: readonly (readonly [key: string, role: LevelRole, name: string])[] = [
  ["HAT", "highest-predicted", "Highest predicted tide"],
  ["MHWS", "mhws", "Mean high water springs"],
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
  /** "tide" or "current". */
  readonly kind?: string;
  /** "reference" stations have levels of their own; "subordinate" ones answer with another station's. */
  readonly type?: string;
  readonly chart_datum?: string;
  readonly datums?: Readonly<Record<string, number>>;
  readonly epoch?: { readonly start?: string; readonly end?: string };
  readonly license?: { readonly type?: string; readonly commercial_use?: boolean; readonly url?: string };
  readonly attribution?: string;
  readonly source?: { readonly name?: string; readonly url?: string };
}

/** A station as the page shows it. */
export interface StationAnswer extends LevelStation {
  readonly distance_km: number;
  /** The datum of the station's own charts, such as MLLW, and its levels above that; null = it has none of its own. */
  readonly chart_datum: string | null;
  readonly chart_levels: readonly StationLevel[];
  /** Why levels are missing, and what is doubtful about those that are there. */
  readonly notes: readonly string[];
}

/** Whether a station's numbers may be used freely, also for money. */
export const isFree = (station: StationRecord): boolean =>
  station.license?.commercial_use === true && !/(^|[^a-z])nc([^a-z]|$)/i.test(station.license.type ?? "");

const SUBORDINATE =
  "It has no levels of its own: the database answers with those of another station, so none is given here.";
const NO_LAND = "It publishes no land datum: its levels cannot be brought onto the land's heights.";
const WORKED_OUT =
  "The highest and lowest predicted tides are the database's own: its maker worked some of them out from the constituents.";

/** Levels of a station above the land datum that it publishes itself; none is converted by guess. */
export function answerOf(station: StationRecord, distance_km: number): StationAnswer {
  const isOwn = station.type !== "subordinate";
  const datums = isOwn ? (station.datums ?? {}) : {};
  const land = LAND_DATUMS.find((d) => Number.isFinite(datums[d])) ?? null;
  const chart = station.chart_datum ?? null;
  const zero = chart === null ? undefined : datums[chart];
  const { start, end } = station.epoch ?? {};
  const years = [start, end].map((day) => day?.slice(0, 4) ?? "").filter((y) => y !== "");
  const levels = land === null ? [] : levelsOver(datums, datums[land]!);
  const chart_levels = zero === undefined || !Number.isFinite(zero) ? [] : levelsOver(datums, zero);
  return {
    id: station.id,
    name: station.name,
    distance_km: Math.round(distance_km * 10) / 10,
    attribution: [station.source?.name, station.attribution].filter((t) => t).join("; "),
    licence: [station.license?.type, station.license?.url].filter((t) => t).join(", "),
    epoch: years.join(" to "),
    land_datum: land,
    levels,
    chart_datum: chart_levels.length > 0 ? chart : null,
    chart_levels,
    notes: [
      ...(isOwn ? [] : [SUBORDINATE]),
      ...(isOwn && land === null ? [NO_LAND] : []),
      ...([...levels, ...chart_levels].some((l) => l.basis === "predicted") ? [WORKED_OUT] : []),
    ],
  };
}

const levelsOver = (datums: Readonly<Record<string, number>>, zero: number): StationLevel[] =>
  ROLES.flatMap(([key, role, name]) => {
    const z = datums[key];
    if (typeof z !== "number" || !Number.isFinite(z)) return [];
    const basis = key === "HAT" || key === "LAT" ? "predicted" : "mean";
    return [{ role, name, basis, z_m: Math.round((z - zero) * 1000) / 1000 }];
  });
