import type { LumberSize } from "../materials/tables.ts";
import { sameYard } from "../materials/timber-rows.ts";
import { DomainError } from "../units/index.ts";
import { deckThickness } from "./deck.ts";
import { moduleStringers } from "./frame.ts";
import { crossPlaces, sameLength } from "./cross-places.ts";
import { modulePieces } from "./module-pieces.ts";
import { sheetRun } from "./panels.ts";
import { around, place, type PlacedPiece } from "./piece.ts";
import { sheetOf } from "./platform-sheets.ts";
import { partScrews, type ScrewPoint } from "./screw-points.ts";
import { lying, sectionOf } from "./section.ts";
import type { CrossPieceException, Kit, SizeId } from "./types.ts";

/** Cleats across a closed deck, centre to centre [mm]; common practice (about a step), no source. */
export const CLEAT_SPACING_MM = 305;
/** Screws of one cleat over each stringer; common practice, no source. */
const CLEAT_SCREWS = 1;

/** The kit with modules as long as its ramps, plain at both ends: a ramp is a module that lies on the slope. */
export function rampKit(kit: Kit, sizes: readonly LumberSize[]): Kit {
  if (!kit.ramp) throw new DomainError("kit-without-ramp", { kit: kit.id });
  const plain: Kit = { ...kit, end: { kind: "plain" }, lengths_mm: kit.ramp.lengths_mm };
  const exceptions = kit.cross_pieces.exceptions.filter((e) => e.length_mm === undefined);
  const joints = kit.ramp.lengths_mm.flatMap((l) => jointRows(plain, l, sizes));
  return { ...plain, cross_pieces: { ...kit.cross_pieces, exceptions: [...exceptions, ...joints] } };
}

/** A row of the kit's widest cross piece under every joint of two sheets. */
function jointRows(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): CrossPieceException[] {
  if (kit.deck.kind === "boards") return [];
  const sheet = sheetOf(kit.deck);
  const run = sheetRun(sheet, length_mm);
  const used = [kit.cross_pieces.size, ...kit.cross_pieces.exceptions.flatMap((e) => e.size ?? [])];
  const reach = (id: SizeId): number => lying(sectionOf(sizes, id), kit.cross_pieces.lay).along;
  const size = used.reduce((a, b) => (reach(b) > reach(a) ? b : a));
  return Array.from({ length: run.count - 1 }, (_, k) => ({
    length_mm,
    at_mm: (k + 1) * (run.length_mm + sheet.gap_mm) - sheet.gap_mm / 2,
    size,
  }));
}

/** Mesh and open gratings grip by themselves; closed decks get cleats. */
export const hasCleats = (kit: Kit): boolean =>
  kit.deck.kind === "boards" || (kit.deck.kind !== "mesh" && kit.deck.open_share < 0.2);

/** The thinnest lumber that the yard of the kit's stringers sells, and the narrowest of these. */
function cleatSize(kit: Kit, sizes: readonly LumberSize[]): SizeId {
  const own = sizes.find((s) => s.id === kit.stringers.size);
  const yard = sizes.filter((s) => !own || sameYard(s, own));
  return yard.reduce((a, b) =>
    b.thickness_in < a.thickness_in || (b.thickness_in === a.thickness_in && b.width_in < a.width_in) ? b : a,
  ).id;
}

/**
 * Every piece of one ramp as a box in the ramp's own frame, which lies on the slope: x up along it, z square to it.
 *
 * length_mm  one of `kit.ramp.lengths_mm`, measured on the slope
 *
 * The stringers are drawn square at both ends; the lower one is sawn to the ground on the spot. Throws `DomainError`
 * for a kit without a ramp, another length, or an unknown size.
 */
export function rampPieces(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): PlacedPiece[] {
  const { asModule, length } = rampOf(kit, length_mm, sizes);
  return [...modulePieces(asModule, length, sizes), ...cleats(kit, length, sizes)];
}

function rampOf(kit: Kit, length_mm: number, sizes: readonly LumberSize[]) {
  const asModule = rampKit(kit, sizes);
  const length = asModule.lengths_mm.find((l) => sameLength(l, length_mm));
  if (length === undefined)
    throw new DomainError("not-a-ramp-length", { length_mm, lengths_mm: asModule.lengths_mm });
  return { asModule, length };
}

function cleats(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): PlacedPiece[] {
  if (!hasCleats(kit)) return [];
  const size = cleatSize(kit, sizes);
  const { thickness_mm, width_mm } = sectionOf(sizes, size);
  const from = moduleStringers(kit, sizes).depth_mm + deckThickness(kit.deck, sizes);
  const curb = kit.curb ? sectionOf(sizes, kit.curb.size).width_mm : 0;
  const wide = kit.deck.width_mm - 2 * curb;
  const count = Math.max(1, Math.floor(length_mm / CLEAT_SPACING_MM));
  const rest = (length_mm - (count - 1) * CLEAT_SPACING_MM) / 2;
  return Array.from({ length: count }, (_, i) =>
    place("cleat", size, wide, around(rest + i * CLEAT_SPACING_MM, width_mm), around(0, wide), [
      from,
      from + thickness_mm,
    ]),
  );
}

/** Every screw and clip of one ramp, at its place; cleats are screwed into the stringers. */
export function rampScrews(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): ScrewPoint[] {
  const { asModule, length } = rampOf(kit, length_mm, sizes);
  const lines = moduleStringers(kit, sizes);
  const { screw, screws_per_end } = kit.cross_pieces;
  const held = cleats(kit, length, sizes).flatMap((p) =>
    lines.lines.flatMap(([a, b]) =>
      Array.from({ length: CLEAT_SCREWS }, (): ScrewPoint => ({
        item: screw,
        holds: "cleat",
        from: "above",
        x_mm: ((p.x0 + p.x1) / 2) * 1000,
        y_mm: (a + b) / 2,
        z_mm: p.z1 * 1000,
      })),
    ),
  );
  return [
    ...partScrews(asModule, modulePieces(asModule, length, sizes), lines, screw, screws_per_end),
    ...held,
  ];
}

/** Cross pieces of a ramp: where they lie along it [mm]. */
export const rampCrossPlaces = (kit: Kit, length_mm: number, sizes: readonly LumberSize[]) =>
  crossPlaces(rampKit(kit, sizes), length_mm, sizes);

/** Highest rise that a ramp of this length may climb at the kit's steepest grade [mm]. */
export const rampRise = (length_mm: number, max_grade: number): number =>
  (length_mm * max_grade) / Math.hypot(1, max_grade);
