import type { Polygons } from "../site/index.ts";

/** Compass heading in degrees, clockwise from grid north. */
export type Heading = number;

/** Where parts meet over a support. `x`, `y` lie in the middle of the gap; heights are on the site datum. */
export interface Joint {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** Heading of travel away from the start. */
  readonly heading_deg: Heading;
  readonly branch: string;
  /** Measured on the branch from its beginning; the trunk's begins at the start. */
  readonly along_m: number;
  readonly ground_m: number;
  /** Top of the deck. */
  readonly deck_m: number;
  /** Id of the support kind, and its height from the ground to the underside of the module. */
  readonly support: string;
  readonly support_height_m: number;
  /** Ground under each foot of the support, as rectangles. */
  readonly feet: Polygons;
}

export interface ModulePart {
  readonly id: string;
  readonly kind: "module";
  readonly branch: string;
  readonly length_m: number;
  readonly heading_deg: Heading;
  /** Joint ids: `from` is nearer the start. */
  readonly from: string;
  readonly to: string;
  readonly along_m: number;
  /** Plan outline of the body, widest part (deck or curb). */
  readonly outline: Polygons;
  /** Id of the channel or pool it bridges, if its clear span crosses one. */
  readonly bridges: readonly string[];
}

export interface PlatformPart {
  readonly id: string;
  readonly kind: "platform";
  readonly use: "turning" | "passing";
  readonly branch: string;
  readonly side_m: number;
  readonly x: number;
  readonly y: number;
  readonly heading_deg: Heading;
  /** Joint it is entered by. */
  readonly from: string;
  /** Joints of the other edges, in use or only carrying the platform: straight on, left, right. */
  readonly exits: { readonly ahead: string; readonly left: string; readonly right: string };
  readonly along_m: number;
  readonly outline: Polygons;
  readonly bridges: readonly string[];
}

export type Part = ModulePart | PlatformPart;

export interface Branch {
  readonly id: string;
  /** The start's id, or the platform it leaves. */
  readonly from: string;
  readonly to_plot: string;
  readonly parts: readonly string[];
  readonly length_m: number;
}

export interface ReachedPlot {
  readonly plot: string;
  readonly joint: string;
  /** Joint to plot, measured along the ground plan. */
  readonly distance_m: number;
  /** From the start along the walkway. */
  readonly walk_m: number;
}

export interface UnreachedPlot {
  readonly plot: string;
  readonly because: string;
  /** The least clear width that would have to be bridged, and where; null when no gap explains it. */
  readonly gap: {
    readonly width_m: number;
    readonly over: string;
    readonly from: readonly [number, number];
    readonly to: readonly [number, number];
  } | null;
}

/** A finished layout: real parts, real joints, what was reached, and what in it is exact or heuristic. */
export interface Layout {
  readonly heading_deg: Heading;
  readonly lattice_m: number;
  readonly joints: readonly Joint[];
  readonly parts: readonly Part[];
  readonly branches: readonly Branch[];
  readonly reached: readonly ReachedPlot[];
  readonly unreached: readonly UnreachedPlot[];
  /** How it is entered, from `entryRamps`; left out until that is worked out. */
  readonly ramps?: readonly RampPart[];
  readonly notes: readonly string[];
  readonly search: {
    readonly headings: number;
    /** What the search believed the chosen network costs, weighted; the true value is in the evaluation. */
    readonly estimate: number;
  };
  /** How drawn lines were followed; null = the line was searched. */
  readonly line: LineFit | null;
  /** What lies in the field already; null = nothing was read back. */
  readonly as_laid: AsLaidReport | null;
}

/** The parts of a layout that come from laying them out. */
export type LaidParts = Pick<
  Layout,
  "heading_deg" | "lattice_m" | "joints" | "parts" | "branches" | "reached"
>;

/** How the walkway is entered at a start, from `entryRamps`: by a ramp of the kit, or by a step. */
export interface RampPart {
  /** Ids of the start and of the first joint. */
  readonly start: string;
  readonly joint: string;
  /** Heading of travel away from the start. */
  readonly heading_deg: Heading;
  /** Ground to deck at the first joint: the step where there is no ramp. */
  readonly step_m: number;
  /** Length of the ramp's body; null = the kit has no ramp, or none reaches the ground. */
  readonly length_m: number | null;
  /** Rise over run as it lies. */
  readonly grade: number | null;
  /** Whether the grade is kept; null = the kit has no ramp. */
  readonly keeps_grade: boolean | null;
  /** Where its foot lies on the ground. */
  readonly foot: { readonly x: number; readonly y: number; readonly ground_m: number } | null;
  readonly outline: Polygons;
  /** Whether it may lie there, and why not; null = the kit has no ramp. */
  readonly allowed: boolean | null;
  readonly because: string | null;
}

