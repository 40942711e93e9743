import type { LayoutChoice } from "../types.ts";
import { between, withoutRepeats } from "./polyline.ts";
import type { Spot } from "./guide.ts";

/** So many headings of the lines' own legs are looked at, the longest legs first. */
const MOST_OWN = 12;
/** So many headings are tried, those along which most of the lines lie. */
const MOST_TRIED = 4;
const ALIKE_DEG = 0.05;

export const bearing = (a: Spot, b: Spot): number =>
  ((Math.atan2(b[0] - a[0], b[1] - a[1]) * 180) / Math.PI + 360) % 360;

/**
 * Headings to try for drawn lines: of those of their long legs, of all legs taken together, and of the sweep, the few
 * along or across which most of the lines lie. The lattice looks the same after a quarter turn, so each lies in [0, 90).
 */
export function fitHeadings(
  lines: readonly (readonly Spot[])[],
  choice: LayoutChoice,
  long_m: number,
): number[] {
  const legs = lines.flatMap((points) =>
    withoutRepeats(points)
      .slice(1)
      .map((b, n) => [withoutRepeats(points)[n]!, b] as const),
  );
  const byLength = [...legs].sort((a, b) => between(...b) - between(...a));
  const own = byLength.filter((leg) => between(...leg) >= long_m).map((leg) => bearing(...leg));
  const step = choice.heading_step_deg > 0 ? choice.heading_step_deg : 90;
  const sweep = Array.from(
    { length: Math.max(1, Math.ceil(90 / step - 1e-9)) },
    (_, k) => choice.first_heading_deg + k * step,
  );
  const all = distinct([...distinct(own).slice(0, MOST_OWN), ...commonHeading(legs), ...sweep]);
  const slant = new Map(all.map((heading) => [heading, slantOf(legs, heading)]));
  return all.sort((a, b) => slant.get(a)! - slant.get(b)!).slice(0, MOST_TRIED);
}

/** Mean direction of all legs by length, quarter turns counting as the same. */
function commonHeading(legs: readonly (readonly [Spot, Spot])[]): number[] {
  let [c, s] = [0, 0];
  for (const [a, b] of legs) {
    const four = (4 * bearing(a, b) * Math.PI) / 180;
    c += between(a, b) * Math.cos(four);
    s += between(a, b) * Math.sin(four);
  }
  return Math.hypot(c, s) < 1e-9 ? [] : [(Math.atan2(s, c) * 180) / Math.PI / 4];
}

/** How much of the legs lies aslant a lattice, at 45 degrees most [m]. */
const slantOf = (legs: readonly (readonly [Spot, Spot])[], heading: number): number =>
  legs.reduce(
    (sum, leg) =>
      sum + between(...leg) * Math.abs(Math.sin((2 * (bearing(...leg) - heading) * Math.PI) / 180)),
    0,
  );

const distinct = (headings: readonly number[]): number[] => headings.reduce<number[]>(addDistinct, []);

function addDistinct(kept: number[], heading: number): number[] {
  const own = ((heading % 90) + 90) % 90;
  const isKnown = kept.some((k) => Math.abs(((own - k + 135) % 90) - 45) < ALIKE_DEG);
  return isKnown ? kept : [...kept, own];
}
