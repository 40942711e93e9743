/** A known mark that a tape can be held to. */
export interface Mark {
  readonly id: string;
  readonly x: number;
  readonly y: number;
}

/** A straight baseline: from the first joint, or from the edge of the platform where the way turns. */
export interface SettingLine {
  readonly id: string;
  /** Joint at which the tape begins. */
  readonly from: string;
  /** Compass heading, to a ten-thousandth of a degree. */
  readonly heading_deg: number;
}

/** A distance to a place that is already set out. */
export interface Tie {
  readonly to: string;
  readonly distance_m: number;
}

/** One joint as a crew with tapes sets it out. Lengths are horizontal, to a tenth of a millimetre. */
export interface SetJoint {
  readonly joint: string;
  readonly branch: string;
  readonly along_m: number;
  readonly x: number;
  readonly y: number;
  readonly heading_deg: number;
  readonly deck_m: number;
  readonly ground_m: number;
  readonly support: string;
  readonly support_height_m: number;
  /** Baseline it is measured on: so far along, so far square to it, to the right. */
  readonly line: string;
  readonly distance_m: number;
  readonly offset_m: number;
  /** To two places set out before, the pair whose tapes cross nearest to square; fewer when there are fewer. */
  readonly ties: readonly Tie[];
  /** At which the two tapes cross, 0 to 90; under 30 they hardly fix the place sideways. Null without two ties. */
  readonly crossing_deg: number | null;
}

/** Distance between two joints of a platform: the four are alike when it lies square. */
export interface Diagonal {
  readonly part: string;
  readonly from: string;
  readonly to: string;
  readonly distance_m: number;
}

/** The list a crew sets the walkway out by. */
export interface SettingOut {
  readonly lines: readonly SettingLine[];
  /** In the order of setting out: every tie leads back. */
  readonly joints: readonly SetJoint[];
  readonly diagonals: readonly Diagonal[];
  /** Farthest that any joint, reached by summing the list from the first one, lies from its coordinates. */
  readonly closing_error_m: number;
}
