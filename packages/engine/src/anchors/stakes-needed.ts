import { defineFormula, type Trace } from "../formula/index.ts";
import { newtons, qty, type Qty } from "../units/index.ts";
import { freeMoment, groundReaction, ignoredTop, woodMoment } from "./broms.ts";
import { lateral } from "./lateral.ts";
import { pullOut, swayStrength, type StakeState } from "./pull-out.ts";
import { areaOf, facingOf, modulusOf, widerOf, type StakeSection } from "./section.ts";
import { anchorRule } from "./sources.ts";

/** A stake one can buy: its section, the lengths it comes in, and the bending stress its wood may carry. */
export interface StakeChoice {
  readonly name: string;
  readonly section: StakeSection;
  readonly lengths_m: readonly number[];
  readonly bending_pa: Qty<"Pa">;
}

/** What the stakes of one support, or of one part, must hold, and the ground they stand in. */
export interface StakeDemand {
  readonly uplift_n: number;
  readonly horizontal_n: number;
  /** Height of the horizontal force over the ground [m]. */
  readonly e_m: number;
  /** Length of a stake that stays over the ground [m]. */
  readonly above_m: number;
  readonly su: Qty<"Pa">;
  readonly state: StakeState;
  /** Waves or current rock it: half the strength against the horizontal force. Loosened stakes count so in any case. */
  readonly sway: boolean;
  /** Ratios of capacity to load asked for, >= 1; the wood's stress is taken as allowable and gets none. */
  readonly safety_pull: number;
  readonly safety_lateral: number;
}

/** A number of equal stakes against the demand. */
export interface StakeSet {
  readonly name: string;
  readonly length_m: number;
  readonly embedment_m: number;
  readonly count: number;
  readonly timber_m3: number;
  readonly pull: number;
  readonly lateral: number;
  readonly bending: number;
  /** Pull-out plus the worse of side force and bending; holds up to 1. */
  readonly combined: number;
}

const rule = anchorRule("utilisation of pull-out plus the worse of side force and bending, at most 1");

/** Utilisation of pull-out. n_p [1], U [N] all uplift, n [1] stakes, R_s [N] > 0; u_p [1]. */
export const pullUse = defineFormula(
  {
    id: "anchor.use.pull",
    title: "Utilisation of the pull-out",
    symbol: "u_p",
    unit: "1",
    text: "n_p * U / (n * R_s)",
    inputs: { n_p: "1", U: "N", n: "1", R_s: "N" },
    validity: "Stakes share alike, three widths apart or more.",
    source: anchorRule("ratio asked for times the share of one stake"),
  },
  ({ n_p, U, n, R_s }) => (n_p * U) / (n * R_s),
);
/** Utilisation of the side force. n_h [1], H [N] all, n [1], H_u [N] > 0; u_h [1]. */
export const lateralUse = defineFormula(
  {
    id: "anchor.use.lateral",
    title: "Utilisation of the ground against the side force",
    symbol: "u_h",
    unit: "1",
    text: "n_h * H / (n * H_u)",
    inputs: { n_h: "1", H: "N", n: "1", H_u: "N" },
    validity: "Stakes share alike, three widths apart or more.",
    source: anchorRule("ratio asked for times the share of one stake"),
  },
  ({ n_h, H, n, H_u }) => (n_h * H) / (n * H_u),
);
/** Utilisation of the wood. M, M_w [N*m], M_w > 0; u_m [1]. */
export const bendingUse = defineFormula(
  {
    id: "anchor.use.bending",
    title: "Utilisation of the wood in bending",
    symbol: "u_m",
    unit: "1",
    text: "M / M_w",
    inputs: { M: "N*m", M_w: "N*m" },
    validity: "M_w from an allowable stress.",
    source: anchorRule("moment over what the wood may carry"),
  },
  ({ M, M_w }) => M / M_w,
);
/** Combined utilisation. u_p, u_h, u_m [1]; u [1]. */
export const combinedUse = defineFormula(
  {
    id: "anchor.use.combined",
    title: "Utilisation, pull and side force together",
    symbol: "u",
    unit: "1",
    text: "u_p + max(u_h, u_m)",
    inputs: { u_p: "1", u_h: "1", u_m: "1" },
    validity: "A straight-line sum: no test of stakes pulled up and sideways at once stands behind it.",
    source: rule,
  },
  ({ u_p, u_h, u_m }) => u_p + Math.max(u_h, u_m),
);

