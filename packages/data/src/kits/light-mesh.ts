import type { Kit, SupportKind } from "@causey/engine/kit";

const notInWater = { ground_above_m: null, not_in: ["channel", "pool"] } as const;

/** A 26 in 2x6 laid flat, shared by two module ends. */
const sill = { size: "2x6", length_mm: 660.4, lay: "flat" } as const;

const sleeper: SupportKind = {
  id: "sleeper",
  name: "Sleeper, 3 to 9 in",
  form: "sleeper",
  height_min_mm: 76.2,
  height_max_mm: 228.6,
  height_step_mm: 38.1,
  sill,
  pieces: [
    { name: "sleeper", size: "2x10", count: 1, length_mm: 660.4, per_height: 0 },
    { name: "packing", size: "2x6", count: 1, length_mm: 660.4, per_height: 0, fill: true },
  ],
  feet: [{ along_mm: 234.95, across_mm: 660.4, offset_across_mm: 0 }],
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 914.4, embedment_mm: 609.6, count: 2 },
  screws: [{ screw: "screw-10x3", count: 12 }],
  stands: notInWater,
};

const openCrate: SupportKind = {
  id: "open-crate",
  name: "Open crate, 9 to 24 in",
  form: "open-crate",
  height_min_mm: 228.6,
  height_max_mm: 609.6,
  height_step_mm: 25.4,
  sill,
  pieces: [
    { name: "runner", size: "2x6", count: 2, length_mm: 609.6, per_height: 0 },
    { name: "leg", size: "2x4", count: 4, length_mm: -165.1, per_height: 1 },
    { name: "rail", size: "2x4", count: 2, length_mm: 609.6, per_height: 0, lay: "edge" },
    { name: "tie", size: "2x4", count: 2, length_mm: 558.8, per_height: 0, lie: "across", beside: true },
  ],
  feet: [
    { along_mm: 609.6, across_mm: 139.7, offset_across_mm: -241.3 },
    { along_mm: 609.6, across_mm: 139.7, offset_across_mm: 241.3 },
  ],
  rating_n: null,
  anchor: { kind: "stake", size: "2x2", length_mm: 1219.2, embedment_mm: 609.6, count: 2 },
  screws: [
    { screw: "screw-10x3", count: 32 },
    { screw: "screw-10x4", count: 8 },
  ],
  stands: notInWater,
};

/**
 * A light walkway of welded mesh, 26 in wide, for people in file and a narrow hand cart. A kit of this project's
 * own, invented. The mesh is bent up 5 in at both edges, which makes the curb; a catch board carries the next module.
 */
export const lightMesh: Kit = {
  id: "light-mesh",
  name: "Light mesh, 26 in",
  note: "This project's own recipe. Ease the projecting corners of each catch board by 1/4 in so that it drops between the next stringers. The yield stress of the wire is from memory: ask for the mill's certificate. Mesh clips have no rated strength: test one.",
  lumber: {
    species: "southern-pine",
    grade: "no2",
    treatment: "treated",
    incised: false,
    preservative: null,
  },
  lengths_mm: [3644.9, 2425.7, 1206.5],
  joint_gap_mm: 12.7,
  stringers: { count: 2, size: "2x6", overall_mm: 609.6 },
  cross_pieces: {
    size: "2x4",
    lay: "flat",
    spacing_mm: 609.6,
    exceptions: [
      { length_mm: 3644.9, at_mm: 1215, size: "2x6" },
      { length_mm: 3644.9, at_mm: 2429.9, size: "2x6" },
      { length_mm: 2425.7, at_mm: 1212.85, size: "2x6" },
    ],
    screw: "screw-10x3",
    screws_per_end: 2,
  },
  end: { kind: "catch-board", size: "2x8", projection_mm: 76.2 },
  deck: {
    kind: "mesh",
    name: "Welded wire mesh 1 x 1 in, 10 gauge, galvanised",
    wire_mm: 3.43,
    pitch_mm: 25.4,
    panel_length_mm: 1219.2,
    width_mm: 660.4,
    upturn_mm: 127,
    clip: "mesh-clip",
    clips_per_panel: 10,
    mass_kg_m2: 5.7,
    open_share: 0.75,
    yield_mpa: 448,
  },
  curb: null,
  supports: [sleeper, openCrate],
  platform: {
    side_mm: 1816.1,
    pieces: 1,
    stringers: { size: "2x6", count: 4 },
    cross_pieces: { size: "2x4", count: 5 },
    screw: "screw-10x3",
    screws_per_end: 2,
    edge_sill_mm: 1816.1,
  },
  ramp: null,
  spares_share: 0.03,
};
