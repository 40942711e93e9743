/** Uniform numbers in [0, 1) that depend on the seed alone. */
export type Random = () => number;

/**
 * A small 32-bit generator: a counter stepped by an odd constant, its bits mixed by multiplications and shifts.
 * Good enough to scatter hummocks; not for statistics. The same seed gives the same sequence on every machine.
 */
export function seededRandom(seed: number): Random {
  let counter = seed >>> 0;
  return () => {
    counter = (counter + 0x6d2b79f5) >>> 0;
    let bits = Math.imul(counter ^ (counter >>> 15), counter | 1);
    bits ^= bits + Math.imul(bits ^ (bits >>> 7), bits | 61);
    return ((bits ^ (bits >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A number between two bounds. */
export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
