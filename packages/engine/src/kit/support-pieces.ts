import type { LumberSize } from "../materials/tables.ts";
import { DomainError } from "../units/index.ts";
import { basePieces } from "./base-pieces.ts";
import { around, place, spread, type PlacedPiece, type Span } from "./piece.ts";
import { lying, sectionOf } from "./section.ts";
import { lieOf, supportPieceLength, supportStack, type SupportStack } from "./support-tiers.ts";
import type { Kit, SupportKind, SupportPiece } from "./types.ts";

/** The kind with this id. Throws `DomainError` when the kit has none. */
export function supportKind(kit: Kit, id: string): SupportKind {
  const kind = kit.supports.find((s) => s.id === id);
  if (!kind) throw new DomainError("unknown-support-kind", { support: id, kit: kit.id });
  return kind;
}

/**
 * Every piece of one support as a box in the support's own frame: x along from the middle of the joint, y across
 * (left positive), z up from the ground. The top of the sill stands at `height_m`.
 *
 * support   id of the kind, or the kind itself
 * height_m  ground to the underside of the module   [m]
 *
 * A stake is driven until its head is no higher than the sill, and deeper than its embedment where the support is
 * low. Throws `DomainError` for an unknown kind or size.
 */
export function supportPieces(
  kit: Kit,
  support: SupportKind | string,
  height_m: number,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const kind = typeof support === "string" ? supportKind(kit, support) : support;
  return piecesOf(kind, Math.round(height_m * 1e5) / 100, sizes);
}

function piecesOf(kind: SupportKind, height: number, sizes: readonly LumberSize[]): PlacedPiece[] {
  const stack = supportStack(kind, height, sizes);
  const uprights = stack.uprights.flatMap((p) => standing(kind, p, stack, height, sizes));
  const timber = [
    ...basePieces(kind, stack.head_mm),
    ...stack.tiers.flatMap(({ piece, z0, z1 }) => tierPieces(kind, piece, [z0, z1], height, sizes)),
    ...uprights,
    ...stack.beside.flatMap((p) => ties(kind, p, uprights, height, sizes)),
    sill(kind, stack.sill_mm, height, sizes),
  ];
  return [...timber, ...stakes(kind, timber, height, sizes)];
}

function sill(kind: SupportKind, from: number, height: number, sizes: readonly LumberSize[]): PlacedPiece {
  const { along } = lying(sectionOf(sizes, kind.sill.size), kind.sill.lay);
  const { size, length_mm } = kind.sill;
  return place("sill", size, length_mm, around(0, along), around(0, length_mm), [from, height]);
}

/** Reach of a support along the walk: its longest foot, or its longest lying piece along [mm]. */
const alongReach = (kind: SupportKind): number =>
  Math.max(
    0,
    ...kind.feet.map((f) => f.along_mm),
    ...kind.pieces.filter((p) => lieOf(kind, p) === "along" && !p.beside).map((p) => p.length_mm),
  );

/** Middles across for things that stand on the feet: one line on each foot, or spread over a single one [mm]. */
function acrossMiddles(kind: SupportKind, lines: number, size: number): number[] {
  const offsets = [...new Set(kind.feet.map((f) => f.offset_across_mm))];
  if (lines === offsets.length) return offsets;
  return spread(lines, Math.max(...kind.feet.map((f) => f.across_mm)) / 2, size);
}

function tierPieces(
  kind: SupportKind,
  piece: SupportPiece,
  z: Span,
  height: number,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const { along: wide } = lying(sectionOf(sizes, piece.size), piece.lay ?? "flat");
  const length = supportPieceLength(piece, height);
  if (lieOf(kind, piece) === "along")
    return acrossMiddles(kind, piece.count, wide).map((y) =>
      place(piece.name, piece.size, length, around(0, length), around(y, wide), z),
    );
  return spread(piece.count, Math.max(alongReach(kind), wide * piece.count) / 2, wide).map((x) =>
    place(piece.name, piece.size, length, around(x, wide), around(0, length), z),
  );
}

