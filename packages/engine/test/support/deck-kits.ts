import type { BoardDeck, Kit, PanelDeck, SupportKind } from "../../src/kit/index.ts";
import { commonPracticeKit } from "./common-practice-kit.ts";

const IN = 25.4;
const FT = 304.8;

/** A panel with round numbers; invented. */
export const grating: PanelDeck = {
  kind: "moulded-grating",
  name: "Grating 1 1/2 in",
  thickness_mm: 1.5 * IN,
  panel_length_mm: 4 * FT,
  width_mm: 24 * IN,
  gap_mm: 0.25 * IN,
  opening_along_mm: 30,
  opening_across_mm: 30,
  open_share: 0.7,
  mass_kg_m2: 18,
  soak_kg_m2: 0,
  fastener: "mesh-clip",
  fasteners_per_panel: 6,
  strength: { moment_n: 2000, stiffness_nm: 9500, creep: 1.5, source: "invented", status: "memory" },
};

export const plywood: PanelDeck = {
  ...grating,
  kind: "plywood",
  name: "Plywood 3/4 in",
  thickness_mm: 0.75 * IN,
  width_mm: 36 * IN,
  opening_along_mm: 0,
  opening_across_mm: 0,
  open_share: 0,
  mass_kg_m2: 10,
  soak_kg_m2: 6,
  fastener: "screw-8x2.5",
  fasteners_per_panel: 10,
};

const boards: BoardDeck = {
  kind: "boards",
  size: "5/4x6",
  gap_mm: 0.5 * IN,
  width_mm: 24 * IN,
  screw: "screw-8x2.5",
  screws_per_bearing: 2,
};

const crossPieces = { ...commonPracticeKit.cross_pieces, exceptions: [] };

/** Two 2x4 stringers, cross pieces at 24 in, plain ends, grating in panels of 4 ft. */
export const gratingKit: Kit = {
  ...commonPracticeKit,
  id: "grating",
  lengths_mm: [8 * FT, 4 * FT],
  cross_pieces: crossPieces,
  end: { kind: "plain" },
  deck: grating,
  supports: commonPracticeKit.supports.map((s) => ({ ...s, sill: { ...s.sill, length_mm: 38 * IN } })),
  platform: { ...commonPracticeKit.platform, stringers: { size: "2x4", count: 5 } },
};

/** Three 2x4 stringers 35 in overall under plywood 36 in wide. */
export const plywoodKit: Kit = {
  ...gratingKit,
  id: "plywood",
  stringers: { count: 3, size: "2x4", overall_mm: 35 * IN },
  deck: plywood,
};

/** Boards, and a platform of 71 1/2 in that is carried in two halves. */
export const halvesKit: Kit = {
  ...gratingKit,
  id: "halves",
  lengths_mm: [95.5 * IN],
  joint_gap_mm: 0.5 * IN,
  deck: boards,
  platform: { ...commonPracticeKit.platform, side_mm: 71.5 * IN, pieces: 2 },
  ramp: { lengths_mm: [47.5 * IN, 95.5 * IN], max_grade: 0.125 },
};

const timberOnTop: SupportKind = {
  ...commonPracticeKit.supports[0]!,
  pieces: [{ name: "bearer", size: "4x4", count: 2, length_mm: 12 * IN, per_height: 0, lie: "along" }],
  sill: { size: "2x6", length_mm: 38 * IN, lay: "flat" },
  anchor: null,
};

/** Two screw piles 24 in apart under a pair of 4x4 bearers. */
export const onPiles: SupportKind = {
  ...timberOnTop,
  id: "piles",
  name: "Screw piles",
  form: "screw-pile",
  feet: [-12, 12].map((y) => ({ along_mm: 53.4, across_mm: 53.4, offset_across_mm: y * IN })),
  piles: {
    item: "pile",
    count: 2,
    shaft_mm: 60.3,
    helix_mm: 200,
    helices: 1,
    length_mm: 2400,
    depth_mm: 1800,
    mass_kg: 15,
  },
};

/** Two box floats under a pair of 4x4 bearers, their middles 1.2 m apart. */
export const onFloats: SupportKind = {
  ...timberOnTop,
  id: "floats",
  name: "Floats",
  form: "float",
  height_min_mm: 527,
  height_max_mm: 827,
  pieces: [{ name: "bearer", size: "4x4", count: 2, length_mm: 900, per_height: 0, lie: "along" }],
  sill: { size: "2x6", length_mm: 1800, lay: "flat" },
  feet: [-600, 600].map((y) => ({ along_mm: 900, across_mm: 600, offset_across_mm: y })),
  floats: {
    item: "float",
    count: 2,
    length_mm: 900,
    width_mm: 600,
    height_mm: 400,
    mass_kg: 20,
    freeboard_mm: 100,
  },
};
