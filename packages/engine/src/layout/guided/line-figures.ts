import type { FittedLine } from "../types.ts";
import type { Spot } from "./guide.ts";
import { nearestOn, readAlong } from "./polyline.ts";

/** Middle lines and drawn lines are read this far apart [m]. */
const READ_SPACING = 0.05;
/** A middle line that leaves the corridor by less than this is within it [m]. */
const SLACK = 1e-6;
/** Distances below this are the rounding of coordinates [m]. */
const ROUNDING = 1e-8;

/**
 * How parts follow one drawn line: largest and root mean square distance of their middle lines from it, read every
 * 50 mm, and the stretches of the line with no part within its corridor. `middles` empty: no part was fitted.
 */
export function lineFigures(
  id: string,
  drawn: readonly Spot[],
  middles: readonly (readonly Spot[])[],
  corridor_m: number,
): FittedLine {
  const lines = middles.filter((m) => m.length > 1);
  if (lines.length === 0)
    return {
      id,
      max_deviation_m: null,
      rms_deviation_m: null,
      at: drawn[0]!,
      within_corridor: false,
      not_followed: [wholeOf(drawn)],
    };
  const read = lines.flatMap((m) =>
    readAlong(m, READ_SPACING).map(({ at, along_m }, n, own) => ({
      at,
      long_m: n === 0 ? 0 : along_m - own[n - 1]!.along_m,
    })),
  );
  const off = read.map(({ at }) => nearestOn(drawn, at).distance_m).map((d) => (d < ROUNDING ? 0 : d));
  const worst = off.reduce((best, d, n) => (d > off[best]! ? n : best), 0);
  let [sum, long] = [0, 0];
  read.forEach(({ long_m }, n) => {
    if (long_m === 0) return;
    sum += ((off[n - 1]! ** 2 + off[n]! ** 2) / 2) * long_m;
    long += long_m;
  });
  return {
    id,
    max_deviation_m: off[worst]!,
    rms_deviation_m: Math.sqrt(sum / Math.max(1e-9, long)),
    at: read[worst]!.at,
    within_corridor: off[worst]! <= corridor_m + SLACK,
    not_followed: notFollowed(drawn, lines, corridor_m),
  };
}

function wholeOf(drawn: readonly Spot[]): FittedLine["not_followed"][number] {
  const to_m = readAlong(drawn, 1000).at(-1)!.along_m;
  return { from_m: 0, to_m, from: drawn[0]!, to: drawn.at(-1)! };
}

function notFollowed(
  drawn: readonly Spot[],
  middles: readonly (readonly Spot[])[],
  corridor_m: number,
): FittedLine["not_followed"] {
  const stretches: { from_m: number; to_m: number; from: Spot; to: Spot }[] = [];
  let isOpen = false;
  for (const { at, along_m } of readAlong(drawn, 2 * READ_SPACING)) {
    const isFar = Math.min(...middles.map((m) => nearestOn(m, at).distance_m)) > corridor_m + SLACK;
    if (isFar && !isOpen) stretches.push({ from_m: along_m, to_m: along_m, from: at, to: at });
    if (isFar) Object.assign(stretches.at(-1)!, { to_m: along_m, to: at });
    isOpen = isFar;
  }
  return stretches;
}
