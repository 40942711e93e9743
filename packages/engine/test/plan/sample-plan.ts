import type { Kit } from "../../src/kit/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import type { Zone } from "../../src/site/index.ts";

/** A small plan for tests of editing, storing and serving. Every figure is invented. */
const kit: Kit = {
  id: "test-kit",
  name: "Test kit",
  note: "Invented for tests.",
  lumber: { species: "spruce-pine-fir", grade: "No. 2", treatment: "none", incised: false },
  lengths_mm: [2400, 1200],
  joint_gap_mm: 10,
  stringers: { count: 2, size: "2x6", overall_mm: 600 },
  cross_pieces: {
    size: "2x4",
    lay: "flat",
    spacing_mm: 600,
    exceptions: [],
    screw: "test-screw",
    screws_per_end: 2,
  },
  end: { kind: "plain" },
  deck: {
    kind: "boards",
    size: "2x4",
    gap_mm: 20,
    width_mm: 600,
    screw: "test-screw",
    screws_per_bearing: 2,
  },
  curb: null,
  supports: [
    {
      id: "sleeper",
      name: "Sleeper",
      form: "sleeper",
      height_min_mm: 100,
      height_max_mm: 300,
      height_step_mm: 50,
      sill: { size: "4x4", length_mm: 900, lay: "flat" },
      pieces: [],
      feet: [{ along_mm: 90, across_mm: 900, offset_across_mm: 0 }],
      rating_n: null,
      anchor: null,
      screws: [],
      stands: { ground_above_m: null, not_in: ["pool"] },
    },
  ],
  platform: {
    side_mm: 1200,
    stringers: { size: "2x6", count: 3 },
    cross_pieces: { size: "2x4", count: 3 },
    screw: "test-screw",
    screws_per_end: 2,
  },
};

export const square = (id: string, name: string, x: number, y: number, side = 10): Zone => ({
  id,
  name,
  use: "habitat",
  polygons: [
    [
      [
        [x, y],
        [x + side, y],
        [x + side, y + side],
        [x, y + side],
      ],
    ],
  ],
  sensitivity: 3,
  hidden: false,
  source: "invented",
});

export const samplePlan = (change: Partial<Plan> = {}): Plan => ({
  schema: 1,
  id: "reed-corner",
  name: "Reed Corner",
  site_name: "Reed Corner fen",
  units: "metric",
  crs: { local: "site grid" },
  vertical_datum: "site benchmark",
  terrain: { file: "terrain.asc", unit: "m", datum: "site benchmark" },
  prices: { file: "prices.csv" },
  laying: { from: "2027-04-05", to: "2027-04-16", carry_m: 60, carriers: 2 },
  removal: { by: "2027-10-29" },
  starts: [{ id: "gate", name: "Gate", x: 5, y: 5 }],
  plots: [
    { id: "p1", name: "Plot 1", x: 60, y: 20, keep_off_m: 1, reach_m: 2 },
    { id: "p2", name: "Plot 2", x: 80, y: 45, keep_off_m: 1, reach_m: 2 },
  ],
  zones: [square("sedge", "tall sedge", 0, 0, 100), square("pool", "north pool", 40, 40)],
  levels: [],
  flood_level: null,
  water_kg_m3: 1000,
  ground: { su_kpa: null, source: "not measured", readings: [], safety: 2 },
  visits: [
    {
      id: "weekly",
      name: "Weekly readings",
      plots: ["p1", "p2"],
      people: 2,
      person_kg: 90,
      spacing_mm: 1500,
      cart: null,
      per_year: 26,
      from: "2027-04-19",
      to: "2027-10-22",
    },
  ],
  kit,
  layout: {
    weights: { money: 1, shade_per_m2: 4, contact_per_m2: 20, crossing: 500 },
    heading_step_deg: 90,
    first_heading_deg: 0,
    max_grade: 0.08,
    min_clear_mm: 100,
  },
  code: "us-asd-2018",
  saw: { kerf_mm: 3 },
  money: {
    currency: "EUR",
    labour_per_hour: 0,
    contingency_share: 0.1,
    tax_share: 0.2,
    delivery: 80,
    removal_share: 0.5,
    disposal: 40,
  },
  ...change,
});
