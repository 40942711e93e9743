import { BLANK_LAYOUT, BLANK_MONEY, BLANK_SECTIONS } from "@causey/engine/plan";
import type { PlanFiles } from "../files/index.ts";
import { jsonBytes } from "../json/index.ts";
import { PLACES_FILE, PLAN_FILE, ZONES_FILE, type PlanFile } from "../plan/index.ts";
import { writePlaces, writeZones } from "../vector/index.ts";
import { freshPrices } from "./fresh-prices.ts";
import { readmeText } from "./readme-text.ts";

const GRID = { local: "Site grid" } as const;
const DATUM = "Site bench mark";

/**
 * The files of a plan folder to start from: plan.json with example values that can be read and changed, one start and
 * one plot, no zones, a price list of examples, and a README.txt that says what to do in which order. The terrain is
 * missing on purpose: reading the folder names it as the next thing to add.
 *
 * name      of the plan; letters and digits of it make the id
 * ready_kit id of the ready kit the plan names
 */
export function freshPlanFiles(name: string, ready_kit = "meadow-boards"): PlanFiles {
  const title =
    name
      .replaceAll(/\p{Cc}/gu, " ")
      .trim()
      .slice(0, 200) || "New plan";
  return new Map([
    [PLAN_FILE, jsonBytes(freshPlan(title, ready_kit), "as-given")],
    [PLACES_FILE, writePlaces([{ id: "S1", name: "Gate", x: 10, y: 10 }], [plot], GRID)],
    [ZONES_FILE, writeZones([], GRID)],
    ["prices.csv", freshPrices()],
    ["README.txt", new TextEncoder().encode(readmeText(title))],
  ]);
}

const plot = { id: "P1", name: "Plot 1", x: 60, y: 40, keep_off_m: 1.5, reach_m: 2 };

const idOf = (title: string): string =>
  title
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "")
    .slice(0, 60) || "plan";

const freshPlan = (title: string, ready_kit: string): PlanFile => ({
  schema: 2,
  id: idOf(title),
  name: title,
  site_name: "Name of the site",
  units: "us",
  crs: GRID,
  vertical_datum: DATUM,
  ...BLANK_SECTIONS,
  terrain: { kind: "grid", file: "terrain.tif", unit: "m", datum: DATUM },
  prices: { file: "prices.csv" },
  laying: { from: "2027-04-05", to: "2027-04-16", carry_m: 100, carriers: 8 },
  removal: { by: "2029-10-31" },
  plot_defaults: { keep_off_m: 1.5, reach_m: 2 },
  levels: [
    {
      id: "flood",
      name: "Flood to be held",
      role: "flood",
      basis: "assumed",
      z_m: 1.5,
      datum: DATUM,
      source: "Example: give the gauge or flood mark it comes from",
      epoch: "Example: the years it holds for",
    },
  ],
  flood_level: "flood",
  water_kg_m3: 1000,
  ground: {
    su_kpa: null,
    source: "Not measured yet: the checks on the ground will say so",
    readings: [],
    safety: 3,
  },
  visits: [
    {
      id: "weekly",
      name: "Weekly reading, two people with a cart",
      plots: [plot.id],
      people: 2,
      person_kg: 90,
      spacing_mm: 1500,
      cart: {
        name: "Hand cart",
        empty_kg: 25,
        load_kg: 50,
        wet_kg: 5,
        width_mm: 600,
        length_mm: 1500,
        track_mm: 500,
        axle_distance_mm: 0,
        axles: 1,
        wheel_width_mm: 50,
        wheel_contact_mm: 80,
      },
      per_year: 40,
      from: "2027-04-19",
      to: "2029-10-15",
    },
  ],
  kit: { ready: ready_kit },
  layout: {
    weights: { money: 1, shade_per_m2: 5, contact_per_m2: 25, crossing: 100 },
    heading_step_deg: 15,
    first_heading_deg: 0,
    max_grade: 0.08,
    min_clear_mm: 150,
    ...BLANK_LAYOUT,
  },
  code: "us-asd-2018",
  saw: { kerf_mm: 3 },
  money: {
    currency: "USD",
    labour_per_hour: 30,
    contingency_share: 0.1,
    tax_share: 0.06,
    delivery: 150,
    removal_share: 0.6,
    disposal: 200,
    ...BLANK_MONEY,
  },
});