/** Uprights stand on the feet, their wide face to the side; several on one foot are spread along it. */
function standing(
  kind: SupportKind,
  piece: SupportPiece,
  stack: SupportStack,
  height: number,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const { thickness_mm, width_mm } = sectionOf(sizes, piece.size);
  const length = supportPieceLength(piece, height);
  const z: Span = [stack.head_mm - length, stack.head_mm];
  const offsets = new Set(kind.feet.map((f) => f.offset_across_mm)).size;
  const lines = offsets > 1 ? offsets : piece.count;
  const perLine = Math.max(1, Math.round(piece.count / lines));
  return acrossMiddles(kind, lines, thickness_mm).flatMap((y) =>
    spread(perLine, alongReach(kind) / 2, width_mm).map((x) =>
      place(piece.name, piece.size, length, around(x, width_mm), around(y, thickness_mm), z),
    ),
  );
}

/** Ties against the outer faces of the uprights, by turns on either side, their width upright. */
function ties(
  kind: SupportKind,
  piece: SupportPiece,
  uprights: readonly PlacedPiece[],
  height: number,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const { thickness_mm: t, width_mm: w } = sectionOf(sizes, piece.size);
  if (uprights.length === 0) return [];
  const isAcross = lieOf(kind, piece) === "across";
  const length = supportPieceLength(piece, height);
  const face = Math.max(0, ...uprights.map((p) => (isAcross ? p.x1 : p.y1))) * 1000;
  const foot = Math.min(...uprights.map((p) => p.z0)) * 1000;
  const head = Math.max(...uprights.map((p) => p.z1)) * 1000;
  const rows = Math.ceil(piece.count / 2);
  return Array.from({ length: piece.count }, (_, i) => {
    const middle = foot + ((head - foot) * (Math.floor(i / 2) + 1)) / (rows + 1);
    const side: Span = i % 2 === 0 ? [face, face + t] : [-face - t, -face];
    const run = around(0, length);
    const z = around(middle, w);
    return isAcross
      ? place(piece.name, piece.size, length, side, run, z)
      : place(piece.name, piece.size, length, run, side, z);
  });
}

/** Stakes stand against the outermost timber they reach, by turns left and right. */
function stakes(
  kind: SupportKind,
  timber: readonly PlacedPiece[],
  height: number,
  sizes: readonly LumberSize[],
): PlacedPiece[] {
  const { anchor } = kind;
  if (!anchor) return [];
  const { thickness_mm: t, width_mm: w } = sectionOf(sizes, anchor.size);
  const head = Math.min(anchor.length_mm - anchor.embedment_mm, height);
  const z: Span = [head - anchor.length_mm, head];
  const along = spread(Math.ceil(anchor.count / 2), alongReach(kind) / 2, w);
  return Array.from({ length: anchor.count }, (_, i) => {
    const x = around(along[Math.floor(i / 2)]!, w);
    const out = stakeFace(timber, x, z);
    const y: Span = i % 2 === 0 ? [out, out + t] : [-out - t, -out];
    return place("stake", anchor.size, anchor.length_mm, x, y, z);
  });
}

/** How far out the timber reaches that a stake at this place would meet [mm]; 0 when it meets none. */
const stakeFace = (timber: readonly PlacedPiece[], x: Span, z: Span): number =>
  Math.max(0, ...timber.filter((p) => meets(p, x, z)).map((p) => p.y1 * 1000));

const meets = (p: PlacedPiece, x: Span, z: Span): boolean =>
  p.x0 * 1000 < x[1] - 0.05 &&
  p.x1 * 1000 > x[0] + 0.05 &&
  p.z0 * 1000 < z[1] - 0.05 &&
  p.z1 * 1000 > z[0] + 0.05;

/** Whether every stake stands against timber of its support at this height, so that it can hold it. */
export function stakesHold(kind: SupportKind, height_mm: number, sizes: readonly LumberSize[]): boolean {
  if (!kind.anchor) return true;
  return piecesOf(kind, height_mm, sizes)
    .filter((p) => p.role === "stake")
    .every((s) => s.y0 > 1e-6 || s.y1 < -1e-6);
}
