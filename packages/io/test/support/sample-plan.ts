import { BLANK_LAYOUT, BLANK_MONEY, BLANK_SECTIONS } from "@causey/engine/plan";
import type { Kit } from "@causey/engine/kit";
import type { Plan } from "@causey/engine/plan";
import { writePlan } from "../../src/plan/index.ts";
import { utf8 } from "./problems.ts";

/** A small kit of every member that a kit can have; whether it stands up is not this package's matter. */
export const sampleKit: Kit = {
  id: "test-boards",
  name: "Test boards",
  note: "",
  lumber: {
    species: "southern-pine",
    grade: "no2",
    treatment: "treated",
    incised: false,
    preservative: null,
  },
  lengths_mm: [3644.9, 1206.5],
  joint_gap_mm: 12.7,
  stringers: { count: 2, size: "2x6", overall_mm: 863.6 },
  cross_pieces: {
    size: "2x4",
    lay: "flat",
    spacing_mm: 600,
    exceptions: [
      { length_mm: 1206.5, at_mm: 600, omit: true },
      { at_mm: 100, size: "2x6" },
    ],
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  end: { kind: "catch-board", size: "2x6", projection_mm: 40 },
  deck: {
    kind: "boards",
    size: "5/4x6",
    gap_mm: 12,
    width_mm: 900,
    screw: "screw-8x2.5",
    screws_per_bearing: 2,
  },
  curb: null,
  supports: (["sleeper", "crate"] as const).map((id) => ({
    id,
    name: `A ${id}`,
    form: id === "sleeper" ? "sleeper" : "open-crate",
    height_min_mm: 50,
    height_max_mm: 400,
    height_step_mm: 25,
    sill: { size: "2x6", length_mm: 900, lay: "flat" },
    pieces: [
      { name: "runner", size: "2x8", count: 2, length_mm: 600, per_height: 0, lie: "along", lay: "flat" },
    ],
    feet: [{ along_mm: 600, across_mm: 180, offset_across_mm: -300 }],
    rating_n: id === "sleeper" ? null : 9000,
    anchor:
      id === "sleeper" ? null : { kind: "stake", size: "2x2", length_mm: 1200, embedment_mm: 600, count: 2 },
    screws: [{ screw: "screw-10x3", count: 12 }],
    stands: { ground_above_m: null, not_in: ["channel", "pool"] },
  })),
  platform: {
    side_mm: 1816,
    pieces: 1,
    stringers: { size: "2x6", count: 5 },
    cross_pieces: { size: "2x6", count: 3 },
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  ramp: null,
  spares_share: 0.03,
};

const datum = "Gate bench mark";

/** A plan on a local grid of 40 m by 30 m. */
export const samplePlan: Plan = {
  schema: 3,
  id: "fen",
  name: "Fen plots",
  site_name: "Lower fen",
  units: "metric",
  crs: { local: "Fen grid" },
  vertical_datum: datum,
  ...BLANK_SECTIONS,
  survey: {
    ...BLANK_SECTIONS.survey,
    check_shots: [{ id: "C1", x: 10, y: 20, z_m: 1.1, accuracy_m: 0.02, date: null }],
  },
  terrain: { kind: "grid", file: "terrain.asc", unit: "m", datum },
  prices: { file: "prices.csv" },
  laying: { from: "2027-05-10", to: "2027-05-21", carry_m: 100, carriers: 2 },
  removal: { by: "2029-11-30" },
  starts: [{ id: "S1", name: "Gate", x: 5, y: 5 }],
  plots: [
    { id: "P1", name: "Trap 1", x: 30, y: 20, keep_off_m: 1, reach_m: 2 },
    { id: "P2", name: "Trap 2", x: 12, y: 25, keep_off_m: 1.5, reach_m: 2 },
  ],
  zones: [
    {
      id: "fen",
      name: "Fen",
      use: "habitat",
      polygons: [
        [
          [
            [0, 10],
            [40, 10],
            [40, 30],
            [0, 30],
          ],
        ],
      ],
      sensitivity: 4,
      hidden: false,
      source: "walked, 2026",
    },
    {
      id: "ditch",
      name: "Ditch",
      use: "channel",
      polygons: [
        [
          [
            [20, 0],
            [22, 0],
            [22, 30],
            [20, 30],
          ],
        ],
      ],
      hidden: false,
      source: "walked, 2026",
    },
  ],
  levels: [
    {
      id: "flood",
      name: "Winter flood",
      role: "flood",
      basis: "recorded",
      z_m: 1.4,
      datum,
      source: "mark on the gate",
      epoch: "2019",
    },
  ],
  flood_level: "flood",
  water_kg_m3: 1000,
  ground: {
    su_kpa: 8,
    source: "hand vane",
    readings: [{ x: 9, y: 9, depth_m: 0.3, su_kpa: 8, source: "vane" }],
    safety: 2,
  },
  visits: [
    {
      id: "weekly",
      name: "Weekly reading",
      plots: ["P1", "P2"],
      people: 2,
      person_kg: 90,
      spacing_mm: 1500,
      cart: {
        name: "Cart",
        empty_kg: 20,
        load_kg: 60,
        wet_kg: 0,
        width_mm: 640,
        length_mm: 1500,
        track_mm: 500,
        axle_distance_mm: 0,
        axles: 1,
        wheel_width_mm: 50,
        wheel_contact_mm: 80,
      },
      per_year: 40,
      from: "2027-06-01",
      to: "2029-10-31",
    },
  ],
  kit: sampleKit,
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
    labour_per_hour: 30,
    contingency_share: 0.1,
    tax_share: 0.06,
    delivery: 100,
    removal_share: 0.6,
    disposal: 100,
    ...BLANK_MONEY,
  },
};

/** Flat fen at 1 m, its north-east corner without data. */
export const sampleTerrain = (nodata = -9999): Uint8Array => {
  const rows = Array.from({ length: 30 }, (_, r) =>
    Array.from({ length: 40 }, (_, c) =>
      r < 3 && c > 36 ? nodata : (1 + ((r * 7 + c * 3) % 10) / 50).toFixed(2),
    ).join(" "),
  );
  return utf8(
    `ncols 40\nnrows 30\nxllcorner 0\nyllcorner 0\ncellsize 1\nNODATA_value ${nodata}\n${rows.join("\n")}\n`,
  );
};

export const samplePrices = utf8(
  "item,description,length_mm,pack,price,currency,date,source\n2x6,2x6 treated,3657,1,18.5,USD,2026-10-05,Yard list\n",
);

/** The whole folder, with files put in the place of others or, by null, taken out. */
export function sampleFiles(
  changes: Readonly<Record<string, Uint8Array | string | null>> = {},
  plan: Plan = samplePlan,
): Map<string, Uint8Array> {
  const files = new Map(writePlan(plan));
  files.set("terrain.asc", sampleTerrain());
  files.set("prices.csv", samplePrices);
  for (const [name, content] of Object.entries(changes))
    if (content === null) files.delete(name);
    else files.set(name, typeof content === "string" ? utf8(content) : content);
  return files;
}

/** plan.json with one entry changed: `edit` may change the parsed document as it likes. */
export function planJson(edit: (document: Record<string, unknown>) => void): string {
  const text = new TextDecoder().decode(writePlan(samplePlan).get("plan.json"));
  const document = JSON.parse(text) as Record<string, unknown>;
  edit(document);
  return JSON.stringify(document, null, 2);
}
