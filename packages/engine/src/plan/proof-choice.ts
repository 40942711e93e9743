/** Several people who carry one load between them, walking in step. */
export interface CarryParty {
  readonly people: number;
  readonly person_kg: number;
  readonly load_kg: number;
  /** Along the walkway, between one and the next. */
  readonly spacing_mm: number;
}

/** What a flood brings besides its level. Null = not told: what rests on it cannot be checked. */
export interface FloodProof {
  /** Ids of water levels that are checked besides the flood that must be held. */
  readonly levels: readonly string[];
  /** Speed of the water over the ground, measured or estimated; null = both bounds of the flood rule are shown. */
  readonly speed_m_s: number | null;
  readonly speed_source: string;
  /** Where the water runs to, clockwise from grid north; null = square to every part. */
  readonly flow_deg: number | null;
  readonly wave: { readonly height_m: number; readonly period_s: number } | null;
  /** Cut stems and weed that lodge on the line, and the share of the deck's openings that they clog. */
  readonly wrack: { readonly thickness_m: number; readonly clogged_share: number } | null;
  readonly log_kg: number | null;
  /** How the stakes stand: just driven, set for weeks, or worked loose by earlier floods. */
  readonly stakes: "fresh" | "set" | "loosened";
  /** Months in which ice may form, 1 to 12; null = not told, none = no ice. */
  readonly ice_months: readonly number[] | null;
  readonly ice_m: number | null;
  readonly frost_m: number | null;
}

/** Layer that settles under the walkway for as long as it lies there. */
export interface SoftLayer {
  readonly thickness_m: number;
  /** Cc / (1 + e0). */
  readonly compression: number;
  /** Creep over compression, Ca / Cc. */
  readonly creep_share: number;
  /** Effective pressure in the middle of the layer before anything is laid. */
  readonly pressure_kpa: number;
  readonly source: string;
}

/** What is told of the ground besides its strength. */
export interface GroundProof {
  /** Stiff mat of roots over weaker mud; null = none is counted. */
  readonly root_mat_m: number | null;
  /** Spread of strength expected before any reading: standard deviation of its logarithm. */
  readonly prior_spread: number;
  /** Distance along the walkway over which strengths are alike. */
  readonly alike_m: number;
  /** Chance of a joint sinking that the owner accepts, 0 to 1. */
  readonly chance: number;
  readonly soft_layer: SoftLayer | null;
  /** Row of the table of pressure and sinkage; null = sinkage is not checked. */
  readonly sinkage: string | null;
  /** A reading at the plot must not feel who stands on the last support. */
  readonly sensitive_plots: readonly string[];
}

/** Timber that has lain out before. */
export interface UsedTimber {
  /** Grade of the table of used timber: what of the section is lost and of the screw holes. */
  readonly grade: string;
  /** Times it has been laid and taken out. */
  readonly cycles: number;
}

/** What the plan proves besides its own visits. */
export interface ProofChoice {
  /** Ids of load rules that must hold as well as the visits. */
  readonly load_rules: readonly string[];
  readonly carry: CarryParty | null;
  /** Modules stacked on one laid module while the walkway grows; 0 = none. */
  readonly stacked_modules: number;
  /** Null = new timber. */
  readonly used_timber: UsedTimber | null;
  readonly flood: FloodProof;
  readonly ground: GroundProof;
}

/** Nothing told beyond the visits. */
export const BLANK_PROOF: ProofChoice = {
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
