/** Nominal lumber size as the yard names it: "2x4", "2x6", "5/4x6", "4x4". Actual sizes stand in the data tables. */
export type SizeId = string;

/** Lumber of the kit: species, grade and treatment decide the design values. */
export interface Lumber {
  readonly species: string;
  readonly grade: string;
  readonly treatment: "none" | "treated";
  readonly incised: boolean;
  /** Id in the table of preservatives; null = untreated, or not known when `treatment` says treated. */
  readonly preservative: string | null;
}

/** An exception to the regular spacing of cross pieces. Applies to every module length unless `length_mm` is given. */
export interface CrossPieceException {
  readonly length_mm?: number;
  readonly at_mm: number;
  readonly size?: SizeId;
  readonly omit?: boolean;
}

export interface CrossPieces {
  readonly size: SizeId;
  /** flat: wide face up, under the deck; edge: narrow face up. */
  readonly lay: "flat" | "edge";
  /** Centre to centre, counted from the module's start. The first piece is flush with the start. */
  readonly spacing_mm: number;
  readonly exceptions: readonly CrossPieceException[];
  readonly screw: string;
  readonly screws_per_end: number;
}

/** catch-board: a flat board across the end that projects and carries the next module. plain: a cross piece flush with the end. */
export type ModuleEnd =
  | { readonly kind: "catch-board"; readonly size: SizeId; readonly projection_mm: number }
  | { readonly kind: "plain" };

export type Deck = BoardDeck | MeshDeck | PanelDeck;

export interface BoardDeck {
  readonly kind: "boards";
  readonly size: SizeId;
  readonly gap_mm: number;
  /** Length of a board across the module. */
  readonly width_mm: number;
  readonly screw: string;
  readonly screws_per_bearing: number;
}

export interface MeshDeck {
  readonly kind: "mesh";
  readonly name: string;
  readonly wire_mm: number;
  readonly pitch_mm: number;
  readonly panel_length_mm: number;
  /** Width of the deck; the sheet is cut wider by the two upturns. */
  readonly width_mm: number;
  readonly upturn_mm: number;
  readonly clip: string;
  readonly clips_per_panel: number;
  readonly mass_kg_m2: number;
  readonly open_share: number;
  readonly yield_mpa: number;
}

/** Panels that carry by their own stiffness, spanning along the walk between cross pieces. */
export interface PanelDeck {
  readonly kind: "moulded-grating" | "bar-grating" | "plywood" | "plastic-panel";
  readonly name: string;
  readonly thickness_mm: number;
  /** Length along the walk as bought; panels of a module are trimmed alike. */
  readonly panel_length_mm: number;
  /** Width of the deck across the walk, one panel wide. */
  readonly width_mm: number;
  readonly gap_mm: number;
  /** Clear openings of the panel along and across the walk; 0 for a closed one. */
  readonly opening_along_mm: number;
  readonly opening_across_mm: number;
  readonly open_share: number;
  readonly mass_kg_m2: number;
  /** Water that it takes up when soaked. */
  readonly soak_kg_m2: number;
  /** Item of the price list that fastens it: a clip or a screw. */
  readonly fastener: string;
  readonly fasteners_per_panel: number;
  readonly strength: PanelStrength;
}

/** What the maker's table, or a rule, says one metre of the panel's width carries along the walk. */
export interface PanelStrength {
  /** Allowable bending moment per metre width, wet  [N*m per m] */
  readonly moment_n: number;
  /** Bending stiffness per metre width, wet, short load  [N*m2 per m] */
  readonly stiffness_nm: number;
  /** Deflection under lasting load over that under a short one, >= 1. */
  readonly creep: number;
  readonly source: string;
  readonly status: "seen" | "memory" | "practice" | "computed";
}

/** One patch on the ground, centred `offset_across_mm` from the walkway's middle line. */
export interface Foot {
  readonly along_mm: number;
  readonly across_mm: number;
  readonly offset_across_mm: number;
}

/**
 * One timber piece of a support; length = fixed + per_height * support height.
 * Pieces are listed from the ground up: lying ones before the uprights stand below them, those after them above.
 */
