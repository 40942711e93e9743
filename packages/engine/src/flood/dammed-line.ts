import { defineFormula, type Trace } from "../formula/index.ts";
import { qty, type Qty } from "../units/index.ts";
import { froudeNumber, isTabled, wrackCoefficient } from "./debris.ts";
import { dragForce } from "./drag.ts";
import { geometry, statics } from "./sources.ts";

/** What stands in the way of the flow: posts, crates, a deck edge; its solid width between two levels over the ground. */
export interface Obstacle {
  readonly name: string;
  readonly count: number;
  /** Solid width that the flow sees, one of them [m]. */
  readonly width_m: number;
  /** Over the ground [m]. */
  readonly bottom_m: number;
  readonly top_m: number;
}

/** Solid area of one kind of obstacle under water. n [1], w [m], h wetted height [m]; A_s [m2]. */
export const solidArea = defineFormula(
  {
    id: "flood.wrack.solid-area",
    title: "Solid area under water",
    symbol: "A_s",
    unit: "m2",
    text: "n * w * h",
    inputs: { n: "1", w: "m", h: "m" },
    validity: "Upright sides.",
    source: geometry("width times wetted height"),
  },
  ({ n, w, h }) => n * w * h,
);

/** Share of the sheet of water that is dammed. A_s [m2], l line [m], d depth [m], c clogged share of the rest [1]; B [1]. */
export const dammedShare = defineFormula(
  {
    id: "flood.wrack.dammed-share",
    title: "Share of the flow's section that is dammed",
    symbol: "B",
    unit: "1",
    text: "min(1, A_s / (l * d)) + c * (1 - min(1, A_s / (l * d)))",
    inputs: { A_s: "m2", l: "m", d: "m", c: "1" },
    validity: "Sheet flow across the whole line, l and d > 0, c from 0 to 1.",
    source: geometry("solid share, and wrack in part of what is open"),
  },
  ({ A_s, l, d, c }) => {
    const s = Math.min(1, A_s / (l * d));
    return s + c * (1 - s);
  },
);

/**
 * Rise of the water upstream of the line, from the force that holds it back: rho g d dh = drag per length, with the
 * speed of the gaps. C_d [1], B [1] < 1, V [m/s] upstream; dh [m].
 */
export const headLoss = defineFormula(
  {
    id: "flood.wrack.head-loss",
    title: "Rise of the water upstream of the line",
    symbol: "dh",
    unit: "m",
    text: "C_d * B * (V / (1 - B))^2 / (2 * 9.80665)",
    inputs: { C_d: "1", B: "1", V: "m/s" },
    validity: "An estimate for B up to 0.77 and dh small against the depth.",
    source: statics("drag of the dammed share against the head, speed taken in the gaps"),
  },
  ({ C_d, B, V }) => (C_d * B * (V / (1 - B)) ** 2) / (2 * 9.80665),
);

/** Most dammed share for which the head is estimated: the last row of the tables begins there. */
export const MOST_DAMMED = 0.77;

/** Solid area of all obstacles at a depth [m2]. depth_m over the ground, > 0. */
export const solidUnder = (obstacles: readonly Obstacle[], depth_m: number, trace?: Trace): Qty<"m2"> =>
  qty(
    obstacles.reduce((sum, o) => {
      const h = qty(Math.max(0, Math.min(o.top_m, depth_m) - o.bottom_m), "m");
      return sum + solidArea({ n: qty(o.count, "1"), w: qty(o.width_m, "m"), h }, trace, o.name);
    }, 0),
    "m2",
  );

/** The line with what wrack leaves of it, and the sheet of water against it. */
export interface WrackedLine {
  readonly obstacles: readonly Obstacle[];
  /** Length of the line across the flow [m] > 0. */
  readonly line: Qty<"m">;
  /** Share of what is open that wrack clogs [1], 0 to 1. */
  readonly clogged: Qty<"1">;
  readonly depth: Qty<"m">;
  /** Speed of the free flow upstream [m/s]. */
  readonly speed: Qty<"m/s">;
  readonly rho_w: Qty<"kg/m3">;
}
/** What a wracked line meets; without force and rise outside the tables: Fr of 1 and more, or over 0.77 dammed. */
export interface WrackLoad {
  readonly froude: number;
  readonly solid_share: number;
  readonly dammed_share: number;
  readonly load: { readonly coefficient: number; readonly force_n: number; readonly rise_m: number } | null;
}
/** Share of a sheet of water that the line dams with its wrack, the force on it and the rise upstream. */
export function wrackOnLine(line: WrackedLine, trace?: Trace): WrackLoad {
  const { line: l, depth: d, speed: V, rho_w } = line;
  const Fr = froudeNumber({ V, d }, trace);
  const A_s = solidUnder(line.obstacles, d, trace);
  const B = dammedShare({ A_s, l, d, c: line.clogged }, trace);
  const shares = { froude: Fr, solid_share: Math.min(1, A_s / (l * d)), dammed_share: B };
  if (!isTabled(Fr) || B > MOST_DAMMED) return { ...shares, load: null };
  const C_d = wrackCoefficient(Fr, B, trace);
  const force = dragForce({ rho_w, C_d, A: qty(B * l * d, "m2"), V }, trace, "on the dammed area");
  const rise = headLoss({ C_d, B, V }, trace);
  return { ...shares, load: { coefficient: C_d, force_n: force, rise_m: rise } };
}

export const dammedLineFormulas = [solidArea, dammedShare, headLoss] as const;
