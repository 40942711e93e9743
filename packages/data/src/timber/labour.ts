import type { Tables } from "@causey/engine/materials";
import { tabled } from "./tabled.ts";

const carry = tabled("causey-carry");

/** Laying, in feet of walkway per person-hour, and the carries between which a plan interpolates. */
export const labour = {
  ready_made: { low_ft_per_h: 5, high_ft_per_h: 10, source: "troop-2015", status: "computed" },
  long_carry: { low_ft_per_h: 0.3, high_ft_per_h: 1, source: "norwich-2020", status: "computed" },
  short_carry_m: carry(150, "project"),
  long_carry_m: carry(1207, "project"),
} as const satisfies Tables["labour"];
