import { defineConstant, type Trace } from "../formula/index.ts";
import { metres, pascals, type Qty } from "../units/index.ts";
import { netBearingCapacity } from "./bearing-capacity.ts";
import { sinkageOf, type BekkerGround } from "./sinkage.ts";
import { footOnGround, walkingPressure } from "./sources.ts";

export const walkingLow = defineConstant(
  "ground.walking-pressure-low",
  "Pressure of a walking foot, low",
  "p_w",
  60_000,
  "Pa",
  walkingPressure,
);
export const walkingHigh = defineConstant(
  "ground.walking-pressure-high",
  "Pressure of a walking foot, high",
  "p_w",
  80_000,
  "Pa",
  walkingPressure,
);
const soleBreadth = 0.052;
const soleLength = 0.25;
export const walkingFootBreadth = defineConstant(
  "ground.walking-foot-breadth",
  "Width of a foot that bears on average",
  "b",
  soleBreadth,
  "m",
  footOnGround,
);

/** What a foot does that steps beside the walkway. */
export interface FootBeside {
  readonly capacity_pa: number;
  /** Over 1: the foot breaks in. */
  readonly low_share: number;
  readonly high_share: number;
  readonly sinks: "yes" | "at times" | "no";
  /** Depth by the sinkage law under the higher pressure [m]; null where no law is given, or the foot goes right in. */
  readonly depth_m: number | null;
  readonly words: string;
}

/** A walking foot (60 to 80 kPa) against the capacity of the ground, and how deep it goes by the sinkage law. su [Pa] > 0. */
export function footBeside(su: Qty<"Pa">, ground: BekkerGround | null, trace?: Trace): FootBeside {
  const B = walkingFootBreadth({}, trace);
  const q = netBearingCapacity({ su, B, L: metres(soleLength), D: metres(0) }, trace, "a foot on the ground");
  const low_share = walkingLow({}, trace) / q;
  const high_share = walkingHigh({}, trace) / q;
  const sinks = low_share > 1 ? "yes" : high_share > 1 ? "at times" : "no";
  const depth_m = ground === null ? null : sinkageOf(ground, B, pascals(walkingHigh({})), trace);
  const deep =
    depth_m === null
      ? ground === null
        ? ""
        : " The sinkage law gives no depth: the foot goes right in."
      : ` About ${(depth_m * 1000).toFixed(0)} mm deep by the sinkage law.`;
  const verdict = {
    yes: "A foot beside the walkway breaks in.",
    "at times": "A foot beside the walkway breaks in at a heavy step.",
    no: "A foot beside the walkway leaves the surface whole.",
  }[sinks];
  return { capacity_pa: q, low_share, high_share, sinks, depth_m, words: verdict + deep };
}
