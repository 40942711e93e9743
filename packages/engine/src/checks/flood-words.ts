import type { StakeState } from "../anchors/index.ts";

/** How stakes stand, in words that follow what they are. */
export const STATE_WORDS: Readonly<Record<StakeState, string>> = {
  fresh: "just driven",
  set: "set for weeks",
  loosened: "worked loose by floods",
};

/** Caution under every check of moving water. */
export const PARTED =
  "Steady flow along level ground, speeds as told. The module must be tied to its supports, and these to their stakes.";

/** What is missing when the plan tells no speed. */
export const NO_SPEED =
  "the speed of the water over the ground in a flood: measure it, or estimate it from what drifts by";
