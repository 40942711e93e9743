/** Stiffness of one member in bending [N*m2], shear [N] and torsion [N*m2]. */
export interface MemberStiffness {
  readonly ei: number;
  readonly ga: number;
  readonly gj: number;
}

/** One row of cross pieces across the part. */
export interface CrossRow extends MemberStiffness {
  /** Middle of the row from the part's start [m]. */
  readonly x_m: number;
}

/** Where a stringer rests, from the part's start [m]. */
export interface Rest {
  readonly x_m: number;
  readonly stringer: number;
}

/**
 * A module or platform as a structure: stringers along, rows of cross pieces between them, bearings below.
 *
 * deck  "stringers": boards hand every load to the two stringers beside it; "rows": panels and mesh hand it to the
 *       two rows of cross pieces beside it
 */
export interface FrameRecipe {
  readonly length_m: number;
  /** Stringer middles across, rising, from the middle line [m]. */
  readonly stringers_y_m: readonly number[];
  /** How many pieces stand face to face at each of these places and act as one; forces are told for one piece. */
  readonly pieces: readonly number[];
  /** Of one piece. */
  readonly stringer: MemberStiffness;
  readonly rows: readonly CrossRow[];
  /** Boards that run through over three stringers or more and tie them; none where a board ends at every stringer. */
  readonly boards: readonly CrossRow[];
  readonly rests: readonly Rest[];
  readonly deck: "stringers" | "rows";
  /** Own weight of the whole part along it [N/m]. */
  readonly own_n_m: number;
  /** Longest division of the part between which effects are read [m]: moments are met within 1.6 (division/length)^2. */
  readonly division_m: number;
}

/** How the ends of cross pieces are taken, and what is wrong with the part. */
export interface FrameState {
  readonly name: string;
  /**
   * Screws in end grain lie between a hinge and a stiff joint: both are worked out. With hinges the cross pieces hand
   * on nothing but what stands on them, and boards tie the stringers; stiff, the cross pieces do all of that.
   */
  readonly ends: "hinged" | "stiff";
  /** One bearing lower than the others. */
  readonly settled?: { readonly rest: number; readonly by_m: number };
  /** A row of cross pieces that is gone. */
  readonly lost_row?: number;
}

/** One load of a kind: where its parts press across the part, from its middle; the parts sum to 1. */
export interface AcrossPart {
  readonly y_m: number;
  readonly part: number;
}

/** Feet or a cart's axle standing at one place across the part. */
export interface AcrossPlace {
  /** Tells kinds of load apart: feet, or one cart. */
  readonly kind: string;
  /** How far its middle stands from the part's middle line [m]. */
  readonly off_m: number;
  readonly parts: readonly AcrossPart[];
}

/** All kinds of load, each pushed to where it loads one stringer most. */
export interface Placement {
  readonly stringer: number;
  readonly places: readonly AcrossPlace[];
}

/** One load of a train along the walkway: place in the train [m], weight [N], kind. */
export interface FrameLoad {
  readonly at_m: number;
  readonly weight_n: number;
  readonly kind: string;
}

export interface FrameCase {
  readonly name: string;
  readonly loads: readonly FrameLoad[];
  /** An even load along the whole of each stringer [N/m], there wherever `loads` stand. */
  readonly area_n_m?: readonly number[];
}

/** Factors on own weight and on what walks and rolls: those of a design code's combination. */
export interface LoadFactors {
  readonly own: number;
  readonly live: number;
}
