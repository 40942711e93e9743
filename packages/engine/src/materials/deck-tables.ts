import type { Source } from "../formula/index.ts";

interface Sourced {
  readonly id: string;
  readonly name: string;
  readonly source: string;
  readonly status: Source["status"];
}

/** Round steel wire by gauge. */
export interface WireRow extends Sourced {
  readonly wire_mm: number;
}

/** A ready-made welded mesh: its wire and the distance of the strands, middle to middle. */
export interface MeshRow extends Sourced {
  readonly wire_mm: number;
  readonly pitch_mm: number;
  readonly yield_mpa: number;
}

/** Steel bar grating: the bearing bars alone, upright, at a pitch. */
export interface BarGratingRow extends Sourced {
  readonly bar_thickness_mm: number;
  readonly bar_depth_mm: number;
  readonly bar_pitch_mm: number;
}

/** Dry capacities of a plywood span rating for one foot of width, face grain across the supports. */
export interface PlywoodRow extends Sourced {
  readonly bending_lb_in_per_ft: number;
  readonly stiffness_lb_in2_per_ft: number;
  /** Shear in the plane of the plies, Fs(Ib/Q); null where none is known. */
  readonly shear_lb_per_ft: number | null;
}