/** True values of a finished layout, from `evaluateLayout`. */
export interface LayoutFigures {
  readonly length_m: number;
  readonly modules: readonly { readonly length_m: number; readonly count: number }[];
  readonly platforms: number;
  readonly joints: number;
  readonly shaded_m2: number;
  readonly shaded_by_zone: readonly {
    readonly zone: string;
    readonly name: string;
    readonly area_m2: number;
  }[];
  readonly contact_m2: number;
  readonly crossings: readonly {
    readonly zone: string;
    readonly name: string;
    readonly part: string;
    readonly clear_m: number;
  }[];
  readonly lowest_deck_clear_m: number;
  readonly steepest_grade: number;
  /** Weighted sum by kind, in money. */
  readonly weighted: {
    readonly money: number;
    readonly shade: number;
    readonly contact: number;
    readonly crossings: number;
    readonly total: number;
  };
}

/** Weights of the layout search, all in money: what the owner would pay to avoid one unit of the harm. */
export interface Weights {
  readonly money: number;
  /** Per square metre of shaded ground, times the zone's sensitivity. */
  readonly shade_per_m2: number;
  /** Per square metre of ground under a support, times the zone's sensitivity. */
  readonly contact_per_m2: number;
  /** For each crossing of a channel or pool. */
  readonly crossing: number;
}

export interface LayoutChoice {
  readonly weights: Weights;
  /** Step of the sweep over the lattice's heading, degrees; 90 = one heading only. */
  readonly heading_step_deg: number;
  readonly first_heading_deg: number;
  /** Largest rise over run between two joints. */
  readonly max_grade: number;
  /** Deck underside at least this far above the ground at a joint. */
  readonly min_clear_mm: number;
  /** Lines drawn by hand; empty = the line is searched. */
  readonly lines: readonly DrawnLine[];
  /** Farthest from one passing platform to the next along the walkway [m]; null = none are asked for. */
  readonly passing_every_m: number | null;
  /** Joints that already lie in the field: what is laid stays, the rest is fitted anew. */
  readonly as_laid: readonly LaidJoint[];
  /** Slop that a crew works to, either way [mm]. */
  readonly slop_mm: number;
}

/** A line that was agreed with somebody: parts are fitted along it, and what deviates or breaks a rule is marked. */
export interface DrawnLine {
  readonly id: string;
  /** The first line begins at a start; a later one at the nearest place of an earlier one. */
  readonly points: readonly (readonly [number, number])[];
  /** The plot it leads to; null = it ends at its last point. */
  readonly plot: string | null;
  /** How far to either side a part's middle line may lie [m]. */
  readonly corridor_m: number;
}

/** One joint read back from the field, by the tag of the layout that was laid. */
export interface LaidJoint {
  readonly joint: string;
  readonly x: number;
  readonly y: number;
  /** Top of the deck on the site datum; null = not read. */
  readonly deck_m: number | null;
  readonly date: string;
}

/** How well fitted parts follow the lines they were fitted to, and every rule they break; nothing is hidden. */
export interface LineFit {
  readonly lines: readonly FittedLine[];
  readonly broken: readonly BrokenRule[];
}

export interface FittedLine {
  readonly id: string;
  /** Of the parts' middle line from the drawn line; null = no part was fitted to it. */
  readonly max_deviation_m: number | null;
  readonly rms_deviation_m: number | null;
  /** Where the deviation is largest; without parts, where the line begins. */
  readonly at: readonly [number, number];
  /** Every part's middle line lies within the corridor. */
  readonly within_corridor: boolean;
  /** Stretches of the drawn line, measured along it, with no part within the corridor. */
  readonly not_followed: readonly {
    readonly from_m: number;
    readonly to_m: number;
    readonly from: readonly [number, number];
    readonly to: readonly [number, number];
  }[];
}

/** A rule that fitted parts break, or something a line asks for that the kit cannot make. */
export interface BrokenRule {
  readonly rule: string;
  /** Id of the part or joint; of the line where the line itself asks for it. */
  readonly part_or_joint: string;
  readonly place: readonly [number, number];
  readonly message: string;
  readonly mend: string;
}

/** What lies in the field against what was planned. */
export interface AsLaidReport {
  readonly joints: readonly LaidDeviation[];
  /** Parts that stay as they lie. */
  readonly kept: readonly string[];
  /** Parts of the earlier layout that were fitted anew. */
  readonly refitted: readonly string[];
  /** Tags that the earlier layout does not have; their readings were left aside. */
  readonly unknown: readonly string[];
}

export interface LaidDeviation {
  readonly joint: string;
  /** As laid less planned [m]. */
  readonly dx_m: number;
  readonly dy_m: number;
  /** Along the heading of travel, and to its right [m]. */
  readonly along_m: number;
  readonly across_m: number;
  /** Null = the deck was not read [m]. */
  readonly dz_m: number | null;
  /** Along, across and, where read, dz are each within the slop. */
  readonly within_slop: boolean;
}
