import { BLANK_LAYOUT, BLANK_MONEY, BLANK_SECTIONS } from "../../src/plan/index.ts";
import { tables } from "@causey/data/tables";
import type { ChecksInput, MassModel } from "../../src/checks/index.ts";
import type { Kit } from "../../src/kit/index.ts";
import type { Joint, Layout, ModulePart } from "../../src/layout/index.ts";
import type { Cart, Plan, Visit } from "../../src/plan/document.ts";
import type { Site } from "../../src/site/index.ts";
import { commonPracticeKit } from "./common-practice-kit.ts";

/** A cart as a field crew pulls it; invented. */
export const fieldCart: Cart = {
  name: "Field cart",
  empty_kg: 24,
  load_kg: 68,
  wet_kg: 0,
  width_mm: 640,
  length_mm: 1500,
  track_mm: 480,
  axle_distance_mm: 0,
  axles: 1,
  wheel_width_mm: 50,
  wheel_contact_mm: 90,
};

export const visitOf = (change: Partial<Visit> = {}): Visit => ({
  id: "weekly",
  name: "Weekly readings",
  plots: ["p1"],
  people: 2,
  person_kg: 95,
  spacing_mm: 1500,
  cart: fieldCart,
  per_year: 26,
  from: "2027-04-19",
  to: "2027-10-22",
  ...change,
});

/** The common-practice kit with 2x8 stringers at 24 in, cross pieces set close, wide sills and long stakes. */
export const stoutKit: Kit = {
  ...commonPracticeKit,
  id: "stout",
  stringers: { count: 2, size: "2x8", overall_mm: 558.8 },
  supports: commonPracticeKit.supports.map((s) => ({
    ...s,
    sill: { ...s.sill, size: "2x6" },
    anchor: { kind: "stake", size: "2x4", length_mm: 2400, embedment_mm: 1800, count: 4 },
  })),
};

/** Round masses near those of the kit's pieces; tests that need exact ones take them from the kit. */
export const roundMasses: MassModel = {
  module: (length_m) => ({ timber_m3: 0.024 * length_m, other_kg: 1.9 * length_m }),
  platform: { timber_m3: 0.09, other_kg: 9 },
  support: () => ({ timber_m3: 0.03, other_kg: 0 }),
};

const SUPPORT_M = 0.3;

function joints(count: number, pitch: (i: number) => number): Joint[] {
  let along = 0;
  return Array.from({ length: count + 1 }, (_, i) => {
    if (i > 0) along += pitch(i - 1);
    return {
      id: `J${i}`,
      x: along,
      y: 0,
      heading_deg: 90,
      branch: "B1",
      along_m: along,
      ground_m: 1,
      deck_m: 1 + SUPPORT_M + 0.19,
      support: "open-crate",
      support_height_m: SUPPORT_M,
      feet: [],
    };
  });
}

/** A straight walkway of modules of the given lengths, one after another, on level ground at 1 m. */
export function straightLayout(lengths_m: readonly number[]): Layout {
  const at = joints(lengths_m.length, (i) => lengths_m[i]!);
  const parts = lengths_m.map((length_m, i): ModulePart => ({
    id: `M${i}`,
    kind: "module",
    branch: "B1",
    length_m,
    heading_deg: 90,
    from: at[i]!.id,
    to: at[i + 1]!.id,
    along_m: at[i]!.along_m,
    outline: [],
    bridges: [],
  }));
  return {
    heading_deg: 90,
    lattice_m: 0.6096,
    joints: at,
    parts,
    branches: [],
    reached: [],
    unreached: [],
    notes: [],
    search: { headings: 1, estimate: 0 },
    line: null,
    as_laid: null,
  };
}

const DATUM = "site benchmark";

/** Level ground with one strength reading at the origin and one flood level. */
export const levelSite = (change: Partial<Site> = {}): Site => ({
  crs: { kind: "local", name: "site grid" },
  datum: DATUM,
  terrain: { cols: 0, rows: 0, x0: 0, y0: 0, dx: 1, dy: 1, values: new Float32Array() },
  zones: [],
  starts: [],
  plots: [],
  levels: [
    {
      id: "storm",
      name: "Storm of record",
      role: "flood",
      basis: "recorded",
      z_m: 2,
      datum: DATUM,
      source: "invented",
      epoch: "2002 to 2020",
    },
  ],
  readings: [],
  height_band_m: null,
  ground: null,
  series: null,
  ...change,
});

/** A plan with what the checks read; the rest is invented filling. */
export const checkedPlan = (change: Partial<Plan> = {}): Plan => ({
  schema: 3,
  id: "reed-corner",
  name: "Reed Corner",
  site_name: "Reed Corner fen",
  units: "us",
  crs: { local: "site grid" },
  vertical_datum: DATUM,
  ...BLANK_SECTIONS,
  terrain: { kind: "grid", file: "terrain.asc", unit: "m", datum: DATUM },
  prices: { file: "prices.csv" },
  laying: { from: "2027-04-05", to: "2027-04-16", carry_m: 60, carriers: 2 },
  removal: { by: "2027-10-29" },
  starts: [],
  plots: [],
  zones: [],
  levels: [],
  flood_level: "storm",
  water_kg_m3: 1010,
  ground: { su_kpa: 8, source: "hand vane, corrected", readings: [], safety: 2 },
  visits: [visitOf()],
  kit: stoutKit,
  layout: {
    weights: { money: 1, shade_per_m2: 4, contact_per_m2: 20, crossing: 500 },
    heading_step_deg: 90,
    first_heading_deg: 0,
    max_grade: 0.08,
    min_clear_mm: 100,
    ...BLANK_LAYOUT,
  },
  code: "us-asd-2018",
  saw: { kerf_mm: 3 },
  money: {
    currency: "USD",
    labour_per_hour: 0,
    contingency_share: 0.1,
    tax_share: 0,
    delivery: 0,
    removal_share: 0.5,
    disposal: 0,
    ...BLANK_MONEY,
  },
  ...change,
});

/** Input of `runChecks` for a straight walkway; every part of it can be replaced. */
export const checksInput = (change: Partial<ChecksInput> = {}): ChecksInput => ({
  plan: checkedPlan(),
  site: levelSite(),
  layout: straightLayout([3.6576, 3.6576, 2.4384, 1.2192]),
  tables,
  masses: roundMasses,
  ...change,
});
