import type { CheckResult } from "@causey/engine/checks";
import type { Source } from "@causey/engine/formula";
import type { KitFigure, PartFigures, SupportFigures } from "@causey/engine/kit-figures";
import type { Joint, ModulePart, PlatformPart } from "@causey/engine/layout";
import type { Plan, Results } from "@causey/engine/plan";
import { rectangle } from "@causey/engine/site";
import { samplePlan } from "./sample-plan.ts";

const figureOf = (title: string, value: number): KitFigure => ({
  title,
  value,
  unit: "kg",
  working: [],
  missing: [],
});
const partOf = (id: string, kind: PartFigures["kind"]): PartFigures => ({
  id,
  kind,
  name: id,
  length_mm: 3644.9,
  pieces: [{ role: "stringer", size: "2x8", length_mm: 3644, count: 2 }],
  counted: [],
  screws: 120,
  mass_new: figureOf("Mass, new", 60),
  mass_soaked: figureOf("Mass, soaked", 90),
  carrier_new: figureOf("Each carrier, new", 7.5),
  carrier_soaked: figureOf("Each carrier, soaked", 11.3),
  open: null,
  cost: null,
});
const supportAt = (height_mm: number): SupportFigures["lowest"] => ({
  height_mm,
  pieces: [],
  counted: [],
  mass_new: figureOf("Mass, new", 12),
  mass_soaked: figureOf("Mass, soaked", 18),
  cost: { ...figureOf("Materials", 0), value: null, missing: ["a price for 2x6"] },
});

const rule: Source = { id: "awc-nds-2018", title: "NDS 2018", at: "3.3.1", status: "memory" };
const seen: Source = { id: "practice", title: "Common practice", status: "practice" };
const PITCH = 3.6576;

const joint = (n: number, branch: string, x: number, y: number, heading_deg: number): Joint => ({
  id: `${branch}/${n}`,
  x,
  y,
  heading_deg,
  branch,
  along_m: n * PITCH,
  ground_m: 1.04 + n / 100,
  deck_m: 1.52,
  support: "sleeper",
  support_height_m: 0.2286,
  feet: [
    [rectangle(x, y, heading_deg, 0.235, 0.9144)],
    [rectangle(x + 1 / 3, y, heading_deg, 0.235, 0.9144)],
  ],
});

const joints: readonly Joint[] = [
  joint(0, "A", 5, 5, 90),
  joint(1, "A", 5 + PITCH, 5, 90),
  joint(2, "A", 5 + PITCH + 1.8288, 5, 90),
  joint(3, "A", 5 + PITCH + 0.9144, 5.9144, 0),
  joint(4, "A", 5 + PITCH + 0.9144, 4.0856, 180),
  joint(1, "B", 5 + PITCH + 0.9144, 5.9144 + PITCH, 0),
];

const module = (
  id: string,
  branch: string,
  from: Joint,
  to: Joint,
  bridges: readonly string[],
): ModulePart => ({
  id,
  kind: "module",
  branch,
  length_m: 3.6449,
  heading_deg: from.heading_deg,
  from: from.id,
  to: to.id,
  along_m: from.along_m,
  outline: [[rectangle((from.x + to.x) / 2, (from.y + to.y) / 2, from.heading_deg, 3.6449, 0.9144)]],
  bridges,
});

const platform: PlatformPart = {
  id: "A-2",
  kind: "platform",
  use: "turning",
  branch: "A",
  side_m: 1.8161,
  x: 5 + PITCH + 0.9144,
  y: 5,
  heading_deg: 90,
  from: "A/1",
  exits: { ahead: "A/2", left: "A/3", right: "A/4" },
  along_m: PITCH,
  outline: [[rectangle(5 + PITCH + 0.9144, 5, 90, 1.8161, 1.8161)]],
  bridges: [],
};

/** A zone that no shared paper may show, with words that stand in every text of the results. */
export const secret = {
  id: "z-orchid",
  name: "Fen orchid",
  use: "habitat",
  polygons: [
    [
      [
        [6, 4],
        [7, 4],
        [7, 6],
      ],
    ],
  ],
  hidden: true,
  sensitivity: 50,
  source: "botanist",
} as const satisfies Plan["zones"][number];

