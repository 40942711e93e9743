import { crossPlaces } from "./cross-places.ts";
import { clearWidth, deckPattern, GAP_SLACK_MM, panelRun, type BoardDeck, type MeshDeck } from "./deck.ts";
import { LONGEST_MM, say, type Faults } from "./faults.ts";
import { panelDeckFaults, SHEET_BEARING_MM } from "./panel-faults.ts";

/** Shorter panels lie on one cross piece only [mm]; a decision of this project. */
const SHORTEST_PANEL_MM = 150;
/** A deck that reaches farther beyond the stringers tips under a foot at its edge [mm]; a decision of this project. */
const LONGEST_OVERHANG_MM = 150;
/** Narrower than this no one walks with a load [mm]; common practice, no source. */
const LEAST_CLEAR_MM = 300;

/** Deck and curbs of the modules; `isFramed` says that the cross pieces can be placed. */
export function deckFaults(f: Faults, isFramed: boolean): void {
  const { deck } = f.kit;
  const stringer = f.known(f.kit.stringers.size);
  if (f.positive("deck.width_mm", deck.width_mm, "the deck width") && stringer)
    widthFaults(f, stringer.thickness_mm);
  if (deck.kind === "boards") boardFaults(f, deck);
  else if (deck.kind === "mesh") meshFaults(f, deck, isFramed);
  else panelDeckFaults(f, deck, isFramed);
  curbFaults(f);
}

function widthFaults(f: Faults, thickness_mm: number): void {
  const { width_mm } = f.kit.deck;
  const overall = f.kit.stringers.overall_mm;
  if (width_mm < overall - thickness_mm)
    f.add(
      "deck",
      "deck.width_mm",
      width_mm,
      "the deck ends short of the middle of the outer stringers",
      `Make it at least ${say(overall - thickness_mm)} wide.`,
    );
  if ((width_mm - overall) / 2 > LONGEST_OVERHANG_MM)
    f.add(
      "deck",
      "deck.width_mm",
      width_mm,
      `the deck reaches ${say((width_mm - overall) / 2)} beyond the stringers`,
      `Set the stringers wider apart: at most ${say(LONGEST_OVERHANG_MM)} of overhang.`,
      "warning",
    );
}

function boardFaults(f: Faults, deck: BoardDeck): void {
  const board = f.section("deck.size", deck.size);
  f.whole("deck.screws_per_bearing", deck.screws_per_bearing, 1, "screws per bearing");
  f.fastener("deck.screw", deck.screw, board?.thickness_mm ?? null);
  const isGap = f.notNegative("deck.gap_mm", deck.gap_mm, "the gap between deck boards");
  if (!board || !isGap) return;
  const parts = [
    ...f.kit.lengths_mm.map((l, i) => ({ place: `lengths_mm[${i}]`, l })),
    { place: "platform.side_mm", l: f.kit.platform.side_mm },
    ...(f.kit.ramp?.lengths_mm ?? []).map((l, i) => ({ place: `ramp.lengths_mm[${i}]`, l })),
  ];
  for (const { place, l } of parts.filter((p) => p.l > 0)) {
    const { count, gap_mm } = deckPattern(deck, l, f.sizes);
    if (Math.abs(gap_mm - deck.gap_mm) <= GAP_SLACK_MM && gap_mm >= 0) continue;
    const flush = (n: number): number => n * board.width_mm + (n - 1) * deck.gap_mm;
    f.add(
      "deck",
      place,
      l,
      `deck boards leave a rest on ${say(l)}: ${count} of them would need a gap of ${say(gap_mm)} instead of ${say(deck.gap_mm)}`,
      `Make it ${say(flush(count))} or ${say(flush(count + 1))} long, or change the gap.`,
    );
  }
}

