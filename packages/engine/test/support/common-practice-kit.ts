import type { Kit, SupportKind } from "../../src/kit/index.ts";

const IN = 25.4;
const FT = 304.8;

/** An open crate: two runners on the ground, four legs, two rails on edge, and one sill that two modules share. */
const openCrate: SupportKind = {
  id: "open-crate",
  name: "Open crate",
  form: "open-crate",
  height_min_mm: 8 * IN,
  height_max_mm: 20 * IN,
  height_step_mm: IN,
  sill: { size: "2x4", length_mm: 24 * IN, lay: "flat" },
  pieces: [
    { name: "runner", size: "2x6", count: 2, length_mm: 24 * IN, per_height: 0 },
    { name: "leg", size: "2x4", count: 4, length_mm: -6.5 * IN, per_height: 1 },
    { name: "rail", size: "2x4", count: 2, length_mm: 24 * IN, per_height: 0, lay: "edge" },
  ],
  feet: [
    { along_mm: 24 * IN, across_mm: 5.5 * IN, offset_across_mm: -9 * IN },
    { along_mm: 24 * IN, across_mm: 5.5 * IN, offset_across_mm: 9 * IN },
  ],
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 48 * IN, embedment_mm: 24 * IN, count: 1 },
  screws: [{ screw: "screw-10x3", count: 24 }],
  stands: { ground_above_m: null, not_in: ["channel", "pool"] },
};

/**
 * A walkway kit as crews commonly build it; common practice, no source.
 *
 * Modules of 12, 8 and 4 ft butt together over their supports. Two 2x4 stringers, 22 in overall; cross pieces of
 * 19 in at 24 in centres, a 2x6 under every joint of two mesh panels, and a 2x10 catch board at the end.
 */
export const commonPracticeKit: Kit = {
  id: "common-practice",
  name: "Common practice",
  note: "Common practice, no source.",
  lumber: {
    species: "southern-pine",
    grade: "no2",
    treatment: "treated",
    incised: false,
    preservative: null,
  },
  lengths_mm: [12 * FT, 8 * FT, 4 * FT],
  joint_gap_mm: 0,
  stringers: { count: 2, size: "2x4", overall_mm: 22 * IN },
  cross_pieces: {
    size: "2x4",
    lay: "flat",
    spacing_mm: 24 * IN,
    exceptions: [
      { length_mm: 8 * FT, at_mm: 48 * IN, size: "2x6" },
      { length_mm: 12 * FT, at_mm: 48 * IN, size: "2x6" },
      { length_mm: 12 * FT, at_mm: 96 * IN, size: "2x6" },
    ],
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  end: { kind: "catch-board", size: "2x10", projection_mm: 4 * IN },
  deck: {
    kind: "mesh",
    name: "Welded wire mesh 2 in",
    wire_mm: 3.4,
    pitch_mm: 2 * IN,
    panel_length_mm: 4 * FT,
    width_mm: 24 * IN,
    upturn_mm: 3 * IN,
    clip: "mesh-clip",
    clips_per_panel: 4,
    mass_kg_m2: 2.8,
    open_share: 0.87,
    yield_mpa: 400,
  },
  curb: null,
  supports: [openCrate],
  platform: {
    side_mm: 6 * FT,
    pieces: 1,
    stringers: { size: "2x4", count: 4 },
    cross_pieces: { size: "2x4", count: 3 },
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  ramp: null,
  spares_share: 0.03,
};

/** A cart with its wheels 21 in apart, centre to centre. */
export const commonPracticeCart = { name: "Hand cart", track_mm: 21 * IN, wheel_width_mm: 2 * IN };