export const planWithSecret: Plan = { ...samplePlan, zones: [...samplePlan.zones, secret] };

const checks: readonly CheckResult[] = [
  {
    id: "stringer-bending/3645",
    kind: "stringer-bending",
    title: "Stringers of 3645 mm modules in bending",
    parts: ["A-1", "B-1"],
    rule,
    caution: "Confirm grade and treatment.",
    status: "pass",
    demand: 1234.56789,
    capacity: 2345.6,
    unit: "N*m",
    utilisation: 1234.56789 / 2345.6,
    governs: "cart at midspan, over Fen orchid",
    working: [
      {
        id: "beam.moment",
        title: "Moment",
        symbol: "M",
        text: "w * L^2 / 8",
        inputs: [{ symbol: "w", value: 700, unit: "N/m" }],
        value: 1234.56789,
        unit: "N*m",
        source: rule,
        note: "",
      },
    ],
    backwards: { carries: "a cart of 130 kg", change: null },
    from_memory: true,
  },
  {
    id: "uplift",
    kind: "uplift",
    title: "Uplift",
    parts: ["A-1"],
    rule: seen,
    caution: "",
    status: "fail",
    demand: 500,
    capacity: 400,
    unit: "N",
    utilisation: 1.25,
    governs: "=storm",
    working: [],
    backwards: { carries: "a flood of 1.2 m", change: "two stakes more" },
    from_memory: false,
  },
  {
    id: "lifting",
    kind: "lifting",
    title: "Lifting",
    parts: [],
    rule: seen,
    caution: "",
    status: "not-applicable",
    because: "no part is lifted",
  },
  {
    id: "bearing",
    kind: "bearing",
    title: "Bearing",
    parts: ["A/0", "A/1"],
    rule: seen,
    caution: "",
    status: "cannot-check",
    missing: ["strength near z-orchid"],
  },
];

