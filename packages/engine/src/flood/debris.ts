import { defineFormula, recordValue, type Trace } from "../formula/index.ts";
import { qty, type Qty } from "../units/index.ts";
import { debris, project, statics, geometry } from "./sources.ts";

/** Froude number of the flow. V [m/s], d depth [m] > 0; Fr [1]. */
export const froudeNumber = defineFormula(
  {
    id: "flood.wrack.froude",
    title: "Froude number",
    symbol: "Fr",
    unit: "1",
    text: "V / sqrt(9.80665 * d)",
    inputs: { V: "m/s", d: "m" },
    validity: "d > 0.",
    source: debris("equation 4.3"),
  },
  ({ V, d }) => V / Math.sqrt(9.80665 * d),
);

const low = (n: 1 | 2, text: string, at: string, compute: (Fr: number) => number) =>
  defineFormula(
    {
      id: `flood.wrack.little-blocked-${n}`,
      title: `Drag coefficient of wrack, little blocked, table ${n}`,
      symbol: `C_${n}`,
      unit: "1",
      text,
      inputs: { Fr: "1" },
      validity: `${at}; the rows end at Fr 0.8, whose value is held up to 1.`,
      source: debris(`${n === 1 ? "first" : "second"} table`),
    },
    ({ Fr }) => compute(Fr),
  );
const steps = (Fr: number): number => Math.min(0.8, Math.max(0.4, Fr));

/** Little of the flow blocked, first table: B < 0.36. Fr [1] < 1; C_1 [1]. */
export const littleBlocked = low(
  1,
  "2.6 - 2 * min(0.8, max(0.4, Fr))",
  "B < 0.36",
  (Fr) => 2.6 - 2 * steps(Fr),
);
/** Little of the flow blocked, second table: B < 0.33. Fr [1] < 1; C_2 [1]. */
export const littleBlockedSecond = low(
  2,
  "2.8 - 2.25 * min(0.8, max(0.4, Fr))",
  "B < 0.33",
  (Fr) => 2.8 - 2.25 * steps(Fr),
);

/** Half blocked. B blocked share of the flow's section [1], 0.33 or 0.36 to 0.77; C_3 [1]. */
export const halfBlocked = defineFormula(
  {
    id: "flood.wrack.half-blocked",
    title: "Drag coefficient of wrack, half blocked",
    symbol: "C_3",
    unit: "1",
    text: "3.1 - 3.6 * B",
    inputs: { B: "1" },
    validity: "B from 0.33 or 0.36 to 0.77, Fr < 1.",
    source: debris("both tables"),
  },
  ({ B }) => 3.1 - 3.6 * B,
);
/** Nearly dammed. B [1], 0.77 to 1; C_4 [1]. */
export const mostlyBlocked = defineFormula(
  {
    id: "flood.wrack.mostly-blocked",
    title: "Drag coefficient of wrack, mostly blocked",
    symbol: "C_4",
    unit: "1",
    text: "1.4 - 1.4 * B",
    inputs: { B: "1" },
    validity: "B over 0.77, Fr < 1. The head of the dammed water then rules, not the drag.",
    source: debris("both tables"),
  },
  ({ B }) => 1.4 - 1.4 * B,
);

/**
 * Drag coefficient of a wrack mat by both tables, the larger of the two. B blocked share 0 to 1, Fr under 1 [1].
 * Fr of 1 and more lies outside the tables: ask `isTabled` first.
 */
export function wrackCoefficient(Fr: Qty<"1">, B: Qty<"1">, trace?: Trace): Qty<"1"> {
  if (B > 0.77) return mostlyBlocked({ B }, trace);
  const first = B < 0.36 ? littleBlocked({ Fr }, trace) : halfBlocked({ B }, trace);
  const second = B < 0.33 ? littleBlockedSecond({ Fr }, trace) : halfBlocked({ B }, trace);
  const value = qty(Math.max(first, second), "1");
  recordValue(trace, {
    id: "flood.wrack.coefficient",
    title: "Drag coefficient of wrack",
    symbol: "C_d",
    value,
    unit: "1",
    source: project("the safer of the two tables"),
    how: "larger of the two tables",
  });
  return value;
}
/** Whether the tables reach this flow. */
export const isTabled = (Fr: number): boolean => Fr < 1;

/** What stands in the way of the flow: posts, crates, a deck edge; its solid width between two levels over the ground. */
export interface Obstacle {
  readonly name: string;
  readonly count: number;
  /** Solid width that the flow sees, one of them [m]. */
  readonly width_m: number;
  /** Over the ground [m]. */
  readonly bottom_m: number;
  readonly top_m: number;
}

/** Solid area of one kind of obstacle under water. n [1], w [m], h wetted height [m]; A_s [m2]. */
export const solidArea = defineFormula(
  {
    id: "flood.wrack.solid-area",
    title: "Solid area under water",
    symbol: "A_s",
    unit: "m2",
    text: "n * w * h",
    inputs: { n: "1", w: "m", h: "m" },
    validity: "Upright sides.",
    source: geometry("width times wetted height"),
  },
  ({ n, w, h }) => n * w * h,
);

/** Share of the sheet of water that is dammed. A_s [m2], l line [m], d depth [m], c clogged share of the rest [1]; B [1]. */
export const dammedShare = defineFormula(
  {
    id: "flood.wrack.dammed-share",
    title: "Share of the flow's section that is dammed",
    symbol: "B",
    unit: "1",
    text: "min(1, A_s / (l * d)) + c * (1 - min(1, A_s / (l * d)))",
    inputs: { A_s: "m2", l: "m", d: "m", c: "1" },
    validity: "Sheet flow across the whole line, l and d > 0, c from 0 to 1.",
    source: geometry("solid share, and wrack in part of what is open"),
  },
  ({ A_s, l, d, c }) => {
    const s = Math.min(1, A_s / (l * d));
    return s + c * (1 - s);
  },
);

/**
 * Rise of the water upstream of the line, from the force that holds it back: rho g d dh = drag per length, with the
 * speed of the gaps. C_d [1], B [1] < 1, V [m/s] upstream; dh [m].
 */
export const headLoss = defineFormula(
  {
    id: "flood.wrack.head-loss",
    title: "Rise of the water upstream of the line",
    symbol: "dh",
    unit: "m",
    text: "C_d * B * (V / (1 - B))^2 / (2 * 9.80665)",
    inputs: { C_d: "1", B: "1", V: "m/s" },
    validity: "An estimate for B up to 0.77 and dh small against the depth.",
    source: statics("drag of the dammed share against the head, speed taken in the gaps"),
  },
  ({ C_d, B, V }) => (C_d * B * (V / (1 - B)) ** 2) / (2 * 9.80665),
);

/** Most dammed share for which the head is estimated: the last row of the tables begins there. */
export const MOST_DAMMED = 0.77;

/** Solid area of all obstacles at a depth [m2]. depth_m over the ground, > 0. */
export const solidUnder = (obstacles: readonly Obstacle[], depth_m: number, trace?: Trace): Qty<"m2"> =>
  qty(
    obstacles.reduce((sum, o) => {
      const h = qty(Math.max(0, Math.min(o.top_m, depth_m) - o.bottom_m), "m");
      return sum + solidArea({ n: qty(o.count, "1"), w: qty(o.width_m, "m"), h }, trace, o.name);
    }, 0),
    "m2",
  );

export const debrisFormulas = [
  froudeNumber,
  littleBlocked,
  littleBlockedSecond,
  halfBlocked,
  mostlyBlocked,
  solidArea,
  dammedShare,
  headLoss,
] as const;
