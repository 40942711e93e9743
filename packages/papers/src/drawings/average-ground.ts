import type { Raster } from "@causey/engine/site";

/** Ground averaged over a square that reaches this far to every side; unknown ground stays unknown and counts nowhere. */
export function averageGround(raster: Raster, reach_m: number): Raster {
  const { cols, rows, values } = raster;
  const known = Float64Array.from(values, (z) => (Number.isNaN(z) ? 0 : 1));
  const heights = Float64Array.from(values, (z) => (Number.isNaN(z) ? 0 : z));
  const across = Math.round(reach_m / raster.dx);
  const along = Math.round(reach_m / raster.dy);
  const spread = (of: Float64Array): Float64Array =>
    runningSums(runningSums(of, cols, rows, 1, cols, across), rows, cols, cols, 1, along);
  const [sums, counts] = [spread(heights), spread(known)];
  return {
    ...raster,
    values: Float32Array.from(values, (z, i) => (Number.isNaN(z) ? Number.NaN : sums[i]! / counts[i]!)),
  };
}

/** Sums over a window of `2 reach + 1` cells along every line of a grid, cut at its ends. */
function runningSums(
  of: Float64Array,
  length: number,
  lines: number,
  step: number,
  lineStep: number,
  reach: number,
): Float64Array {
  const out = new Float64Array(of.length);
  const before = new Float64Array(length + 1);
  for (let line = 0; line < lines; line++) {
    const first = line * lineStep;
    for (let i = 0; i < length; i++) before[i + 1] = before[i]! + of[first + i * step]!;
    for (let i = 0; i < length; i++)
      out[first + i * step] = before[Math.min(length, i + reach + 1)]! - before[Math.max(0, i - reach)]!;
  }
  return out;
}
