/**
 * How far two drawn things may miss each other [m]. Parts fit to 1 mm; the rest is the rounding of the file, whose
 * coordinates may be written to the millimetre: two such points can be up to 1.42 mm out.
 */
export const FIT_M = 0.0015;

/** How far heights that are written as numbers may be out [m]. */
export const LEVEL_M = 0.001;

/** Foot ground may read this much below its limit: two readings of one survey differ by no more [m]. */
export const GROUND_M = 0.02;

/** Ground may fall by this much across one foot: more leaves part of it in the air [m]. */
export const FALL_M = 0.1;

/** The first joint stands within this of the start [m]. */
export const START_M = 0.5;
