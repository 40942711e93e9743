import type { Zone, ZoneUse } from "@causey/engine/site";
import { DRAWN_HERE } from "./zone-style.ts";
import type { XY } from "./view.ts";

/** Points closer than this count as one when an area is drawn by hand [m]. */
const SAME_POINT_M = 0.05;

export const addPoint = (points: readonly XY[], point: XY): readonly XY[] => {
  const last = points.at(-1);
  const isSame = last && Math.hypot(last[0] - point[0], last[1] - point[1]) < SAME_POINT_M;
  return isSame ? points : [...points, point];
};

/** What is drawn by hand: an area that closes, or a line that the walkway is to follow. */
export type Shape = "area" | "line";

/** Why what is drawn cannot be ended yet, in words; null when it can. */
export const draftFault = (points: readonly XY[], shape: Shape): string | null =>
  shape === "area"
    ? outlineFault(points)
    : points.length < 2
      ? `A line needs two points; ${points.length} so far.`
      : null;

/** Why the outline cannot be closed yet, in words; null when it can. */
export function outlineFault(points: readonly XY[]): string | null {
  if (points.length < 3) return `An area needs three points; ${points.length} so far.`;
  return crossesItself(points) ? "The outline crosses itself: take back a point." : null;
}

function crossesItself(points: readonly XY[]): boolean {
  const n = points.length;
  for (let i = 0; i < n; i++)
    for (let j = i + 2; j < n; j++) {
      if (i === 0 && j === n - 1) continue;
      if (cross(points[i]!, points[i + 1]!, points[j]!, points[(j + 1) % n]!)) return true;
    }
  return false;
}

const turn = (a: XY, b: XY, c: XY): number =>
  Math.sign((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));

const cross = (a: XY, b: XY, c: XY, d: XY): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;

/** The rules that an area drawn by hand can be given; surveyed lines of parcels come out of a file. */
export type DrawnUse = Exclude<ZoneUse, "parcel">;

const names: Readonly<Record<DrawnUse, string>> = {
  closed: "Closed area",
  "seasonal-closure": "Closed for a season",
  pool: "Pool",
  channel: "Channel",
  habitat: "Habitat",
  "soft-ground": "Soft ground",
  buffer: "Kept clear",
};

/** The next free "Closed area 1", "Closed area 2" ..., called by its rule. */
export function nextAreaName(zones: readonly Zone[], use: DrawnUse = "closed"): string {
  const taken = new Set(zones.map((z) => z.name));
  for (let k = 1; ; k++) if (!taken.has(`${names[use]} ${k}`)) return `${names[use]} ${k}`;
}

/** What the dialog asks of an area besides its outline; days only where it is closed for a season. */
export interface AreaAnswer {
  readonly name: string;
  readonly use: DrawnUse;
  /** Month and day, `04-15`. */
  readonly from?: string;
  readonly to?: string;
}

/** A drawn area as a zone of the plan, with an id of its own. */
export function drawnZone(zones: readonly Zone[], answer: AreaAnswer, ring: readonly XY[]): Zone {
  const ids = new Set(zones.map((z) => z.id));
  let k = 1;
  while (ids.has(`${answer.use}-${k}`)) k++;
  const rounded = ring.map(([x, y]): XY => [Math.round(x * 1000) / 1000, Math.round(y * 1000) / 1000]);
  return { id: `${answer.use}-${k}`, ...answer, polygons: [[rounded]], hidden: false, source: DRAWN_HERE };
}
