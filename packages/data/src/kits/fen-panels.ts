import type { Kit, SupportKind } from "@causey/engine/kit";
import { deckChoice, deckOf } from "../decks/index.ts";

/** Two soles side by side: the widest timber foot that two people carry into a fen. */
const broadSleeper: SupportKind = {
  id: "broad-sleeper",
  name: "Broad sleeper, 3 to 9 in",
  form: "sleeper",
  height_min_mm: 76.2,
  height_max_mm: 228.6,
  height_step_mm: 38.1,
  sill: { size: "2x6", length_mm: 1219.2, lay: "flat" },
  pieces: [
    { name: "sole board", size: "2x12", count: 2, length_mm: 1219.2, per_height: 0, lie: "across" },
    { name: "packing", size: "2x6", count: 1, length_mm: 1219.2, per_height: 0, fill: true },
  ],
  feet: [{ along_mm: 571.5, across_mm: 1219.2, offset_across_mm: 0 }],
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 1828.8, embedment_mm: 1524, count: 2 },
  screws: [{ screw: "screw-10x3", count: 14 }],
  stands: { ground_above_m: null, not_in: ["channel", "pool"] },
};

/** For peat too soft for any sole: turned by hand to firmer ground below, and out again at the end. */
const screwPiles: SupportKind = {
  id: "screw-piles",
  name: "Screw piles, 9 to 36 in",
  form: "screw-pile",
  height_min_mm: 228.6,
  height_max_mm: 914.4,
  height_step_mm: 25.4,
  sill: { size: "2x6", length_mm: 914.4, lay: "flat" },
  pieces: [{ name: "bearer", size: "4x4", count: 2, length_mm: 304.8, per_height: 0, lie: "along" }],
  feet: [-304.8, 304.8].map((y) => ({ along_mm: 53.4, across_mm: 53.4, offset_across_mm: y })),
  rating_n: null,
  anchor: null,
  screws: [{ screw: "screw-14x5", count: 8 }],
  piles: {
    item: "screw-pile-60x203x2438",
    count: 2,
    shaft_mm: 60.3,
    helix_mm: 203.2,
    helices: 1,
    length_mm: 2438.4,
    depth_mm: 1524,
    mass_kg: 16,
  },
  stands: { ground_above_m: null, not_in: ["channel"] },
};

/** Where the peat itself swims: two box floats far apart, held by stakes that let them rise. */
const floatPair: SupportKind = {
  id: "float-pair",
  name: "Float pair, 25 to 40 in",
  form: "float",
  height_min_mm: 635,
  height_max_mm: 1016,
  height_step_mm: 25.4,
  sill: { size: "2x6", length_mm: 2438.4, lay: "flat" },
  pieces: [{ name: "bearer", size: "4x4", count: 2, length_mm: 1066.8, per_height: 0, lie: "along" }],
  feet: [-838.2, 838.2].map((y) => ({ along_mm: 1066.8, across_mm: 762, offset_across_mm: y })),
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 2438.4, embedment_mm: 1524, count: 2 },
  screws: [{ screw: "screw-14x5", count: 12 }],
  floats: {
    item: "float-1067x762x508",
    count: 2,
    length_mm: 1066.8,
    width_mm: 762,
    height_mm: 508,
    mass_kg: 32,
    freeboard_mm: 100,
  },
  stands: { ground_above_m: null, not_in: [] },
};

/**
 * A walkway of grated plastic panels 30 in wide for deep peat. A kit of this project's own, invented: untreated timber
 * with three stringers, broad sleepers where the mat carries, screw piles or floats where it does not.
 */
export const fenPanels: Kit = {
  id: "fen-panels",
  name: "Fen panels, 30 in",
  note: "This project's own recipe. Values of the plastic panel are from memory: use the load table of the panel you buy. Screw piles and floats need an engineer. Peat shrinks and plants die under what lies on them: look at the levels twice a year.",
  lumber: {
    species: "spruce-pine-fir",
    grade: "no2",
    treatment: "none",
    incised: false,
    preservative: null,
  },
  lengths_mm: [2425.7, 1206.5],
  joint_gap_mm: 12.7,
  stringers: { count: 3, size: "2x6", overall_mm: 711.2 },
  cross_pieces: {
    size: "2x4",
    lay: "flat",
    spacing_mm: 406.4,
    exceptions: [],
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  end: { kind: "plain" },
  deck: deckOf(deckChoice("plastic-panel-50")!, 762),
  curb: null,
  supports: [broadSleeper, screwPiles, floatPair],
  platform: {
    side_mm: 1816.1,
    pieces: 2,
    stringers: { size: "2x6", count: 6 },
    cross_pieces: { size: "2x4", count: 5 },
    screw: "screw-10x3",
    screws_per_end: 2,
    edge_sill_mm: 1816.1,
  },
  ramp: { lengths_mm: [1206.5, 2425.7], max_grade: 0.125 },
  spares_share: 0.05,
};
