import { contourLevels, contourLines, type ContourLine, type Raster } from "@causey/engine/site";
import { M_PER_FT, type UnitSystem } from "@causey/engine/units";
import type { ContourPath, Scheme } from "./terrain-protocol.ts";
import type { XY } from "./view.ts";

/** Ground colours from low to high, quiet enough to draw on. */
const tints: Readonly<Record<Scheme, readonly (readonly [number, number, number])[]>> = {
  light: [
    [226, 236, 238],
    [240, 242, 234],
    [247, 244, 232],
    [242, 234, 214],
  ],
  dark: [
    [22, 38, 45],
    [24, 34, 35],
    [34, 35, 29],
    [47, 43, 33],
  ],
};
const depth: Readonly<Record<Scheme, number>> = { light: 0.2, dark: 0.5 };

export interface HeightRange {
  readonly low: number;
  readonly high: number;
}

export function heightRange(raster: Raster): HeightRange {
  let [low, high] = [Infinity, -Infinity];
  for (const z of raster.values) {
    if (z < low) low = z;
    if (z > high) high = z;
  }
  return { low, high };
}

/** Averages blocks of cells until neither side has more than `most` cells. Blocks without data stay without. */
export function coarser(raster: Raster, most: number): Raster {
  const k = Math.ceil(Math.max(raster.cols, raster.rows) / most);
  if (k <= 1) return raster;
  const cols = Math.floor(raster.cols / k);
  const rows = Math.floor(raster.rows / k);
  const values = new Float32Array(cols * rows);
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < cols; i++) values[j * cols + i] = blockMean(raster, i * k, j * k, k);
  const half = (k - 1) / 2;
  return {
    cols,
    rows,
    values,
    x0: raster.x0 + half * raster.dx,
    y0: raster.y0 + half * raster.dy,
    dx: raster.dx * k,
    dy: raster.dy * k,
  };
}

/** Weights 1, 2, 1 along and across, `times` over: takes the grain out of the lines. Unknown cells stay unknown. */
export function smoother(raster: Raster, times: number): Raster {
  let values = raster.values;
  for (let k = 0; k < times; k++) values = weighed(weighed(values, 1, raster.cols), raster.cols, raster.rows);
  return { ...raster, values };
}

/** One pass in one direction: neighbours lie `stride` apart in lines of `length` cells. */
function weighed(from: Float32Array, stride: number, length: number): Float32Array {
  const to = new Float32Array(from.length);
  for (let k = 0; k < from.length; k++) {
    const at = Math.floor(k / stride) % length;
    const z = from[k]!;
    const before = at > 0 ? from[k - stride]! : z;
    const after = at < length - 1 ? from[k + stride]! : z;
    to[k] = ((Number.isNaN(before) ? z : before) + 2 * z + (Number.isNaN(after) ? z : after)) / 4;
  }
  return to;
}

function blockMean(r: Raster, i0: number, j0: number, k: number): number {
  let [sum, known] = [0, 0];
  for (let j = j0; j < j0 + k; j++)
    for (let i = i0; i < i0 + k; i++) {
      const z = r.values[j * r.cols + i]!;
      if (Number.isNaN(z)) continue;
      sum += z;
      known++;
    }
  return known > 0 ? sum / known : NaN;
}

/**
 * Shaded ground, light from the north-west, as RGBA rows from north to south. Cells without data are clear.
 * The slope is drawn steeper than it is where the ground is nearly flat, so that creek banks can be seen.
 */
export function shade(raster: Raster, scheme: Scheme): Uint8ClampedArray<ArrayBuffer> {
  const { cols, rows, values } = raster;
  const pixels = new Uint8ClampedArray(cols * rows * 4);
  const { low, high } = heightRange(raster);
  const span = Math.max(high - low, 0.01);
  const steeper = Math.min(12, Math.max(1, 20 / span));
  const colours = tints[scheme];
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < cols; i++) {
      const z = values[j * cols + i]!;
      if (Number.isNaN(z)) continue;
      const light = 1 + depth[scheme] * relief(raster, i, j, z, steeper);
      const at = ((z - low) / span) * (colours.length - 1);
      const k = Math.min(colours.length - 2, Math.floor(at));
      const to = ((rows - 1 - j) * cols + i) * 4;
      for (let c = 0; c < 3; c++) {
        const [a, b] = [colours[k]![c]!, colours[k + 1]![c]!];
        pixels[to + c] = (a + (b - a) * (at - k)) * light;
      }
      pixels[to + 3] = 255;
    }
  return pixels;
}

/** From -1, away from the light, to 1, towards it. */
function relief(r: Raster, i: number, j: number, z: number, steeper: number): number {
  const known = (ii: number, jj: number): number => {
    const v = ii < 0 || jj < 0 || ii >= r.cols || jj >= r.rows ? NaN : r.values[jj * r.cols + ii]!;
    return Number.isNaN(v) ? z : v;
  };
  const east = ((known(i + 1, j) - known(i - 1, j)) / (2 * r.dx)) * steeper;
  const north = ((known(i, j + 1) - known(i, j - 1)) / (2 * r.dy)) * steeper;
  return Math.max(-1, Math.min(1, (east - north) / Math.SQRT2 / Math.sqrt(1 + east * east + north * north)));
}

const steps = [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100];

/** The step between lines of equal height, a round number in the units of the screen [m]. */
export function contourStep({ low, high }: HeightRange, units: UnitSystem): number {
  const unit = units === "us" ? M_PER_FT : 1;
  const round = steps.find((s) => (high - low) / (s * unit) <= 14) ?? 200;
  return round * unit;
}

/** Lines of equal height as paths in metres from `origin`. */
export function contourPaths(raster: Raster, step: number, origin: XY): ContourPath[] {
  const byLevel = new Map<number, ContourLine[]>();
  for (const line of contourLines(raster, contourLevels(raster, step)))
    byLevel.set(line.z_m, [...(byLevel.get(line.z_m) ?? []), line]);
  return [...byLevel].map(([z_m, lines]) => ({
    z_m,
    strong: Math.round(z_m / step) % 5 === 0,
    path: lines.map((line) => pathOf(line.points, origin)).join(""),
  }));
}

const pathOf = (points: readonly XY[], [x0, y0]: XY): string =>
  points.map(([x, y], i) => `${i === 0 ? "M" : "L"}${(x - x0).toFixed(2)} ${(y - y0).toFixed(2)}`).join("");
