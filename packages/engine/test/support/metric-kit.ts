import type { Kit, SupportKind } from "../../src/kit/index.ts";

/** Two sole boards across the walk, packing layers of 45 mm, one sill that two modules share. */
const sleeper: SupportKind = {
  id: "sleeper",
  name: "Sleeper",
  form: "sleeper",
  height_min_mm: 90,
  height_max_mm: 270,
  height_step_mm: 45,
  sill: { size: "45x145", length_mm: 900, lay: "flat" },
  pieces: [
    { name: "sole board", size: "45x220", count: 2, length_mm: 900, per_height: 0, lie: "across" },
    { name: "packing", size: "45x145", count: 1, length_mm: 900, per_height: 0, fill: true },
  ],
  feet: [{ along_mm: 440, across_mm: 900, offset_across_mm: 0 }],
  rating_n: null,
  anchor: { kind: "stake", size: "45x45", length_mm: 1800, embedment_mm: 1500, count: 2 },
  screws: [{ screw: "screw-10x3", count: 12 }],
  stands: { ground_above_m: null, not_in: ["channel", "pool"] },
};

/** A board walkway of metric C24: sizes in millimetres all through, pitches of 3.6, 2.4 and 1.2 m. Invented. */
export const metricKit: Kit = {
  id: "metric-boards",
  name: "Metric boards",
  note: "Invented.",
  lumber: { species: "softwood", grade: "c24", treatment: "none", incised: false, preservative: null },
  lengths_mm: [3595, 2395, 1195],
  joint_gap_mm: 5,
  stringers: { count: 2, size: "45x195", overall_mm: 700 },
  cross_pieces: {
    size: "45x95",
    lay: "edge",
    spacing_mm: 1200,
    exceptions: [],
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  end: { kind: "plain" },
  deck: {
    kind: "boards",
    size: "28x145",
    gap_mm: 5,
    width_mm: 750,
    screw: "screw-10x3",
    screws_per_bearing: 2,
  },
  curb: { size: "45x45", screw: "screw-10x3", screw_spacing_mm: 600 },
  supports: [sleeper],
  platform: {
    side_mm: 1795,
    pieces: 1,
    stringers: { size: "45x195", count: 4 },
    cross_pieces: { size: "45x95", count: 3 },
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  ramp: { lengths_mm: [2395], max_grade: 0.125 },
  spares_share: 0.03,
};
