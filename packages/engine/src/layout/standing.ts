import type { SupportKind } from "../kit/index.ts";
import {
  groundAt,
  isShut,
  rectangle,
  ruledArea,
  signedDistance,
  type Plot,
  type Polygons,
  type Raster,
  type Ring,
  type Site,
} from "../site/index.ts";
import { PreparedArea } from "./prepared-area.ts";
import { footReach } from "./facts.ts";

/** Spacing of the points at which ground under a foot is read; the corners always are [m]. */
const READ_SPACING = 0.1;
/**
 * Most fall of the ground across one foot [m]: what a crew can level by hand. Beyond it part of the foot hangs in the
 * air, as at the edge of a creek bank. A decision of this project.
 */
export const MOST_FALL_M = 0.1;

/** Feet of a support at a joint, as rings in the site's system. */
export const feetAt = (kind: SupportKind, x: number, y: number, heading: number): Ring[] => {
  const h = (heading * Math.PI) / 180;
  return kind.feet.map((f) =>
    rectangle(
      x + (Math.cos(h) * f.offset_across_mm) / 1000,
      y - (Math.sin(h) * f.offset_across_mm) / 1000,
      heading,
      f.along_mm / 1000,
      f.across_mm / 1000,
    ),
  );
};

/** Areas a support kind must not touch: shut zones and zones of the uses its recipe rules out, with their buffers. */
export function noFootAreas(kind: SupportKind, site: Site, from: string, to: string): Polygons[] {
  return site.zones.filter((z) => isShut(z, from, to) || kind.stands.not_in.includes(z.use)).map(ruledArea);
}

/** Whether a foot of a support would enter the keep-off circle of a plot. `reach`: farthest point of any foot from the joint [m]. */
export const entersKeepOff = (
  kind: SupportKind,
  plots: readonly Plot[],
  reach: number,
  x: number,
  y: number,
  heading: number,
): boolean =>
  plots.some(
    (p) =>
      Math.abs(x - p.x) < p.keep_off_m + reach &&
      Math.abs(y - p.y) < p.keep_off_m + reach &&
      feetAt(kind, x, y, heading).some((foot) => signedDistance([[foot]], p.x, p.y) < p.keep_off_m),
  );

/**
 * Whether a support may stand: ground known, not below its least level and near enough to level under every foot, no
 * foot touching an area it must not touch. Exact at points not more than 0.1 m apart; areas are tested edge against edge.
 *
 * isGoodAround  the ground all around is already known to be there, high enough and level
 */
export function mayStand(
  kind: SupportKind,
  terrain: Raster,
  areas: readonly PreparedArea[],
  x: number,
  y: number,
  heading: number,
  isGoodAround: boolean,
): boolean {
  const least = kind.stands.ground_above_m ?? -Number.MAX_VALUE;
  return feetAt(kind, x, y, heading).every(
    (foot) => (isGoodAround || groundCarries(terrain, foot, least)) && !areas.some((a) => a.touches(foot)),
  );
}

/** Ground under a foot: known, nowhere below `least`, falling by no more than the rule. */
function groundCarries(terrain: Raster, foot: Ring, least: number): boolean {
  if (!(fallOver(terrain, foot, 1, 1, least) <= MOST_FALL_M)) return false;
  const [low, high] = cellsUnder(terrain, foot);
  if (low >= least && high - low <= MOST_FALL_M) return true;
  const [a, b, , d] = foot as readonly [Ring[0], Ring[0], Ring[0], Ring[0]];
  const across = Math.max(1, Math.ceil(Math.hypot(b![0] - a![0], b![1] - a![1]) / READ_SPACING));
  const along = Math.max(1, Math.ceil(Math.hypot(d![0] - a![0], d![1] - a![1]) / READ_SPACING));
  return fallOver(terrain, foot, across, along, least) <= MOST_FALL_M;
}

/** Highest less lowest ground at evenly spaced points of a foot [m]; NaN where it is unknown or below `least`. */
function fallOver(terrain: Raster, foot: Ring, across: number, along: number, least: number): number {
  const [a, b, , d] = foot as readonly [Ring[0], Ring[0], Ring[0], Ring[0]];
  let low = Infinity;
  let high = -Infinity;
  for (let p = 0; p <= across; p++)
    for (let q = 0; q <= along; q++) {
      const x = a![0] + ((b![0] - a![0]) * p) / across + ((d![0] - a![0]) * q) / along;
      const y = a![1] + ((b![1] - a![1]) * p) / across + ((d![1] - a![1]) * q) / along;
      const z = groundAt(terrain, x, y);
      if (!(z >= least)) return NaN;
      if (z < low) low = z;
      if (z > high) high = z;
    }
  return high - low;
}

/** Lowest and highest cell centre that the ground under a foot is blended from; NaN where one is unknown. */
function cellsUnder(r: Raster, foot: Ring): readonly [number, number] {
  let [i0, j0, i1, j1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of foot) {
    i0 = Math.min(i0, Math.floor((x - r.x0) / r.dx));
    j0 = Math.min(j0, Math.floor((y - r.y0) / r.dy));
    i1 = Math.max(i1, Math.ceil((x - r.x0) / r.dx));
    j1 = Math.max(j1, Math.ceil((y - r.y0) / r.dy));
  }
  let low = Infinity;
  let high = -Infinity;
  for (let j = j0; j <= j1; j++)
    for (let i = i0; i <= i1; i++) {
      const z = r.values[j * r.cols + i]!;
      low = Math.min(low, z);
      high = Math.max(high, z);
    }
  return [low, high];
}

/** Lowest and highest height in a window around every cell: decides most places without reading under the feet. */
export interface GroundWindow {
  readonly low: Float32Array;
  readonly high: Float32Array;
}

export function groundWindow(r: Raster, kinds: readonly SupportKind[]): GroundWindow {
  const reach = Math.max(...kinds.map((k) => footReach(k.feet)));
  const rx = Math.ceil(reach / r.dx) + 1;
  const ry = Math.ceil(reach / r.dy) + 1;
  const low = slide(r, rx, ry, Math.min, (z) => (Number.isNaN(z) ? -Infinity : z));
  const high = slide(r, rx, ry, Math.max, (z) => (Number.isNaN(z) ? Infinity : z));
  return { low, high };
}

function slide(
  r: Raster,
  rx: number,
  ry: number,
  pick: (a: number, b: number) => number,
  read: (z: number) => number,
): Float32Array {
  const rows = new Float32Array(r.values.length);
  const out = new Float32Array(r.values.length);
  for (let j = 0; j < r.rows; j++)
    for (let i = 0; i < r.cols; i++) {
      let v = read(r.values[j * r.cols + i]!);
      for (let k = Math.max(0, i - rx); k <= Math.min(r.cols - 1, i + rx); k++)
        v = pick(v, read(r.values[j * r.cols + k]!));
      rows[j * r.cols + i] = v;
    }
  for (let j = 0; j < r.rows; j++)
    for (let i = 0; i < r.cols; i++) {
      let v = rows[j * r.cols + i]!;
      for (let k = Math.max(0, j - ry); k <= Math.min(r.rows - 1, j + ry); k++)
        v = pick(v, rows[k * r.cols + i]!);
      out[j * r.cols + i] = v;
    }
  return out;
}
