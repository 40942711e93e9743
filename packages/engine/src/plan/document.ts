import type { Kit } from "../kit/index.ts";
import type { LayoutChoice, Weights } from "../layout/index.ts";

import type { Plot, Start, StrengthReading, WaterLevel, Zone } from "../site/index.ts";
import type { UnitSystem } from "../units/index.ts";

export type { LayoutChoice, Weights };

export const PLAN_SCHEMA = 1;

export interface Cart {
  readonly name: string;
  readonly empty_kg: number;
  readonly load_kg: number;
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
  readonly to: string;
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
  readonly terrain: {
    readonly file: string;
    readonly unit: "m" | "ft";
    readonly datum: string;
    /** The owner has checked that a file which names no coordinate system lies in the plan's. */
    readonly crs_confirmed?: boolean;
  };
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
  readonly visits: readonly Visit[];
  readonly kit: Kit;
  readonly layout: LayoutChoice;
  readonly code: "us-asd-2018";
  readonly saw: { readonly kerf_mm: number };
  readonly money: MoneyChoice;
}
