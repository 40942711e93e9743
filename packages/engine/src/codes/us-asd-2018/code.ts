import type { Source } from "../../formula/index.ts";
import { gradeRows } from "../../materials/index.ts";
import type { Clause, Combination, DesignCode } from "../contract.ts";
import { bearing } from "./bearing.ts";
import { creep } from "./creep.ts";
import { findMember } from "./member.ts";
import { notchedShear } from "./notch.ts";
import { usFasteners } from "./fasteners/index.ts";
import { nds } from "./sources.ts";
import { strength } from "./strength.ts";

const asce = (at: string): Source => ({
  id: "asce-7-16",
  title: "ASCE 7-16, Minimum Design Loads",
  at,
  status: "memory",
});

const combinations: readonly Combination[] = [
  {
    id: "dead-and-live",
    title: "Dead and live load",
    state: "strength",
    dead: 1,
    live: 1,
    duration: "ten-years",
    source: asce("2.4.1, combination 2: D + L"),
  },
  {
    id: "dead",
    title: "Dead load alone",
    state: "strength",
    dead: 1,
    live: 0,
    duration: "permanent",
    source: asce("2.4.1, combination 1: D"),
  },
  {
    id: "service",
    title: "Dead and live load in service",
    state: "service",
    dead: 1,
    live: 1,
    duration: "ten-years",
    source: asce("appendix C, C.2.2: D + L"),
  },
];

const clauses: Readonly<Record<Clause, string>> = {
  bending: "3.3 bending members, flexure",
  shear: "3.4 bending members, shear",
  notch: "3.4.3.2 bending members, shear at a notch",
  deflection: "3.5 bending members, deflection",
  bearing: "3.10 bearing across the grain",
  column: "3.7 solid columns",
  screws: "12.3 dowel-type fasteners, yield limit equations",
};

/** US allowable stress design of sawn lumber, NDS 2018. */
export const usAsd2018: DesignCode = {
  id: "us-asd-2018",
  title: "US allowable stress design (NDS 2018)",
  safety: "allowable-stress",
  combinations,
  deflection_limits: [
    {
      id: "live",
      title: "Live load, joists of a deck",
      of: "live",
      span_over: [360, 360],
      is_preference: true,
      source: {
        id: "awc-dca-6",
        title: "AWC DCA 6, Prescriptive Residential Wood Deck Construction Guide (2015 IRC edition)",
        at: "Table 2: L/360",
        status: "seen",
      },
    },
    {
      id: "final",
      title: "All loads, after creep",
      of: "final",
      span_over: [180, 240],
      is_preference: true,
      source: {
        id: "ibc-2018",
        title: "International Building Code 2018",
        at: "Table 1604.3, floor members: L/240; L/180 where no ceiling hangs below",
        status: "memory",
      },
    },
  ],
  rule: (clause) => nds(clauses[clause], "memory"),
  woods: gradeRows,
  member: findMember,
  strength,
  bearing,
  notchedShear,
  creep,
  fasteners: usFasteners,
  woodPiece: ({ grade }, thickness_m) => ({
    material: "wood",
    thickness_m,
    ...("specific_gravity" in grade ? { gravity: grade.specific_gravity.value } : {}),
  }),
};
