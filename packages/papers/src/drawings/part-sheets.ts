import {
  moduleDrawing,
  platformDrawing,
  supportDrawing,
  type DimensionChain,
  type DrawnPiece,
  type PartDrawing,
} from "@causey/engine/kit";
import { roundScale, scaleBar, type Scale } from "../frame/index.ts";
import { boxShape, disc, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";
import { chainAcross } from "./dimension.ts";
import { kitLengthOf } from "./cross-section.ts";
import { partLength } from "./show.ts";

/** Drawings of every part that the layout uses: modules by length, the turning platform, supports. */
export const partSheets: Sheet = {
  id: "parts",
  title: "Parts",
  about: "Each module, platform and support with its pieces, dimensions and screw positions.",
  drafts: (context, room) =>
    drawingsOf(context).map((drawing) => partDraft(context, drawing, room.landscape)),
};

function drawingsOf({ plan, results, tables }: PaperContext): PartDrawing[] {
  const { kit } = plan;
  const { sizes } = tables;
  const lengths = [
    ...new Set(results.evaluation.modules.map((m) => kitLengthOf(kit.lengths_mm, m.length_m))),
  ];
  const supports = [...new Set(results.layout.joints.map((j) => j.support))];
  return [
    ...lengths.map((length) => moduleDrawing(kit, length, sizes)),
    ...(results.evaluation.platforms > 0 ? [platformDrawing(kit, sizes)] : []),
    ...supports.map((id) => {
      const heights = results.layout.joints.filter((j) => j.support === id).map((j) => j.support_height_m);
      return supportDrawing(kit, id, Math.max(...heights), sizes);
    }),
  ];
}

interface Bounds {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

const boundsOf = (pieces: readonly DrawnPiece[]): Bounds => ({
  u0: Math.min(...pieces.map((p) => p.u0)),
  u1: Math.max(...pieces.map((p) => p.u1)),
  v0: Math.min(...pieces.map((p) => p.v0)),
  v1: Math.max(...pieces.map((p) => p.v1)),
});

const SPACE = 26;

function partDraft(context: PaperContext, drawing: PartDrawing, room: Box): Draft {
  const { units } = context.plan;
  const [plan, side, end] = [drawing.plan, drawing.side, drawing.end].map(boundsOf) as [
    Bounds,
    Bounds,
    Bounds,
  ];
  const wide = (Math.max(plan.u1 - plan.u0, side.u1 - side.u0) + (end.u1 - end.u0)) / 1000;
  const high = (plan.v1 - plan.v0 + (side.v1 - side.v0)) / 1000;
  const scale = roundScale(
    Math.max(wide / (room.width - 42), high / (room.height - 2 * SPACE - 26)),
    1,
    units,
  );
  return {
    title: titleOf(drawing, context),
    orientation: "landscape",
    scale: scale.words,
    draw: (box) => partShapes(context, drawing, scale, box, { plan, side, end }),
  };
}

/** The part's name, with its length in the plan's units. */
function titleOf(drawing: PartDrawing, { plan }: PaperContext): string {
  const mm = /(\d+(?:\.\d+)?) mm$/.exec(drawing.name)?.[1];
  return mm === undefined || plan.units === "metric"
    ? drawing.name
    : drawing.name.replace(`${mm} mm`, partLength(Number(mm) / 1000, plan));
}

function partShapes(
  context: PaperContext,
  drawing: PartDrawing,
  scale: Scale,
  box: Box,
  bounds: { readonly plan: Bounds; readonly side: Bounds; readonly end: Bounds },
): Shape[] {
  const per = 1 / (scale.m_per_mm * 1000);
  const x = box.x + 10;
  const planTop = box.y + SPACE;
  const planHigh = (bounds.plan.v1 - bounds.plan.v0) * per;
  const sideTop = planTop + planHigh + SPACE * 0.8;
  const endLeft = x + Math.max(bounds.plan.u1 - bounds.plan.u0, bounds.side.u1 - bounds.side.u0) * per + 24;
  const along = drawing.chains.filter((c) => c.axis === "along");
  const across = drawing.chains.filter((c) => c.axis === "across");
  return [
    words("Plan", [x, box.y + 3], { weight: "semibold" }),
    ...viewShapes(drawing.plan, bounds.plan, per, [x, planTop]),
    ...drawing.screws.map((s) =>
      disc([x + (s.x_mm - bounds.plan.u0) * per, planTop + (bounds.plan.v1 - s.y_mm) * per], 0.28, {
        fill: "closed",
      }),
    ),
    ...along.flatMap((chain, i) => chainRow(context, chain, x, bounds.plan.u0, per, planTop - 3 - i * 6.5)),
    words("Side", [x, sideTop - 3], { weight: "semibold" }),
    ...viewShapes(drawing.side, bounds.side, per, [x, sideTop]),
    words("End", [endLeft, sideTop - 3], { weight: "semibold" }),
    ...viewShapes(drawing.end, bounds.end, per, [endLeft, sideTop]),
    ...across
      .slice(0, 2)
      .flatMap((chain, i) =>
        chainRow(
          context,
          chain,
          endLeft,
          bounds.end.u0,
          per,
          sideTop + (bounds.end.v1 - bounds.end.v0) * per + 7 + i * 7,
        ),
      ),
    ...pieceList(context, drawing, {
      x: endLeft,
      y: box.y + 2,
      width: box.x + box.width - endLeft,
      height: planHigh + SPACE,
    }),
    words(
      `${drawing.screws.length > 0 ? `${drawing.screws.length} screws and clips, red dots. ` : ""}Cut and drill off the marsh, over a sheet.`,
      [x, box.y + box.height - 9],
      { size: 2.2, ink: "second" },
    ),
    ...scaleBar(scale, [x + 2, box.y + box.height - 3], context.plan.units),
  ];
}

const viewShapes = (pieces: readonly DrawnPiece[], b: Bounds, per: number, [x, y]: Point): Shape[] =>
  [...pieces]
    .toSorted((p, q) => orderOf(p.role) - orderOf(q.role))
    .map((p) =>
      boxShape(
        {
          x: x + (p.u0 - b.u0) * per,
          y: y + (b.v1 - p.v1) * per,
          width: (p.u1 - p.u0) * per,
          height: (p.v1 - p.v0) * per,
        },
        {
          stroke: {
            ink: p.role === "stringer" ? "ink" : "second",
            width: p.role === "stringer" ? 0.25 : 0.15,
          },
        },
      ),
    );

/** Stringers are drawn last, so that their lines stay whole. */
const orderOf = (role: string): number => (role === "stringer" ? 2 : role === "curb" ? 1 : 0);

function chainRow(
  { plan }: PaperContext,
  chain: DimensionChain,
  x: number,
  origin: number,
  per: number,
  y: number,
): Shape[] {
  const shown = thinned(chain.at_mm, 2.2 / per);
  return [
    ...chainAcross(
      shown.map((mm) => x + (mm - origin) * per),
      y,
      (i) => partLength((shown[i + 1]! - shown[i]!) / 1000, plan),
    ),
    words(chain.title, [x + (shown.at(-1)! - origin) * per + 2.5, y + 0.6], { size: 1.8, ink: "second" }),
  ];
}

/** Places that lie too close to be told apart on the sheet are drawn once. */
function thinned(at: readonly number[], least: number): number[] {
  const kept: number[] = [];
  for (const mm of at) if (kept.length === 0 || mm - kept.at(-1)! >= least) kept.push(mm);
  const end = at.at(-1)!;
  if (kept.at(-1) !== end) kept.splice(Math.max(1, kept.length - 1), 1, end);
  return kept;
}

/** Pieces of the part, counted by use, size and saw length. */
function pieceList({ plan }: PaperContext, drawing: PartDrawing, box: Box): Shape[] {
  const counts = new Map<string, number>();
  for (const p of drawing.plan) {
    const key = `${p.role}|${p.size ?? ""}|${partLength(p.length_mm / 1000, plan)}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const rows = [...counts].map(([key, count]) => {
    const [role, size, length] = key.split("|");
    return `${count} x ${role}${size ? `, ${size}` : ""}, ${length}`;
  });
  return [
    words("Pieces", [box.x, box.y + 1], { weight: "semibold" }),
    ...rows.slice(0, 16).map((text, i) => words(text, [box.x, box.y + 5 + i * 3], { size: 2.1 })),
  ];
}
