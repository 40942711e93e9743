/** Lowest ground on which a support may stand: above the pools' floors and the creek banks [m on the local datum]. */
const STANDING_M = 1.2;

/** The ready kit of the demo, and on what ground its supports may stand. */
export const KIT = {
  ready: "meadow-boards",
  supports: [
    { id: "sleeper", ground_above_m: STANDING_M },
    { id: "open-crate", ground_above_m: STANDING_M },
    { id: "post-pair", ground_above_m: STANDING_M },
  ],
} as const;
