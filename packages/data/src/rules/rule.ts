import type { Rule } from "@causey/engine/rules";

const IN = 0.0254;
export const inch = (v: number): number => v * IN;
export const foot = (v: number): number => v * 12 * IN;

type Given = Pick<Rule, "title" | "topic" | "value" | "direction" | "source" | "at" | "status"> &
  Partial<Pick<Rule, "when" | "steeper_than" | "up_to">>;

const RATIOS: readonly Rule["topic"][] = [
  "opening-direction",
  "height-per-width",
  "grade",
  "ramp-start",
  "steep-share",
  "rest-grade",
  "cross-slope",
  "bank-setback",
  "tipping",
];

/** Makes the rules of one group; the unit follows from the topic, the id from the group. */
export const rulesOf = (group: string, rows: Readonly<Record<string, Given>>): Rule[] =>
  Object.entries(rows).map(([id, row]) => ({
    id: `${group}.${id}`,
    unit: RATIOS.includes(row.topic) ? "1" : "m",
    when: "",
    ...row,
  }));
