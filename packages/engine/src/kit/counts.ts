import type { Fastener, LumberSize } from "../materials/tables.ts";
import { meshOf, panelRun, sheetWidth, type MeshDeck } from "./deck.ts";
import { platformStringers } from "./frame.ts";
import { modulePieces } from "./module-pieces.ts";
import type { PlacedPiece } from "./piece.ts";
import { platformMeshPlan, platformPieces, type PlatformEdge } from "./platform-pieces.ts";
import type { Kit, SupportKind } from "./types.ts";

/** A thing that is counted, not sawn, as one part of the kit needs it. */
export interface Counted {
  readonly item: string;
  readonly name: string;
  readonly count: number;
}

/** Item id under which the price list sells a kit's mesh: length by sheared width in whole millimetres. */
export const meshPanelItem = (deck: MeshDeck): string =>
  `mesh ${Math.round(deck.panel_length_mm)}x${Math.round(sheetWidth(deck))}`;

/** Screws that hold one curb down: one at each end and no farther apart than the spacing. */
export const curbScrews = (length_mm: number, spacing_mm: number): number =>
  Math.ceil(length_mm / spacing_mm - 1e-6) + 1;

/** Screws, clips and mesh sheets of one module. Names come from the fastener table, else the item id stands. */
export function moduleCounts(
  kit: Kit,
  length_mm: number,
  sizes: readonly LumberSize[],
  fasteners: readonly Fastener[] = [],
): Counted[] {
  const pieces = modulePieces(kit, length_mm, sizes);
  const { deck, cross_pieces } = kit;
  const panels = deck.kind === "mesh" ? panelRun(deck, length_mm).count : 0;
  return total(
    [
      frameScrews(pieces, cross_pieces.screw, cross_pieces.screws_per_end),
      ...deckCounts(kit, pieces, kit.stringers.count, panels, panels),
      ...curbCounts(kit, pieces),
    ],
    fasteners,
  );
}

/** Screws, clips and mesh sheets of one platform; `closed` as in `platformPieces`. */
export function platformCounts(
  kit: Kit,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[] = [],
  fasteners: readonly Fastener[] = [],
): Counted[] {
  const pieces = platformPieces(kit, sizes, closed);
  const { platform, deck } = kit;
  const plan = deck.kind === "mesh" ? platformMeshPlan(kit, deck, platformStringers(kit, sizes)) : null;
  const laid = pieces.filter((p) => p.role === "mesh panel").length;
  return total(
    [
      frameScrews(pieces, platform.screw, platform.screws_per_end),
      ...deckCounts(kit, pieces, platform.stringers.count, plan?.sheets ?? 0, laid),
      ...curbCounts(kit, pieces),
    ],
    fasteners,
  );
}

/** Screws of one support. */
export const supportCounts = (kind: SupportKind, fasteners: readonly Fastener[] = []): Counted[] =>
  total(
    kind.screws.map(({ screw, count }) => ({ item: screw, name: screw, count })),
    fasteners,
  );

/** Both ends of every cross piece, the catch board among them, are screwed through the stringers. */
const frameScrews = (pieces: readonly PlacedPiece[], screw: string, perEnd: number): Counted => ({
  item: screw,
  name: screw,
  count: pieces.filter((p) => p.role === "cross piece" || p.role === "catch board").length * 2 * perEnd,
});

function deckCounts(
  kit: Kit,
  pieces: readonly PlacedPiece[],
  bearings: number,
  sheets: number,
  laid: number,
): Counted[] {
  const { deck } = kit;
  if (deck.kind === "boards") {
    const boards = pieces.filter((p) => p.role === "deck board").length;
    return [{ item: deck.screw, name: deck.screw, count: boards * bearings * deck.screws_per_bearing }];
  }
  const mesh = meshOf(deck);
  return [
    { item: meshPanelItem(mesh), name: mesh.name, count: sheets },
    { item: mesh.clip, name: mesh.clip, count: laid * mesh.clips_per_panel },
  ];
}

function curbCounts(kit: Kit, pieces: readonly PlacedPiece[]): Counted[] {
  const { curb } = kit;
  if (!curb) return [];
  const count = pieces
    .filter((p) => p.role === "curb")
    .reduce((sum, p) => sum + curbScrews(p.length_mm, curb.screw_spacing_mm), 0);
  return [{ item: curb.screw, name: curb.screw, count }];
}

/** Adds up equal items, drops what is not needed, and names them from the table. */
export function total(lines: readonly Counted[], fasteners: readonly Fastener[]): Counted[] {
  const sums = new Map<string, Counted>();
  for (const line of lines)
    sums.set(line.item, { ...line, count: line.count + (sums.get(line.item)?.count ?? 0) });
  return [...sums.values()]
    .filter((line) => line.count > 0)
    .map((line) => ({ ...line, name: fasteners.find((f) => f.id === line.item)?.name ?? line.name }));
}
