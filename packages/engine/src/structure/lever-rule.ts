/**
 * Share of a unit load that each stringer takes by the lever rule: cross pieces span freely from stringer to
 * stringer, and a load outside the outer stringer levers on the outer pair (share above 1, its neighbour negative).
 *
 * positions  stringer centres across the walkway, rising, two or more [m]
 * at         place of the load across [m]
 * Returns one share per stringer; they sum to 1.
 */
export function leverShares(positions: readonly number[], at: number): number[] {
  const last = positions.length - 1;
  let bay = 0;
  while (bay < last - 1 && at > positions[bay + 1]!) bay++;
  const right = (at - positions[bay]!) / (positions[bay + 1]! - positions[bay]!);
  return positions.map((_, i) => (i === bay ? 1 - right : i === bay + 1 ? right : 0));
}

/** Loads across the walkway that move together: `offset` from the vehicle's middle [m], `part` of its weight. */
export type AcrossLoads = readonly { readonly offset: number; readonly part: number }[];

export interface WorstShare {
  readonly share: number;
  /** Middle of the vehicle, across, when it is worst [m]. */
  readonly at: number;
}

/**
 * Largest share of a vehicle's weight that one stringer takes when its middle may stand anywhere within +-reach.
 * Exact: the share is straight between the places where a load passes a stringer.
 */
export function worstShare(
  positions: readonly number[],
  stringer: number,
  loads: AcrossLoads,
  reach: number,
): WorstShare {
  const places = [-reach, reach];
  for (const { offset } of loads)
    for (const p of positions) if (Math.abs(p - offset) <= reach) places.push(p - offset);
  let worst: WorstShare = { share: -Infinity, at: 0 };
  for (const at of places) {
    let share = 0;
    for (const { offset, part } of loads) share += part * leverShares(positions, at + offset)[stringer]!;
    if (share > worst.share) worst = { share, at };
  }
  return worst;
}
