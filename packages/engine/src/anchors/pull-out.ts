import { defineConstant, defineFormula, type Constant, type Trace } from "../formula/index.ts";
import { adhesionFactor, grippingLength, stakePullOut } from "../flood/index.ts";
import type { Qty } from "../units/index.ts";
import { alphaMethod, anchorRule } from "./sources.ts";
import { areaOf, girthOf, widerOf, type StakeSection } from "./section.ts";

/** How well the ground has closed round a stake: just driven, at rest for weeks, or worked loose by floods. */
export type StakeState = "fresh" | "set" | "loosened";
export const stakeStates: readonly StakeState[] = ["fresh", "set", "loosened"];

export const freshShare = defineConstant(
  "anchor.state.fresh",
  "Share of the pull-out in the first hours after driving",
  "k_s",
  0.3,
  "1",
  alphaMethod("0.3 to 0.5 in the first hours, sensitivity 2 to 4; the lower end"),
);
export const setShare = defineConstant(
  "anchor.state.set",
  "Share of the pull-out once the ground has closed",
  "k_s",
  1,
  "1",
  alphaMethod("set-up complete"),
);
export const loosenedShare = defineConstant(
  "anchor.state.loosened",
  "Share of the pull-out of a stake worked loose by floods",
  "k_s",
  0.5,
  "1",
  anchorRule(
    "half the strength, as for cyclic sway (from memory); no test of stakes in marsh stands behind it",
  ),
);
const shares: Readonly<Record<StakeState, Constant<"1">>> = {
  fresh: freshShare,
  set: setShare,
  loosened: loosenedShare,
};

/** Pull-out of one stake in its state. k_s [1], R_1 [N] of the set stake; R_s [N]. */
export const statePullOut = defineFormula(
  {
    id: "anchor.pullout.state",
    title: "Pull-out of one stake in its state",
    symbol: "R_s",
    unit: "N",
    text: "k_s * R_1",
    inputs: { k_s: "1", R_1: "N" },
    validity:
      "Ultimate: a ratio of safety comes on top. A tapered stake holds less, and lets go at the first lift.",
    source: alphaMethod("set-up and disturbance"),
  },
  ({ k_s, R_1 }) => k_s * R_1,
);

/** Tip of a stake that is pressed. su [Pa], A tip [m2]; Q_t [N]. */
export const tipResistance = defineFormula(
  {
    id: "anchor.tip",
    title: "What the tip of the stake carries",
    symbol: "Q_t",
    unit: "N",
    text: "9 * su * A",
    inputs: { su: "Pa", A: "m2" },
    validity: "Undrained clay or peat, tip four widths deep or more; pressed only.",
    source: alphaMethod("9 su A (pile example at cidian.kuaisou.com)", "seen"),
  },
  ({ su, A }) => 9 * su * A,
);
/** What a pressed stake carries. R_s shaft, Q_t tip [N]; Q_c [N]. */
export const pressedStake = defineFormula(
  {
    id: "anchor.pressed",
    title: "What a pressed stake carries",
    symbol: "Q_c",
    unit: "N",
    text: "R_s + Q_t",
    inputs: { R_s: "N", Q_t: "N" },
    validity: "Ultimate.",
    source: alphaMethod("shaft and tip", "seen"),
  },
  ({ R_s, Q_t }) => R_s + Q_t,
);

/** A straight stake in ground of one strength. */
export interface Stake {
  readonly section: StakeSection;
  readonly embedment: Qty<"m">;
  readonly su: Qty<"Pa">;
  readonly state: StakeState;
}

/** Words for a tapered stake: no published factor is known, so none is put in. */
export const TAPER_NOTE =
  "A tapered stake holds less than this and lets go at the first lift: no factor is known, test one by pulling it.";

/** Ultimate pull-out of one stake [N], its own weight left out; 0 when it is no longer than the ignored top. */
export function pullOut({ section, embedment: L, su, state }: Stake, trace?: Trace): Qty<"N"> {
  const P = girthOf(section, trace);
  const L_g = grippingLength({ L, b: widerOf(section) }, trace);
  const R_1 = stakePullOut({ alpha: adhesionFactor({ su }, trace), su, P, L_g }, trace);
  return statePullOut({ k_s: shares[state]({}, trace), R_1 }, trace);
}

/** Ultimate load that presses one stake down [N]: shaft in its state, and the tip. */
export function pressed(stake: Stake, trace?: Trace): Qty<"N"> {
  const R_s = pullOut(stake, trace);
  const Q_t = tipResistance({ su: stake.su, A: areaOf(stake.section, trace) }, trace);
  return pressedStake({ R_s, Q_t }, trace);
}

/** Horizontal force of two stakes that lean against each other as a truss. R the weaker of pull and push [N], theta lean from upright [rad]; H [N]. */
export const rakingPair = defineFormula(
  {
    id: "anchor.raking-pair",
    title: "Horizontal force of a raking pair",
    symbol: "H_r",
    unit: "N",
    text: "2 * R * sin(theta)",
    inputs: { R: "N", theta: "rad" },
    validity: "Both joined at their heads, one pulled and one pressed; theta from 0 to a quarter turn.",
    source: {
      id: "statics",
      title: "Statics",
      at: "truss of two bars: H = 2 R sin(theta)",
      status: "computed",
    },
  },
  ({ R, theta }) => 2 * R * Math.sin(theta),
);

/** Strength left for a stake that sways back and forth. su [Pa]; su_c [Pa]. */
export const swayStrength = defineFormula(
  {
    id: "anchor.sway-strength",
    title: "Strength of the ground under sway",
    symbol: "su_c",
    unit: "Pa",
    text: "su / 2",
    inputs: { su: "Pa" },
    validity: "Cyclic sway by waves and current.",
    source: alphaMethod("half su for cyclic sway"),
  },
  ({ su }) => su / 2,
);

export const pullOutFormulas = [
  freshShare,
  setShare,
  loosenedShare,
  statePullOut,
  tipResistance,
  pressedStake,
  rakingPair,
  swayStrength,
] as const;
