import { around, place, type PlacedPiece } from "./piece.ts";
import type { ScrewPiles, SupportKind } from "./types.ts";

/** Ground covered by one pile's shaft [mm2]: the helix lies below the roots and the surface. */
export const shaftArea = (piles: ScrewPiles): number => (Math.PI / 4) * piles.shaft_mm ** 2;

/**
 * Screw piles or floats of a support, one on each of its feet, their tops at `head_mm` over the ground.
 *
 * A pile is as long as bought, so on a low support it goes deeper than the recipe's depth. Its box is the shaft; the
 * helices are drawn by `supportDrawing`. A float's box lies on the ground when the support is as low as it goes.
 */
export function basePieces(kind: SupportKind, head_mm: number): PlacedPiece[] {
  const { piles, floats, feet } = kind;
  if (kind.form === "screw-pile" && piles)
    return feet
      .slice(0, piles.count)
      .map((f) =>
        place(
          "screw pile",
          null,
          piles.length_mm,
          around(0, piles.shaft_mm),
          around(f.offset_across_mm, piles.shaft_mm),
          [head_mm - piles.length_mm, head_mm],
        ),
      );
  if (kind.form !== "float" || !floats) return [];
  return feet
    .slice(0, floats.count)
    .map((f) =>
      place("float", null, floats.length_mm, around(0, f.along_mm), around(f.offset_across_mm, f.across_mm), [
        head_mm - floats.height_mm,
        head_mm,
      ]),
    );
}

/** Depth of a pile's lowest helix below ground at this head height, never less than the recipe's [mm]. */
export const pileDepth = (piles: ScrewPiles, head_mm: number): number =>
  Math.max(piles.depth_mm, piles.length_mm - head_mm);
