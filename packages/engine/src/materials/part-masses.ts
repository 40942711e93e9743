import {
  modulePieces,
  kitLength,
  pieceVolume,
  platformHalves,
  platformPieces,
  rampPieces,
  sheetWidth,
  supportKind,
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
  /** Water that panels take up when soaked. */
  readonly soak_kg: number;
  /** What of `other_kg` has a known volume (panels, floats), and that volume. */
  readonly bulk_kg: number;
  readonly bulk_m3: number;
}

export interface PartMasses {
  readonly module: (length_m: number) => PartMass;
  /** With every unused edge open: curbs that close an edge come on top. */
  readonly platform: PartMass;
  /** What is carried by itself: the whole platform, or its right and its left half. */
  readonly platform_parts: readonly PartMass[];
  readonly support: (support: SupportKind | string, height_m: number) => PartMass;
  readonly ramp: (length_mm: number) => PartMass;
}

/**
 * Timber volume and other mass of each part of a kit.
 *
 * returns  `module(length_m)`, `platform`, `support(kind, height_m)`, `ramp(length_mm)`, each a `PartMass`
 *
 * `other_kg` is mesh by its sheared sheets, panels by their laid area, screw piles and floats by the piece. Screws and
 * clips are left out: they are below 2 % of a part. Throws `DomainError` for a length, support or size that the kit
 * or the table lacks.
 */
export function moduleMasses(kit: Kit, sizes: readonly LumberSize[]): PartMasses {
  return {
    module: (length_m) => massOf(kit, modulePieces(kit, kitLength(kit, length_m), sizes), true),
    platform: massOf(kit, platformPieces(kit, sizes), false),
    platform_parts: platformHalves(kit, sizes).map((half) => massOf(kit, half, false)),
    support: (support, height_m) => {
      const kind = typeof support === "string" ? supportKind(kit, support) : support;
      return withBase(kind, massOf(kit, supportPieces(kit, kind, height_m, sizes), false));
    },
    ramp: (length_mm) => massOf(kit, rampPieces(kit, length_mm, sizes), true),
  };
}

function massOf(kit: Kit, pieces: readonly PlacedPiece[], isBent: boolean): PartMass {
  const timber_m3 = pieces.filter((p) => p.size !== null).reduce((sum, p) => sum + pieceVolume(p), 0);
  const { deck } = kit;
  if (deck.kind === "boards" || deck.kind === "mesh")
    return { timber_m3, other_kg: meshMass(kit, pieces, isBent), soak_kg: 0, bulk_kg: 0, bulk_m3: 0 };
  const area = pieces
    .filter((p) => p.role === "deck panel")
    .reduce((sum, p) => sum + (p.x1 - p.x0) * (p.y1 - p.y0), 0);
  const bulk_kg = area * deck.mass_kg_m2;
  return {
    timber_m3,
    other_kg: bulk_kg,
    soak_kg: area * deck.soak_kg_m2,
    bulk_kg,
    bulk_m3: (area * (1 - deck.open_share) * deck.thickness_mm) / 1000,
  };
}

/** Screw piles are steel; a float's volume is that of its box. */
function withBase({ piles, floats }: SupportKind, mass: PartMass): PartMass {
  if (piles) return { ...mass, other_kg: mass.other_kg + piles.count * piles.mass_kg };
  if (!floats) return mass;
  const kg = floats.count * floats.mass_kg;
  const m3 = (floats.count * floats.length_mm * floats.width_mm * floats.height_mm) / 1e9;
  return {
    ...mass,
    other_kg: mass.other_kg + kg,
    bulk_kg: mass.bulk_kg + kg,
    bulk_m3: mass.bulk_m3 + m3,
  };
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
