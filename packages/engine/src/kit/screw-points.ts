import type { LumberSize } from "../materials/tables.ts";
import type { StringerLines } from "./frame.ts";
import { moduleStringers, platformStringers } from "./frame.ts";
import { modulePieces } from "./module-pieces.ts";
import type { PlacedPiece } from "./piece.ts";
import { platformPieces, type PlatformEdge } from "./platform-pieces.ts";
import type { Kit } from "./types.ts";

/** One screw, clip or nail with its place in the part's own frame, in millimetres. */
export interface ScrewPoint {
  /** Item of the price list. */
  readonly item: string;
  /** Role of the piece that it holds. */
  readonly holds: string;
  /** The face it is driven into. */
  readonly from: "above" | "side";
  readonly x_mm: number;
  readonly y_mm: number;
  readonly z_mm: number;
}

/** A screw stands this far from the end of a curb, a panel or a mesh edge, where there is room [mm]; common practice, no source. */
const END_MM = 40;
/** Screws through both middle stringers at each row of cross pieces, where a platform is joined on the spot; a decision of this project. */
export const JOIN_SCREWS_PER_ROW = 2;

/** Screws that hold one curb down: one at each end and no farther apart than the spacing. */
export const curbScrews = (length_mm: number, spacing_mm: number): number =>
  Math.ceil(length_mm / spacing_mm - 1e-6) + 1;

/** Every screw and clip of one module, at its place: `moduleCounts` counts these very points. */
export function moduleScrews(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): ScrewPoint[] {
  const pieces = modulePieces(kit, length_mm, sizes);
  const { screw, screws_per_end } = kit.cross_pieces;
  return partScrews(kit, pieces, moduleStringers(kit, sizes), screw, screws_per_end);
}

/** Every screw and clip of one platform; `closed` as in `platformPieces`. Those that join two halves hold "halves". */
export function platformScrews(
  kit: Kit,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[] = [],
): ScrewPoint[] {
  const pieces = platformPieces(kit, sizes, closed);
  const { screw, screws_per_end } = kit.platform;
  const lines = platformStringers(kit, sizes);
  return [...partScrews(kit, pieces, lines, screw, screws_per_end), ...joinScrews(kit, pieces, lines)];
}

/** Frame, deck and curb screws of a part made like a module. */
export function partScrews(
  kit: Kit,
  pieces: readonly PlacedPiece[],
  lines: StringerLines,
  screw: string,
  perEnd: number,
): ScrewPoint[] {
  return pieces.flatMap((p) => {
    if (p.role === "cross piece" || p.role === "catch board") return endScrews(p, screw, perEnd, lines);
    if (p.role === "curb") return curbPoints(kit, p);
    return deckPoints(kit, p, lines);
  });
}

const mm = (m: number): number => Math.round(m * 1e5) / 100;
const middle = (a: number, b: number): number => mm((a + b) / 2);

/** Places of `count` screws spread evenly from one end to the other, `END_MM` or a quarter in from either [mm]. */
function along(from_m: number, to_m: number, count: number): number[] {
  const [a, b] = [mm(from_m), mm(to_m)];
  if (count === 1) return [(a + b) / 2];
  const inset = Math.min(END_MM, (b - a) / 4);
  return Array.from({ length: count }, (_, i) => a + inset + ((b - a - 2 * inset) * i) / (count - 1));
}

/** Both ends of a piece that fits between stringers, through the stringer's far face, spread over the piece's end. */
function endScrews(p: PlacedPiece, item: string, perEnd: number, { thickness_mm: t }: StringerLines) {
  const isFlat = p.x1 - p.x0 > p.z1 - p.z0;
  const spread = isFlat ? along(p.x0, p.x1, perEnd) : along(p.z0, p.z1, perEnd);
  return [mm(p.y0) - t, mm(p.y1) + t].flatMap((y_mm) =>
    spread.map((at): ScrewPoint => {
      const x_mm = isFlat ? at : middle(p.x0, p.x1);
      return { item, holds: p.role, from: "side", x_mm, y_mm, z_mm: isFlat ? middle(p.z0, p.z1) : at };
    }),
  );
}

function curbPoints(kit: Kit, p: PlacedPiece): ScrewPoint[] {
  const { curb } = kit;
  if (!curb) return [];
  const count = curbScrews(p.length_mm, curb.screw_spacing_mm);
  const isAlong = p.x1 - p.x0 > p.y1 - p.y0;
  return (isAlong ? along(p.x0, p.x1, count) : along(p.y0, p.y1, count)).map((at) => ({
    item: curb.screw,
    holds: "curb",
    from: "above",
    x_mm: isAlong ? at : middle(p.x0, p.x1),
    y_mm: isAlong ? middle(p.y0, p.y1) : at,
    z_mm: mm(p.z1),
  }));
}

function deckPoints(kit: Kit, p: PlacedPiece, lines: StringerLines): ScrewPoint[] {
  const { deck } = kit;
  if (deck.kind === "boards" && p.role === "deck board")
    return bearings(p, lines).flatMap((y_mm) =>
      along(p.x0, p.x1, deck.screws_per_bearing).map((x_mm) => above(deck.screw, p, x_mm, y_mm)),
    );
  if (deck.kind === "mesh" && p.role === "mesh panel")
    return edgePoints(deck.clip, deck.clips_per_panel, p, lines);
  if (p.role !== "deck panel" || deck.kind === "boards" || deck.kind === "mesh") return [];
  return edgePoints(deck.fastener, deck.fasteners_per_panel, p, lines);
}

const above = (item: string, p: PlacedPiece, x_mm: number, y_mm: number): ScrewPoint => ({
  item,
  holds: p.role,
  from: "above",
  x_mm,
  y_mm,
  z_mm: mm(p.z1),
});

/** Middles of the stringers that a piece lies on [mm]. */
const bearings = (p: PlacedPiece, { lines }: StringerLines): number[] =>
  lines.map(([a, b]) => (a + b) / 2).filter((y) => y > mm(p.y0) - 0.05 && y < mm(p.y1) + 0.05);

/** Fasteners of a sheet by turns on its two long edges, over the outermost stringers that it lies on. */
function edgePoints(item: string, count: number, p: PlacedPiece, lines: StringerLines): ScrewPoint[] {
  const own = bearings(p, lines);
  const inset = Math.min(END_MM / 2, mm(p.y1 - p.y0) / 4);
  const right = Math.max(own[0] ?? -Infinity, mm(p.y0) + inset);
  const left = Math.min(own.at(-1) ?? Infinity, mm(p.y1) - inset);
  const half = Math.ceil(count / 2);
  return [
    ...along(p.x0, p.x1, half).map((x) => above(item, p, x, left)),
    ...along(p.x0, p.x1, count - half).map((x) => above(item, p, x, right)),
  ].slice(0, count);
}

/** Screws that join the two middle stringers of a platform in two pieces, at every row of cross pieces. */
function joinScrews(kit: Kit, pieces: readonly PlacedPiece[], lines: StringerLines): ScrewPoint[] {
  if (kit.platform.pieces === 1) return [];
  const rows = new Set(pieces.filter((p) => p.role === "cross piece").map((p) => middle(p.x0, p.x1)));
  const heights = along(0, lines.depth_mm / 1000, JOIN_SCREWS_PER_ROW);
  return [...rows].flatMap((x_mm) =>
    heights.map((z_mm): ScrewPoint => ({
      item: kit.platform.screw,
      holds: "halves",
      from: "side",
      x_mm,
      y_mm: lines.thickness_mm,
      z_mm,
    })),
  );
}
