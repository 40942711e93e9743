import type { LumberSize } from "../materials/tables.ts";
import { lying, sectionOf } from "./section.ts";
import type { SupportKind, SupportPiece } from "./types.ts";

export type Lie = "upright" | "along" | "across";

/** Which way a support piece's length runs, by its own word or by the support's form. */
export function lieOf(kind: SupportKind, piece: SupportPiece): Lie {
  if (piece.lie) return piece.lie;
  if (piece.per_height !== 0) return "upright";
  return kind.form === "sleeper" ? "across" : "along";
}

/** Saw length of a piece at a support height [mm]. */
export const supportPieceLength = (piece: SupportPiece, height_mm: number): number =>
  piece.length_mm + piece.per_height * height_mm;

/** Height of one layer of a lying piece [mm]. */
export const layerHeight = (piece: SupportPiece, sizes: readonly LumberSize[]): number =>
  lying(sectionOf(sizes, piece.size), piece.lay ?? "flat").high;

export const sillHeight = (kind: SupportKind, sizes: readonly LumberSize[]): number =>
  lying(sectionOf(sizes, kind.sill.size), kind.sill.lay).high;

/** Screw piles and floats stand where others have timber on the ground; timber lies on top of them. */
export const hasBase = (kind: SupportKind): boolean => kind.form === "screw-pile" || kind.form === "float";

/** One layer of lying pieces, from z0 to z1 over the ground [mm]. */
export interface Tier {
  readonly piece: SupportPiece;
  readonly z0: number;
  readonly z1: number;
}

/** A support cut into what lies below, what stands, what lies above, and the sill on top [mm]. */
export interface SupportStack {
  readonly tiers: readonly Tier[];
  readonly uprights: readonly SupportPiece[];
  readonly beside: readonly SupportPiece[];
  /** Uprights run from here to there; equal when there are none. */
  readonly foot_mm: number;
  readonly head_mm: number;
  readonly sill_mm: number;
}

/**
 * Stacks the lying pieces of a support: those listed before the uprights from the ground up, the others from the
 * sill down. On screw piles and floats all of them lie above these. A filling piece takes as many whole layers as the height leaves room for.
 */
export function supportStack(
  kind: SupportKind,
  height_mm: number,
  sizes: readonly LumberSize[],
): SupportStack {
  const beside = kind.pieces.filter((p) => p.beside);
  const uprights = kind.pieces.filter((p) => !p.beside && lieOf(kind, p) === "upright");
  const first = kind.pieces.findIndex((p) => uprights.includes(p));
  const lyingPieces = kind.pieces.filter((p) => !p.beside && !uprights.includes(p));
  const isBelow = (p: SupportPiece): boolean =>
    !hasBase(kind) && (first < 0 || kind.pieces.indexOf(p) < first);
  const sill_mm = height_mm - sillHeight(kind, sizes);
  const layers = (p: SupportPiece): number => (p.fill ? fillLayers(p, lyingPieces, sill_mm, sizes) : 1);
  const below = stackUp(0, lyingPieces.filter(isBelow), layers, sizes);
  const above = lyingPieces.filter((p) => !isBelow(p));
  const aboveHeight = above.reduce((sum, p) => sum + layers(p) * layerHeight(p, sizes), 0);
  const head_mm = sill_mm - aboveHeight;
  const top = stackUp(head_mm, above, layers, sizes);
  return { tiers: [...below, ...top], uprights, beside, foot_mm: below.at(-1)?.z1 ?? 0, head_mm, sill_mm };
}

function stackUp(
  from: number,
  pieces: readonly SupportPiece[],
  layers: (p: SupportPiece) => number,
  sizes: readonly LumberSize[],
): Tier[] {
  const tiers: Tier[] = [];
  let z = from;
  for (const piece of pieces)
    for (let k = layers(piece); k > 0; k--) {
      const z1 = z + layerHeight(piece, sizes);
      tiers.push({ piece, z0: z, z1 });
      z = z1;
    }
  return tiers;
}

function fillLayers(
  filling: SupportPiece,
  lyingPieces: readonly SupportPiece[],
  room_mm: number,
  sizes: readonly LumberSize[],
): number {
  const fixed = lyingPieces.filter((p) => !p.fill).reduce((sum, p) => sum + layerHeight(p, sizes), 0);
  return Math.max(0, Math.round((room_mm - fixed) / layerHeight(filling, sizes)));
}

/** How far the stack misses the sill: the uprights too short (positive) or too long (negative) for the room [mm]. */
export function supportMisfit(kind: SupportKind, height_mm: number, sizes: readonly LumberSize[]): number {
  const stack = supportStack(kind, height_mm, sizes);
  if (hasBase(kind)) return baseMisfit(kind, stack);
  const room = stack.head_mm - stack.foot_mm;
  const misfits = stack.uprights.map((p) => room - supportPieceLength(p, height_mm));
  const inGround = kind.form === "post-pair" && stack.foot_mm === 0;
  if (misfits.length === 0) return room;
  const worst = misfits.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  return inGround && worst < 0 ? 0 : worst;
}

/**
 * Screw piles must reach their depth when their heads carry the timber; floats may be lifted by water but never
 * stand lower than the ground [mm].
 */
function baseMisfit({ piles, floats }: SupportKind, { head_mm }: SupportStack): number {
  if (piles) return Math.max(0, head_mm + piles.depth_mm - piles.length_mm);
  return floats ? -Math.max(0, floats.height_mm - head_mm) : 0;
}

/** Heights a support can be built to, from the ground to the underside of the module [mm]. */
export function supportHeights(kind: SupportKind): number[] {
  const count = Math.floor((kind.height_max_mm - kind.height_min_mm) / kind.height_step_mm + 1e-6);
  return Array.from({ length: count + 1 }, (_, i) => kind.height_min_mm + i * kind.height_step_mm);
}