/** Length of a stake in the ground [m] that is just too short: nothing of it holds. */
export const leastEmbedment = (section: StakeSection): number => ignoredTop({ b: widerOf(section) });

/**
 * `count` equal stakes of one length against the demand. The embedment must be more than `leastEmbedment`:
 * throws `DomainError` otherwise.
 */
export function stakeSet(
  choice: StakeChoice,
  length_m: number,
  count: number,
  demand: StakeDemand,
  trace?: Trace,
): StakeSet {
  const { section } = choice;
  const L = qty(length_m - demand.above_m, "m");
  const n = qty(count, "1");
  const R_s = pullOut({ section, embedment: L, su: demand.su, state: demand.state }, trace);
  const weak = demand.sway || demand.state === "loosened";
  const su = weak ? swayStrength({ su: demand.su }, trace) : demand.su;
  const [b, e] = [facingOf(section), qty(demand.e_m, "m")];
  const side = lateral({ b, L, e, su, head: "free", wood: null }, trace);
  const H = newtons(demand.horizontal_n / count);
  const M = freeMoment(
    { H, e, t: side.ignored_m, q: groundReaction({ su, b }) },
    trace,
    "one stake under its share",
  );
  const M_w = woodMoment({ S: modulusOf(section, trace), f_b: choice.bending_pa }, trace);
  const U = newtons(demand.uplift_n);
  const u_p = pullUse({ n_p: qty(demand.safety_pull, "1"), U, n, R_s }, trace);
  const all = { n_h: qty(demand.safety_lateral, "1"), H: newtons(demand.horizontal_n), n };
  const u_h = lateralUse({ ...all, H_u: newtons(side.ground_n) }, trace);
  const u_m = bendingUse({ M, M_w }, trace);
  return {
    name: choice.name,
    length_m,
    embedment_m: L,
    count,
    timber_m3: count * areaOf(section) * length_m,
    pull: u_p,
    lateral: u_h,
    bending: u_m,
    combined: combinedUse({ u_p, u_h, u_m }, trace),
  };
}

export interface StakesFound {
  /** Sets that hold, least timber first; of one size and length the fewest stakes. */
  readonly sets: readonly StakeSet[];
  /** When none holds: the set that comes nearest. */
  readonly nearest: StakeSet | null;
}

/** Most sets that are named. */
const MOST_SETS = 6;

/**
 * How many stakes of which length hold a demand: of every size and length the fewest that do, up to `most` [1].
 * A longer or wider set that needs as many stakes as a smaller one is left out.
 */
export function stakesNeeded(
  choices: readonly StakeChoice[],
  demand: StakeDemand,
  most: number,
): StakesFound {
  const tried = choices.flatMap((choice) =>
    choice.lengths_m
      .filter((length) => length - demand.above_m > leastEmbedment(choice.section))
      .map((length) => fewest(choice, length, demand, most)),
  );
  const holding = tried.filter((s) => s.combined <= 1);
  const order = (a: StakeSet, b: StakeSet): number => a.timber_m3 - b.timber_m3 || a.count - b.count;
  const sets = [...holding]
    .sort(order)
    .filter((s, i, all) => !all.slice(0, i).some((smaller) => smaller.count <= s.count));
  if (sets.length > 0) return { sets: sets.slice(0, MOST_SETS), nearest: null };
  const [nearest = null] = [...tried].sort((a, b) => a.combined - b.combined);
  return { sets: [], nearest };
}

function fewest(choice: StakeChoice, length: number, demand: StakeDemand, most: number): StakeSet {
  for (let count = 1; count < most; count++) {
    const set = stakeSet(choice, length, count, demand);
    if (set.combined <= 1) return set;
  }
  return stakeSet(choice, length, most, demand);
}

export const stakeSetFormulas = [pullUse, lateralUse, bendingUse, combinedUse] as const;