/** A small set of results, put together by hand: every member that there is, and a hidden zone wherever one may stand. */
export const sampleResults: Results = {
  schema: 1,
  causey: "0.1.0",
  plan: { id: "fen", name: "Fen plots", units: "metric" },
  crs: "Fen grid",
  datum: "Gate bench mark",
  layout: {
    heading_deg: 90,
    lattice_m: 0.6096,
    joints,
    parts: [
      module("A-1", "A", joints[0]!, joints[1]!, ["ditch", "z-orchid"]),
      platform,
      module("B-1", "B", joints[3]!, joints[5]!, []),
    ],
    branches: [
      { id: "A", from: "S1", to_plot: "P1", parts: ["A-1", "A-2"], length_m: PITCH + 1.8288 },
      { id: "B", from: "A-2", to_plot: "P2", parts: ["B-1"], length_m: PITCH },
    ],
    reached: [{ plot: "P1", joint: "A/2", distance_m: 2.5, walk_m: PITCH + 1.8288 }],
    unreached: [
      {
        plot: "P2",
        because: "Fen orchid lies in the way",
        gap: { width_m: 4, over: "Fen orchid", from: [6, 4], to: [7, 5] },
      },
    ],
    notes: ["The search kept 2 m off z-orchid."],
    search: { headings: 6, estimate: 901.5 },
    line: null,
    as_laid: null,
  },
  evaluation: {
    length_m: 2 * PITCH + 1.8288,
    modules: [{ length_m: 3.6449, count: 2 }],
    platforms: 1,
    joints: 6,
    shaded_m2: 9.964_134_97,
    shaded_by_zone: [
      { zone: "fen", name: "Fen", area_m2: 3.1 },
      { zone: "z-orchid", name: "Fen orchid", area_m2: 0.4 },
    ],
    contact_m2: 2.578_608,
    crossings: [
      { zone: "ditch", name: "Ditch", part: "A-1", clear_m: 2 },
      { zone: "z-orchid", name: "Fen orchid", part: "A-1", clear_m: 1 },
    ],
    lowest_deck_clear_m: 0.21,
    steepest_grade: 0.012,
    weighted: { money: 400, shade: 80, contact: 100, crossings: 120, total: 700 },
  },
  checks,
  take_off: {
    timber: [{ size: "2x6", length_mm: 3644.9, count: 6, uses: [{ use: "stringer", count: 6 }] }],
    counted: [{ item: "screw-10x3", name: "Wood screw", count: 140 }],
  },
  cutting: [
    {
      size: "2x6",
      plan: {
        cost: 111,
        bound: 110.5,
        proven: false,
        stock_used: [{ length_mm: 3657, count: 6 }],
        patterns: [
          {
            stock_mm: 3657,
            times: 6,
            cuts: [
              { length_mm: 3645, count: 1 },
              { length_mm: 5, count: 2 },
            ],
            offcut_mm: 2,
          },
        ],
      },
    },
  ],
  cost: {
    currency: "USD",
    order: [
      {
        item: "2x6",
        description: "=2x6 treated, 12 ft",
        length_mm: 3657,
        quantity: 6,
        needed: 6,
        unit_price: 18.5,
        amount: 111,
        price_date: "2026-10-05",
      },
      {
        item: "screw-10x3",
        description: "Wood screw",
        length_mm: null,
        quantity: 2,
        needed: 140,
        unit_price: 25.4,
        amount: 50.8,
        price_date: "2026-10-05",
      },
    ],
    unpriced: [{ item: "mesh-clip", needed: 4 }],
    labour: [{ work: "laying", length_m: 9.144, low_h: 3, mid_h: 4, high_h: 6, note: "ready made" }],
    lines: [
      { line: "materials", title: "Materials", amount: 161.8, note: "" },
      { line: "tax", title: "Sales tax", amount: 9.71, note: "6 %" },
      { line: "labour", title: "Laying", amount: 120, note: "4 h" },
    ],
    total: 291.51,
  },
  spares: [{ length_m: 3.6449, in_layout: 2, spares: 1 }],
  route: {
    length_m: 9.144,
    parcels: [{ zone: "p1", name: "Fen", owner: "Trust", length_m: 9.144, area_m2: 7, parts: ["A-1"] }],
    no_parcel_m: 0,
    crossings: [],
    sensitive_m: 0,
    sensitive: [],
    dead_ends: [
      { joint: "B/1", branch: "B", plots: ["P1"], last_turn: "A-2", sign_at: "A/3", back_m: 3.6576 },
    ],
    plots: [{ plot: "P1", keep_off_m: 1.5, nearest_m: 1.9, overlap_m2: 0 }],
    custom_parts: [],
    custom_because: "The search lays the kit's own parts only.",
  },
  setting_out: {
    lines: [{ id: "L1", from: "A/0", heading_deg: 90 }],
    joints: [
      {
        joint: "A/0",
        branch: "A",
        along_m: 0,
        x: 5,
        y: 5,
        heading_deg: 90,
        deck_m: 1.52,
        ground_m: 1.04,
        support: "sleeper",
        support_height_m: 0.2286,
        line: "L1",
        distance_m: 0,
        offset_m: 0,
        ties: [],
        crossing_deg: null,
      },
    ],
    diagonals: [],
    closing_error_m: 0.0001,
  },
  budget: {
    currency: "USD",
    entries: [
      {
        id: "materials",
        title: "Materials",
        year: 2027,
        low: 291.51,
        mid: 291.51,
        high: 320,
        hours: 4,
        donated_hours: 2,
        note: "",
      },
    ],
    years: [{ year: 2027, low: 291.51, mid: 291.51, high: 320 }],
    low: 291.51,
    mid: 291.51,
    high: 320,
    donated_hours: 2,
    donated_value: 60,
    cash: 231.51,
    days: 200,
    visits: 10,
    per_metre: 31.88,
    per_foot: 9.717,
    per_visit: 29.15,
    per_year: null,
    warnings: [],
    old_prices: [{ item: "2x6", date: "2026-01-05", age_days: 400 }],
  },
  water: {
    findings: [{ level: "flood", message: "No years are given." }],
    record: null,
    joints: [
      {
        joint: "A/1",
        ground: { share: 0.2, low: 0.1, high: 0.3, hours_per_year: 1753.2 },
        deck: { share: 0, low: null, high: null, hours_per_year: null },
      },
    ],
    lowest: { joint: "A/1", ground_m: 0.4, longest_dry_h: 9.5, longest_wet_h: 2, floods: 12 },
    longest_dry_h: null,
    residuals: null,
    cautions: ["Hours under water cannot be told."],
  },
  kit: {
    kit: "sample",
    carriers: 8,
    carrier_limit: figureOf("What one carrier may lift", 14.5),
    modules: [partOf("module", "module")],
    platform: partOf("platform", "platform"),
    halves: [],
    ramps: [],
    supports: [
      {
        id: "sleeper",
        name: "Sleeper",
        form: "sleeper",
        height_min_mm: 76,
        height_max_mm: 228,
        height_step_mm: 38,
        contact: figureOf("Ground touched", 0.4),
        lowest: supportAt(76),
        highest: supportAt(228),
        engineer: null,
      },
    ],
    unpriced: [],
  },
  survey: {
    terrain: {
      kind: "grid",
      n: 3,
      median_m: 0.06,
      mean_m: 0.07,
      sd_m: 0.02,
      lowered_m: 0.06,
      note: "Taken off in Fen orchid too.",
      shots: [
        { id: "C1", x: 5, y: 5, residual_m: 0.05, outlier: false },
        { id: "C2", x: 6, y: 5, residual_m: 0.06, outlier: false },
        { id: "C3", x: 7, y: 5, residual_m: 0.1, outlier: true },
      ],
      elsewhere: ["C4"],
      off_terrain: ["C5"],
    },
    band_m: 0.11,
    band_working: [],
    unchecked_habitats: [
      { zone: "fen", name: "Fen" },
      { zone: "z-orchid", name: "Fen orchid" },
    ],
    closure: {
      closures: [
        { benchmark: "B1", shot: "C4", difference_m: 0.01, closes: null, mark_m: 2.6, shot_m: 2.61 },
      ],
      rms_m: 0.01,
      not_visited: ["B2"],
      other_datum: ["B3"],
    },
    shear: [
      {
        x: 5,
        y: 5,
        readings: [
          {
            depth_m: 0.3,
            su_kpa: 6,
            remoulded_kpa: 2,
            sensitivity: 3,
            vane_mm: "55 x 110",
            source: "hand vane by Fen orchid",
          },
        ],
        least_su_kpa: 6,
        sensitivity: 3,
      },
    ],
    shear_working: [],
    stations: [
      {
        id: "T1",
        x: 5,
        y: 5,
        ground_m: 1.2,
        probe_m: 0.8,
        water_m: 1.1,
        date: "2026-07-21",
        along_m: 0,
        firm_m: 0.4,
        water_over_m: -0.1,
      },
    ],
    points: {
      n: 40,
      sigma_m: 0.02,
      not_judged: 1,
      merged: 0,
      accuracy: { stated: 40, median_m: 0.01, worst_m: 0.03 },
      dates: { stated: 40, first: "2026-07-20", last: "2026-07-21" },
      left_out: 2,
      outlier_count: 1,
      outliers: [{ id: "17", line: 18, x: 6, y: 6, z_m: 3.4, residual_m: 2.1, sigmas: 100 }],
    },
    accuracy_m: 0.05,
    date: "2026-07-20",
    cautions: ["Stay off z-orchid when reading."],
  },
  figures: [
    {
      id: "length",
      title: "Walkway length",
      value: 2 * PITCH + 1.8288,
      unit: "m",
      note: "Fen orchid 0.4 m²; FEN ORCHIDS go",
      working: [],
      sources: [seen],
    },
  ],
  strip: {
    length_m: 2 * PITCH + 1.8288,
    datum: "Gate bench mark",
    z_min_m: 0,
    z_max_m: 1.6,
    branches: [{ id: "A", from_m: 0, to_m: 5.4864, plot: "P1" }],
    ground: [
      { at_m: 0, z_m: 1.04 },
      { at_m: 0.5, z_m: null },
    ],
    joints: [{ id: "A/0", at_m: 0, ground_m: 1.04, deck_m: 1.52 }],
    levels: [{ id: "flood", name: "Winter flood", z_m: 1.4 }],
    cells: [
      {
        part: "A-1",
        kind: "module",
        from_m: 0,
        to_m: PITCH,
        length_m: 3.6449,
        branch: "A",
        utilisation: null,
        state: "not-checked",
        governs: "Fen orchid",
      },
    ],
  },
  cautions: ["Keep out of z-orchid."],
  stages: [{ stage: "layout", key: "00" }],
};
