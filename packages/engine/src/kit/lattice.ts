import type { Kit } from "./types.ts";

/** Pitches are compared in whole tenths of a millimetre: no tape reads finer. */
const PER_MM = 10;
/** A step shorter than this makes the search as fine as the crew's slop and no longer tells two places apart. */
export const SHORTEST_STEP_MM = 50;

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Every distance the lattice must hold: each module's pitch, and half a platform's [mm]. */
export const latticeLengths = (kit: Kit): number[] => [
  ...kit.lengths_mm.map((l) => l + kit.joint_gap_mm),
  (kit.platform.side_mm + kit.joint_gap_mm) / 2,
];

/**
 * The longest step of which all lengths are whole multiples.
 *
 * lengths_mm  distances, each > 0                                  [mm]
 * returns     greatest common divisor in whole tenths of a mm      [mm]; 0 for an empty list
 */
export const commonStep = (lengths_mm: readonly number[]): number =>
  lengths_mm.map((l) => Math.round(l * PER_MM)).reduce(gcd, 0) / PER_MM;

/** The kit's lattice step [mm]. */
export const latticeStep = (kit: Kit): number => commonStep(latticeLengths(kit));

/** Lengths that are no whole number of tenths of a millimetre, so the lattice would drift from the real parts. */
export const betweenTenths = (lengths_mm: readonly number[]): number[] =>
  lengths_mm.filter((l) => Math.abs(l * PER_MM - Math.round(l * PER_MM)) > 0.1);

/** The same kit with every body sawn shorter by the joint gap, so that length + gap is the old length. */
export const shortenedByGap = (kit: Kit): Kit => ({
  ...kit,
  lengths_mm: kit.lengths_mm.map((l) => Math.round((l - kit.joint_gap_mm) * PER_MM) / PER_MM),
  platform: {
    ...kit.platform,
    side_mm: Math.round((kit.platform.side_mm - kit.joint_gap_mm) * PER_MM) / PER_MM,
  },
});
