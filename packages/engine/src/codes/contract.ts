import type { Problem, Source, Trace } from "../formula/index.ts";
import type { Fastener, LumberGrade, LumberSize, Tables } from "../materials/index.ts";
import type { Qty } from "../units/index.ts";

export type LoadDuration = "permanent" | "ten-years" | "two-months" | "seven-days" | "ten-minutes" | "impact";

/** One piece of graded lumber: whose values, in which section. */
export interface Member {
  readonly grade: LumberGrade;
  readonly size: LumberSize;
}

/** How a member stands and lives. Lengths in metres. */
export interface Situation {
  /** edge: narrow face up; flat: wide face up. */
  readonly use: "edge" | "flat";
  readonly wet: boolean;
  readonly incised: boolean;
  /** Three or more alike, at most 24 in apart, joined by boards that share the load. */
  readonly repetitive: boolean;
  readonly duration: LoadDuration;
  /** Length without hold against sideways buckling; absent = the pressed edge is held all along. */
  readonly unbraced_m?: number;
  readonly unbraced_load?: "uniform" | "midspan-point";
  /** Free length of a post; absent = held all along. */
  readonly column_m?: number;
}

/** Which strengths a reader wants to see worked out: bending, shear, bearing, compression, both stiffnesses. */
export type Wanted = "fb" | "fv" | "fcp" | "fc" | "e" | "emin";

/** Stresses and stiffness that may be used, and the factors that led to them. */
export interface Strengths {
  readonly fb: Qty<"Pa">;
  readonly fv: Qty<"Pa">;
  /** Across the grain, for bearing. */
  readonly fcp: Qty<"Pa">;
  readonly fc: Qty<"Pa">;
  readonly e: Qty<"Pa">;
  readonly emin: Qty<"Pa">;
  readonly factors: Readonly<Record<string, number>>;
}

/** Screws driven through a side piece into the end of a main piece. */
export interface ScrewJoint {
  readonly screw: Fastener;
  readonly count: number;
  readonly side_m: number;
  readonly gravity: number;
  readonly end_grain: boolean;
  readonly wet: boolean;
  readonly duration: LoadDuration;
}

export interface ScrewCapacity {
  /** All screws of the joint, across their length [N]; 0 when they reach in too little. */
  readonly lateral: Qty<"N">;
  readonly mode: string;
}

export interface Combination {
  readonly id: string;
  readonly title: string;
  readonly dead: number;
  readonly live: number;
  readonly source: Source;
}

export type Found<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * What a design code gives to the checks. A plan holds its code by id; there is no global current code. Shared
 * mechanics live in `structure`; a code folder holds only combinations, strengths, factors and limits.
 */
export interface DesignCode {
  readonly id: string;
  readonly title: string;
  readonly safety: "allowable-stress";
  readonly combinations: readonly Combination[];
  readonly rule: (at: string) => Source;
  /** Looks up species, grade and size; every unknown word is a problem that lists the known ones. */
  readonly member: (tables: Tables, species: string, grade: string, size: string) => Found<Member>;
  /** All strengths at once; the working receives those `wanted`, all when left out. */
  readonly strength: (
    member: Member,
    situation: Situation,
    trace?: Trace,
    wanted?: readonly Wanted[],
  ) => Strengths;
  /** Fails with a problem for a fastener this code has no lateral value for. */
  readonly screws: (joint: ScrewJoint, trace?: Trace) => Found<ScrewCapacity>;
}
