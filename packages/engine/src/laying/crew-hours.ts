import { defineFormula } from "../formula/index.ts";

const crewDays = {
  id: "crew-days",
  title: "Crew rates worked out from published work-day reports of volunteer crews",
  at: "ready-made units after a short carry 5 to 10 ft, built after a long carry 0.3 to 1 ft per person-hour",
  status: "computed",
} as const;

/** How much of the way from a short to a long carry a job lies: 0 = short or less, 1 = long or more. */
export const longCarryShare = defineFormula(
  {
    id: "laying.long-carry-share",
    title: "Share of the way from a short to a long carry",
    symbol: "f",
    unit: "1",
    text: "max(0, min(1, (d - d_short) / (d_long - d_short)))",
    inputs: { d: "m", d_short: "m", d_long: "m" },
    validity: "d >= 0, d_long > d_short. Beyond the long carry the rate of the long carry stands.",
    source: {
      id: "causey-carry",
      title: "Project decision: carrying time grows evenly with the distance",
      status: "project",
    },
  },
  ({ d, d_short, d_long }) => Math.max(0, Math.min(1, (d - d_short) / (d_long - d_short))),
);

/**
 * Person-hours to lay a walkway of ready-made modules.
 *
 * L        length of walkway                                                     [m]
 * f        share of the way from a short to a long carry                         [1], 0 to 1
 * r_short  walkway laid in one person-hour after a short carry                   [m]
 * r_long   walkway laid in one person-hour after a long carry                    [m]
 */
export const layingHours = defineFormula(
  {
    id: "laying.person-hours",
    title: "Person-hours to lay the walkway",
    symbol: "t",
    unit: "h",
    text: "L * ((1 - f) / r_short + f / r_long)",
    inputs: { L: "m", f: "1", r_short: "m", r_long: "m" },
    validity: "Small crews on firm to wet ground, modules made ready beforehand; L >= 0, rates > 0.",
    source: crewDays,
  },
  ({ L, f, r_short, r_long }) => L * ((1 - f) / r_short + f / r_long),
);

/** Person-hours to take the walkway out again, as a share of laying it. */
export const removalHours = defineFormula(
  {
    id: "laying.removal-hours",
    title: "Person-hours to take the walkway out",
    symbol: "t_out",
    unit: "h",
    text: "s * t",
    inputs: { s: "1", t: "h" },
    validity: "s >= 0, the plan's own share.",
    source: { id: "plan-removal-share", title: "The plan's share of the laying hours", status: "project" },
  },
  ({ s, t }) => s * t,
);
