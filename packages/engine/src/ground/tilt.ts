import { recordValue, type Trace } from "../formula/index.ts";
import { DomainError } from "../units/index.ts";
import { modulusFor, type BekkerGround } from "./sinkage.ts";
import { rigidFootTilt } from "./sources.ts";

/** How a stiff foot lies after an off-centre load. */
export interface Tilt {
  /** Sinkage of the pressed edge and of the other [m]; the other is negative where it stands clear of the ground. */
  readonly pressed_m: number;
  readonly other_m: number;
  /** Rotation [rad]. */
  readonly rotation: number;
  /** Pressure at the pressed edge [Pa]. */
  readonly edge_pa: number;
}

/** Off-centre distance over the side, for edge sinkages 1 and r (negative = clear), pressure going with z^n. */
function offOf(r: number, n: number): number {
  if (r >= 1) return 0;
  if (r < 0) return 0.5 - 1 / ((1 - r) * (n + 2));
  const width = 1 - r;
  // Near an even load the closed form cancels: its first term does not.
  if (width < 1e-3) return (n * width) / (6 * (1 + r));
  const load = (1 - r ** (n + 1)) / (n + 1);
  const first = (1 - r ** (n + 2)) / (n + 2);
  return (first / load - (1 + r) / 2) / width;
}

/** Mean of z^n over the side, for edge sinkages 1 and r. */
function meanPower(r: number, n: number): number {
  if (r < 0) return 1 / ((1 - r) * (n + 1));
  return 1 - r < 1e-9 ? 1 : (1 - r ** (n + 1)) / ((n + 1) * (1 - r));
}

/** The ratio of the edges' sinkages that puts the resultant `off` sides off the middle, 0 <= off < 1/2. */
function ratioFor(off: number, n: number): number {
  const clear = 0.5 - 1 / (n + 2);
  if (off >= clear) return 1 - 1 / ((0.5 - off) * (n + 2));
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i++) {
    const r = (low + high) / 2;
    if (offOf(r, n) > off) low = r;
    else high = r;
  }
  return high;
}

/**
 * Rotation of a stiff rectangular foot under an off-centre load on ground that answers by p = k z^n at every point.
 *
 * side_m   side across which the load is off the middle, other_m the other side [m] > 0
 * load_n   > 0; off_m off-centre distance, 0 <= off_m < side_m / 2
 *
 * The stiffness k is that of the foot's smaller side. First loading; the ground beside the foot is left out. Null where
 * the ground's values give no stiffness above zero for this foot, or more than 10 m: it goes in.
 */
export function footTilt(
  ground: BekkerGround,
  foot: { readonly side_m: number; readonly other_m: number },
  load_n: number,
  off_m: number,
  trace?: Trace,
): Tilt | null {
  const { side_m, other_m } = foot;
  if (!(load_n > 0 && off_m >= 0 && off_m < side_m / 2))
    throw new DomainError("tilt-load", { load_n, off_m });
  const k = modulusFor(ground, Math.min(side_m, other_m), trace);
  if (k === null) return null;
  const { n } = ground;
  const r = ratioFor(off_m / side_m, n);
  const pressed_m = (load_n / (side_m * other_m) / (k * meanPower(r, n))) ** (1 / n);
  if (!(pressed_m < 10)) return null;
  const rotation = Math.atan((pressed_m * (1 - r)) / side_m);
  const tilt = { pressed_m, other_m: pressed_m * r, rotation, edge_pa: k * pressed_m ** n };
  const how = "load and moment in balance over the foot";
  recordValue(trace, {
    id: "ground.tilt",
    title: "Rotation of the foot",
    symbol: "theta",
    value: tilt.rotation,
    unit: "rad",
    source: rigidFootTilt,
    how,
  });
  return tilt;
}
