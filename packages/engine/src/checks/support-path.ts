import { supportPieces, type PlacedPiece } from "../kit/index.ts";
import type { LumberSize } from "../materials/index.ts";
import type { Kit, SupportKind } from "../kit/index.ts";
import { M_PER_IN } from "../units/index.ts";
import type { Carrier } from "./support-beam.ts";

/** A piece with what it lies or stands on. */
export interface Borne {
  readonly piece: PlacedPiece;
  readonly on: readonly PlacedPiece[];
}

/** The way of the load through one support: the sill, what carries it, and the uprights below. */
export interface LoadPath {
  readonly sill: Borne;
  readonly carriers: readonly Borne[];
  readonly uprights: readonly Borne[];
}

const TOUCH = 0.6e-3;

const meets = (a0: number, a1: number, b0: number, b1: number): boolean =>
  Math.min(a1, b1) - Math.max(a0, b0) > TOUCH;

/** Pieces whose top touches the underside of another. */
const under = (piece: PlacedPiece, all: readonly PlacedPiece[]): PlacedPiece[] =>
  all.filter(
    (p) =>
      p !== piece &&
      Math.abs(p.z1 - piece.z0) < TOUCH &&
      meets(p.x0, p.x1, piece.x0, piece.x1) &&
      meets(p.y0, p.y1, piece.y0, piece.y1),
  );

/** A sawn piece that stands up: taller than it is long either way. */
const isUpright = (p: PlacedPiece): boolean =>
  p.size !== null && p.z1 - p.z0 > 0 && Math.abs(p.z1 - p.z0 - p.length_mm / 1000) < TOUCH;

/** Follows the load of a support from its sill down, by which boxes touch. Stakes carry nothing. */
export function loadPath(
  kit: Kit,
  kind: SupportKind,
  height_m: number,
  sizes: readonly LumberSize[],
): LoadPath {
  const all = supportPieces(kit, kind, height_m, sizes).filter((p) => p.role !== "stake");
  const sill = all.find((p) => p.role === "sill")!;
  const borne = (piece: PlacedPiece): Borne => ({ piece, on: under(piece, all) });
  const first = borne(sill);
  const below = first.on.flatMap((p) => (isUpright(p) ? [p] : under(p, all).filter(isUpright)));
  return {
    sill: first,
    carriers: first.on.filter((p) => !isUpright(p)).map(borne),
    uprights: [...new Set(below)].map(borne),
  };
}

/** How a lying piece lies: by its height against its size. */
export function layOf(piece: PlacedPiece, sizes: readonly LumberSize[]): "flat" | "edge" {
  const size = sizes.find((s) => s.id === piece.size);
  return size && piece.z1 - piece.z0 > size.thickness_in * M_PER_IN + TOUCH ? "edge" : "flat";
}

/** What a piece rests on, as stretches along its own length, those at one place once. */
export function carriersOf(pieces: readonly PlacedPiece[], along: "x" | "y", within: PlacedPiece): Carrier[] {
  const seen = new Map<string, Carrier>();
  const [from, to] = along === "y" ? [within.y0, within.y1] : [within.x0, within.x1];
  for (const p of pieces) {
    const [a, b] = along === "y" ? [p.y0, p.y1] : [p.x0, p.x1];
    const stretch: Carrier = [Math.max(a, from), Math.min(b, to)];
    seen.set(stretch.map((v) => v.toFixed(4)).join(), stretch);
  }
  return [...seen.values()].sort((a, b) => a[0] - b[0]);
}
