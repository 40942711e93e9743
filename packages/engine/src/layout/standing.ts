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
  const [low, high] = rangeAround(terrain, foot);
  if (low >= least && high - low <= MOST_FALL_M) return true;
  if (high < least || !isEven(terrain, foot, 1, 1, least)) return false;
  const [a, b, , d] = foot as readonly [Ring[0], Ring[0], Ring[0], Ring[0]];
  const across = Math.max(1, Math.ceil(Math.hypot(b![0] - a![0], b![1] - a![1]) / READ_SPACING));
  const along = Math.max(1, Math.ceil(Math.hypot(d![0] - a![0], d![1] - a![1]) / READ_SPACING));
  return isEven(terrain, foot, across, along, least);
}

/** Reads evenly spaced points of a foot: all known, not below `least`, and within the fall. */
function isEven(r: Raster, foot: Ring, across: number, along: number, least: number): boolean {
  const [a, b, , d] = foot as readonly [Ring[0], Ring[0], Ring[0], Ring[0]];
  const [u, v] = [(a![0] - r.x0) / r.dx, (a![1] - r.y0) / r.dy];
  const [pu, pv] = [(b![0] - a![0]) / r.dx / across, (b![1] - a![1]) / r.dy / across];
  const [qu, qv] = [(d![0] - a![0]) / r.dx / along, (d![1] - a![1]) / r.dy / along];
  let low = Infinity;
  let high = -Infinity;
  for (let p = 0; p <= across; p++)
    for (let q = 0; q <= along; q++) {
      const z = blended(r, u + p * pu + q * qu, v + p * pv + q * qv);
      if (z < low) low = z;
      if (z > high) high = z;
      if (!(z >= least && high - low <= MOST_FALL_M)) return false;
    }
  return true;
}

/** Ground at a place in cells from the south-west one: `groundAt` written out for the innermost loop. */
function blended(r: Raster, u: number, v: number): number {
  const i = Math.floor(u);
  const j = Math.floor(v);
  if (!(i >= 0 && j >= 0 && i + 1 < r.cols && j + 1 < r.rows))
    return groundAt(r, r.x0 + u * r.dx, r.y0 + v * r.dy);
  const k = j * r.cols + i;
  const values = r.values;
  const fu = u - i;
  const fv = v - j;
  const south = values[k]! + (values[k + 1]! - values[k]!) * fu;
  const north = values[k + r.cols]! + (values[k + r.cols + 1]! - values[k + r.cols]!) * fu;
  const z = south + (north - south) * fv;
  return z === z ? z : groundAt(r, r.x0 + u * r.dx, r.y0 + v * r.dy);
}

/**
 * Lowest and highest ground in the box around a foot; NaN where some is unknown. Between four cell centres the ground
 * is blended, so over a box its extremes lie at the box's corners, on its edges between cells, or at cell centres.
 */
function rangeAround(r: Raster, foot: Ring): readonly [number, number] {
  let [u0, v0, u1, v1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of foot) {
    const [u, v] = [(x - r.x0) / r.dx, (y - r.y0) / r.dy];
    if (u < u0) u0 = u;
    if (u > u1) u1 = u;
    if (v < v0) v0 = v;
    if (v > v1) v1 = v;
  }
  let low = Infinity;
  let high = -Infinity;
  for (let v = v0; ; v = Math.min(v1, Math.floor(v) + 1)) {
    for (let u = u0; ; u = Math.min(u1, Math.floor(u) + 1)) {
      const z = blended(r, u, v);
      if (Number.isNaN(z)) return [NaN, NaN];
      if (z < low) low = z;
      if (z > high) high = z;
      if (u >= u1) break;
    }
    if (v >= v1) break;
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