function meshFaults(f: Faults, deck: MeshDeck, isFramed: boolean): void {
  const isSized = [
    f.positive("deck.wire_mm", deck.wire_mm, "the wire"),
    f.positive("deck.pitch_mm", deck.pitch_mm, "the mesh pitch"),
    f.notNegative("deck.upturn_mm", deck.upturn_mm, "the upturn"),
    f.positive("deck.mass_kg_m2", deck.mass_kg_m2, "the mass of the mesh"),
    f.positive("deck.yield_mpa", deck.yield_mpa, "the yield stress"),
    isPanel(f, deck.panel_length_mm),
  ].every(Boolean);
  f.whole("deck.clips_per_panel", deck.clips_per_panel, 1, "clips per panel");
  f.fastener("deck.clip", deck.clip, null);
  if (!(deck.open_share > 0 && deck.open_share < 1))
    f.add(
      "deck",
      "deck.open_share",
      deck.open_share,
      "the open share lies between 0 and 1",
      "Give the open part of the area, such as 0.8.",
    );
  if (deck.wire_mm >= deck.pitch_mm)
    f.add("deck", "deck.wire_mm", deck.wire_mm, "the wire is as thick as the mesh is wide", "Check both.");
  if (!isSized) return;
  f.kit.lengths_mm.forEach((l, i) => {
    if (l > 0 && l <= LONGEST_MM) panelFaults(f, deck, l, i, isFramed);
  });
}

function isPanel(f: Faults, length_mm: number): boolean {
  if (!f.positive("deck.panel_length_mm", length_mm, "the panel length")) return false;
  if (length_mm >= SHORTEST_PANEL_MM) return true;
  f.add(
    "deck",
    "deck.panel_length_mm",
    length_mm,
    `panels of ${say(length_mm)} are too short to lie on two cross pieces`,
    `Use panels of at least ${say(SHORTEST_PANEL_MM)}.`,
  );
  return false;
}

function panelFaults(f: Faults, deck: MeshDeck, length_mm: number, i: number, isFramed: boolean): void {
  const run = panelRun(deck, length_mm);
  const trim = deck.panel_length_mm - run.length_mm;
  if (trim > deck.pitch_mm / 2 + 0.05) {
    f.add(
      "deck",
      `lengths_mm[${i}]`,
      length_mm,
      `mesh panels of ${say(deck.panel_length_mm)} do not fill ${say(length_mm)}: each of ${run.count} would lose ${say(trim)}, more than half a mesh`,
      `Make the module a multiple of the panel, less at most ${say(deck.pitch_mm / 2)} a panel, or change the panel length.`,
    );
    return;
  }
  if (!isFramed) return;
  const rows = crossPlaces(f.kit, length_mm, f.sizes);
  for (let k = 1; k < run.count; k++) {
    const at = k * run.length_mm;
    const isBorne = rows.some(({ x }) => x[0] <= at - SHEET_BEARING_MM && x[1] >= at + SHEET_BEARING_MM);
    if (!isBorne)
      f.add(
        "deck",
        "cross_pieces",
        at,
        `on the module of ${say(length_mm)} two mesh panels meet at ${say(at)} with no cross piece under the joint`,
        "Add a cross piece there as an exception, wide enough for both panels.",
      );
  }
}

function curbFaults(f: Faults): void {
  const { curb } = f.kit;
  if (!curb) return;
  const section = f.section("curb.size", curb.size);
  f.positive("curb.screw_spacing_mm", curb.screw_spacing_mm, "the spacing of curb screws");
  f.fastener("curb.screw", curb.screw, section?.thickness_mm ?? null);
  if (!section || !(f.kit.deck.width_mm > 0)) return;
  const clear = clearWidth(f.kit, f.sizes);
  if (clear < LEAST_CLEAR_MM)
    f.add(
      "curb",
      "curb.size",
      curb.size,
      `between the curbs only ${say(Math.max(0, clear))} is left to walk on`,
      `Widen the deck or use a smaller curb: at least ${say(LEAST_CLEAR_MM)}.`,
    );
}