export interface SupportPiece {
  readonly name: string;
  readonly size: SizeId;
  readonly count: number;
  readonly length_mm: number;
  readonly per_height: number;
  /** Which way its length runs. Left out: upright when it grows with the height, across in a sleeper, else along. */
  readonly lie?: "upright" | "along" | "across";
  /** Which face a lying piece rests on; flat when left out. */
  readonly lay?: "flat" | "edge";
  /** Lies against the outer faces of the uprights, at half their height, instead of above or below them. */
  readonly beside?: boolean;
  /** Repeated, `count` pieces a layer, as often as the support's height asks; its thickness is the height step. */
  readonly fill?: boolean;
}

export interface SupportKind {
  readonly id: string;
  readonly name: string;
  readonly form: "open-crate" | "sleeper" | "post-pair" | "screw-pile" | "float";
  /** Ground to the underside of the module. */
  readonly height_min_mm: number;
  readonly height_max_mm: number;
  readonly height_step_mm: number;
  readonly sill: { readonly size: SizeId; readonly length_mm: number; readonly lay: "flat" | "edge" };
  readonly pieces: readonly SupportPiece[];
  readonly feet: readonly Foot[];
  /** Maker's or builder's rating of one support; null when there is none and the checks decide alone. */
  readonly rating_n: number | null;
  readonly anchor: {
    readonly kind: "stake";
    readonly size: SizeId;
    readonly length_mm: number;
    /** Length in the ground. */
    readonly embedment_mm: number;
    readonly count: number;
  } | null;
  readonly screws: readonly { readonly screw: string; readonly count: number }[];
  /** Screw piles only: what is turned into the ground below the sill. */
  readonly piles?: ScrewPiles;
  /** Floats only: what carries the sill on the water. */
  readonly floats?: Floats;
  /** Where it may stand: on ground above this level (site datum, null = anywhere), never in these uses of zone. */
  readonly stands: { readonly ground_above_m: number | null; readonly not_in: readonly string[] };
}

/** Piles under one support, standing in pairs either side of the middle line. */
export interface ScrewPiles {
  readonly item: string;
  readonly count: number;
  readonly shaft_mm: number;
  readonly helix_mm: number;
  readonly helices: number;
  /** Length of one pile, lead and extensions together. */
  readonly length_mm: number;
  /** Depth of the lowest helix below ground. */
  readonly depth_mm: number;
  readonly mass_kg: number;
}

/** Floats under one support. */
export interface Floats {
  readonly item: string;
  readonly count: number;
  readonly length_mm: number;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly mass_kg: number;
  /** Least height of a float's top above the water with people on. */
  readonly freeboard_mm: number;
}

/** The sloped piece between firm ground and the first joint. */
export interface Ramp {
  /** Bodies, shortest first; the shortest that keeps the grade is taken. */
  readonly lengths_mm: readonly number[];
  /** Largest rise over run it may be laid at. */
  readonly max_grade: number;
}

export interface Platform {
  readonly side_mm: number;
  /** 1: built and carried whole; 2: two halves, joined on the spot along the middle line. */
  readonly pieces: 1 | 2;
  readonly stringers: { readonly size: SizeId; readonly count: number };
  readonly cross_pieces: { readonly size: SizeId; readonly count: number };
  readonly screw: string;
  readonly screws_per_end: number;
  /**
   * Length of the sills under the two edges that its stringers end at; a support whose own sill is longer keeps it.
   * Left out: every support keeps its own.
   */
  readonly edge_sill_mm?: number;
}

/** The recipe of every part. Lengths in mm as the builder gives them; the engine turns them into metres. */
export interface Kit {
  readonly id: string;
  readonly name: string;
  readonly note: string;
  readonly lumber: Lumber;
  /** Body lengths. Pitch of a module = its length + joint_gap_mm. All pitches and half the platform's share one lattice step. */
  readonly lengths_mm: readonly number[];
  readonly joint_gap_mm: number;
  readonly stringers: {
    readonly count: 2 | 3;
    readonly size: SizeId;
    /** Outside face to outside face. */ readonly overall_mm: number;
  };
  readonly cross_pieces: CrossPieces;
  readonly end: ModuleEnd;
  readonly deck: Deck;
  readonly curb: { readonly size: SizeId; readonly screw: string; readonly screw_spacing_mm: number } | null;
  readonly supports: readonly SupportKind[];
  readonly platform: Platform;
  /** Null = the first deck is stepped onto. */
  readonly ramp: Ramp | null;
  /** Spare modules, a share of each length, rounded up. */
  readonly spares_share: number;
}
