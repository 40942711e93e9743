import { defineConstant, defineFormula, type Source, type SourceStatus } from "../formula/index.ts";
import { KG_PER_LB, M_PER_IN } from "../units/index.ts";

const niosh = (at: string, status: SourceStatus): Source => ({
  id: "niosh-94-110",
  title: "NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation (rev. 2021)",
  at,
  status,
});
const posture = (at: string): Source => ({
  id: "causey-lifting",
  title: "Project decision on lifting a module",
  at,
  status: "project",
});
const length = (name: string, title: string, symbol: string, inch: number, at: string) =>
  defineConstant(
    `lifting.${name}`,
    title,
    symbol,
    inch * M_PER_IN,
    "m",
    posture(at),
    `${inch} * ${M_PER_IN}`,
  );

export const loadConstant = defineConstant(
  "lifting.load-constant",
  "Load constant of the lifting equation",
  "LC",
  51 * KG_PER_LB,
  "kg",
  niosh("load constant 51 lb", "seen"),
  `51 * ${KG_PER_LB}`,
);
export const liftHeight = length(
  "height",
  "Height of the hands at the start",
  "V",
  18,
  "18 in: off the trestles or the deck",
);
export const liftTravel = length(
  "travel",
  "Way the hands travel upward",
  "D",
  18,
  "18 in: to carrying height",
);
export const liftReach = length("reach", "Distance of the hands before the ankles", "H", 12, "12 in");
export const poorGrip = defineConstant(
  "lifting.grip",
  "Coupling multiplier, poor grip",
  "CM",
  0.9,
  "1",
  niosh("coupling multiplier, poor", "memory"),
);

/** Horizontal multiplier. H [m] 0.254 to 0.635; HM [1]. */
export const horizontalMultiplier = defineFormula(
  {
    id: "lifting.horizontal",
    title: "Horizontal multiplier",
    symbol: "HM",
    unit: "1",
    text: "0.254 / max(H, 0.254)",
    inputs: { H: "m" },
    validity: "H from 10 in to 25 in; below 10 in counts as 10 in.",
    source: niosh("HM = 10 / H", "seen"),
  },
  ({ H }) => 0.254 / Math.max(H, 0.254),
);

/** Vertical multiplier. V [m] 0 to 1.78; VM [1]. */
export const verticalMultiplier = defineFormula(
  {
    id: "lifting.vertical",
    title: "Vertical multiplier",
    symbol: "VM",
    unit: "1",
    text: "1 - 0.0075 * max(V / 0.0254 - 30, 30 - V / 0.0254)",
    inputs: { V: "m" },
    validity: "V from 0 to 70 in.",
    source: niosh("VM = 1 - 0.0075 |V - 30|", "seen"),
  },
  ({ V }) => 1 - 0.0075 * Math.abs(V / 0.0254 - 30),
);

/** Distance multiplier. D [m] 0.254 to 1.78; DM [1]. */
export const distanceMultiplier = defineFormula(
  {
    id: "lifting.distance",
    title: "Distance multiplier",
    symbol: "DM",
    unit: "1",
    text: "0.82 + 1.8 / max(D / 0.0254, 10)",
    inputs: { D: "m" },
    validity: "D from 10 in to 70 in; below 10 in counts as 10 in.",
    source: niosh("DM = 0.82 + 1.8 / D", "seen"),
  },
  ({ D }) => 0.82 + 1.8 / Math.max(D / 0.0254, 10),
);

/** Recommended weight limit of one person, no twist, rare lifts. LC [kg], multipliers [1]; RWL [kg]. */
export const recommendedWeightLimit = defineFormula(
  {
    id: "lifting.limit",
    title: "Recommended weight limit of one person",
    symbol: "RWL",
    unit: "kg",
    text: "LC * HM * VM * DM * CM",
    inputs: { LC: "kg", HM: "1", VM: "1", DM: "1", CM: "1" },
    validity:
      "Two-handed lift of one person on firm, even ground, no twist (AM 1), rare lifts (FM 1). Not for mud, carrying or team lifts.",
    source: niosh("RWL = LC HM VM DM AM FM CM", "seen"),
  },
  ({ LC, HM, VM, DM, CM }) => LC * HM * VM * DM * CM,
);

/** What several carriers may lift together, sharing evenly. n [1], RWL [kg]; m_r [kg]. */
export const teamLimit = defineFormula(
  {
    id: "lifting.team",
    title: "Mass that the carriers may lift together",
    symbol: "m_r",
    unit: "kg",
    text: "n * RWL",
    inputs: { n: "1", RWL: "kg" },
    validity: "Even shares; a team lifts less well than its members alone.",
    source: posture("the limit of one person times the carriers"),
  },
  ({ n, RWL }) => n * RWL,
);

export const liftingFormulas = [
  loadConstant,
  liftHeight,
  liftTravel,
  liftReach,
  poorGrip,
  horizontalMultiplier,
  verticalMultiplier,
  distanceMultiplier,
  recommendedWeightLimit,
  teamLimit,
] as const;
