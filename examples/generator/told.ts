import { BLANK_PROOF, type ProofChoice } from "@causey/engine/plan";
import type { CheckShot, Survey } from "@causey/engine/survey";
import { DATUM } from "./datum.ts";
import type { Meadow } from "./meadow.ts";
import type { Spot } from "./polygon.ts";
import { between, type Random } from "./random.ts";
import { onGrid } from "./zones.ts";

/** What the demo's people told: who asks, and what the owner weighed. All of it is invented. */
export const REQUEST = {
  requester: "Ysolde Marn",
  organisation: "Quillet Bay Field Station",
  contact: "Field station office, Quillet Bay",
  purpose:
    "Weekly emptying of sediment traps on three plots and a plant survey, for three seasons. Wet samples go back on a hand cart.",
  received: "2026-09-14",
  wet_feet_ok: true,
  options: [
    {
      kind: "no-structure",
      status: "rejected",
      reason: "Over 60 visits a year with a cart; last year's trial left ruts that still hold water.",
    },
    { kind: "by-boat", status: "rejected", reason: "The creeks dry out at low water, when the traps are read." },
    {
      kind: "another-season",
      status: "rejected",
      reason: "The traps must be read from May to October.",
    },
    { kind: "open-crates", status: "chosen", reason: "Light, carried by hand, nothing left in the ground." },
  ],
} as const;

export const PAPERS = {
  sheet: "letter",
  applicant: "Tarrowmere Trust",
  prepared_by: "Land steward, Tarrowmere Trust",
  file_no: "",
  waterbody: "Quillet Bay",
  date: "2027-02-15",
  adjoining: ["Quillet Bay Commoners, Shore Lane"],
} as const;

/** What a storm over the meadow brings; invented. No month with ice: the bay's water is salt and moves. */
export const PROOF: ProofChoice = {
  ...BLANK_PROOF,
  flood: {
    ...BLANK_PROOF.flood,
    levels: ["highest-predicted"],
    speed_m_s: 0.2,
    speed_source: "Estimated from drifting straw at a spring tide, invented",
    log_kg: 25,
    stakes: "set",
    ice_months: [],
  },
};

const SHOTS: readonly Spot[] = [
  [128, 166],
  [131, 131],
  [112, 118],
  [84, 118],
  [66, 84],
  [158, 152],
  [194, 128],
  [204, 106],
  [216, 82],
  [158, 62],
  [92, 132],
];

/** Spot and height of the bolt that the levelling started from. */
const BOLT: { readonly spot: Spot; readonly z_m: number } = { spot: [130, 187], z_m: 2.61 };

/** Back on the bolt at the end of the day. */
const closingShot = (): CheckShot => {
  const [x, y] = onGrid(BOLT.spot);
  return { id: "C12", x, y, z_m: 2.604, accuracy_m: 0.01, date: "2026-09-03" };
};

/** Heights taken with a level on the demo's own bench mark: they agree with the terrain within what they tell. */
export const drawSurvey = (meadow: Meadow, random: Random): Survey => ({
  benchmarks: [
    {
      id: "BM1",
      name: "Bolt in the gate post",
      x: onGrid(BOLT.spot)[0],
      y: onGrid(BOLT.spot)[1],
      z_m: BOLT.z_m,
      datum: DATUM,
      source: "Levelled from the Tarrowmere gauge, invented, 2026-08",
    },
  ],
  check_shots: [
    ...SHOTS.map(([u, v], i) => {
      const [x, y] = onGrid([u, v]);
      const z_m = Math.round((meadow.heightAt(u, v) + 0.004 + between(random, -0.03, 0.03)) * 1000) / 1000;
      return { id: `C${i + 1}`, x, y, z_m, accuracy_m: 0.01, date: "2026-09-03" };
    }),
    closingShot(),
  ],
  stations: [],
  correct_terrain: false,
  accuracy_m: 0.05,
  date: "2025-11-20",
});
