import type { LumberSize } from "../materials/tables.ts";
import { modulePieces } from "./module-pieces.ts";
import type { PlacedPiece } from "./piece.ts";
import { platformPieces } from "./platform-pieces.ts";
import type { Deck, Kit } from "./types.ts";

/** Light that falls straight down through a part, as shares of its outline. */
export interface OpenShare {
  /** Through the deck alone: gaps between boards or panels, and the openings of mesh and grating. */
  readonly deck: number;
  /** Past the frame and the curbs as well. */
  readonly whole: number;
  /** The outline that both are shares of [m2]. */
  readonly outline_m2: number;
}

const DECK_ROLES = ["deck board", "mesh panel", "deck panel"];

const opennessOf = (deck: Deck): number => (deck.kind === "boards" ? 0 : deck.open_share);

/** Open share of a module of this length, over its body's length and its widest outline. Exact for its boxes. */
export const moduleOpenShare = (kit: Kit, length_mm: number, sizes: readonly LumberSize[]): OpenShare => {
  const half = Math.max(kit.deck.width_mm, kit.stringers.overall_mm) / 2000;
  return openShare(kit.deck, modulePieces(kit, length_mm, sizes), [0, length_mm / 1000], [-half, half]);
};

/** Open share of a platform whose unused edges are open. */
export const platformOpenShare = (kit: Kit, sizes: readonly LumberSize[]): OpenShare => {
  const side = kit.platform.side_mm / 1000;
  return openShare(kit.deck, platformPieces(kit, sizes), [0, side], [-side / 2, side / 2]);
};

type Range = readonly [number, number];

/** Cuts the outline at every edge of every piece, so that each cell is wholly under a piece or not at all. */
function openShare(deck: Deck, pieces: readonly PlacedPiece[], x: Range, y: Range): OpenShare {
  const solid = pieces.filter((p) => !DECK_ROLES.includes(p.role));
  const sheets = pieces.filter((p) => DECK_ROLES.includes(p.role));
  const xs = cuts(
    pieces.flatMap((p) => [p.x0, p.x1]),
    x,
  );
  const ys = cuts(
    pieces.flatMap((p) => [p.y0, p.y1]),
    y,
  );
  const through = opennessOf(deck);
  let open = 0;
  let past = 0;
  for (let i = 1; i < xs.length; i++)
    for (let j = 1; j < ys.length; j++) {
      const [px, py] = [(xs[i]! + xs[i - 1]!) / 2, (ys[j]! + ys[j - 1]!) / 2];
      const covers = (p: PlacedPiece): boolean => p.x0 < px && px < p.x1 && p.y0 < py && py < p.y1;
      const light = (xs[i]! - xs[i - 1]!) * (ys[j]! - ys[j - 1]!) * (sheets.some(covers) ? through : 1);
      open += light;
      if (!solid.some(covers)) past += light;
    }
  const outline_m2 = (x[1] - x[0]) * (y[1] - y[0]);
  return { deck: open / outline_m2, whole: past / outline_m2, outline_m2 };
}

const cuts = (at: readonly number[], [from, to]: Range): number[] =>
  [...new Set([from, to, ...at.filter((v) => v > from && v < to)])].sort((a, b) => a - b);
