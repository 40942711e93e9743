import type { Source, Trace } from "../formula/index.ts";
import type {
  LumberGrade,
  LumberSize,
  StrengthClass,
  Tables,
  TimberRow,
  WoodDensity,
} from "../materials/index.ts";
import type { Qty } from "../units/index.ts";
import type { FastenerRules, WoodPiece } from "./fastener-contract.ts";
import type { Found, LoadDuration } from "./words.ts";

export type { Found, LoadDuration };

/** One piece of graded lumber: whose values, in which section. Checks read `size`, `density` and `caution`. */
export interface Member {
  /** Row of the code's own table; only the code that found it reads it. */
  readonly grade: LumberGrade | StrengthClass;
  readonly size: LumberSize;
  readonly density: WoodDensity;
  /** What the reader must know of this piece under this code; null when there is nothing. */
  readonly caution: string | null;
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

/**
 * Stresses and stiffness that may be used, and the factors that led to them: allowable stresses against loads as they
 * are, or design strengths against loads times the factors of a combination. Never one turned into the other.
 */
export interface Strengths {
  readonly fb: Qty<"Pa">;
  /** On the full rectangle: what cracks take off is inside. */
  readonly fv: Qty<"Pa">;
  /** Across the grain, for bearing. */
  readonly fcp: Qty<"Pa">;
  readonly fc: Qty<"Pa">;
  readonly e: Qty<"Pa">;
  readonly emin: Qty<"Pa">;
  readonly factors: Readonly<Record<string, number>>;
}

/** Which loads act together, with the factor of each. */
export interface Combination {
  readonly id: string;
  readonly title: string;
  /** strength: against what the timber may carry; service: deflection and the like. */
  readonly state: "strength" | "service";
  readonly dead: number;
  readonly live: number;
  /** Of the shortest load in it. */
  readonly duration: LoadDuration;
  readonly source: Source;
}

/** A limit of deflection that a code or custom names. A preference, not a law: checks say which limit they hold. */
export interface DeflectionLimit {
  readonly id: string;
  readonly title: string;
  /** live: at once under the live load; final: all loads, after creep. */
  readonly of: "live" | "final";
  /** Span over this, from the laxest to the strictest that is usual. */
  readonly span_over: readonly [lax: number, strict: number];
  readonly is_preference: true;
  readonly source: Source;
}

/** By what a deflection at once is multiplied to have it after years: the lasting part of each load creeps. */
export interface Creep {
  readonly dead: Qty<"1">;
  readonly live: Qty<"1">;
}

/** Where a member is pressed across the grain. Lengths along its grain, in metres. */
export interface Contact {
  readonly length_m: number;
  /** From the contact to the nearer end of the member; 0 at the end. */
  readonly to_end_m: number;
  /** Clear to the next contact on the other side. */
  readonly to_next_m: number;
  /** discrete: supports under a beam; continuous: a sill pressed all along from below. */
  readonly support: "discrete" | "continuous";
}

/** What bears there: a stress over an effective length, over the full breadth. */
export interface Bearing {
  readonly strength: Qty<"Pa">;
  readonly length: Qty<"m">;
}

/** A square notch on the tension face at the end of a member. */
export interface EndNotch {
  /** Depth that is left. [m] */
  readonly left_m: number;
  /** From the line of the reaction to the corner of the notch. [m] */
  readonly reaction_to_corner_m: number;
}

/** What a check asks a code for, by which it names the clause of its result. */
export type Clause = "bending" | "shear" | "notch" | "deflection" | "bearing" | "column" | "screws";

/**
 * What a design code gives to the checks. A plan holds its code by id; there is no global current code. Shared
 * mechanics live in `structure`; a code folder holds only combinations, strengths, factors and limits.
 */
export interface DesignCode {
  readonly id: string;
  readonly title: string;
  readonly safety: "allowable-stress" | "partial-factors";
  readonly combinations: readonly Combination[];
  readonly deflection_limits: readonly DeflectionLimit[];
  /** The clause behind a check. */
  readonly rule: (clause: Clause) => Source;
  /** Every wood that its tables hold, for a list to choose from. */
  readonly woods: (tables: Tables) => readonly TimberRow[];
  /** Looks up species, grade and size; every unknown word is a problem that lists the known ones. */
  readonly member: (tables: Tables, species: string, grade: string, size: string) => Found<Member>;
  /** All strengths at once; the working receives those `wanted`, all when left out. */
  readonly strength: (
    member: Member,
    situation: Situation,
    trace?: Trace,
    wanted?: readonly Wanted[],
  ) => Strengths;
  /** Strength across the grain at one contact. */
  readonly bearing: (member: Member, situation: Situation, contact: Contact, trace?: Trace) => Bearing;
  /** Shear that a member standing on edge may carry at an end with a notch [N]; 0 for a notch that is not allowed. */
  readonly notchedShear: (member: Member, situation: Situation, notch: EndNotch, trace?: Trace) => Qty<"N">;
  readonly creep: (wet: boolean, trace?: Trace) => Creep;
  /** What the code says of nails and screws. */
  readonly fasteners: FastenerRules;
  /** A member as one of the timbers of a joint. */
  readonly woodPiece: (member: Member, thickness_m: number) => WoodPiece;
}
