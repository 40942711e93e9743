import { defineFormula, type Trace } from "../formula/index.ts";
import { DomainError, metres, qty, type Qty } from "../units/index.ts";
import { statics } from "./sources.ts";

/** A foot of a stiff support: its area and where its middle lies across. */
export interface FootPlace {
  readonly area_m2: number;
  readonly offset_m: number;
}

/**
 * Pressure under one of several unlike feet of a stiff support, in a straight line across.
 *
 * N    load on the support [N]; A_t area of all feet that bear [m2]
 * m_c  moment about the middle of that area [N*m]; o the foot's distance from it [m]
 * J    sum of area times distance squared [m4]
 */
export const pressureOfFoot = defineFormula(
  {
    id: "ground.foot-pressure-of-several",
    title: "Pressure under one of several feet",
    symbol: "p_i",
    unit: "Pa",
    text: "N / A_t + m_c * o / J",
    inputs: { N: "N", A_t: "m2", m_c: "N*m", o: "m", J: "m4" },
    validity:
      "Stiff support on feet that are small beside their distances; feet that lift are left out; J > 0.",
    source: { ...statics, at: "pressure shared in a straight line by area" },
  },
  ({ N, A_t, m_c, o, J }) => N / A_t + (m_c * o) / J,
);

/** Load on each foot, in the order given; null when the support tips over: no feet are left that can bear it. */
export interface FeetLoads {
  readonly loads_n: readonly number[];
  readonly pressures_pa: readonly number[];
  /** Places in the list of feet that lift off. */
  readonly lifted: readonly number[];
}

/**
 * Shares a load between the feet of a stiff support. Feet that would pull on the ground lift and bear nothing.
 *
 * load_n > 0; moment_n_m about offset 0, positive presses positive offsets. Null when the load stands outside the feet.
 */
export function shareBetweenFeet(
  feet: readonly FootPlace[],
  load_n: number,
  moment_n_m: number,
  trace?: Trace,
): FeetLoads | null {
  if (feet.length === 0 || feet.some((f) => !(f.area_m2 > 0)) || !(load_n > 0))
    throw new DomainError("feet-without-area-or-load", { feet: feet.length, load_n });
  const off = moment_n_m / load_n;
  const bearing = new Set(feet.keys());
  for (;;) {
    const pressures = linePressures(feet, bearing, load_n, off);
    if (!pressures) return null;
    const lifts = [...bearing].filter((i) => pressures[i]! < 0);
    if (lifts.length === 0) return found(feet, pressures, bearing, load_n, off, trace);
    for (const i of lifts) bearing.delete(i);
  }
}

interface Line {
  readonly area: number;
  readonly middle: number;
  readonly J: number;
}

function lineOf(feet: readonly FootPlace[], bearing: ReadonlySet<number>): Line {
  let area = 0;
  let first = 0;
  for (const i of bearing) {
    area += feet[i]!.area_m2;
    first += feet[i]!.area_m2 * feet[i]!.offset_m;
  }
  const middle = first / area;
  let J = 0;
  for (const i of bearing) J += feet[i]!.area_m2 * (feet[i]!.offset_m - middle) ** 2;
  return { area, middle, J };
}

function linePressures(
  feet: readonly FootPlace[],
  bearing: ReadonlySet<number>,
  load: number,
  off: number,
): number[] | null {
  if (bearing.size === 0) return null;
  const { area, middle, J } = lineOf(feet, bearing);
  const lever = off - middle;
  const widest = Math.max(...[...bearing].map((i) => Math.abs(feet[i]!.offset_m)), 1e-9);
  if (J <= 1e-12 * area * widest ** 2)
    return Math.abs(lever) > 1e-9 * Math.max(1, widest)
      ? null
      : feet.map((_, i) => (bearing.has(i) ? load / area : 0));
  return feet.map((f, i) => (bearing.has(i) ? load / area + (load * lever * (f.offset_m - middle)) / J : 0));
}

function found(
  feet: readonly FootPlace[],
  pressures: readonly number[],
  bearing: ReadonlySet<number>,
  load: number,
  off: number,
  trace?: Trace,
): FeetLoads {
  const { area, middle, J } = lineOf(feet, bearing);
  const worst = pressures.reduce((best, p, i) => (p > pressures[best]! ? i : best), 0);
  if (trace && J > 0) {
    const m_c: Qty<"N*m"> = qty(load * (off - middle), "N*m");
    const o = metres(feet[worst]!.offset_m - middle);
    pressureOfFoot({ N: qty(load, "N"), A_t: qty(area, "m2"), m_c, o, J: qty(J, "m4") }, trace);
  }
  return {
    loads_n: feet.map((f, i) => pressures[i]! * f.area_m2),
    pressures_pa: pressures,
    lifted: [...feet.keys()].filter((i) => !bearing.has(i)),
  };
}
