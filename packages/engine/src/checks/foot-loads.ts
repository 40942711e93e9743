import type { Trace } from "../formula/index.ts";
import { footLoad } from "../ground/index.ts";
import { weightOf } from "../structure/index.ts";
import { kilograms, metres, qty } from "../units/index.ts";
import type { LiveLoad, Stance } from "./bearing.ts";

/** A foot with the pressure under its whole area. */
export interface PressedFoot {
  readonly along_m: number;
  readonly across_m: number;
  readonly offset_m: number;
  readonly load_n: number;
  readonly pressure_pa: number;
}

/** The two outermost feet of a support under a load off the middle: the pressed one and its mirror; a single foot is both. */
export interface EdgeFeet {
  readonly pressed: PressedFoot;
  readonly other: PressedFoot;
  /** How far off the middle the whole load acts [m]. */
  readonly off_m: number;
}

/** Nobody there. */
export const EMPTY: LiveLoad = { N: 0, m: 0 };

/** Loads of the outermost feet; a foot that would pull carries nothing. */
export function edgeFeet(stance: Stance, live: LiveLoad, trace?: Trace): EdgeFeet {
  const dead = weightOf(
    { m: kilograms(stance.joint.dead_kg) },
    trace,
    "parts on the joint and the support, soaked",
  );
  const [N, m] = [qty(dead + live.N, "N"), qty(live.m, "N*m")];
  const foot = stance.feet.reduce((a, b) => (b.offset_m > a.offset_m ? b : a));
  const area = foot.along_m * foot.across_m;
  const of = (load: number): PressedFoot => {
    const load_n = Math.max(0, load);
    return { ...foot, load_n, pressure_pa: load_n / area };
  };
  const off_m = N > 0 ? m / N : 0;
  if (stance.spread_m2 < 1e-9) {
    const each = of(N / stance.count);
    return { pressed: each, other: each, off_m };
  }
  const n = qty(stance.count, "1");
  const Q = qty(stance.spread_m2, "m2");
  const pressed = of(footLoad({ N, m, n, o: metres(foot.offset_m), Q }, trace));
  const other = of(footLoad({ N, m, n, o: metres(-foot.offset_m), Q }));
  return { pressed, other, off_m };
}
