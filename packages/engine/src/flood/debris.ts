import { defineFormula, recordValue, type Trace } from "../formula/index.ts";
import { qty, type Qty } from "../units/index.ts";
import { debris, project } from "./sources.ts";

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

export const debrisFormulas = [
  froudeNumber,
  littleBlocked,
  littleBlockedSecond,
  halfBlocked,
  mostlyBlocked,
] as const;
