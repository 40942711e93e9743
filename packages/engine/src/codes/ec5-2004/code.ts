import { classRows } from "../../materials/index.ts";
import type { Clause, Combination, DesignCode } from "../contract.ts";
import { bearing } from "./bearing.ts";
import { creep } from "./creep.ts";
import { ec5Fasteners } from "./fasteners/index.ts";
import { lastingLive } from "./factors.ts";
import { findMember } from "./member.ts";
import { notchedShear } from "./notch.ts";
import { ec5, en1990 } from "./sources.ts";
import { strength } from "./strength.ts";

const combinations: readonly Combination[] = [
  {
    id: "dead-and-live",
    title: "Dead and live load with their partial factors",
    state: "strength",
    dead: 1.35,
    live: 1.5,
    duration: "ten-years",
    source: en1990("equation 6.10: 1.35 G + 1.5 Q"),
  },
  {
    id: "dead",
    title: "Dead load alone with its partial factor",
    state: "strength",
    dead: 1.35,
    live: 0,
    duration: "permanent",
    source: en1990("equation 6.10: 1.35 G"),
  },
  {
    id: "characteristic",
    title: "Dead and live load in service",
    state: "service",
    dead: 1,
    live: 1,
    duration: "ten-years",
    source: en1990("equation 6.14b: G + Q"),
  },
  {
    id: "quasi-permanent",
    title: "What of the loads lasts",
    state: "service",
    dead: 1,
    live: lastingLive({}),
    duration: "permanent",
    source: en1990("equation 6.16b: G + psi2 Q, category C"),
  },
];

const clauses: Readonly<Record<Clause, string>> = {
  bending: "6.1.6 bending and 6.3.3 lateral torsional stability",
  shear: "6.1.7 shear",
  notch: "6.5.2 beams with a notch at the support",
  deflection: "7.2 limiting values for deflections",
  bearing: "6.1.5 compression perpendicular to the grain",
  column: "6.3.2 columns",
  screws: "8.7 screwed connections",
};

/** Eurocode 5 for solid softwood, partial factors of the recommended set (no national annex). */
export const ec52004: DesignCode = {
  id: "ec5-2004",
  title: "Eurocode 5 (EN 1995-1-1:2004 + A2:2014)",
  safety: "partial-factors",
  combinations,
  deflection_limits: [
    {
      id: "live",
      title: "At once under the live load",
      of: "live",
      span_over: [300, 500],
      is_preference: true,
      source: ec5("Table 7.2, w_inst of a beam on two supports", "memory"),
    },
    {
      id: "final",
      title: "All loads, after creep",
      of: "final",
      span_over: [150, 300],
      is_preference: true,
      source: ec5("Table 7.2, w_fin of a beam on two supports", "memory"),
    },
  ],
  rule: (clause) => ec5(clauses[clause], "memory"),
  woods: classRows,
  member: findMember,
  strength,
  bearing,
  notchedShear,
  creep,
  fasteners: ec5Fasteners,
  woodPiece: ({ grade }, thickness_m) => ({
    material: "wood",
    thickness_m,
    ...("rho_k_kg_m3" in grade ? { density_k: grade.rho_k_kg_m3.value } : {}),
  }),
};
