import type { Problem } from "../formula/index.ts";

export type Spot = readonly [number, number];
/** Closed or open ring of corners, grid metres. */
export type Outline = readonly Spot[];
/** Polygons of one zone: outer ring first, then its holes. */
export type Areas = readonly (readonly Outline[])[];

/** Heights of cell centres, rows from south to north, NaN where nothing is known [m on the site datum]. */
export interface AuditTerrain {
  readonly cols: number;
  readonly rows: number;
  readonly x0: number;
  readonly y0: number;
  readonly dx: number;
  readonly dy: number;
  readonly values: Float32Array;
}

export interface AuditZone {
  readonly id: string;
  readonly use: string;
  readonly polygons: Areas;
  /** Month and day, `04-15`, both inclusive; a seasonal closure without them is always in force. */
  readonly from?: string;
  readonly to?: string;
  /** Kept clear around the zone by the same rule [m]; none when left out. */
  readonly buffer_m?: number;
}

export interface AuditStart {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

export interface AuditPlot extends AuditStart {
  readonly keep_off_m: number;
  readonly reach_m: number;
  /** Side of the plot from which it must be reached, a quarter of the compass; any when left out. */
  readonly arrive_from?: "north" | "east" | "south" | "west";
}

export interface AuditSupportKind {
  readonly id: string;
  readonly height_min_mm: number;
  readonly height_max_mm: number;
  readonly feet: readonly {
    readonly along_mm: number;
    readonly across_mm: number;
    readonly offset_across_mm: number;
  }[];
  readonly stands: { readonly ground_above_m: number | null; readonly not_in: readonly string[] };
}

/** The facts of the kit that a layout can be held against. A whole kit document fits. */
export interface AuditKit {
  readonly lengths_mm: readonly number[];
  readonly joint_gap_mm: number;
  readonly platform: { readonly side_mm: number };
  readonly supports: readonly AuditSupportKind[];
}

/**
 * What the audit is given: the written layout and the facts it must respect, nothing of the search.
 *
 * layout          the parsed `layout.geojson`, coordinates in grid metres; see `readLayout` for the members
 * module_depth_m  underside of a module to the top of its deck, the same for module and platform  [m], > 0
 * max_grade       largest rise over run between the two joints of a module                        [1], >= 0
 * min_clear_mm    least height of the module's underside above the ground at a joint              [mm], >= 0
 * laying          first and last day of laying, ISO dates, both inclusive
 */
export interface AuditInput {
  readonly layout: unknown;
  readonly terrain: AuditTerrain;
  readonly zones: readonly AuditZone[];
  readonly starts: readonly AuditStart[];
  readonly plots: readonly AuditPlot[];
  readonly kit: AuditKit;
  readonly module_depth_m: number;
  readonly laying: { readonly from: string; readonly to: string };
  readonly max_grade: number;
  readonly min_clear_mm: number;
}

export interface LaidModule {
  readonly id: string;
  readonly branch: string;
  readonly length_m: number;
  readonly heading_deg: number;
  readonly from: string;
  readonly to: string;
  readonly along_m: number;
  readonly outline: Outline;
}

export interface LaidPlatform {
  readonly id: string;
  readonly branch: string;
  readonly side_m: number;
  readonly heading_deg: number;
  readonly from: string;
  readonly ahead: string;
  readonly left: string;
  readonly right: string;
  readonly outline: Outline;
}

export interface LaidJoint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly branch: string;
  readonly along_m: number;
  readonly ground_m: number;
  readonly deck_m: number;
  readonly support: string;
  readonly support_height_m: number;
}

export interface LaidFoot {
  readonly joint: string;
  readonly index: number;
  readonly outline: Outline;
}

export interface LaidBranch {
  readonly id: string;
  readonly from: string;
  readonly to_plot: string;
}

export interface ClaimedReach {
  readonly plot: string;
  readonly joint: string;
  readonly distance_m: number;
}

/** A layout as read back from its file. */
export interface LaidOut {
  readonly modules: readonly LaidModule[];
  readonly platforms: readonly LaidPlatform[];
  readonly joints: ReadonlyMap<string, LaidJoint>;
  readonly feet: readonly LaidFoot[];
  readonly branches: readonly LaidBranch[];
  readonly reached: readonly ClaimedReach[];
}

/** One rule of the audit. `tested` counts what was held against it, so that a pass on nothing is visible. */
export interface RuleReport {
  readonly rule: string;
  readonly tested: number;
  readonly problems: readonly Problem[];
}

export interface AuditReport {
  readonly rules: readonly RuleReport[];
  /** True when no rule found a problem. */
  readonly ok: boolean;
}
