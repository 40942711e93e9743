import { isPlain, type Combination, type DesignCode } from "../codes/index.ts";
import type { Trace } from "../formula/index.ts";
import { inches, metres, qty, showQuantity, type Qty } from "../units/index.ts";
import { GRADE } from "./cautions.ts";
import { forceDemand, strengthCombinations } from "./combination.ts";
import { bearingCapacity, catchBoardSeat, seatLeft, sillSeat } from "./formulas.ts";
import type { CheckContext } from "./input.ts";
import { resultOf } from "./result.ts";
import { layingTolerance, leastSeat } from "./rules.ts";
import {
  catchBoardShrinkage,
  moduleShrinkage,
  shrinkAcross,
  shrinkAlong,
  sillShrinkage,
  slopeShortening,
} from "./seat-formulas.ts";
import { governing, type Governing } from "./stringer-demand.ts";
import type { StringerModel } from "./stringer-model.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { LoadCase } from "./walk-demand.ts";

/** What a module end rests on: half of a shared sill, or the projecting catch board of its neighbour. */
export type SeatKind = SeatPlace & {
  /** Length of the part that ends there, and its rise over run [m, 1]. */
  readonly length_m: number;
  readonly grade: number;
};
export type SeatPlace =
  | { readonly on: "sill"; readonly width_m: number; readonly gap_m: number }
  | { readonly on: "catch-board"; readonly projection_m: number; readonly gap_m: number };

export interface SeatLabel {
  readonly id: string;
  /** "on the sill of the open crate", "on the catch board". */
  readonly where: string;
  readonly parts: readonly string[];
}

const baseOf = (label: SeatLabel, part: string, title: string, rule: CheckBase["rule"]): CheckBase => ({
  id: `seat.${part}.${label.id}`,
  kind: "seat",
  title: `${title} ${label.where}`,
  parts: label.parts,
  rule,
  caution: `Lay to a string line and check every joint after the first tides and the first frost. ${GRADE}`,
});

/** Seat as drawn [m]. */
export const nominalSeat = (seat: SeatPlace, trace?: Trace) =>
  seat.on === "sill"
    ? sillSeat({ b: metres(seat.width_m), g: metres(seat.gap_m) }, trace)
    : catchBoardSeat({ p: metres(seat.projection_m), g: metres(seat.gap_m) }, trace);

/** What dry timber and a slope take off a seat: across the grain of what it lies on, along the part, by the slope. */
function losses(seat: SeatKind, trace?: Trace) {
  const [k_a, k_l] = [shrinkAcross({}, trace), shrinkAlong({}, trace)];
  const L = metres(seat.length_m);
  const d_a =
    seat.on === "sill"
      ? sillShrinkage({ b: metres(seat.width_m), k_a }, trace)
      : catchBoardShrinkage({ p: metres(seat.projection_m), k_a }, trace);
  const d_l = moduleShrinkage({ L, k_l }, trace);
  const d_s = slopeShortening({ L, i: qty(seat.grade, "1") }, trace);
  return { d_a, d_l, d_s };
}

/** Length that bears once the module lies off its mark, the timber has dried and the slope has taken its part [m]. */
const left = (seat: SeatKind, trace?: Trace) =>
  seatLeft({ s: nominalSeat(seat, trace), t: layingTolerance({}, trace), ...losses(seat, trace) }, trace);

/** Width of a sill, or projection of a catch board, that leaves a seat of this length [m]. */
function widthFor(seat: SeatKind, seat_m: number): number {
  const { d_l, d_s } = losses(seat);
  const bare = seat_m + layingTolerance({}) + d_l + d_s;
  const kept = 1 - shrinkAcross({});
  return seat.on === "sill" ? (2 * bare + seat.gap_m) / kept : (bare + seat.gap_m) / kept;
}

