import type { Source, Trace } from "../formula/index.ts";
import type { Fastener, HoleRow } from "../materials/index.ts";
import type { Qty } from "../units/index.ts";
import type { Found, LoadDuration } from "./words.ts";

/**
 * Water in the wood about the fastener. dry: at most 19 % always; wet: above it always, never drying; cycles: it
 * changes between the two in service; fresh: put together wet, dry in service.
 */
export type JointMoisture = "dry" | "wet" | "cycles" | "fresh";

/** One timber of a joint. */
export interface WoodPiece {
  readonly material: "wood";
  readonly thickness_m: number;
  /** Oven-dry specific gravity, for the American rules. */
  readonly gravity?: number;
  /** Characteristic density [kg/m3], for the European rules. */
  readonly density_k?: number;
  /** Between the lateral load and the grain, 0 to 90; thick fasteners need it. */
  readonly angle_deg?: number;
  /** E A along the load [N]; rows of thick fasteners need it. */
  readonly stiffness_n?: number;
}

export interface SteelPlate {
  readonly material: "steel";
  readonly thickness_m: number;
  readonly stiffness_n?: number;
}

/** Fasteners driven through a side piece into a main piece; in double shear on into a second, equal side piece. */
export interface FastenerJoint {
  readonly fastener: Fastener;
  readonly count: number;
  /** Fasteners one behind the other along the grain and the load; 1 when they stand side by side. */
  readonly per_row: number;
  readonly row_spacing_m?: number;
  readonly side: WoodPiece | SteelPlate;
  readonly main: WoodPiece;
  readonly shear: "single" | "double";
  /** What the point is driven into: the side of the main piece's grain or its end. */
  readonly grain: "side" | "end";
  /** Nails driven aslant; then the rule of a third of the length replaces the side piece's thickness. */
  readonly toe_nail: boolean;
  readonly moisture: JointMoisture;
  readonly duration: LoadDuration;
  /** How a reach under ten diameters counts: by the yield equations less half the tip, or by the tables' share. */
  readonly short_reach: "equations" | "table";
  /** European rules ask; the American capacities do not. */
  readonly predrilled?: boolean;
  /** European rules: whether the pull along the fastener may help across it. */
  readonly rope: boolean;
  readonly hole: HoleRow;
}

export interface FastenerCapacity {
  /** All fasteners of the joint, every factor taken; 0 with a reason. */
  readonly value: Qty<"N">;
  /** One fastener before any factor. */
  readonly one: Qty<"N">;
  readonly governs: string;
  /** Why nothing may be counted on; null when `value` is above 0. */
  readonly reason: string | null;
  /** What this value does not cover, each with what is missing. */
  readonly not_checked: readonly string[];
}

/** A load across and a load along the same fasteners [N]. */
export interface FastenerLoads {
  readonly lateral: Qty<"N">;
  readonly withdrawal: Qty<"N">;
}

export interface CombinedUse {
  /** At most 1 passes; null when a loaded direction has no capacity. */
  readonly use: Qty<"1"> | null;
  readonly governs: string;
  readonly reason: string | null;
  readonly lateral: FastenerCapacity;
  readonly withdrawal: FastenerCapacity;
}

/** A least distance, a hole or a caution for the one who builds it. */
export interface GuidanceRow {
  readonly what: string;
  /** Distance or diameter [m]; null for words alone. */
  readonly size_m: number | null;
  readonly how: string;
  readonly source: Source;
}

/** What a design code says of nails and screws. Each answer holds for the whole joint, never NaN. */
export interface FastenerRules {
  readonly id: string;
  readonly title: string;
  /** What its capacities are held against. */
  readonly compare_with: string;
  readonly sources: readonly Source[];
  readonly lateral: (joint: FastenerJoint, trace?: Trace) => Found<FastenerCapacity>;
  readonly withdrawal: (joint: FastenerJoint, trace?: Trace) => Found<FastenerCapacity>;
  readonly combined: (joint: FastenerJoint, loads: FastenerLoads, trace?: Trace) => Found<CombinedUse>;
  readonly guidance: (joint: FastenerJoint, trace?: Trace) => readonly GuidanceRow[];
}

/** No capacity, and why. */
export const noCapacity = (zero: Qty<"N">, reason: string): FastenerCapacity => ({
  value: zero,
  one: zero,
  governs: reason,
  reason,
  not_checked: [],
});
