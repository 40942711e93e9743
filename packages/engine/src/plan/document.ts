import type { Kit } from "../kit/index.ts";
import type { LayoutChoice, Weights } from "../layout/index.ts";
import type { AccessRequest } from "../request/index.ts";
import type { ProofChoice } from "./proof-choice.ts";
import type { RuleChoice } from "../rules/index.ts";
import type { Plot, Start, StrengthReading, WaterLevel, Zone } from "../site/index.ts";
import type { PointColumns, Survey } from "../survey/index.ts";
import type { UnitSystem } from "../units/index.ts";
import type { WaterChoice } from "../water/index.ts";

export type { LayoutChoice, Weights };

export const PLAN_SCHEMA = 3;

export interface Cart {
  readonly name: string;
  readonly empty_kg: number;
  readonly load_kg: number;
  /** What mud, rain and wet samples add to the load. */
  readonly wet_kg: number;
  /** Overall, handles and all; null = not told. */
  readonly width_mm: number | null;
  readonly length_mm: number | null;
  /** Wheels apart across the walkway, centre to centre. */
  readonly track_mm: number;
  /** Axles apart along the walkway; 0 for one axle. */
  readonly axle_distance_mm: number;
  readonly axles: 1 | 2;
  /** Contact patch of one wheel. */
  readonly wheel_width_mm: number;
  readonly wheel_contact_mm: number;
}

/** A demand: who and what goes to which plot, how often, from when to when (ISO dates). */
export interface Visit {
  readonly id: string;
  readonly name: string;
  readonly plots: readonly string[];
  readonly people: number;
  readonly person_kg: number;
  /** Along the walkway, between people walking in file. */
  readonly spacing_mm: number;
  readonly cart: Cart | null;
  readonly per_year: number;
  readonly from: string;
  /** Null = no last day was given, which is flagged: a temporary walkway needs one. */
  readonly to: string | null;
}

export interface GroundChoice {
  /** Undrained shear strength where no reading lies near; null = not known, checks say so. */
  readonly su_kpa: number | null;
  readonly source: string;
  readonly readings: readonly StrengthReading[];
  /** Required ratio of bearing capacity to pressure. */
  readonly safety: number;
}

export interface MoneyChoice {
  /** ISO 4217 code; every price of the price list must be in it. */
  readonly currency: string;
  readonly labour_per_hour: number;
  readonly contingency_share: number;
  readonly tax_share: number;
  readonly delivery: number;
  /** Share of the laying hours that taking it out again needs. */
  readonly removal_share: number;
  readonly disposal: number;
  /** Share of the laying and removal hours that volunteers give, and what an hour of theirs counts for a grant. */
  readonly donated_share: number;
  readonly donated_per_hour: number;
  /** Hours to build one module in the jig. */
  readonly jig_hours_per_module: number;
  readonly inspections_per_year: number;
  readonly hours_per_inspection: number;
  /** Materials replaced in a year, as a share of those bought. */
  readonly repair_share_per_year: number;
  /** What watching plants and ground costs in a year; left out = not planned, which is warned about. */
  readonly monitoring_per_year?: number;
  /** A price older than this on the day of the papers (or of the laying) is flagged. */
  readonly price_age_days: number;
}

/** What stands in the title block of every paper. */
export interface PaperChoice {
  readonly sheet: "a4" | "letter";
  readonly applicant: string;
  readonly prepared_by: string;
  readonly file_no: string;
  readonly waterbody: string;
  /** Day of the papers; null = not dated yet. */
  readonly date: string | null;
  /** Names and addresses of the neighbours, one a line. */
  readonly adjoining: readonly string[];
}

/** Where the ground's heights come from. */
export type TerrainChoice =
  | {
      readonly kind: "grid";
      readonly file: string;
      readonly unit: "m" | "ft";
      readonly datum: string;
      /** The owner has checked that a file which names no coordinate system lies in the plan's. */
      readonly crs_confirmed?: boolean;
    }
  | {
      readonly kind: "points";
      readonly file: string;
      readonly columns: PointColumns;
      readonly unit: "m" | "ft" | "us-ft";
      readonly decimal: "point" | "comma";
      readonly date_order: "ymd" | "dmy" | "mdy";
      readonly datum: string;
      /** Cell of the grid that the triangles are read into [m]. */
      readonly cell_m: number;
      /** Triangles with a longer edge are left out: nothing is known between points so far apart [m]. */
      readonly longest_edge_m: number;
    }
  | {
      /** The typed stations of the survey are all that is known. */
      readonly kind: "stations";
      readonly datum: string;
      readonly cell_m: number;
      /** Ground is taken as known this far from a station or from the line between two [m]. */
      readonly reach_m: number;
    };

/** A picture of the ground under the map. */
export interface Photo {
  readonly file: string;
  /** World file terms A, D, B, E, C, F: middle of pixel (column, row) -> x = A col + B row + C, y = D col + E row + F; null = the file says. */
  readonly world: readonly [number, number, number, number, number, number] | null;
  /** The user has checked that it lies in the plan's system; needed where the file does not name one. */
  readonly crs_confirmed?: boolean;
  /** How strongly it is shown, above 0 to 1; 1 when left out. */
  readonly opacity?: number;
}

/** The plan document: decisions and inputs, never results. Terrain and price list are files beside it. */
export interface Plan {
  readonly schema: typeof PLAN_SCHEMA;
  readonly id: string;
  readonly name: string;
  readonly site_name: string;
  readonly units: UnitSystem;
  readonly crs: { readonly epsg: number } | { readonly local: string };
  readonly vertical_datum: string;
  readonly request: AccessRequest;
  readonly survey: Survey;
  readonly water: WaterChoice;
  readonly rules: RuleChoice;
  readonly papers: PaperChoice;
  readonly photo: Photo | null;
  readonly terrain: TerrainChoice;
  readonly prices: { readonly file: string };
  /** ISO dates of laying and removal; seasonal closures are held against the days of laying. */
  readonly laying: {
    readonly from: string;
    readonly to: string;
    readonly carry_m: number;
    /** People who carry one module, each with a hold of their own. */
    readonly carriers: number;
  };
  readonly removal: { readonly by: string };
  readonly starts: readonly Start[];
  readonly plots: readonly Plot[];
  readonly zones: readonly Zone[];
  readonly levels: readonly WaterLevel[];
  /** Id of the level at which modules must stay put; null = dry site. */
  readonly flood_level: string | null;
  readonly water_kg_m3: number;
  readonly ground: GroundChoice;
  readonly proof: ProofChoice;
  readonly visits: readonly Visit[];
  readonly kit: Kit;
  readonly layout: LayoutChoice;
  /** Design code by id; its table must hold the kit's species and grade. */
  readonly code: "us-asd-2018" | "ec5-2004";
  readonly saw: { readonly kerf_mm: number };
  readonly money: MoneyChoice;
}
