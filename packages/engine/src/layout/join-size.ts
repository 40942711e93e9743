/** Up to this many plots are joined exactly; each further one is joined to what then stands. */
export const MOST_JOINED_EXACTLY = 4;
/** So many always are, however large the lattice. */
const LEAST_JOINED_EXACTLY = 3;

/**
 * A table holds a whole-number cost and an arc for every joint; its bound two numbers for every lattice point of four
 * joints.
 */
const BYTES_PER_JOINT = 4 + 1 + 2;
/** Besides, each joint notes which tables reach it. */
const BYTES_TO_NOTE = 2;
/** Tables may take this much memory together [bytes]: what a browser's page is sure to get. */
export const MOST_JOINING_BYTES = 1.5e9;

/** Memory for joining plots exactly on a lattice: one table for every set of plots but the empty one [bytes]. */
export const joiningBytes = (joints: number, plots: number): number =>
  ((2 ** plots - 1) * BYTES_PER_JOINT + BYTES_TO_NOTE) * joints;

/** How many plots can be joined exactly on a lattice of so many joints without going over the memory set aside. */
export function plotsJoinedExactly(joints: number): number {
  for (let plots = MOST_JOINED_EXACTLY; plots > LEAST_JOINED_EXACTLY; plots--)
    if (joiningBytes(joints, plots) <= MOST_JOINING_BYTES) return plots;
  return LEAST_JOINED_EXACTLY;
}
