import type { LumberSize } from "../materials/tables.ts";
import { pileDepth } from "./base-pieces.ts";
import { crossPlaces } from "./cross-places.ts";
import { deckThickness } from "./deck.ts";
import { moduleStringers, platformStringers, type StringerLines } from "./frame.ts";
import { modulePieces } from "./module-pieces.ts";
import type { PlacedPiece } from "./piece.ts";
import { platformPieces, type PlatformEdge } from "./platform-pieces.ts";
import { rampCrossPlaces, rampPieces, rampScrews } from "./ramp-pieces.ts";
import { moduleScrews, platformScrews, type ScrewPoint } from "./screw-points.ts";
import { supportKind, supportPieces } from "./support-pieces.ts";
import type { Kit, SizeId, SupportKind } from "./types.ts";

/** One piece in one view, in millimetres of the view: u to the right, v up. */
export interface DrawnPiece {
  readonly role: string;
  /** Null for what is not sawn from lumber. */
  readonly size: SizeId | null;
  readonly length_mm: number;
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

/** A row of measures along one axis of the part, from its own origin: the first and last bound it. */
export interface DimensionChain {
  readonly id: string;
  readonly title: string;
  readonly axis: "along" | "across" | "up";
  /** Places in rising order [mm]; a sheet draws the lengths between neighbours. */
  readonly at_mm: readonly number[];
}

/**
 * A part as plain data for a sheet or a page. Plan: along to the right, left of travel up. Side: along to the right,
 * seen from the right of travel. End: left of travel on the left, as one walks towards it. Millimetres throughout.
 */
export interface PartDrawing {
  readonly name: string;
  readonly plan: readonly DrawnPiece[];
  readonly side: readonly DrawnPiece[];
  readonly end: readonly DrawnPiece[];
  readonly chains: readonly DimensionChain[];
  /** Every screw and clip at its place, as many as the part's counts. Empty for a support, whose recipe only counts them. */
  readonly screws: readonly ScrewPoint[];
}

/**
 * Drawing of one module.
 *
 * length_mm  body length, one of the kit's  [mm]
 *
 * Throws `DomainError` for a size that the table lacks.
 */
export function moduleDrawing(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): PartDrawing {
  const pieces = modulePieces(kit, length_mm, sizes);
  const rows = crossPlaces(kit, length_mm, sizes).map(({ x }) => x);
  return {
    ...viewsOf(`Module ${round(length_mm)} mm`, pieces),
    chains: bodyChains(kit, length_mm, pieces, rows, moduleStringers(kit, sizes), sizes),
    screws: moduleScrews(kit, length_mm, sizes),
  };
}

/** Drawing of one ramp on its slope: x runs up the slope. Throws `DomainError` for a kit without that ramp. */
export function rampDrawing(kit: Kit, length_mm: number, sizes: readonly LumberSize[]): PartDrawing {
  const pieces = rampPieces(kit, length_mm, sizes);
  const rows = rampCrossPlaces(kit, length_mm, sizes).map(({ x }) => x);
  const cleats = pieces.filter((p) => p.role === "cleat").map((p) => ((p.x0 + p.x1) / 2) * 1000);
  return {
    ...viewsOf(`Ramp ${round(length_mm)} mm`, pieces),
    chains: [
      ...bodyChains(kit, length_mm, pieces, rows, moduleStringers(kit, sizes), sizes),
      ...chain("cleats", "Cleats, centres", "along", [0, ...cleats, length_mm], cleats.length > 0),
    ],
    screws: rampScrews(kit, length_mm, sizes),
  };
}

/** Drawing of one platform; `closed` as in `platformPieces`. The middle line of one in two pieces is a chain of its own. */
export function platformDrawing(
  kit: Kit,
  sizes: readonly LumberSize[],
  closed: readonly PlatformEdge[] = [],
): PartDrawing {
  const pieces = platformPieces(kit, sizes, closed);
  const { side_mm, pieces: halves } = kit.platform;
  const rows = pieces.filter((p) => p.role === "cross piece").map((p) => [p.x0 * 1000, p.x1 * 1000] as const);
  return {
    ...viewsOf(`Platform ${round(side_mm)} mm`, pieces),
    chains: [
      ...bodyChains(kit, side_mm, pieces, rows, platformStringers(kit, sizes), sizes),
      ...chain("halves", "Halves", "across", [-side_mm / 2, 0, side_mm / 2], halves === 2),
    ],
    screws: platformScrews(kit, sizes, closed),
  };
}

/**
 * Drawing of one support at a height [m]; a screw pile's helices are drawn where they turn into the ground.
 *
 * support  id of the kind, or the kind itself, as under a platform's edge
 */
export function supportDrawing(
  kit: Kit,
  support: SupportKind | string,
  height_m: number,
  sizes: readonly LumberSize[],
): PartDrawing {
  const kind = typeof support === "string" ? supportKind(kit, support) : support;
  const pieces = supportPieces(kit, kind, height_m, sizes);
  const all = [...pieces, ...helices(kind, pieces)];
  const spread = (key: "x" | "y"): number[] =>
    pieces
      .filter((p) => p.role !== "stake")
      .flatMap((p) => (key === "x" ? [p.x0, p.x1] : [p.y0, p.y1]))
      .map((v) => v * 1000);
  const ends = (v: readonly number[]): number[] => [Math.min(...v), Math.max(...v)];
  const feet = kind.feet.flatMap((f) => [
    f.offset_across_mm - f.across_mm / 2,
    f.offset_across_mm + f.across_mm / 2,
  ]);
  const heights = [0, ...pieces.filter((p) => p.role !== "stake").flatMap((p) => [p.z0, p.z1])];
  return {
    ...viewsOf(`${kind.name}, ${round(height_m * 1000)} mm`, all),
    chains: [
      ...chain("along", "Along", "along", ends(spread("x"))),
      ...chain("across", "Across", "across", ends(spread("y"))),
      ...chain("feet", "Feet", "across", feet, feet.length > 2),
      ...chain(
        "heights",
        "Heights over the ground",
        "up",
        heights.map((z) => z * 1000),
      ),
    ],
    screws: [],
  };
}

/** Helices of screw piles as plates across the shaft, three of their diameters apart from the lowest up. */
function helices(kind: SupportKind, pieces: readonly PlacedPiece[]): PlacedPiece[] {
  const { piles } = kind;
  if (!piles) return [];
  const half = piles.helix_mm / 2000;
  return pieces
    .filter((p) => p.role === "screw pile")
    .flatMap((p) =>
      Array.from({ length: piles.helices }, (_, i): PlacedPiece => {
        const z0 = -pileDepth(piles, p.z1 * 1000) / 1000 + (i * 3 * piles.helix_mm) / 1000;
        const y = (p.y0 + p.y1) / 2;
        const role = "helix";
        return {
          role,
          size: null,
          length_mm: piles.helix_mm,
          x0: -half,
          x1: half,
          y0: y - half,
          y1: y + half,
          z0,
          z1: z0 + 0.01,
        };
      }),
    );
}

const round = (mm: number): number => Math.round(mm * 10) / 10;
const mm = (m: number): number => Math.round(m * 1e5) / 100;

function viewsOf(name: string, pieces: readonly PlacedPiece[]) {
  const view = (
    u: (p: PlacedPiece) => readonly [number, number],
    v: (p: PlacedPiece) => readonly [number, number],
  ) =>
    pieces.map((p): DrawnPiece => {
      const [[u0, u1], [v0, v1]] = [u(p), v(p)];
      return {
        role: p.role,
        size: p.size,
        length_mm: p.length_mm,
        u0: mm(u0),
        u1: mm(u1),
        v0: mm(v0),
        v1: mm(v1),
      };
    });
  const [x, z] = [(p: PlacedPiece) => [p.x0, p.x1] as const, (p: PlacedPiece) => [p.z0, p.z1] as const];
  return {
    name,
    plan: view(x, (p) => [p.y0, p.y1]),
    side: view(x, z),
    end: view((p) => [-p.y1, -p.y0], z),
  };
}

/** A chain with its places sorted, each once to a hundredth of a millimetre. */
function chain(
  id: string,
  title: string,
  axis: DimensionChain["axis"],
  at: readonly number[],
  isWanted = true,
): DimensionChain[] {
  if (!isWanted) return [];
  const places = [...new Set(at.map((v) => Math.round(v * 100) / 100))].sort((a, b) => a - b);
  return [{ id, title, axis, at_mm: places }];
}

/** Chains that modules, ramps and platforms share. */
function bodyChains(
  kit: Kit,
  length_mm: number,
  pieces: readonly PlacedPiece[],
  rows: readonly (readonly [number, number])[],
  { lines, depth_mm }: StringerLines,
  sizes: readonly LumberSize[],
): DimensionChain[] {
  const edges = (role: string): number[] =>
    pieces.filter((p) => p.role === role).flatMap((p) => [p.x0 * 1000, p.x1 * 1000]);
  const caught = edges("catch board");
  const sheets = [...edges("mesh panel"), ...edges("deck panel")];
  const boards = edges("deck board");
  const across = pieces.flatMap((p) => [p.y0 * 1000, p.y1 * 1000]);
  const deck = deckThickness(kit.deck, sizes);
  const top = Math.max(...pieces.map((p) => p.z1 * 1000));
  return [
    ...chain("length", "Length of the body", "along", [0, length_mm]),
    ...chain("cross-pieces", "Cross pieces, centres", "along", [
      0,
      ...rows.map(([a, b]) => (a + b) / 2),
      length_mm,
    ]),
    ...chain("boards", "Deck boards", "along", boards, boards.length > 0),
    ...chain("sheets", "Deck panels", "along", sheets, sheets.length > 0),
    ...chain("catch-board", "Catch board", "along", [length_mm, ...caught], caught.length > 0),
    ...chain("stringers", "Stringers", "across", lines.flat()),
    ...chain("width", "Widest", "across", [Math.min(...across), Math.max(...across)]),
    ...chain("heights", "Stringer, deck and curb", "up", [0, depth_mm, depth_mm + deck, top]),
  ];
}
