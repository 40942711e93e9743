import type { Qty } from "../units/index.ts";
import type { GroundEvidence } from "../survey/evidence.ts";
import type { Series } from "../water/series.ts";
import type { WaterLevel } from "../water/types.ts";

export type { WaterLevel };

/**
 * Terrain as a grid of cell-centre heights.
 *
 * values  row by row from SOUTH to north, west to east; NaN = no data   [m above `datum`]
 * x0, y0  centre of the south-west cell, in the site's horizontal system [m]
 * dx, dy  cell size, both > 0, need not be equal                         [m]
 */
export interface Raster {
  readonly cols: number;
  readonly rows: number;
  readonly x0: number;
  readonly y0: number;
  readonly dx: number;
  readonly dy: number;
  readonly values: Float32Array;
}

/** Horizontal system: a projected EPSG system in metres, or a local grid that the plan states. East x, north y. */
export type Crs =
  | { readonly kind: "epsg"; readonly code: number; readonly name: string; readonly proj: string }
  | { readonly kind: "local"; readonly name: string };

export type ZoneUse =
  "habitat" | "closed" | "seasonal-closure" | "buffer" | "soft-ground" | "channel" | "pool" | "parcel";

/** What a channel or pool is in the field. */
export type WaterKind = "creek" | "ditch" | "pool" | "panne";

export type Ring = readonly (readonly [number, number])[];
/** Polygons, each an outer ring and its holes; coordinates in the site's horizontal system [m]. */
export type Polygons = readonly (readonly Ring[])[];

/** An area with a rule. */
export interface Zone {
  readonly id: string;
  readonly name: string;
  readonly use: ZoneUse;
  readonly polygons: Polygons;
  /** Harm per square metre relative to plain upland grass = 1; habitats only. */
  readonly sensitivity?: number;
  /** Month and day, inclusive, for a seasonal closure; may run over New Year. */
  readonly from?: string;
  readonly to?: string;
  /** Used in the search, never in a shared paper. */
  readonly hidden: boolean;
  readonly source: string;
  /** Kept clear around the zone by the same rule, on every side [m]; 0 when left out. */
  readonly buffer_m?: number;
  /** Whom to ask about the rule. */
  readonly contact?: string;
  /** What the water is; channels and pools only. Left out: not told, and a crossing goes by its width. */
  readonly water?: WaterKind;
  /** Who owns the parcel; parcels only. */
  readonly owner?: string;
}

export interface Start {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

/** Where the walkway must lead: reached when a joint lies outside `keep_off_m` and within `reach_m` beyond it. */
export interface Plot {
  readonly id: string;
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly keep_off_m: number;
  readonly reach_m: number;
  /** Compass side, seen from the plot, from which it must be reached; any side when left out. */
  readonly arrive_from?: "north" | "east" | "south" | "west";
}

/** One reading of undrained shear strength, already corrected, at a depth below ground. */
export interface StrengthReading {
  readonly x: number;
  readonly y: number;
  readonly depth_m: number;
  readonly su_kpa: number;
  readonly source: string;
  /** Strength after remoulding at the same place: the ratio of the two is the sensitivity. */
  readonly remoulded_kpa?: number;
  /** Diameter and height of the vane the reading was taken with, as "55 x 110". */
  readonly vane_mm?: string;
}

/** Everything about the place that the pipeline reads, on one horizontal system and one vertical datum. */
export interface Site {
  readonly crs: Crs;
  readonly datum: string;
  readonly terrain: Raster;
  readonly zones: readonly Zone[];
  readonly starts: readonly Start[];
  readonly plots: readonly Plot[];
  readonly levels: readonly WaterLevel[];
  readonly readings: readonly StrengthReading[];
  /** Half width of the band on every height that rests on the terrain, at 95 % [m]; null = not known. */
  readonly height_band_m: number | null;
  /** What the terrain's heights rest on; null = not known, as for ground that no plan folder gave. */
  readonly ground: GroundEvidence | null;
  /** The record or tide table of the site; null when there is none. */
  readonly series: Series | null;
  /** What the record or table is compared with. */
  readonly compare?: Series | null;
}

export type Metres = Qty<"m">;
