import type { LumberSize } from "../materials/tables.ts";
import { deckBoards, deckThickness, meshOf, sheetWidth, type MeshDeck } from "./deck.ts";
import { platformStringers, type StringerLines } from "./frame.ts";
import { around, place, type PlacedPiece, type Span } from "./piece.ts";
import { lying, sectionOf } from "./section.ts";
import type { Kit } from "./types.ts";

/** Edges of a platform as one enters it; "back" is the edge it is entered by. */
export type PlatformEdge = "back" | "ahead" | "left" | "right";

/**
 * Every piece of one platform as a box: x along from the edge it is entered by, y across from the middle line
 * (left positive), z up from its underside. Stringers run along, rows of cross pieces between them.
 *
 * closed  edges that no module leaves from: where the kit has curbs, theirs runs through  (none when left out)
 *
 * Throws `DomainError` when the table lacks a size.
 */
export function platformPieces(
  kit: Kit,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[] = [],
): PlacedPiece[] {
  const { side_mm, stringers } = kit.platform;
  const lines = platformStringers(kit, sizes);
  const top = lines.depth_mm;
  return [
    ...lines.lines.map((y) => place("stringer", stringers.size, side_mm, [0, side_mm], y, [0, top])),
    ...crossRows(kit, lines, sizes),
    ...(kit.deck.kind === "boards"
      ? deckBoards(kit.deck, side_mm, side_mm, top, sizes)
      : platformMesh(kit, meshOf(kit.deck), lines)),
    ...platformCurbs(kit, top + deckThickness(kit.deck, sizes), sizes, closed),
  ];
}

/** Rows at equal spacing, first and last flush with the edges; each row fits between the stringers. */
function crossRows(kit: Kit, lines: StringerLines, sizes: readonly LumberSize[]): PlacedPiece[] {
  const { side_mm, cross_pieces } = kit.platform;
  const { along, high } = lying(sectionOf(sizes, cross_pieces.size), kit.cross_pieces.lay);
  const z: Span = [lines.depth_mm - high, lines.depth_mm];
  const step = (side_mm - along) / (cross_pieces.count - 1);
  return Array.from({ length: cross_pieces.count }, (_, row): Span => [
    row * step,
    row * step + along,
  ]).flatMap((x) => lines.bays.map((y) => place("cross piece", cross_pieces.size, y[1] - y[0], x, y, z)));
}

/** How the mesh covers a platform: strips whose seams lie on stringers, cut across over rows of cross pieces. */
export interface PlatformMesh {
  /** Seams and edges across, from right to left [mm]. */
  readonly seams: readonly number[];
  /** Pieces in one strip, each this long. */
  readonly pieces: number;
  readonly piece_mm: number;
  /** Sheets to buy: how many pieces come out of one, whole. */
  readonly sheets: number;
}

/** The mesh of a platform. Bays wider than a sheet give no strip: `validateKit` reports that. */
export function platformMeshPlan(kit: Kit, deck: MeshDeck, lines: StringerLines): PlatformMesh {
  const side = kit.platform.side_mm;
  const bays = lines.bays.length;
  const marks = Array.from({ length: bays + 1 }, (_, i) => stripEdge(i, bays, side, lines));
  const seams = [marks[0]!];
  for (let i = 1; i <= bays; i++)
    if (i === bays || marks[i + 1]! - seams.at(-1)! > sheetWidth(deck) + 0.05) seams.push(marks[i]!);
  const pieces = Math.max(1, Math.ceil(side / deck.panel_length_mm - 1e-6));
  const piece_mm = side / pieces;
  const widest = Math.max(...seams.slice(1).map((y, i) => y - seams[i]!));
  const perSheet =
    Math.max(1, Math.floor(deck.panel_length_mm / piece_mm + 1e-6)) *
    Math.max(1, Math.floor(sheetWidth(deck) / widest + 1e-6));
  return { seams, pieces, piece_mm, sheets: Math.ceil(((seams.length - 1) * pieces) / perSheet) };
}

const stripEdge = (i: number, bays: number, side: number, lines: StringerLines): number => {
  if (i === 0) return -side / 2;
  return i === bays ? side / 2 : (lines.lines[i]![0] + lines.lines[i]![1]) / 2;
};

function platformMesh(kit: Kit, deck: MeshDeck, lines: StringerLines): PlacedPiece[] {
  const { seams, pieces, piece_mm } = platformMeshPlan(kit, deck, lines);
  const z: Span = [lines.depth_mm, lines.depth_mm + 2 * deck.wire_mm];
  return seams.slice(1).flatMap((y1, strip) =>
    Array.from({ length: pieces }, (_, k) => {
      const x: Span = [k * piece_mm, (k + 1) * piece_mm];
      return place("mesh panel", null, piece_mm, x, [seams[strip]!, y1], z);
    }),
  );
}

/** Curbs flank the walkway's opening at every edge and run through at the closed ones. */
function platformCurbs(
  kit: Kit,
  z_mm: number,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[],
): PlacedPiece[] {
  if (!kit.curb) return [];
  const { size } = kit.curb;
  const { thickness_mm, width_mm: w } = sectionOf(sizes, size);
  const side = kit.platform.side_mm;
  const half = side / 2;
  const open = kit.deck.width_mm / 2;
  const z: Span = [z_mm, z_mm + thickness_mm];
  const along = (x: Span, y: Span) => place("curb", size, x[1] - x[0], x, y, z);
  const across = (x: Span, y: Span) => place("curb", size, y[1] - y[0], x, y, z);
  const runs = (edge: PlatformEdge, reach: number): Span[] =>
    closed.includes(edge)
      ? [[-reach, reach]]
      : [
          [-reach, -open],
          [open, reach],
        ];
  return [
    ...runs("right", half).map((s) => along([half + s[0], half + s[1]], [-half, -half + w])),
    ...runs("left", half).map((s) => along([half + s[0], half + s[1]], [half - w, half])),
    ...runs("back", half - w).map((s) => across([0, w], s)),
    ...runs("ahead", half - w).map((s) => across([side - w, side], s)),
  ].filter((p) => p.length_mm > 0);
}

/** Bearing of each stringer on a sill of the given length under the edge it ends at [mm]. */
export const stringersOnSill = (lines: StringerLines, sill_mm: number): number =>
  lines.lines.filter(([y0, y1]) => {
    const [s0, s1] = around(0, sill_mm);
    return Math.min(y1, s1) - Math.max(y0, s0) >= lines.thickness_mm / 2 - 0.05;
  }).length;
