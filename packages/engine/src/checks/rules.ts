import { defineConstant, type Source } from "../formula/index.ts";
import { M_PER_IN, N_PER_LBF, PA_PER_PSI } from "../units/index.ts";

const project = (at: string): Source => ({
  id: "causey-checks",
  title: "Project decision on checks",
  at,
  status: "project",
});

export const footEdgeDistance = defineConstant(
  "check.foot-edge-distance",
  "Least distance of a foot's middle from the edge of the deck",
  "e_f",
  0.075,
  "m",
  project("half a boot: the foot stands wholly on the deck"),
);

export const settledBy = defineConstant(
  "check.settled-by",
  "How far one corner of the supports is taken to have settled",
  "s_c",
  0.025,
  "m",
  project("one corner 25 mm below the others between two inspection rounds; no source"),
);

export const bumpFactor = defineConstant(
  "check.bump",
  "Allowance for bumps on the wheels of a cart",
  "k_b",
  1.25,
  "1",
  project("25 % at walking speed; no source"),
);

export const pointLoad = defineConstant(
  "check.point-load",
  "One load anywhere on the walkway",
  "P_1",
  300 * N_PER_LBF,
  "N",
  {
    id: "asce-7-16",
    title: "ASCE 7-16, Minimum Design Loads",
    at: "Table 4.3-1, catwalks for maintenance access: 300 lb",
    status: "memory",
  },
  `300 * ${N_PER_LBF}`,
);

export const footPatch = defineConstant(
  "check.foot-patch",
  "Side of the square on which that load stands",
  "c_f",
  2.5 * M_PER_IN,
  "m",
  project("2.5 in: a heel"),
  `2.5 * ${M_PER_IN}`,
);

export const deflectionLimit = defineConstant(
  "check.deflection-limit",
  "Live deflection limit: span over this",
  "n_d",
  180,
  "1",
  project("L/180 for a walkway of trained staff; L/360 for the joists of a deck in AWC DCA 6"),
);

export const leastSeat = defineConstant(
  "check.least-seat",
  "Least seat of a module end",
  "s_min",
  1.5 * M_PER_IN,
  "m",
  {
    id: "awc-dca-6",
    title: "AWC DCA 6, Prescriptive Residential Wood Deck Construction Guide",
    at: "joist bearing 1-1/2 in",
    status: "memory",
  },
  `1.5 * ${M_PER_IN}`,
);

export const layingTolerance = defineConstant(
  "check.laying-tolerance",
  "Slop of a crew in laying: how far a module may lie off its mark",
  "t_s",
  0.5 * M_PER_IN,
  "m",
  project("1/2 in along the walkway"),
  `0.5 * ${M_PER_IN}`,
);

export const readingReach = defineConstant(
  "check.reading-reach",
  "How near a strength reading must lie to count for a joint",
  "r_s",
  15,
  "m",
  project("the lowest reading within 15 m, at any depth, else the plan's own value"),
);

export const dryMoisture = defineConstant(
  "check.moisture.dry",
  "Moisture of dry lumber, per cent",
  "M",
  19,
  "1",
  {
    id: "ps-20",
    title: "American Softwood Lumber Standard PS 20",
    at: "dry: at most 19 %",
    status: "memory",
  },
);

export const soakedMoisture = defineConstant(
  "check.moisture.soaked",
  "Moisture of soaked lumber, per cent",
  "M",
  75,
  "1",
  {
    id: "jlc-treated-lumber",
    title: "jlconline.com, treated lumber questions and answers",
    at: "75 % or more straight after pressure treatment",
    status: "seen",
  },
);

export const steelDensity = defineConstant(
  "check.steel-density",
  "Density of what is not timber, taken as steel",
  "rho_s",
  7850,
  "kg/m3",
  { id: "steel", title: "Density of structural steel (EN 1991-1-1, Table A.4)", status: "memory" },
);

export const steelStiffness = defineConstant(
  "check.steel-stiffness",
  "Stiffness of steel",
  "E",
  29e6 * PA_PER_PSI,
  "Pa",
  {
    id: "steel-grating",
    title: "Steel bar grating load tables (scribd.com 332168136)",
    at: "E 29 000 000 psi",
    status: "seen",
  },
  `29000000 * ${PA_PER_PSI}`,
);

/** Cross pieces under boards are held against no load of their own. */
export const BRACE_RULE = project("boards are checked to span from stringer to stringer without help");

export const checkConstants = [
  footEdgeDistance,
  settledBy,
  bumpFactor,
  pointLoad,
  footPatch,
  deflectionLimit,
  leastSeat,
  layingTolerance,
  readingReach,
  dryMoisture,
  soakedMoisture,
  steelDensity,
  steelStiffness,
] as const;
