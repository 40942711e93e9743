import type { BrokenRule } from "../types.ts";
import { bearing } from "./headings.ts";
import type { Spot } from "./guide.ts";
import { between, nearestOn, readAlong } from "./polyline.ts";

/** A bend below this is taken up by steps and not worth a word; a corner within `SQUARE` of a quarter turn is one [degrees]. */
const BEND = 15;
const SQUARE = 5;

/**
 * Corners of a drawn line that no platform makes, each with what was built there instead: a platform turns by 90
 * degrees, so other corners become steps.
 *
 * middle   of the fitted parts; turns: middles of the platforms on which they turn
 * near_m   so far around a corner counts as at the corner
 * heading  of the lattice [degrees]
 */
export function impossibleCorners(
  line: string,
  drawn: readonly Spot[],
  middle: readonly Spot[],
  turns: readonly Spot[],
  near_m: number,
  heading_deg: number,
): BrokenRule[] {
  return drawn.slice(1, -1).flatMap((corner, n): BrokenRule[] => {
    const turn = turnAt(drawn[n]!, corner, drawn[n + 2]!);
    if (turn < BEND || Math.abs(turn - 90) <= SQUARE) return [];
    const built = turns.filter((t) => between(t, corner) <= near_m).length;
    const off = readAlong(middle, 0.1)
      .filter(({ at }) => between(at, corner) <= near_m)
      .reduce((most, { at }) => Math.max(most, nearestOn(drawn, at).distance_m), 0);
    const [a, b] = [headingText(heading_deg), headingText(heading_deg + 90)];
    return [
      {
        rule: "corner",
        part_or_joint: line,
        place: corner,
        message: `The line turns by ${turn.toFixed(0)} degrees here; a platform turns by 90. Nearest that can be built: ${turnsText(built)}, up to ${off.toFixed(2)} m off the line.`,
        mend: `Draw the corner square, or draw its legs along the walkway's own headings, ${a} and ${b} degrees.`,
      },
    ];
  });
}

function turnAt(before: Spot, at: Spot, after: Spot): number {
  const turn = Math.abs(bearing(at, after) - bearing(before, at));
  return turn > 180 ? 360 - turn : turn;
}

const headingText = (deg: number): string => (((deg % 180) + 180) % 180).toFixed(1);

const turnsText = (n: number): string =>
  n === 0 ? "straight on" : n === 1 ? "one platform, turning by 90 degrees" : `steps over ${n} platforms`;
