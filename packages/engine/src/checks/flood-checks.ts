import { lowerSpeed, upperSpeed } from "../flood/index.ts";
import { recordValue, type Trace } from "../formula/index.ts";
import { metres, newtons, qty, showQuantity, type Qty } from "../units/index.ts";
import { currentOnPart, jointDepth, jointsById, partDepth, zeroOf, type FloodLoads } from "./flood-demand.ts";
import { pushOnPart } from "./flood-formulas.ts";
import { dragOnShape, wrackOnPart, type WetLine, type WetPart } from "./flood-loads.ts";
import { floodBase, jointsUnder, partIds, sideResult, worstPart, type Ids } from "./flood-side.ts";
import { NO_SPEED } from "./flood-words.ts";
import { MISSING_STRENGTH } from "./ground-strength.ts";
import { cannotCheck, notApplicable } from "./result.ts";
import type { Setting } from "./setting.ts";
import type { CheckResult } from "./types.ts";
import { stakeShare } from "./uplift.ts";

export const OUT_OF_TABLES = "the drag of wrack in water this fast and shallow: a Froude number of 1 or more";

/** The worst part in the current of one case, with wrack where it is told. */
export function dragCheck(
  setting: Setting,
  line: WetLine,
  loads: FloodLoads,
  speed: Qty<"m/s">,
  sideOf: (part: WetPart, e_m: number) => number | null,
): CheckResult {
  const { flood } = loads;
  const base = floodBase(`drag.${flood.id}`, `Push of the current, ${flood.name}`, partIds(line));
  const ids = jointsById(line);
  const worst = worstPart(line.parts, (p) => currentOnPart(setting, loads, p, ids, speed), sideOf);
  if (worst === "tables") return cannotCheck(base, [OUT_OF_TABLES]);
  if (worst === "strength") return cannotCheck(base, [MISSING_STRENGTH]);
  if (!worst)
    return notApplicable(base, speed > 0 ? `${flood.name} stays under every part` : "the water stands still");
  const working: Trace = [];
  recordSpeed(setting, speed, working);
  const demand = explainCurrent(setting, loads, worst.part, ids, speed, working);
  return sideResult(setting, base, worst, demand, flood, ids, working);
}

function recordSpeed(setting: Setting, speed: Qty<"m/s">, trace: Trace): void {
  const { speed_source } = setting.input.plan.proof.flood;
  recordValue(trace, {
    id: "flood.speed",
    title: "Speed of the water over the ground",
    symbol: "V",
    value: speed,
    unit: "m/s",
    source: { id: "plan-speed", title: `Plan: ${speed_source || "no source told"}`, status: "project" },
    how: "as told",
  });
}

function explainCurrent(
  setting: Setting,
  { flood }: FloodLoads,
  part: WetPart,
  ids: Ids,
  speed: Qty<"m/s">,
  trace: Trace,
): Qty<"N"> {
  const own = dragOnShape(
    setting,
    part.shape,
    { zero_m: zeroOf(part), depth_m: partDepth(flood, part), angle: part.angle },
    speed,
    trace,
  );
  const under = jointsUnder(part, ids).map((j) =>
    dragOnShape(
      setting,
      j.shape,
      { zero_m: 0, depth_m: jointDepth(flood, j), angle: j.parts[0]?.angle ?? part.angle },
      speed,
      trace,
    ),
  );
  const wrack = wrackOnPart(setting, part, partDepth(flood, part), speed, trace);
  return pushOnPart(
    {
      F_p: newtons(own.force_n),
      k_h: stakeShare({}, trace),
      F_s: newtons(under.reduce((sum, u) => sum + u.force_n, 0)),
      F_w: newtons(wrack?.force_n ?? 0),
    },
    trace,
  );
}

/** Speeds of the flood rule at a depth [m/s]. */
export const boundsAt = (depth_m: number): readonly [number, number] => {
  const d = metres(Math.max(0, depth_m));
  return [lowerSpeed({ d }), upperSpeed({ d })];
};

/** One result for all that needs the speed, with both bounds of the flood rule and the push at each. */
export function speedMissing(setting: Setting, line: WetLine, all: readonly FloodLoads[]): CheckResult {
  const base = floodBase("speed", "Push of the current, drifting logs", partIds(line));
  const ids = jointsById(line);
  const words = all.flatMap((loads) => {
    const deepest = line.parts.reduce<WetPart | null>(
      (a, b) => (a === null || partDepth(loads.flood, b) > partDepth(loads.flood, a) ? b : a),
      null,
    );
    if (!deepest || partDepth(loads.flood, deepest) <= 0) return [];
    const depth = partDepth(loads.flood, deepest);
    const bounds = boundsAt(depth);
    const push = bounds.map((v) => currentOnPart(setting, loads, deepest, ids, qty(v, "m/s"))?.force_n);
    const say = (n: number | undefined): string =>
      n === undefined ? "more than the tables hold" : showQuantity(n, "N", setting.context.units);
    return [
      `${loads.flood.name}: by the flood rule between ${bounds[0].toFixed(2)} and ${bounds[1].toFixed(2)} m/s in the ${showQuantity(depth, "m", setting.context.units)} of water at ${deepest.part.id}, a push of ${say(push[0])} to ${say(push[1])}`,
    ];
  });
  return cannotCheck(base, [[NO_SPEED, ...words].join("; ")]);
}
