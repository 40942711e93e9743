import { psi } from "@causey/engine/units";
import type { DeckChoice } from "./deck-choice.ts";

/** Panel tables give a foot of width: pound-inches per foot to newton-metres per metre, and pound-square-inches per foot likewise. */
const LB_IN_PER_FT = (psi(1) * 0.0254 ** 3) / 0.3048;
const LB_IN2_PER_FT = (psi(1) * 0.0254 ** 4) / 0.3048;
/** Wet service: bending 0.75, stiffness 0.85; from memory. */
const WET = { bending: 0.75, stiffness: 0.85 } as const;

/** Boards and panels that light hardly passes, and the one plastic panel with openings. */
export const closedDecks: readonly DeckChoice[] = [
  {
    id: "boards-2x6",
    name: "Boards 2x6, 1/2 in gaps",
    note: "About 8 % open. Screwed to every stringer; strength is that of the kit's timber.",
    status: "practice",
    deck: { kind: "boards", size: "2x6", gap_mm: 12.7, screw: "screw-10x3", screws_per_bearing: 2 },
  },
  {
    id: "boards-2x4",
    name: "Boards 2x4, 3/4 in gaps",
    note: "About 18 % open: narrow boards with wide gaps let more light through.",
    status: "practice",
    deck: { kind: "boards", size: "2x4", gap_mm: 19.05, screw: "screw-10x3", screws_per_bearing: 2 },
  },
  {
    id: "boards-5/4x6",
    name: "Boards 5/4x6, 1/2 in gaps",
    note: "Lighter; stringers at most 16 in apart.",
    status: "practice",
    deck: { kind: "boards", size: "5/4x6", gap_mm: 12.7, screw: "screw-8x2.5", screws_per_bearing: 2 },
  },
  {
    id: "plywood-48/24",
    name: "Plywood 48/24, exterior, 18 mm",
    note: "Closed: no light at all. Panel capacities from memory, reduced for the wet; slippery without grit, and its edges rot first.",
    status: "memory",
    deck: {
      kind: "plywood",
      name: "Plywood 48/24, 18 mm",
      thickness_mm: 18.3,
      panel_length_mm: 1219.2,
      gap_mm: 3.2,
      opening_along_mm: 0,
      opening_across_mm: 0,
      open_share: 0,
      mass_kg_m2: 10.5,
      soak_kg_m2: 6,
      fastener: "screw-8x2.5",
      fasteners_per_panel: 10,
      strength: {
        moment_n: Math.round(845 * LB_IN_PER_FT * WET.bending),
        stiffness_nm: Math.round(400_000 * LB_IN2_PER_FT * WET.stiffness),
        creep: 2,
        source: "APA D510 all-panel capacities, 48/24: FbS 845, EI 400 000, with wet factors; from memory",
        status: "memory",
      },
    },
  },
  {
    id: "plastic-panel-50",
    name: "Grated plastic panel, 50 mm, glass-filled polypropylene",
    note: "About 43 % open, light, needs no treatment. All values from memory; it creeps, and moves with heat: leave the gaps.",
    status: "memory",
    deck: {
      kind: "plastic-panel",
      name: "Grated plastic panel 50 mm",
      thickness_mm: 50,
      panel_length_mm: 1219.2,
      gap_mm: 6.35,
      opening_along_mm: 90,
      opening_across_mm: 12.5,
      open_share: 0.43,
      mass_kg_m2: 12.5,
      soak_kg_m2: 0,
      fastener: "panel-clip",
      fasteners_per_panel: 8,
      strength: {
        moment_n: 875,
        stiffness_nm: 6250,
        creep: 3,
        source: "ribs over 30 % of the width, 7 MPa, 2 GPa; from memory: use the maker's load table instead",
        status: "memory",
      },
    },
  },
];
