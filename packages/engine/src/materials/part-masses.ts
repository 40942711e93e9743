import {
  modulePieces,
  kitLength,
  pieceVolume,
  platformPieces,
  sheetWidth,
  supportPieces,
  type Kit,
  type PlacedPiece,
  type SupportKind,
} from "../kit/index.ts";
import type { LumberSize } from "./tables.ts";

/** Timber by volume, since its density depends on species and moisture; the rest by mass. */
export interface PartMass {
  readonly timber_m3: number;
  readonly other_kg: number;
}

export interface PartMasses {
  readonly module: (length_m: number) => PartMass;
  /** With every unused edge open: curbs that close an edge come on top. */
  readonly platform: PartMass;
  readonly support: (support: SupportKind | string, height_m: number) => PartMass;
}

/**
 * Timber volume and other mass of each part of a kit.
 *
 * returns  `module(length_m)`, `platform`, `support(kind, height_m)`, each { timber_m3, other_kg }
 *
 * `other_kg` is the mesh, by its sheared sheets. Screws and clips are left out: they are below 2 % of a part.
 * Throws `DomainError` for a length, support or size that the kit or the table lacks.
 */
export function moduleMasses(kit: Kit, sizes: readonly LumberSize[]): PartMasses {
  return {
    module: (length_m) => massOf(kit, modulePieces(kit, kitLength(kit, length_m), sizes), true),
    platform: massOf(kit, platformPieces(kit, sizes), false),
    support: (support, height_m) => massOf(kit, supportPieces(kit, support, height_m, sizes), false),
  };
}

function massOf(kit: Kit, pieces: readonly PlacedPiece[], isBent: boolean): PartMass {
  const timber_m3 = pieces.filter((p) => p.size !== null).reduce((sum, p) => sum + pieceVolume(p), 0);
  return { timber_m3, other_kg: meshMass(kit, pieces, isBent) };
}

/** Mesh of a module is weighed with its upturns, flat mesh of a platform as it lies [kg]. */
function meshMass(kit: Kit, pieces: readonly PlacedPiece[], isBent: boolean): number {
  const { deck } = kit;
  if (deck.kind !== "mesh") return 0;
  const width = (p: PlacedPiece): number => (isBent ? sheetWidth(deck) / 1000 : p.y1 - p.y0);
  return pieces
    .filter((p) => p.role === "mesh panel")
    .reduce((sum, p) => sum + (p.x1 - p.x0) * width(p) * deck.mass_kg_m2, 0);
}
