import type { DimensionChain, DrawnPiece, PartDrawing } from "@causey/engine/kit";
import { boxShape, disc, stroked, words, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { chainAcross, heightMark, helper } from "./dimension.ts";
import type { PieceMarks } from "./piece-list.ts";
import { partLength } from "./show.ts";

/** The rectangle around the pieces of a view [mm of the part]. */
export interface Bounds {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

/** Where a view stands: its upper left corner on the sheet, and millimetres of the sheet for one of the part. */
export interface ViewPlace {
  readonly x: number;
  readonly y: number;
  readonly per: number;
}

export const boundsOf = (pieces: readonly DrawnPiece[]): Bounds => ({
  u0: Math.min(...pieces.map((p) => p.u0)),
  u1: Math.max(...pieces.map((p) => p.u1)),
  v0: Math.min(...pieces.map((p) => p.v0)),
  v1: Math.max(...pieces.map((p) => p.v1)),
});

interface View {
  readonly kind: "deck" | "frame" | "side" | "end";
  readonly pieces: readonly DrawnPiece[];
  readonly bounds: Bounds;
}

const ROW = 6.4;

/** Rows of lengths over the plan: running boards and sheets are told in words instead. */
const alongOf = (drawing: PartDrawing): readonly DimensionChain[] =>
  drawing.chains.filter((c) => c.axis === "along" && c.id !== "boards");

/** Room that the rows of lengths over the first view take [mm]. */
export const chainRoom = (drawing: PartDrawing): number => alongOf(drawing).length * ROW + 2;

/** Pieces, marks and screws of one view. */
export function viewShapes(drawing: PartDrawing, view: View, at: ViewPlace, marks: PieceMarks): Shape[] {
  const place = placeOf(view.bounds, at);
  const outlines = [...view.pieces]
    .toSorted((p, q) => orderOf(p.role) - orderOf(q.role))
    .map((p) => {
      const [x, y] = place(p.u0, p.v1);
      return boxShape(
        { x, y, width: (p.u1 - p.u0) * at.per, height: (p.v1 - p.v0) * at.per },
        { stroke: { ink: "ink", width: p.role === "stringer" ? 0.28 : 0.18 }, ...fillOf(view.kind, p.role) },
      );
    });
  return [...outlines, ...screwShapes(drawing, view.kind, place), ...markShapes(view, place, at, marks)];
}

const placeOf =
  (b: Bounds, { x, y, per }: ViewPlace) =>
  (u: number, v: number): Point => [x + (u - b.u0) * per, y + (b.v1 - v) * per];

/** In plan the upper piece hides the lower; from the side and the end all outlines show. */
const fillOf = (kind: View["kind"], role: string): { readonly fill?: "white" | "pale-rule" } =>
  kind === "deck" || kind === "frame"
    ? { fill: role === "stringer" || role === "curb" ? "pale-rule" : "white" }
    : {};

/** Stringers and curbs are drawn last, so that their lines stay whole. */
const orderOf = (role: string): number => (role === "stringer" ? 2 : role === "curb" ? 1 : 0);

/** Screws driven from above as dots on the deck, those from the side as short lines on the frame. */
function screwShapes(
  drawing: PartDrawing,
  kind: View["kind"],
  place: (u: number, v: number) => Point,
): Shape[] {
  if (kind !== "deck" && kind !== "frame") return [];
  return drawing.screws
    .filter((s) => (s.from === "above") === (kind === "deck"))
    .map((s): Shape => {
      const [x, y] = place(s.x_mm, s.y_mm);
      if (s.from === "above") return disc([x, y], 0.32, { fill: "ink" });
      return stroked(
        [
          [x, y - 1],
          [x, y + 1],
        ],
        { ink: "ink", width: 0.35 },
      );
    });
}

/** The mark of every frame piece in plan, where the piece is wide enough for it; of a deck only the first. */
function markShapes(
  view: View,
  place: (u: number, v: number) => Point,
  at: ViewPlace,
  marks: PieceMarks,
): Shape[] {
  if (view.kind !== "frame" && view.kind !== "deck") return [];
  const seen = new Set<string>();
  return view.pieces.flatMap((p): Shape[] => {
    const mark = marks.of(p);
    if (mark === null || (view.kind === "deck" && seen.has(mark))) return [];
    seen.add(mark);
    const [x, y] = place((p.u0 + p.u1) / 2, (p.v0 + p.v1) / 2);
    const isThin = Math.min(p.u1 - p.u0, p.v1 - p.v0) * at.per < 2.2;
    const isAlong = p.u1 - p.u0 > p.v1 - p.v0;
    const off: Point = !isThin
      ? [0, 0]
      : isAlong
        ? [0, -1.6]
        : [x > at.x + 6 && p.u1 >= view.bounds.u1 - 0.1 ? -2 : 2, 0];
    return [
      words(mark, [x + off[0], y + off[1] + 0.75], {
        size: 2.1,
        weight: "semibold",
        anchor: "middle",
        halo: true,
      }),
    ];
  });
}

/** Lengths along over the first view, the longest on top. */
export function alongChains(
  context: PaperContext,
  drawing: PartDrawing,
  bounds: Bounds,
  at: ViewPlace,
): Shape[] {
  return [...alongOf(drawing)]
    .toSorted((a, b) => b.at_mm.length - a.at_mm.length)
    .flatMap((chain, i) => {
      const y = at.y - 3 - i * ROW;
      const xs = chain.at_mm.map((mm) => at.x + (mm - bounds.u0) * at.per);
      return [
        ...(i === 0 ? xs.map((x) => helper([x, at.y - 0.5], [x, y])) : []),
        ...lengths(context, chain, xs, y),
        words(chain.title, [xs.at(-1)! + 2, y + 0.6], { size: 1.9, ink: "second" }),
      ];
    });
}

/** Lengths across under the end view. */
export function acrossChains(
  context: PaperContext,
  drawing: PartDrawing,
  bounds: Bounds,
  at: ViewPlace,
): Shape[] {
  const foot = at.y + (bounds.v1 - bounds.v0) * at.per;
  return drawing.chains
    .filter((c) => c.axis === "across" && c.id !== "halves")
    .flatMap((chain, i) => {
      const y = foot + 6 + i * ROW;
      // The end is seen with the left of travel on its left, so places run the other way.
      const xs = [...chain.at_mm].reverse().map((mm) => at.x + (-mm - bounds.u0) * at.per);
      return [
        ...lengths(context, { ...chain, at_mm: [...chain.at_mm].reverse().map((mm) => -mm) }, xs, y),
        words(chain.title, [xs.at(-1)! + 2, y + 0.6], { size: 1.9, ink: "second" }),
      ];
    });
}

/** Lengths between neighbours; those too short to be told apart on the sheet are left to the piece list. */
function lengths({ plan }: PaperContext, chain: DimensionChain, xs: readonly number[], y: number): Shape[] {
  return chainAcross(xs, y, (i) => {
    const isTooShort = xs[i + 1]! - xs[i]! < 2.4;
    return isTooShort ? "" : partLength((chain.at_mm[i + 1]! - chain.at_mm[i]!) / 1000, plan);
  });
}

/** The whole height beside the end view, and the heights of the stringer and deck where they can be told apart. */
export function heightChain(
  { plan }: PaperContext,
  drawing: PartDrawing,
  bounds: Bounds,
  at: ViewPlace,
): Shape[] {
  const chain = drawing.chains.find((c) => c.axis === "up");
  if (!chain || chain.at_mm.length < 2) return [];
  const yOf = (mm: number): number => at.y + (bounds.v1 - mm) * at.per;
  const [low, high] = [chain.at_mm[0]!, chain.at_mm.at(-1)!];
  const right = at.x + (bounds.u1 - bounds.u0) * at.per;
  return heightMark(right + 5, yOf(low), yOf(high), partLength((high - low) / 1000, plan));
}
