import { defineFormula, recordValue, type Source, type Trace } from "../formula/index.ts";
import { qty, type Qty } from "../units/index.ts";
import { stretchedWire } from "./sources.ts";

const computed: Source = {
  ...stretchedWire,
  at: "elastic wire between fixed ends, any sag",
  status: "computed",
};
const validity = "Elastic strand between ends that do not slip, load at midspan, both halves straight.";

/** Unstrained length of a strand that hangs through before it is loaded. L span, s sag at midspan [m]; L_f [m]. */
export const slackLength = defineFormula(
  {
    id: "strand.slack-length",
    title: "Unstrained length of a strand that hangs through",
    symbol: "L_f",
    unit: "m",
    text: "2 * sqrt((L / 2)^2 + s^2)",
    inputs: { L: "m", s: "m" },
    validity: "s >= 0, sag of two straight halves.",
    source: computed,
  },
  ({ L, s }) => 2 * Math.sqrt((L / 2) ** 2 + s ** 2),
);

/** Unstrained length of a strand set under pull. L span [m], T_0 pull [N], A [m2], E [Pa]; L_f [m]. */
export const pulledLength = defineFormula(
  {
    id: "strand.pulled-length",
    title: "Unstrained length of a strand set under pull",
    symbol: "L_f",
    unit: "m",
    text: "L / (1 + T_0 / (A * E))",
    inputs: { L: "m", T_0: "N", A: "m2", E: "Pa" },
    validity,
    source: computed,
  },
  ({ L, T_0, A, E }) => L / (1 + T_0 / (A * E)),
);

/** Pull in a strand of sag delta at midspan. A [m2], E [Pa], L, delta, L_f [m]; T [N]. */
export const pullAtSag = defineFormula(
  {
    id: "strand.pull",
    title: "Pull in the strand",
    symbol: "T",
    unit: "N",
    text: "A * E * max(0, 2 * sqrt((L / 2)^2 + delta^2) / L_f - 1)",
    inputs: { A: "m2", E: "Pa", L: "m", delta: "m", L_f: "m" },
    validity,
    source: computed,
  },
  ({ A, E, L, delta, L_f }) => A * E * Math.max(0, (2 * Math.sqrt((L / 2) ** 2 + delta ** 2)) / L_f - 1),
);

/** Load that holds such a strand in balance. T [N], delta, L [m]; P [N]. */
export const loadAtSag = defineFormula(
  {
    id: "strand.load",
    title: "Load at midspan that the strand balances",
    symbol: "P",
    unit: "N",
    text: "2 * T * delta / sqrt((L / 2)^2 + delta^2)",
    inputs: { T: "N", delta: "m", L: "m" },
    validity,
    source: computed,
  },
  ({ T, delta, L }) => (2 * T * delta) / Math.sqrt((L / 2) ** 2 + delta ** 2),
);

/** Stress of a pull. T [N], A [m2]; sigma [Pa]. */
export const pullStress = defineFormula(
  {
    id: "strand.stress",
    title: "Stress in the strand",
    symbol: "sigma",
    unit: "Pa",
    text: "T / A",
    inputs: { T: "N", A: "m2" },
    validity: "Round wire without bending at its ends.",
    source: { ...stretchedWire, at: "pull over area", status: "computed" },
  },
  ({ T, A }) => T / A,
);

export const slackStrandFormulas = [slackLength, pulledLength, pullAtSag, loadAtSag, pullStress] as const;

export interface Strand {
  readonly L: Qty<"m">;
  /** Unstrained length: over L hangs through, under L is under pull. */
  readonly L_f: Qty<"m">;
  readonly A: Qty<"m2">;
  readonly E: Qty<"Pa">;
}

export interface LoadedStrand {
  readonly sag: Qty<"m">;
  readonly pull: Qty<"N">;
}

/**
 * Sag and pull of a strand under a load at midspan, at any size of sag. P [N] > 0. The sag is found by halving until the
 * strand balances the load to 1e-12 of it.
 */
export function loadedStrand(strand: Strand, P: Qty<"N">, trace?: Trace): LoadedStrand {
  const { L, L_f } = strand;
  const balance = (delta: number): number => {
    const at = qty(delta, "m");
    return loadAtSag({ T: pullAtSag({ ...strand, delta: at }), delta: at, L }) - P;
  };
  let low = L_f > L ? Math.sqrt((L_f / 2) ** 2 - (L / 2) ** 2) : 0;
  let high = Math.max(low, L / 1000);
  while (balance(high) < 0) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = (low + high) / 2;
    if (balance(middle) < 0) low = middle;
    else high = middle;
  }
  const sag = qty(high, "m");
  recordValue(trace, {
    id: "strand.sag",
    title: "Sag of the strand at midspan",
    symbol: "delta",
    value: sag,
    unit: "m",
    source: computed,
    how: "found by halving, so that the strand balances the load",
  });
  const pull = pullAtSag({ ...strand, delta: sag }, trace);
  loadAtSag({ T: pull, delta: sag, L }, trace);
  return { sag, pull };
}
