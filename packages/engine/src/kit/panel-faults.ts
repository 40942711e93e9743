import { crossPlaces, type CrossPlace } from "./cross-places.ts";
import { LONGEST_MM, say, type Faults } from "./faults.ts";
import { panelSheet, sheetRun, sheetSpan } from "./panels.ts";
import type { PanelDeck } from "./types.ts";

/** The end of a panel or sheet of mesh needs this much cross piece under it [mm]; a decision of this project. */
export const SHEET_BEARING_MM = 12;
/** A panel that reaches farther past the outer stringers bends across the walk, of which the recipe knows nothing [mm]; a decision of this project. */
const PANEL_OVERHANG_MM = 40;
/** Larger clear openings let a ball of 35 mm through, the limit for walkway floors in ISO 14122-2, from a public reading of it [mm]. */
const LARGEST_OPENING_MM = 35;
/** Wider cross-piece spacings than this no deck panel of a hand-carried walkway spans [mm]; a decision of this project. */
const LONGEST_SPAN_MM = 1500;
const MOST_STRENGTH = 1e9;

/** A deck of panels: its numbers, its openings, and a cross piece under each end of each panel. */
export function panelDeckFaults(f: Faults, deck: PanelDeck, isFramed: boolean): void {
  const isSized = [
    f.positive("deck.thickness_mm", deck.thickness_mm, "the thickness of the panel"),
    f.positive("deck.panel_length_mm", deck.panel_length_mm, "the panel length"),
    f.notNegative("deck.gap_mm", deck.gap_mm, "the gap between panels"),
    f.positive("deck.mass_kg_m2", deck.mass_kg_m2, "the mass of the panel"),
    f.notNegative("deck.soak_kg_m2", deck.soak_kg_m2, "the water it takes up"),
    f.positive("deck.strength.moment_n", deck.strength.moment_n, "the moment it carries", MOST_STRENGTH),
    f.positive("deck.strength.stiffness_nm", deck.strength.stiffness_nm, "its stiffness", MOST_STRENGTH),
  ].every(Boolean);
  f.whole("deck.fasteners_per_panel", deck.fasteners_per_panel, 2, "fasteners per panel");
  f.fastener("deck.fastener", deck.fastener, deck.open_share === 0 ? deck.thickness_mm : null);
  if (!(deck.strength.creep >= 1 && deck.strength.creep <= 20))
    f.add(
      "number",
      "deck.strength.creep",
      deck.strength.creep,
      "creep is deflection under lasting load over that under a short one: from 1 to 20",
      "Give 1 for steel, 2 for wood or plywood in the wet, more for plastic.",
    );
  openingFaults(f, deck);
  overhangFault(f, deck);
  if (!isSized || !isFramed) return;
  f.kit.lengths_mm.forEach((l, i) => {
    if (l > 0 && l <= LONGEST_MM) runFaults(f, deck, l, `lengths_mm[${i}]`);
  });
}

function openingFaults(f: Faults, deck: PanelDeck): void {
  const { opening_along_mm: along, opening_across_mm: across, open_share: share } = deck;
  const known = [
    f.notNegative("deck.opening_along_mm", along, "the opening along"),
    f.notNegative("deck.opening_across_mm", across, "the opening across"),
  ].every(Boolean);
  if (!(share >= 0 && share < 1))
    f.add(
      "deck",
      "deck.open_share",
      share,
      "the open share lies from 0 to under 1",
      "Give the open part of the area, such as 0.7; 0 for a closed panel.",
    );
  else if (known && share > 0 !== (along > 0 && across > 0))
    f.add(
      "deck",
      "deck.open_share",
      share,
      share > 0
        ? "the panel lets light through but has no openings"
        : "the panel has openings but no open share",
      "Give the openings and their share of the area, or 0 for all three.",
    );
  if (Math.min(along, across) > LARGEST_OPENING_MM)
    f.add(
      "deck",
      "deck.opening_along_mm",
      Math.min(along, across),
      `openings of ${say(along)} by ${say(across)} let a ball of ${say(LARGEST_OPENING_MM)} through`,
      "Use a finer grating where feet, sticks or tools could go through.",
      "warning",
    );
}

function overhangFault(f: Faults, deck: PanelDeck): void {
  const overhang = (deck.width_mm - f.kit.stringers.overall_mm) / 2;
  if (overhang > PANEL_OVERHANG_MM)
    f.add(
      "deck",
      "deck.width_mm",
      deck.width_mm,
      `the panels reach ${say(overhang)} beyond the stringers, and how they bend across the walk is not known`,
      `Set the stringers wider apart: at most ${say(PANEL_OVERHANG_MM)} of overhang for panels.`,
      "warning",
    );
}

/** Whether a row of cross pieces carries the stretch of panel ends from a to b [mm]. */
const isBorne = (rows: readonly CrossPlace[], a: number, b: number): boolean =>
  rows.some(({ x }) => x[0] <= a + 0.05 && x[1] >= b - 0.05);

function runFaults(f: Faults, deck: PanelDeck, length_mm: number, place: string): void {
  const run = sheetRun(panelSheet(deck), length_mm);
  const rows = crossPlaces(f.kit, length_mm, f.sizes);
  for (let k = 0; k < run.count; k++) {
    const [from, to] = sheetSpan(run, deck.gap_mm, k);
    const ends = [
      { at: from, ok: isBorne(rows, from, from + SHEET_BEARING_MM) },
      { at: to, ok: isBorne(rows, to - SHEET_BEARING_MM, to) },
    ];
    for (const { at } of ends.filter((e) => !e.ok))
      f.add(
        "deck",
        "cross_pieces",
        at,
        `on the module of ${say(length_mm)} a panel ends at ${say(at)} without ${say(SHEET_BEARING_MM)} of cross piece under it`,
        "Add a cross piece there as an exception, wide enough for what ends on it.",
      );
  }
  const middles = rows.map(({ x }) => (x[0] + x[1]) / 2);
  const span = Math.max(0, ...middles.slice(1).map((x, i) => x - middles[i]!));
  if (span > LONGEST_SPAN_MM)
    f.add(
      "deck",
      place,
      length_mm,
      `the panels span ${say(span)} between cross pieces`,
      `Set the cross pieces at most ${say(LONGEST_SPAN_MM)} apart.`,
    );
}
