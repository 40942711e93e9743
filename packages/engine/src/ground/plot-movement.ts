import { defineFormula, type Trace } from "../formula/index.ts";
import { DomainError, metres, pascals, qty, type Qty } from "../units/index.ts";
import { sinkageOf, type BekkerGround } from "./sinkage.ts";
import { rigidPunch } from "./sources.ts";

/** Movement of the ground beside a stiff round foot. w0 movement of the foot [m], a its radius, r >= a distance [m]; w [m]. */
export const movementBeside = defineFormula(
  {
    id: "ground.movement-beside",
    title: "Movement of the ground beside the foot",
    symbol: "w",
    unit: "m",
    text: "2 / pi * asin(a / r) * w0",
    inputs: { w0: "m", a: "m", r: "m" },
    validity:
      "Elastic half-space, stiff round foot, r >= a from its middle; what sinks for good moves less around it.",
    source: rigidPunch,
  },
  ({ w0, a, r }) => (2 / Math.PI) * Math.asin(a / r) * w0,
);

/** Radius of the circle of one area. A [m2] > 0; a [m]. */
export const radiusOfArea = defineFormula(
  {
    id: "ground.radius-of-area",
    title: "Radius of the circle with the foot's area",
    symbol: "a",
    unit: "m",
    text: "sqrt(A / pi)",
    inputs: { A: "m2" },
    validity: "Compact foot: the sides not far apart.",
    source: { id: "geometry", title: "Geometry", at: "circle", status: "computed" },
  },
  ({ A }) => Math.sqrt(A / Math.PI),
);

/** What one more person on the last support does to the ground of the plot. */
export interface PlotMovement {
  readonly unloaded_m: number;
  readonly loaded_m: number;
  /** Sinkage that the person adds to the foot [m]. */
  readonly foot_m: number;
  /** Movement at the plot [m]. */
  readonly plot_m: number;
}

/**
 * Movement at the plot when someone steps on the last support.
 *
 * foot      sides [m]; resting and loaded: pressure without and with the person [Pa], loaded >= resting
 * distance_m  from the middle of the foot to the plot; nearer than the foot's own radius counts as on the foot
 *
 * The added sinkage by the pressure-sinkage law, carried to the plot as an elastic half-space would: an upper bound
 * there, since what yields under the foot pulls less of its surroundings along. Null as `sinkageOf`.
 */
export function plotMovement(
  ground: BekkerGround,
  foot: { readonly width_m: number; readonly length_m: number },
  pressure: { readonly resting: Qty<"Pa">; readonly loaded: Qty<"Pa"> },
  distance_m: number,
  trace?: Trace,
): PlotMovement | null {
  if (pressure.loaded < pressure.resting) throw new DomainError("loaded-under-resting", { ...pressure });
  const b = Math.min(foot.width_m, foot.length_m);
  const unloaded_m = sinkageOf(ground, b, pascals(pressure.resting), trace);
  const loaded_m = sinkageOf(ground, b, pascals(pressure.loaded), trace);
  if (unloaded_m === null || loaded_m === null) return null;
  const w0 = metres(loaded_m - unloaded_m);
  const a = radiusOfArea({ A: qty(foot.width_m * foot.length_m, "m2") }, trace);
  const plot_m = distance_m <= a ? w0 : movementBeside({ w0, a, r: metres(distance_m) }, trace);
  return { unloaded_m, loaded_m, foot_m: w0, plot_m };
}
