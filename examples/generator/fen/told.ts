import { BLANK_LAYOUT, BLANK_MONEY, BLANK_PROOF, BLANK_SECTIONS } from "@causey/engine/plan";
import { between, type Random } from "../random.ts";
import type { Spot } from "../polygon.ts";
import { onFen } from "./draw.ts";
import type { Fen } from "./lie.ts";

const DATUM = "Hollin bench mark";

const PROBES: readonly Spot[] = [
  [100, 146],
  [104, 128],
  [110, 110],
  [96, 92],
  [76, 84],
  [66, 72],
  [120, 74],
  [130, 60],
  [88, 52],
  [80, 38],
];

const stations = (fen: Fen) =>
  PROBES.map((spot, i) => {
    const [x, y] = onFen(spot);
    const ground_m = Math.round(fen.heightAt(...spot) * 100) / 100;
    return {
      id: `T${i + 1}`,
      x,
      y,
      ground_m,
      probe_m: Math.round(fen.peatAt(...spot) * 10) / 10,
      water_m: Math.round((ground_m - 0.06) * 100) / 100,
      date: "2026-07-21",
    };
  });

/** On the ground between the probes: three in the fen meadow, three on the moss carpet. */
const SHOTS: readonly Spot[] = [
  [102, 134],
  [112, 100],
  [84, 88],
  [64, 58],
  [120, 56],
  [86, 30],
];
const MARK: { readonly spot: Spot; readonly z_m: number } = { spot: [100, 154], z_m: 43.31 };

/** Levelled in one day from the mark and back to it; the survey of the terrain reads the moss, a little high. */
const checkShots = (fen: Fen, random: Random) => {
  const shot = (i: number, spot: Spot, z: number) => {
    const [x, y] = onFen(spot);
    return { id: `C${i + 1}`, x, y, z_m: Math.round(z * 1000) / 1000, accuracy_m: 0.01, date: "2026-07-21" };
  };
  return [
    ...SHOTS.map((spot, i) => shot(i, spot, fen.heightAt(...spot) - 0.01 + between(random, -0.025, 0.025))),
    shot(SHOTS.length, MARK.spot, MARK.z_m + 0.004),
  ];
};

const readings = (fen: Fen, random: Random) =>
  PROBES.map((spot) => {
    const [x, y] = onFen(spot);
    const soft = Math.min(1, fen.peatAt(...spot) / 4.6);
    const su_kpa = Math.round((9 - 4.5 * soft + between(random, -0.6, 0.6)) * 10) / 10;
    return {
      x,
      y,
      depth_m: 0.4,
      su_kpa,
      remoulded_kpa: Math.round((su_kpa / 2.6) * 10) / 10,
      vane_mm: "65 x 130",
      source: "Field vane, halved for the fibres of the peat; invented, 2026-07",
    };
  });

const level = (id: string, name: string, role: string, basis: string, z_m: number, epoch: string) => ({
  id,
  name,
  role,
  basis,
  z_m,
  datum: DATUM,
  source: "Dip wells of the demo fen, invented",
  epoch,
});

/** The plan document of the fen; places, zones, terrain and prices stand in files beside it. */
export const fenPlan = (fen: Fen, random: Random, levelling: Random): string =>
  `${JSON.stringify(
    {
      schema: 2,
      id: "spring-fen",
      name: "Groundwater wells, two years",
      site_name: "Hollin spring fen (invented)",
      units: "metric",
      crs: { local: "Hollin local grid" },
      vertical_datum: DATUM,
      ...BLANK_SECTIONS,
      proof: {
        ...BLANK_PROOF,
        flood: {
          ...BLANK_PROOF.flood,
          speed_m_s: 0.1,
          speed_source: "Estimated from drifting sedge in a wet winter, invented",
          wrack: { thickness_m: 0.05, clogged_share: 0.3 },
        },
      },
      request: {
        requester: "Orla Tench",
        organisation: "Hollin Water Group",
        contact: "Water group, Hollin mill",
        purpose: "Fortnightly dip readings and water samples from four wells, for two years.",
        received: "2026-06-02",
        wet_feet_ok: true,
        options: [
          {
            kind: "no-structure",
            status: "rejected",
            reason: "Every step on the moss carpet leaves a pool; fifty visits a year do not heal.",
          },
          {
            kind: "floats",
            status: "rejected",
            reason: "The water stands below the moss for most of the year: floats would lie on it.",
          },
          {
            kind: "sleepers",
            status: "chosen",
            reason: "Spread the load over the moss and come out by hand.",
          },
        ],
      },
      survey: {
        benchmarks: [
          {
            id: "BM",
            name: "Cut mark on the gate stone",
            x: onFen(MARK.spot)[0],
            y: onFen(MARK.spot)[1],
            z_m: MARK.z_m,
            datum: DATUM,
            source: "Local survey of the demo fen, invented",
          },
        ],
        check_shots: checkShots(fen, levelling),
        stations: stations(fen),
        correct_terrain: false,
        accuracy_m: 0.05,
        date: "2026-07-20",
      },
      papers: {
        sheet: "a4",
        applicant: "Hollin Fen Trust",
        prepared_by: "Fen warden",
        file_no: "",
        waterbody: "Hollin spring fen",
        date: "2027-01-20",
        adjoining: ["Parish of Hollin, The Vestry"],
      },
      terrain: { kind: "grid", file: "terrain.asc", unit: "m", datum: DATUM },
      prices: { file: "prices.csv" },
      laying: { from: "2027-09-06", to: "2027-09-17", carry_m: 60, carriers: 8 },
      removal: { by: "2029-10-12" },
      levels: [
        level("summer", "Water table, dry summer", "groundwater", "recorded", 41.72, "2019 to 2025"),
        level("winter", "Water table, wet winter", "highest-recorded", "recorded", 42.1, "2019 to 2025"),
      ],
      flood_level: "winter",
      water_kg_m3: 1000,
      ground: {
        su_kpa: 4,
        source: "Low end of the vane readings, halved for fibres",
        readings: readings(fen, random),
        safety: 3,
      },
      visits: [
        {
          id: "dips",
          name: "Dip readings, fortnightly",
          plots: ["W1", "W2", "W3", "W4"],
          people: 2,
          person_kg: 85,
          spacing_mm: 2000,
          cart: null,
          per_year: 26,
          from: "2027-09-20",
          to: "2029-09-30",
        },
      ],
      kit: {
        ready: "meadow-boards",
        supports: [
          { id: "sleeper" },
          { id: "open-crate" },
          { id: "post-pair", use: false },
        ],
      },
      layout: {
        weights: { money: 1, shade_per_m2: 10, contact_per_m2: 60, crossing: 80 },
        heading_step_deg: 30,
        first_heading_deg: 0,
        max_grade: 0.08,
        min_clear_mm: 100,
        ...BLANK_LAYOUT,
      },
      code: "us-asd-2018",
      saw: { kerf_mm: 3 },
      money: {
        currency: "EUR",
        labour_per_hour: 24,
        contingency_share: 0.15,
        tax_share: 0.2,
        delivery: 120,
        removal_share: 0.5,
        disposal: 150,
        ...BLANK_MONEY,
        donated_share: 0.8,
        donated_per_hour: 18,
        jig_hours_per_module: 1.5,
        inspections_per_year: 12,
        hours_per_inspection: 1.5,
        repair_share_per_year: 0.04,
        monitoring_per_year: 380,
      },
    },
    null,
    2,
  )}\n`;
