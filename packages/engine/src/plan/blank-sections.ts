import { BLANK_PROOF } from "./proof-choice.ts";
import type { LayoutChoice } from "../layout/index.ts";
import type { MoneyChoice, Plan } from "./document.ts";

/** The sections of a plan that can start empty: nothing is told yet, nothing is assumed. */
export const BLANK_SECTIONS: Pick<
  Plan,
  "request" | "survey" | "water" | "rules" | "papers" | "photo" | "proof"
> = {
  request: {
    requester: "",
    organisation: "",
    contact: "",
    purpose: "",
    received: null,
    wet_feet_ok: null,
    options: [],
  },
  survey: {
    benchmarks: [],
    check_shots: [],
    stations: [],
    correct_terrain: false,
    accuracy_m: null,
    date: null,
  },
  water: { exposure: "fresh", series: null },
  rules: { profile: "staff-access", overrides: [] },
  papers: {
    sheet: "letter",
    applicant: "",
    prepared_by: "",
    file_no: "",
    waterbody: "",
    date: null,
    adjoining: [],
  },
  photo: null,
  proof: BLANK_PROOF,
};

/** Money of a walkway's later years, none of it planned yet. */
export const BLANK_MONEY: Pick<
  MoneyChoice,
  | "donated_share"
  | "donated_per_hour"
  | "jig_hours_per_module"
  | "inspections_per_year"
  | "hours_per_inspection"
  | "repair_share_per_year"
  | "price_age_days"
> = {
  donated_share: 0,
  donated_per_hour: 0,
  jig_hours_per_module: 0,
  inspections_per_year: 0,
  hours_per_inspection: 0,
  repair_share_per_year: 0,
  price_age_days: 180,
};

/** A layout that is searched, with nothing laid yet. */
export const BLANK_LAYOUT: Pick<LayoutChoice, "lines" | "passing_every_m" | "as_laid" | "slop_mm"> = {
  lines: [],
  passing_every_m: null,
  as_laid: [],
  slop_mm: 25,
};
