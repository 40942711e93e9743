import { defineConstant, defineFormula } from "../formula/index.ts";

/**
 * Net buoyant uplift of a part under water, its own weight already taken off.
 *
 * rho_w  density of the water, rho of the part [kg/m3]; V its volume [m3] >= 0
 * U [N]; 0 for a part that sinks
 */
export const buoyantUplift = defineFormula(
  {
    id: "flood.uplift.net",
    title: "Net buoyant uplift of a part under water",
    symbol: "U",
    unit: "N",
    text: "max(rho_w - rho, 0) * V * 9.80665",
    inputs: { rho_w: "kg/m3", rho: "kg/m3", V: "m3" },
    validity: "Part wholly under still water, V >= 0.",
    source: { id: "archimedes", title: "Archimedes' principle", at: "(rho_w - rho) V g", status: "computed" },
  },
  ({ rho_w, rho, V }) => Math.max(rho_w - rho, 0) * V * 9.80665,
);

/** Upward force of still water on a volume wholly under it. rho_w [kg/m3], V [m3]; B [N]. */
export const displacedWeight = defineFormula(
  {
    id: "flood.uplift.gross",
    title: "Upward force of the water on all parts",
    symbol: "B",
    unit: "N",
    text: "rho_w * V * 9.80665",
    inputs: { rho_w: "kg/m3", V: "m3" },
    validity: "Parts wholly under still water, no current, no waves, V >= 0.",
    source: { id: "archimedes", title: "Archimedes' principle", at: "rho_w V g", status: "computed" },
  },
  ({ rho_w, V }) => rho_w * V * 9.80665,
);

const rule = (at: string) =>
  ({
    id: "causey-flotation",
    title: "Project rule on staying put under water",
    at,
    status: "project",
  }) as const;

export const flotationSafety = defineConstant(
  "flood.flotation.safety",
  "Ratio of hold-down to the water's upward force",
  "n_f",
  1.5,
  "1",
  rule("(pull-out + 0.9 weight) / upward force >= 1.5, driest wood"),
);

export const selfWeightFactor = defineConstant(
  "flood.flotation.self-weight",
  "Part of the own weight that is counted",
  "k_w",
  0.9,
  "1",
  rule("own weight counted at 0.9"),
);

/** What holds a part down: pull-out of its stakes and the counted part of its weight. R, W [N]; k_w [1]; H [N]. */
export const holdDown = defineFormula(
  {
    id: "flood.flotation.hold-down",
    title: "Hold-down of stakes and own weight",
    symbol: "H",
    unit: "N",
    text: "R + k_w * W",
    inputs: { R: "N", k_w: "1", W: "N" },
    validity: "The part is tied to its supports and the supports to their stakes.",
    source: rule("pull-out + 0.9 weight"),
  },
  ({ R, k_w, W }) => R + k_w * W,
);

/** Hold-down that the rule asks for. B [N], n_f [1]; H_n [N]. */
export const requiredHoldDown = defineFormula(
  {
    id: "flood.flotation.required",
    title: "Hold-down asked for",
    symbol: "H_n",
    unit: "N",
    text: "n_f * B",
    inputs: { n_f: "1", B: "N" },
    validity: "B is the gross upward force: the own weight stands on the other side.",
    source: rule("1.5 times the upward force"),
  },
  ({ n_f, B }) => n_f * B,
);
