import type { Spot } from "./polygon.ts";

/** A creek: its middle line from head to mouth, with top width and bed level at each point. */
export interface Creek {
  readonly id: string;
  readonly name: string;
  readonly line: readonly { readonly at: Spot; readonly width: number; readonly bed: number }[];
}

export interface CreekShape {
  readonly id: string;
  readonly name: string;
  /** The valley it follows, from head to mouth. */
  readonly through: readonly Spot[];
  /** Swing of the meander to either side, and length of one full swing [m]. */
  readonly swing_m: number;
  readonly wave_m: number;
  readonly phase: number;
  /** Top width and bed level at head and mouth [m]. */
  readonly width_m: readonly [number, number];
  readonly bed_m: readonly [number, number];
}

/**
 * Draws the middle line every half metre: a smooth curve through the valley's points, swung from side to side.
 * The bed falls evenly; the width grows with the cube of the way, so that a creek opens only towards its mouth.
 */
export function meander(shape: CreekShape): Creek {
  const valley = curveThrough(shape.through, 0.5);
  const line = valley.map((p, i) => {
    const [before, after] = [valley[Math.max(0, i - 1)]!, valley[Math.min(valley.length - 1, i + 1)]!];
    const long = Math.hypot(after[0] - before[0], after[1] - before[1]);
    const off = shape.swing_m * Math.sin((i * Math.PI) / shape.wave_m + shape.phase);
    const share = i / (valley.length - 1);
    const at: Spot = [
      p[0] - ((after[1] - before[1]) / long) * off,
      p[1] + ((after[0] - before[0]) / long) * off,
    ];
    const along = ([head, mouth]: readonly [number, number], s: number): number => head + (mouth - head) * s;
    return { at, width: along(shape.width_m, share ** 3), bed: along(shape.bed_m, share) };
  });
  return { id: shape.id, name: shape.name, line };
}

/** Points about `step` apart on a curve that passes through every given point, each piece a cubic. */
function curveThrough(points: readonly Spot[], step: number): Spot[] {
  const curve: Spot[] = [];
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b, c, d] = [
      points[i - 1] ?? points[i]!,
      points[i]!,
      points[i + 1]!,
      points[i + 2] ?? points[i + 1]!,
    ];
    const parts = Math.max(1, Math.round(Math.hypot(c[0] - b[0], c[1] - b[1]) / step));
    for (let k = 0; k < parts; k++) curve.push(cubic(a, b, c, d, k / parts));
  }
  return [...curve, points.at(-1)!];
}

const cubic = (a: Spot, b: Spot, c: Spot, d: Spot, t: number): Spot => {
  const one = (p: number, q: number, r: number, s: number): number =>
    q + 0.5 * t * (r - p + t * (2 * p - 5 * q + 4 * r - s + t * (3 * (q - r) + s - p)));
  return [one(a[0], b[0], c[0], d[0]), one(a[1], b[1], c[1], d[1])];
};

/** Nearest point of a creek's middle line. */
export function nearest(
  creek: Creek,
  x: number,
  y: number,
): { distance: number; width: number; bed: number } {
  let [best, distance2] = [creek.line[0]!, Infinity];
  for (const p of creek.line) {
    const d = (p.at[0] - x) ** 2 + (p.at[1] - y) ** 2;
    if (d < distance2) [best, distance2] = [p, d];
  }
  return { distance: Math.sqrt(distance2), width: best.width, bed: best.bed };
}

/** The creek's outline from bank to bank, `beyond` wider on either side, a corner every `every` points. */
export function bankOutline(creek: Creek, beyond: number, every: number): Spot[] {
  const last = creek.line.length - 1;
  const [left, right]: [Spot[], Spot[]] = [[], []];
  for (let i = 0; i <= last; i = i === last ? last + 1 : Math.min(last, i + every)) {
    const [before, after] = [creek.line[Math.max(0, i - 1)]!.at, creek.line[Math.min(last, i + 1)]!.at];
    const long = Math.hypot(after[0] - before[0], after[1] - before[1]);
    const { at, width } = creek.line[i]!;
    const off = width / 2 + beyond;
    const [nx, ny] = [(-(after[1] - before[1]) / long) * off, ((after[0] - before[0]) / long) * off];
    left.push([at[0] + nx, at[1] + ny]);
    right.push([at[0] - nx, at[1] - ny]);
  }
  return [...left, ...right.reverse()];
}
