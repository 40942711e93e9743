import { freshHole, type FastenerJoint } from "../codes/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import { buoyantUplift, wettedShare } from "../flood/index.ts";
import { densityAtMoisture } from "../structure/index.ts";
import { inches, metres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { forceDemand, liveCombination } from "./combination.ts";
import { bearingPull, boardVolume, leverPull, liftPerBearing } from "./fastening-formulas.ts";
import type { CheckContext, GradedLumber } from "./input.ts";
import { footLoad } from "./piece-cases.ts";
import { cannotCheck, missingOf, notApplicable, resultOf } from "./result.ts";
import { dryMoisture } from "./rules.ts";
import type { CheckBase, CheckResult } from "./types.ts";
import type { WalkDemand } from "./walk-demand.ts";

/** Boards of a deck as their screws feel them. */
export interface BoardHold {
  readonly size: string;
  readonly stringer: string;
  readonly lumber: GradedLumber;
  readonly length_m: number;
  readonly bearings: number;
  readonly screw: string;
  readonly screws_per_bearing: number;
  /** How far a foot can stand beyond the outer stringer's middle; 0 when it cannot [m]. */
  readonly beyond_m: number;
  /** From the outer stringer to the next, middle to middle [m]. */
  readonly next_m: number;
  /** Flood level over the underside of the boards; 0 or less when it does not reach them [m]. */
  readonly flood_m: number;
  readonly water_kg_m3: number;
  readonly gravity: Qty<"1">;
}

/** Lift of the flood on one bearing of a board [N]. */
function floodPull(hold: BoardHold, { tables }: CheckContext, trace?: Trace): Qty<"N"> {
  const size = tables.sizes.find((s) => s.id === hold.size);
  if (!size || hold.flood_m <= 0) return newtons(0);
  const [t, b] = [inches(size.thickness_in), inches(size.width_in)];
  const whole = boardVolume({ L: metres(hold.length_m), b, t }, trace);
  const s = wettedShare({ z: metres(hold.flood_m), z_b: metres(0), z_t: t }, trace, "one deck board");
  const rho = densityAtMoisture({ G: hold.gravity, M: dryMoisture({}, trace) }, trace);
  const V = qty(whole * s, "m3");
  if (s < 1)
    recordValue(trace, {
      id: "check.board-under-water",
      title: "Volume of it under water",
      symbol: "V",
      value: V,
      unit: "m3",
      source: wettedShare.spec.source,
      how: "V * s",
    });
  const U = buoyantUplift({ rho_w: qty(hold.water_kg_m3, "kg/m3"), rho, V }, trace);
  return liftPerBearing({ U, n: qty(hold.bearings, "1") }, trace);
}

function jointOf(
  hold: BoardHold,
  count: number,
  context: CheckContext,
): FastenerJoint | { missing: string[] } {
  const { tables, code } = context;
  const { species, grade } = hold.lumber;
  const [board, stringer] = [hold.size, hold.stringer].map((size) =>
    code.member(tables, species, grade, size),
  );
  if (!board!.ok) return { missing: missingOf(board!.problems) };
  if (!stringer!.ok) return { missing: missingOf(stringer!.problems) };
  const fastener = tables.fasteners.find((f) => f.id === hold.screw);
  if (!fastener) return { missing: [`a screw or nail of the fastener table instead of "${hold.screw}"`] };
  if (fastener.kind === "clip") return { missing: [`the pull that one "${fastener.name}" holds: test one`] };
  return {
    fastener,
    count,
    per_row: 1,
    side: code.woodPiece(board!.value, inches(board!.value.size.thickness_in)),
    main: code.woodPiece(stringer!.value, inches(stringer!.value.size.width_in)),
    shear: "single",
    grain: "side",
    toe_nail: false,
    moisture: "cycles",
    duration: liveCombination(code).duration,
    short_reach: "equations",
    predrilled: fastener.diameter_mm > 6,
    rope: false,
    hole: freshHole,
  };
}

const MOST_SCREWS = 6;

/** Screws of deck boards under a foot on the overhang and the lift of a flood, in withdrawal, wetted and dried by turns. */
export function checkBoardHold(
  hold: BoardHold,
  demands: readonly WalkDemand[],
  base: CheckBase,
  context: CheckContext,
): CheckResult {
  const working: Trace = [];
  const foot = footLoad(demands, context.units);
  const T_w = floodPull(hold, context, working);
  const T_l =
    hold.beyond_m > 0
      ? leverPull({ P: foot.load(working), e: metres(hold.beyond_m), a: metres(hold.next_m) }, working)
      : newtons(0);
  if (T_w + T_l <= 0)
    return notApplicable(
      base,
      "nobody can stand outside the stringers, and no flood of the plan lifts the boards: nothing pulls their screws",
    );
  const live = T_w > 0 && T_l > 0 ? bearingPull({ T_l, T_w }, working) : qty(T_w + T_l, "N");
  const demand = forceDemand(liveCombination(context.code), newtons(0), live, working, "pull as a live load");
  const joint = jointOf(hold, hold.screws_per_bearing, context);
  if ("missing" in joint) return cannotCheck(base, joint.missing);
  const found = context.code.fasteners.withdrawal(joint, working);
  if (!found.ok) return cannotCheck(base, missingOf(found.problems));
  const capacity = found.value.value;
  const causes = [
    ...(T_l > 0
      ? [`${foot.name} ${showQuantity(hold.beyond_m, "m", context.units)} outside the outer stringer`]
      : []),
    ...(T_w > 0 ? ["the flood level of the plan"] : []),
  ];
  const count = capacity > 0 ? Math.ceil((demand / capacity) * hold.screws_per_bearing - 1e-9) : Infinity;
  return resultOf(
    base,
    { unit: "N", demand, capacity, governs: `${causes.join(" and ")}; ${found.value.governs}`, working },
    {
      carries: `The ${hold.screws_per_bearing} screws of one bearing hold ${showQuantity(capacity, "N", context.units)}.`,
      change: demand <= capacity ? null : changeOf(hold, count),
    },
  );
}

const changeOf = (hold: BoardHold, count: number): string =>
  count <= MOST_SCREWS
    ? `Would pass with ${count} such screws at each bearing.`
    : `No screws that fit a bearing pass: ${hold.beyond_m > 0 ? "set the outer stringers under the deck's edge" : "lay a batten over the boards' ends"}.`;
