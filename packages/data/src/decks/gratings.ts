import { barInertia, barModulus, panelMoment, panelStiffness } from "@causey/engine/checks";
import { inches, millimetres, psi } from "@causey/engine/units";
import type { PanelDeck } from "@causey/engine/kit";
import type { DeckChoice } from "./deck-choice.ts";

const MOULDED =
  "moulded glass-fibre grating as a row of bars, from memory: allowable stress about 50 MPa, stiffness about 12 GPa; use the maker's load table instead";

/** Strength of a moulded grating as bars of one way. */
function moulded(bar_mm: number, depth_mm: number, pitch_mm: number): PanelDeck["strength"] {
  const bars = { b: millimetres(bar_mm), d: millimetres(depth_mm), p: millimetres(pitch_mm) };
  return {
    moment_n: Math.round(50e6 * barModulus(bars)),
    stiffness_nm: Math.round(12.4e9 * barInertia(bars)),
    creep: 1.5,
    source: MOULDED,
    status: "memory",
  };
}

/** Steel bar grating: bars by inches at 1-3/16 in, as its load tables work it out. */
function steelBars(b_in: number, d_in: number): PanelDeck["strength"] {
  const bars = { b: inches(b_in), d: inches(d_in), p: inches(1.1875) };
  const m_r = panelMoment({ F: psi(18_000), S_1: barModulus(bars) });
  const k = panelStiffness({ E: psi(29e6), I_1: barInertia(bars) });
  return {
    moment_n: Math.round(m_r),
    stiffness_nm: Math.round(k),
    creep: 1,
    source: "steel bar grating load tables: 18 000 psi on the bearing bars, E 29 000 000 psi",
    status: "computed",
  };
}

/** Gratings: the light goes through, and nothing soaks. */
export const gratings: readonly DeckChoice[] = [
  {
    id: "moulded-38",
    name: "Moulded glass-fibre grating, 38 mm deep, 38 mm mesh",
    note: "About 70 % open and 3.6 lb per square foot, from memory. Bars both ways: it may lie either way. Seal cut edges away from the wetland.",
    status: "memory",
    deck: {
      kind: "moulded-grating",
      name: "Moulded grating 38 mm, 38 mm mesh",
      thickness_mm: 38.1,
      panel_length_mm: 1219.2,
      gap_mm: 6.35,
      opening_along_mm: 31.75,
      opening_across_mm: 31.75,
      open_share: 0.7,
      mass_kg_m2: 17.6,
      soak_kg_m2: 0,
      fastener: "grating-clip",
      fasteners_per_panel: 6,
      strength: moulded(6.35, 38.1, 38.1),
    },
  },
  {
    id: "moulded-25",
    name: "Moulded glass-fibre grating, 25 mm deep, 38 mm mesh",
    note: "About 70 % open and 2.45 lb per square foot, from memory. For closely set cross pieces.",
    status: "memory",
    deck: {
      kind: "moulded-grating",
      name: "Moulded grating 25 mm, 38 mm mesh",
      thickness_mm: 25.4,
      panel_length_mm: 1219.2,
      gap_mm: 6.35,
      opening_along_mm: 31.75,
      opening_across_mm: 31.75,
      open_share: 0.7,
      mass_kg_m2: 12,
      soak_kg_m2: 0,
      fastener: "grating-clip",
      fasteners_per_panel: 6,
      strength: moulded(6.35, 25.4, 38.1),
    },
  },
  {
    id: "moulded-mini",
    name: "Moulded glass-fibre grating, 30 mm deep, 19 mm mini mesh",
    note: "About 45 % open, from memory. The openings let no ball of 1/2 in through.",
    status: "memory",
    deck: {
      kind: "moulded-grating",
      name: "Moulded grating 30 mm, mini mesh",
      thickness_mm: 30,
      panel_length_mm: 1219.2,
      gap_mm: 6.35,
      opening_along_mm: 12.5,
      opening_across_mm: 12.5,
      open_share: 0.45,
      mass_kg_m2: 18,
      soak_kg_m2: 0,
      fastener: "grating-clip",
      fasteners_per_panel: 6,
      strength: moulded(6.35, 30, 38.1),
    },
  },
  {
    id: "steel-bar-25",
    name: "Steel bar grating, 1 x 3/16 in bars at 1-3/16 in, hot-dip galvanised",
    note: "Strong and heavy; the bars must run along the walk. Strength worked out as its load tables do; open share and mass from memory.",
    status: "memory",
    deck: {
      kind: "bar-grating",
      name: "Steel bar grating 1 x 3/16 in",
      thickness_mm: 25.4,
      panel_length_mm: 1219.2,
      gap_mm: 6.35,
      opening_along_mm: 95,
      opening_across_mm: 25.4,
      open_share: 0.78,
      mass_kg_m2: 37.6,
      soak_kg_m2: 0,
      fastener: "grating-clip",
      fasteners_per_panel: 4,
      strength: steelBars(0.1875, 1),
    },
  },
];
