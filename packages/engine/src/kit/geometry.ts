import type { LumberSize } from "../materials/tables.ts";
import { DomainError, millimetres, type Qty } from "../units/index.ts";
import { clearWidth, deckPattern, deckThickness } from "./deck.ts";
import { moduleStringers, platformStringers } from "./frame.ts";
import { latticeStep } from "./lattice.ts";
import { lying, sectionOf } from "./section.ts";
import { supportKind } from "./support-pieces.ts";
import type { Kit, SupportKind } from "./types.ts";

/** What a layout, a check or a drawing must know of a kit, in metres. */
export interface KitGeometry {
  /** Joint to joint over one module: body length plus the joint gap. */
  readonly pitch_m: (length_mm: number) => Qty<"m">;
  /** The longest step of which every pitch and half the platform's is a whole multiple. */
  readonly lattice_m: Qty<"m">;
  readonly joint_gap_m: Qty<"m">;
  readonly stringer_depth_m: Qty<"m">;
  readonly deck_thickness_m: Qty<"m">;
  /** Underside of the stringer to the top of the deck. */
  readonly module_depth_m: Qty<"m">;
  /** Widest outline across: deck, curb or stringers. */
  readonly deck_width_m: Qty<"m">;
  /** Between curbs, upturned edges or deck edges: where feet and wheels can go. */
  readonly clear_width_m: Qty<"m">;
  readonly platform_side_m: Qty<"m">;
  /** Joint to joint straight across a platform: side plus the joint gap. */
  readonly platform_pitch_m: Qty<"m">;
  readonly platform_depth_m: Qty<"m">;
  /** Length of a module end on the sill of this support: what is left of the sill beside half the gap. */
  readonly seat_m: (support: SupportKind | string) => Qty<"m">;
  /** Actual gap between deck boards, by body length; null for mesh. */
  readonly board_gap_m: (length_mm: number) => Qty<"m"> | null;
}

/**
 * Turns a kit's recipe into the measures that others build on.
 *
 * sizes    actual lumber sizes
 * returns  lengths in metres
 *
 * Throws `DomainError` when the table lacks a size of the kit, or when a length is no number: ask `validateKit` first.
 */
export function kitGeometry(kit: Kit, sizes: readonly LumberSize[]): KitGeometry {
  const stringers = moduleStringers(kit, sizes);
  const deck = deckThickness(kit.deck, sizes);
  const { deck: recipe, joint_gap_mm: gap, platform } = kit;
  return {
    pitch_m: (length_mm) => millimetres(length_mm + gap),
    lattice_m: millimetres(latticeStep(kit)),
    joint_gap_m: millimetres(gap),
    stringer_depth_m: millimetres(stringers.depth_mm),
    deck_thickness_m: millimetres(deck),
    module_depth_m: millimetres(stringers.depth_mm + deck),
    deck_width_m: millimetres(Math.max(recipe.width_mm, kit.stringers.overall_mm)),
    clear_width_m: millimetres(clearWidth(kit, sizes)),
    platform_side_m: millimetres(platform.side_mm),
    platform_pitch_m: millimetres(platform.side_mm + gap),
    platform_depth_m: millimetres(platformStringers(kit, sizes).depth_mm + deck),
    seat_m: (support) => {
      const { sill } = typeof support === "string" ? supportKind(kit, support) : support;
      return millimetres((lying(sectionOf(sizes, sill.size), sill.lay).along - gap) / 2);
    },
    board_gap_m: (length_mm) =>
      recipe.kind === "boards" ? millimetres(deckPattern(recipe, length_mm, sizes).gap_mm) : null,
  };
}

/** The kit's own length nearest to a length in metres [mm]. Throws `DomainError` when none is within 1 mm. */
export function kitLength(kit: Kit, length_m: number): number {
  const found = kit.lengths_mm.find((l) => Math.abs(l - length_m * 1000) <= 1);
  if (found === undefined)
    throw new DomainError("not-a-kit-length", { length_m, lengths_mm: kit.lengths_mm });
  return found;
}
