import { defineFormula, recordValue, type Trace } from "../formula/index.ts";
import { DomainError, newtons, qty, type Qty } from "../units/index.ts";
import { archimedes } from "./sources.ts";
import { displacedWeight } from "./uplift.ts";

const GRAVITY = 9.80665;

/** One solid piece of a part, its volume spread evenly between two levels of one datum. */
export interface FloodPiece {
  readonly name: string;
  readonly bottom_m: number;
  /** Over `bottom_m`. */
  readonly top_m: number;
  /** Solid volume > 0: what displaces water. */
  readonly volume_m3: number;
  readonly density_kg_m3: number;
}

/** What keeps a part from rising: a part floats when the water lifts more than share x weight + hold. */
export interface Holding {
  /** Counted part of the weight, 0 to 1; 1 = all of it. */
  readonly weight_share: number;
  /** Pull-out of its anchors and the like [N], >= 0. */
  readonly hold_n: number;
}
export const UNHELD: Holding = { weight_share: 1, hold_n: 0 };

/** Share of a piece that is under water. z level, z_b its bottom, z_t its top [m], z_t > z_b; s [1], 0 to 1. */
export const wettedShare = defineFormula(
  {
    id: "flood.buoyancy.wetted-share",
    title: "Share of the piece under water",
    symbol: "s",
    unit: "1",
    text: "min(1, max(0, (z - z_b) / (z_t - z_b)))",
    inputs: { z: "m", z_b: "m", z_t: "m" },
    validity: "Volume spread evenly over the height, z_t > z_b, still water.",
    source: archimedes("volume under the level"),
  },
  ({ z, z_b, z_t }) => Math.min(1, Math.max(0, (z - z_b) / (z_t - z_b))),
);

/** Net upward force. B upward force of the water, W weight [N]; N [N], negative while the part rests. */
export const netLift = defineFormula(
  {
    id: "flood.buoyancy.net",
    title: "Upward force less the own weight",
    symbol: "N_u",
    unit: "N",
    text: "B - W",
    inputs: { B: "N", W: "N" },
    validity: "Still water.",
    source: archimedes("force less weight"),
  },
  ({ B, W }) => B - W,
);

/** Throws `DomainError` on a piece without height or volume, or of no density. */
function held(pieces: readonly FloodPiece[]): void {
  for (const p of pieces)
    if (!(p.top_m > p.bottom_m) || !(p.volume_m3 > 0) || !(p.density_kg_m3 > 0))
      throw new DomainError("not-a-piece", { ...p });
}

/** Weight of all pieces [N]. */
export const weightOfPieces = (pieces: readonly FloodPiece[]): Qty<"N"> =>
  newtons(pieces.reduce((sum, p) => sum + p.volume_m3 * p.density_kg_m3, 0) * GRAVITY);

/** Volume under a level [m3]. Level on the pieces' datum. */
export function volumeUnder(pieces: readonly FloodPiece[], level_m: number, trace?: Trace): Qty<"m3"> {
  held(pieces);
  const sum = pieces.reduce((v, p) => {
    const levels = { z: qty(level_m, "m"), z_b: qty(p.bottom_m, "m"), z_t: qty(p.top_m, "m") };
    return v + p.volume_m3 * wettedShare(levels, trace, p.name);
  }, 0);
  return qty(sum, "m3");
}

/** Upward force of still water at a level [N]: rises with the level in straight lines, never falls. rho_w [kg/m3]. */
export function buoyantForce(
  pieces: readonly FloodPiece[],
  level_m: number,
  rho_w: Qty<"kg/m3">,
  trace?: Trace,
): Qty<"N"> {
  const V = volumeUnder(pieces, level_m, trace);
  recordValue(trace, {
    id: "flood.buoyancy.volume",
    title: "Volume under water",
    symbol: "V",
    value: V,
    unit: "m3",
    source: archimedes("sum over the pieces"),
    how: "sum of volume times share under water",
  });
  return displacedWeight({ rho_w, V }, trace);
}

/** Levels at which the force bends: every bottom and top, rising. */
const bends = (pieces: readonly FloodPiece[]): number[] =>
  [...new Set(pieces.flatMap((p) => [p.bottom_m, p.top_m]))].sort((a, b) => a - b);

/** The force as a line through its bends: what the water lifts at each bottom and top [m, N]. */
export const liftCurve = (
  pieces: readonly FloodPiece[],
  rho_w: Qty<"kg/m3">,
): readonly { readonly level_m: number; readonly lift_n: number }[] =>
  bends(pieces).map((level_m) => ({ level_m, lift_n: buoyantForce(pieces, level_m, rho_w) }));

/**
 * Lowest level at which the water lifts what holds a part down [m, the pieces' datum]; null when it never does.
 * Exact: the force is straight between the bends, so the crossing is one division. rho_w [kg/m3].
 */
export function floatLevel(
  pieces: readonly FloodPiece[],
  rho_w: Qty<"kg/m3">,
  hold: Holding = UNHELD,
): number | null {
  const need = hold.weight_share * weightOfPieces(pieces) + hold.hold_n;
  const curve = liftCurve(pieces, rho_w);
  const after = curve.findIndex((p) => p.lift_n >= need);
  if (after < 0) return null;
  if (after === 0) return curve[0]!.level_m;
  const [a, b] = [curve[after - 1]!, curve[after]!];
  return a.level_m + ((need - a.lift_n) / (b.lift_n - a.lift_n)) * (b.level_m - a.level_m);
}

export interface FloodPart {
  readonly id: string;
  readonly pieces: readonly FloodPiece[];
  readonly hold: Holding;
}
export interface Floating {
  readonly id: string;
  /** Level at which it lifts off; null = it never does. */
  readonly level_m: number | null;
  /** Upward force over what holds it down, all of it under water [1]; null when nothing holds it. */
  readonly ratio: number | null;
  /** Force that is missing to hold it under water [N]; 0 when it stays. */
  readonly missing_n: number;
}

/** Parts in the order in which a rising water lifts them; those that stay come last, the nearest to floating first. */
export function floatingOrder(parts: readonly FloodPart[], rho_w: Qty<"kg/m3">): readonly Floating[] {
  const found = parts.map(({ id, pieces, hold }) => {
    const top = Math.max(...pieces.map((p) => p.top_m));
    const lift = buoyantForce(pieces, top, rho_w);
    const down = hold.weight_share * weightOfPieces(pieces) + hold.hold_n;
    return {
      id,
      level_m: floatLevel(pieces, rho_w, hold),
      ratio: Number.isFinite(lift / down) ? lift / down : null,
      missing_n: Math.max(0, lift - down),
    };
  });
  const most = (f: Floating): number => f.ratio ?? Number.MAX_VALUE;
  const at = (f: Floating): number => f.level_m ?? Infinity;
  return found.sort(
    (a, b) => (at(a) === at(b) ? most(b) - most(a) : at(a) - at(b)) || (a.id < b.id ? -1 : 1),
  );
}

export const buoyancyFormulas = [wettedShare, netLift] as const;
