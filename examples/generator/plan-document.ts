import { KIT } from "./kit-choice.ts";
import type { Reading } from "./readings.ts";

export const DATUM = "Tarrowmere datum";

const level = (id: string, name: string, z_m: number, source: string): object => ({
  id,
  name,
  z_m,
  datum: DATUM,
  source: `${source}; invented for the demo site`,
  epoch: "2002 to 2020",
});

const LEVELS = [
  level("mlw", "Mean low water", -0.74, "Tarrowmere gauge, monthly means"),
  level("mhw", "Mean high water", 1.22, "Tarrowmere gauge, monthly means"),
  level("highest-predicted", "Highest predicted tide", 1.68, "Tide table of Quillet Bay, no wind"),
  level("storm", "Storm of record", 2.15, "Flood mark on the gate post, winter 2019, levelled in"),
];

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
export function planFile(readings: readonly Reading[]): string {
  const plan = {
    schema: 1,
    id: "salt-meadow",
    name: "Trap plots, three seasons",
    site_name: "Tarrowmere salt meadow, head of Quillet Bay (invented)",
    units: "us",
    crs: { local: "Saltern local grid" },
    vertical_datum: DATUM,
    terrain: { file: "terrain.asc", unit: "m", datum: DATUM },
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
    },
  };
  return `${JSON.stringify(plan, null, 2)}\n`;
}
