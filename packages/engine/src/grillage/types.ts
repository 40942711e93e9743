/** A node of a grillage in plan [m]. */
export interface GrillageNode {
  readonly x: number;
  readonly y: number;
}

/**
 * A straight prismatic beam between two nodes, in bending, shear and torsion.
 *
 * ei  bending stiffness [N*m2] > 0
 * ga  shear stiffness, shear area times G [N] > 0; null leaves shear deformation out
 * gj  torsional stiffness [N*m2] >= 0
 */
export interface Beam {
  readonly from: number;
  readonly to: number;
  readonly ei: number;
  readonly ga: number | null;
  readonly gj: number;
  /** An end that hands on shear alone: neither bending moment nor torsion. */
  readonly free_from?: boolean;
  readonly free_to?: boolean;
}

/** A bearing that pushes and never pulls. */
export interface Bearing {
  readonly node: number;
  /** How far its top lies below the level of the others [m]; 0 unless it has settled. */
  readonly settled_m: number;
}

export interface Grillage {
  /** Numbered along the walkway: the bandwidth of the solution follows the numbering. */
  readonly nodes: readonly GrillageNode[];
  readonly beams: readonly Beam[];
  readonly bearings: readonly Bearing[];
}

/** A load on a node: force down [N], and the moments that work on the slopes dw/dx and dw/dy [N*m]. */
export interface NodeLoad {
  readonly node: number;
  readonly down: number;
  readonly along?: number;
  readonly across?: number;
}

/** Which bearings touch. */
export type Contact = readonly boolean[];

/** Forces inside one beam at its two ends. Moments sag positive; shear is dM/ds along the beam. */
export interface BeamForces {
  readonly moment_from: number;
  readonly moment_to: number;
  readonly shear: number;
  readonly torsion: number;
}
