import type { JsonObject } from "@causey/engine/formula";

/** Plans of schema 2 prove nothing besides their visits. Written out in full, as every older form is. */
const PROOF: JsonObject = {
  load_rules: [],
  carry: null,
  stacked_modules: 0,
  used_timber: null,
  flood: {
    levels: [],
    speed_m_s: null,
    speed_source: "",
    flow_deg: null,
    wave: null,
    wrack: null,
    log_kg: null,
    stakes: "set",
    ice_months: null,
    ice_m: null,
    frost_m: null,
  },
  ground: {
    root_mat_m: null,
    prior_spread: 0.4,
    alike_m: 15,
    chance: 0.05,
    soft_layer: null,
    sinkage: null,
    sensitive_plots: [],
  },
};

/** Schema 2 to 3: what is proven besides the visits joins the plan. */
export const toSchemaThree = (document: JsonObject): JsonObject => ({ proof: PROOF, ...document });
