import { BLANK_LAYOUT, BLANK_MONEY, BLANK_SECTIONS } from "@causey/engine/plan";
import type { Survey } from "@causey/engine/survey";
import type { LevelBasis, LevelRole } from "@causey/engine/water";
import { DATUM } from "./datum.ts";
import { KIT } from "./kit-choice.ts";
import type { Reading } from "./readings.ts";
import { PAPERS, PROOF, REQUEST } from "./told.ts";

const level = (
  id: string,
  name: string,
  role: LevelRole,
  basis: LevelBasis,
  z_m: number,
  source: string,
): object => ({
  id,
  name,
  role,
  basis,
  z_m,
  datum: DATUM,
  source: `${source}; invented for the demo site`,
  epoch: "2002 to 2020",
});

const LEVELS = [
  level("mlw", "Mean low water", "mlw", "mean", -0.74, "Tarrowmere gauge, monthly means"),
  level("mhw", "Mean high water", "mhw", "mean", 1.22, "Tarrowmere gauge, monthly means"),
  level("highest-predicted", "Highest predicted tide", "highest-predicted", "predicted", 1.68, "Tide table of Quillet Bay, no wind"),
  level("storm", "Storm of record", "highest-recorded", "recorded", 2.15, "Flood mark on the gate post, winter 2019, levelled in"),
];

const WATER = {
  exposure: "salt",
  series: {
    file: "tide-table.csv",
    kind: "high-low",
    basis: "predicted",
    columns: { time: "time_utc", level: "level_m", flag: null },
    unit: "m",
    zone: "UTC",
    datum: DATUM,
    offset_m: 0,
    offset_source: "",
    attribution: "Tide table of Quillet Bay, invented for the demo site",
  },
} as const;

const SEASON = { from: "2027-05-24", to: "2029-10-31" } as const;

const VISITS = [
  {
    id: "traps",
    name: "Sediment traps, weekly in season",
    plots: ["P1", "P2", "P3"],
    people: 2,
    person_kg: 95,
    spacing_mm: 1500,
    cart: {
      name: "Sediment cart",
      empty_kg: 24,
      load_kg: 68,
      wet_kg: 6,
      width_mm: 640,
      length_mm: 1500,
      track_mm: 480,
      axle_distance_mm: 0,
      axles: 1,
      wheel_width_mm: 50,
      wheel_contact_mm: 90,
    },
    per_year: 28,
    ...SEASON,
  },
  {
    id: "plants",
    name: "Plant survey",
    plots: ["P1", "P3"],
    people: 3,
    person_kg: 90,
    spacing_mm: 1500,
    cart: null,
    per_year: 4,
    ...SEASON,
  },
];

/** The plan document of the demo site; places, zones, terrain and prices stand in files beside it. */
export function planFile(readings: readonly Reading[], survey: Survey): string {
  const plan = {
    schema: 3,
    id: "salt-meadow",
    name: "Trap plots, three seasons",
    site_name: "Tarrowmere salt meadow, head of Quillet Bay (invented)",
    units: "us",
    crs: { local: "Saltern local grid" },
    vertical_datum: DATUM,
    ...BLANK_SECTIONS,
    request: REQUEST,
    survey,
    papers: PAPERS,
    water: WATER,
    proof: PROOF,
    terrain: { kind: "grid", file: "terrain.asc", unit: "m", datum: DATUM },
    prices: { file: "prices.csv" },
    laying: { from: "2027-05-10", to: "2027-05-21", carry_m: 140, carriers: 8 },
    removal: { by: "2029-11-30" },
    levels: LEVELS,
    flood_level: "storm",
    water_kg_m3: 1015,
    ground: {
      su_kpa: 6,
      source: "Low end of the site's own readings",
      readings,
      safety: 3,
    },
    visits: VISITS,
    kit: KIT,
    layout: {
      weights: { money: 1, shade_per_m2: 8, contact_per_m2: 40, crossing: 120 },
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
      labour_per_hour: 31.8,
      contingency_share: 0.15,
      tax_share: 0.0625,
      delivery: 185,
      removal_share: 0.6,
      disposal: 240,
      ...BLANK_MONEY,
      donated_share: 0.5,
      donated_per_hour: 31.8,
      jig_hours_per_module: 1.5,
      inspections_per_year: 14,
      hours_per_inspection: 2,
      repair_share_per_year: 0.05,
      monitoring_per_year: 450,
    },
  };
  return `${JSON.stringify(plan, null, 2)}\n`;
}