/** Least seat against the seat that is left after the slop of laying. */
export function checkSeatLength(seat: SeatKind, label: SeatLabel, context: CheckContext): CheckResult {
  const base = baseOf(label, "length", "Seat of a module end", leastSeat.spec.source);
  const working: Trace = [];
  const capacity = left(seat, working);
  const demand = leastSeat({}, working);
  const say = (v: number): string => showQuantity(v, "m", context.units);
  const wide = say(widthFor(seat, leastSeat({})));
  const change =
    seat.on === "sill"
      ? `Would pass with a sill ${wide} wide along the walkway.`
      : `Would pass with a catch board that projects ${wide}.`;
  const carries = `Keeps a seat of ${say(capacity)} with the module ${say(layingTolerance({}))} off its mark and all timber dried out.`;
  const governs = `module of ${say(seat.length_m)} off its mark by the slop of laying, dried out${seat.grade > 0 ? `, on a slope of ${(seat.grade * 100).toFixed(1)} %` : ""}`;
  const verdict = { unit: "m", demand, capacity, governs, working } as const;
  return resultOf(base, verdict, { carries, change: demand <= capacity ? null : change });
}

interface SeatLoad {
  readonly combination: Combination;
  readonly demand: Qty<"N">;
  readonly capacity: Qty<"N">;
  /** Seat that would just carry the demand, after the slop of laying [m]. */
  readonly needed: number;
}

/** One combination against the strength of its own duration. */
function seatLoad(
  combination: Combination,
  model: StringerModel,
  worst: Governing,
  seat: SeatKind,
  code: DesignCode,
  trace?: Trace,
): SeatLoad {
  const { frame, member } = model;
  const [V_d, V_l] = [qty(worst.dead, "N"), qty(worst.live, "N")];
  const demand = forceDemand(combination, V_d, V_l, trace, worst.load.name);
  const length_m = left(seat, trace);
  const { strength, length } = code.bearing(
    member,
    {
      use: "edge",
      wet: true,
      incised: frame.lumber.incised,
      repetitive: false,
      duration: combination.duration,
    },
    { length_m, to_end_m: 0, to_next_m: Math.max(0, frame.span_m - 2 * length_m), support: "discrete" },
    trace,
  );
  const b = inches(member.size.thickness_in);
  const capacity = bearingCapacity({ F: strength, b, l: length }, trace);
  const needed = Math.max(0, demand / (strength * b) - (length - length_m));
  return { combination, demand, capacity, needed };
}

/** Bearing across the grain of the most loaded stringer end on the sill, on the seat that is left. */
export function checkSeatBearing(
  seat: SeatKind,
  model: StringerModel,
  cases: readonly LoadCase[],
  label: SeatLabel,
  context: CheckContext,
): CheckResult {
  const { code, units } = context;
  const base = baseOf(label, "bearing", "Bearing of a stringer end", code.rule("bearing"));
  const worst = governing("shear", model, cases);
  const loads = strengthCombinations(code).map((c) => seatLoad(c, model, worst, seat, code));
  const { combination } = loads.reduce((a, b) => (b.needed > a.needed ? b : a));
  const working: Trace = [];
  worst.load.explain(working);
  const { demand, capacity, needed } = seatLoad(combination, model, worst, seat, code, working);
  const carries = `The seat carries ${showQuantity(capacity, "N", units)} from one stringer${factorWords(combination)}.`;
  const wide = showQuantity(widthFor(seat, needed), "m", units);
  const change =
    seat.on === "sill"
      ? `Would pass with a sill ${wide} wide along the walkway.`
      : `Would pass with a catch board that projects ${wide}.`;
  const verdict = { unit: "N", demand, capacity, governs: worst.load.name, working } as const;
  return resultOf(base, verdict, { carries, change: demand <= capacity ? null : change });
}

/** Says that a capacity is held against loads with their factors, where a code puts any on. */
const factorWords = (combination: Combination): string =>
  isPlain(combination) ? "" : ", of loads with their factors";
