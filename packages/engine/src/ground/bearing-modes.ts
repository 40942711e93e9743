import { defineConstant, defineFormula, type Trace } from "../formula/index.ts";
import { DomainError, metres, qty, type Qty } from "../units/index.ts";
import { allowedPressure, netBearingCapacity, stripBearingCapacity } from "./bearing-capacity.ts";
import type { Bearing } from "./contact.ts";
import { bearingRule, skempton, twoToOne } from "./sources.ts";

/** How the ground would give way. */
export type BearingMode = "bearing" | "punching";

export const bearingSafety = defineConstant(
  "ground.safety-people",
  "Ratio of capacity to pressure under people",
  "F",
  3,
  "1",
  bearingRule,
);
export const oneDaySafety = defineConstant(
  "ground.safety-one-day",
  "Ratio of capacity to pressure for a load of one day",
  "F",
  2,
  "1",
  bearingRule,
);
export const leastUnmeasured = defineConstant(
  "ground.least-unmeasured",
  "Strength under which to stop unless it was measured",
  "su_0",
  3000,
  "Pa",
  bearingRule,
);

/** Net capacity under a round foot. su [Pa], B diameter and D depth [m]; q [Pa]. */
export const roundBearingCapacity = defineFormula(
  {
    id: "ground.bearing.skempton-round",
    title: "Net bearing capacity under a round or square foot (Skempton)",
    symbol: "q",
    unit: "Pa",
    text: "min(6 * su * (1 + 0.2 * min(D / B, 2.5)), 9 * su)",
    inputs: { su: "Pa", B: "m", D: "m" },
    validity: "Undrained, one even layer, load on the middle, B > 0, D >= 0.",
    source: skempton,
  },
  ({ su, B, D }) => Math.min(6 * su * (1 + 0.2 * Math.min(D / B, 2.5)), 9 * su),
);

/**
 * Pressure under the foot at which a stiff mat punches into weaker mud.
 *
 * q_m  net capacity of the mud under the spread area [Pa]
 * B, L sides of the foot, t thickness of the mat under it [m]; q [Pa]
 */
export const punchingCapacity = defineFormula(
  {
    id: "ground.bearing.punching",
    title: "Pressure at which a root mat punches into the mud",
    symbol: "q",
    unit: "Pa",
    text: "q_m * (B + t) * (L + t) / (B * L)",
    inputs: { q_m: "Pa", B: "m", L: "m", t: "m" },
    validity: "Mat stiffer than the mud, foot stiff; t thin beside the foot spreads little.",
    source: twoToOne,
  },
  ({ q_m, B, L, t }) => (q_m * (B + t) * (L + t)) / (B * L),
);

/** The same under a long strip: the load spreads one way only. */
export const stripPunching = defineFormula(
  {
    id: "ground.bearing.punching-strip",
    title: "Pressure at which a root mat punches into the mud under a strip",
    symbol: "q",
    unit: "Pa",
    text: "q_m * (B + t) / B",
    inputs: { q_m: "Pa", B: "m", t: "m" },
    validity: "Mat stiffer than the mud, strip far longer than wide.",
    source: twoToOne,
  },
  ({ q_m, B, t }) => (q_m * (B + t)) / B,
);

/** Weight of what lies under water less the water it displaces. W [N], rho [kg/m3], V [m3]; W_b [N], negative = floats. */
export const buoyantWeight = defineFormula(
  {
    id: "ground.buoyant-weight",
    title: "Weight with the water's lift taken off",
    symbol: "W_b",
    unit: "N",
    text: "W - rho * 9.80665 * V",
    inputs: { W: "N", rho: "kg/m3", V: "m3" },
    validity: "Still water that reaches under the foot; after a fall of the water the full weight is back.",
    source: { id: "archimedes", title: "Buoyancy", at: "weight of the displaced water", status: "computed" },
  },
  ({ W, rho, V }) => W - rho * 9.80665 * V,
);

/** Ground below a foot: its strength, and where it is a stiff mat, the mud under it. */
export interface GroundBelow {
  /** Strength of what the foot touches [Pa] > 0; null where only the mud under a mat is known. */
  readonly su: Qty<"Pa"> | null;
  readonly mat: { readonly thickness_m: number; readonly mud_su: Qty<"Pa"> } | null;
}

export interface Capacity {
  readonly mode: BearingMode;
  /** Net ultimate pressure [Pa]. */
  readonly q: Qty<"Pa">;
}

/** Skempton's net capacity by shape. depth_m >= 0. */
export function skemptonCapacity(part: Bearing, su: Qty<"Pa">, depth_m: number, trace?: Trace): Qty<"Pa"> {
  const D = metres(depth_m);
  const { shape, B, L } = part;
  if (shape === "strip") return stripBearingCapacity({ su, B, D }, trace);
  if (shape === "circle") return roundBearingCapacity({ su, B, D }, trace);
  return netBearingCapacity({ su, B, L, D }, trace);
}

/** Capacity against punching through a mat: the mud's net capacity under the area that the load spreads to. */
function punching(
  part: Bearing,
  below: NonNullable<GroundBelow["mat"]>,
  depth_m: number,
  trace?: Trace,
): Capacity {
  const t = metres(below.thickness_m);
  const [B, L] = [metres(part.B + t), metres(part.L + t)];
  const q_m = skemptonCapacity({ ...part, B, L, area: qty(B * L, "m2") }, below.mud_su, depth_m, trace);
  const q =
    part.shape === "strip"
      ? stripPunching({ q_m, B: part.B, t }, trace)
      : punchingCapacity({ q_m, B: part.B, L: part.L, t }, trace);
  return { mode: "punching", q };
}

/**
 * Every way the ground may give way under the part of a foot that bears, the weakest first.
 *
 * depth_m  depth of the foot below ground >= 0: it counts; the mat's own thickness adds none
 *
 * Throws `DomainError` where neither the ground nor the mud is known.
 */
export function bearingModes(
  part: Bearing,
  below: GroundBelow,
  depth_m: number,
  trace?: Trace,
): readonly Capacity[] {
  const modes: Capacity[] = [];
  if (below.su !== null) modes.push({ mode: "bearing", q: skemptonCapacity(part, below.su, depth_m, trace) });
  if (below.mat) modes.push(punching(part, below.mat, depth_m, trace));
  if (modes.length === 0) throw new DomainError("ground-without-strength");
  return modes.sort((a, b) => a.q - b.q);
}

/** Net capacity over strength of the mode, without unit: what a strength is multiplied with. */
export function capacityFactor(part: Bearing, depth_m: number, mat_m: number | null): number {
  const su = qty(1, "Pa");
  const below = mat_m === null ? { su, mat: null } : { su: null, mat: { thickness_m: mat_m, mud_su: su } };
  return bearingModes(part, below, depth_m)[0]!.q;
}

/** Pressure that the weakest mode allows. safety >= 1. */
export const allowedOf = (modes: readonly Capacity[], safety: number, trace?: Trace): Qty<"Pa"> =>
  allowedPressure({ q: modes[0]!.q, F: qty(safety, "1") }, trace);
