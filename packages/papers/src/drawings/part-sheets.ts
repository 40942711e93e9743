import {
  moduleDrawing,
  platformDrawing,
  supportDrawing,
  supportKind,
  underPlatformEdge,
  type DrawnPiece,
  type Kit,
  type PartDrawing,
} from "@causey/engine/kit";
import { stringerEdgeJoints } from "@causey/engine/layout";
import { roundScale, scaleBar, type Scale } from "../frame/index.ts";
import { words, type Box, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Sheet } from "../set/sheet.ts";
import { kitLengthOf } from "./cross-section.ts";
import { pieceList, pieceMarks } from "./piece-list.ts";
import {
  acrossChains,
  alongChains,
  boundsOf,
  chainRoom,
  heightChain,
  viewShapes,
  type Bounds,
} from "./part-views.ts";
import { partLength } from "./show.ts";

/** Drawings of every part that the layout uses: modules by length, the turning platform, supports. */
export const partSheets: Sheet = {
  id: "parts",
  title: "Parts",
  about: "Each module, platform and support with its pieces, marks, dimensions and screw positions.",
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
    ...supports.flatMap((id) => supportDrawings(kit, results.layout, id, sizes)),
  ];
}

/** A kind of support at its highest in the layout, and once more where a platform's edge gives it a longer sill. */
function supportDrawings(
  kit: Kit,
  { joints, parts }: PaperContext["results"]["layout"],
  id: string,
  sizes: PaperContext["tables"]["sizes"],
): PartDrawing[] {
  const edges = stringerEdgeJoints(parts);
  const own = supportKind(kit, id);
  const atEdge = underPlatformEdge(kit, own);
  const here = joints.filter((j) => j.support === id);
  const [plain, edge] =
    atEdge === own ? [here, []] : [here.filter((j) => !edges.has(j.id)), here.filter((j) => edges.has(j.id))];
  const highest = (at: typeof here): number => Math.max(...at.map((j) => j.support_height_m));
  return [
    ...(plain.length > 0 ? [supportDrawing(kit, own, highest(plain), sizes)] : []),
    ...(edge.length > 0
      ? [
          supportDrawing(
            kit,
            { ...atEdge, name: `${own.name}, under a platform's edge` },
            highest(edge),
            sizes,
          ),
        ]
      : []),
  ];
}

/** Column of the piece list at the right, and room around the views [mm]. */
const LIST = 65;
const [LEFT, BESIDE, GAP, HEAD] = [6, 22, 6, 5.5];
/** Room that the end view takes below its outline, for the lengths across [mm]. */
const UNDER_END = 16;

/** One view with its place on the sheet. */
interface Placed {
  readonly title: string;
  readonly pieces: readonly DrawnPiece[];
  readonly bounds: Bounds;
  readonly kind: "deck" | "frame" | "side" | "end";
}

const isDeck = (p: DrawnPiece): boolean =>
  p.role.startsWith("deck") || p.role.startsWith("mesh") || p.role === "curb";

/** Views one under another, each row from left to right: a part with a deck shows its frame and its deck apart. */
function rowsOf(drawing: PartDrawing): Placed[][] {
  const view = (
    title: string,
    kind: Placed["kind"],
    pieces: readonly DrawnPiece[],
    bounds = boundsOf(pieces),
  ): Placed => ({
    title,
    kind,
    pieces,
    bounds,
  });
  const whole = boundsOf(drawing.plan);
  const deck = drawing.plan.filter(isDeck);
  const frame = drawing.plan.filter((p) => !isDeck(p));
  const [side, end] = [view("Side", "side", drawing.side), view("End", "end", drawing.end)];
  if (deck.length === 0) return [[view("Plan", "frame", drawing.plan), side, end]];
  const isLong = whole.u1 - whole.u0 > 1.6 * (whole.v1 - whole.v0);
  const plans = [view("Frame, plan", "frame", frame, whole), view("Deck, plan", "deck", deck, whole)];
  return isLong ? [[plans[0]!], [plans[1]!], [side]] : [plans, [side, end]];
}

/** The end view of a long part stands under the piece list: beside the side view it would make all views small. */
const loneEnd = (drawing: PartDrawing, rows: readonly Placed[][]): Placed | null =>
  rows.flat().some((v) => v.kind === "end")
    ? null
    : { title: "End", kind: "end", pieces: drawing.end, bounds: boundsOf(drawing.end) };

const wide = (b: Bounds): number => b.u1 - b.u0;
const high = (b: Bounds): number => b.v1 - b.v0;

function partDraft(context: PaperContext, drawing: PartDrawing, room: Box): Draft {
  const rows = rowsOf(drawing);
  const across = rows.map((row) => row.reduce((sum, v) => sum + wide(v.bounds), 0) / 1000);
  const fixedAcross = Math.max(...rows.map((row) => LEFT + row.length * BESIDE));
  const up = rows.reduce((sum, row) => sum + Math.max(...row.map((v) => high(v.bounds))), 0) / 1000;
  const hasEnd = rows.flat().some((v) => v.kind === "end");
  const fixedUp =
    chainRoom(drawing) + rows.length * HEAD + (rows.length - 1) * GAP + (hasEnd ? UNDER_END : 2);
  const scale = roundScale(
    Math.max(Math.max(...across) / (room.width - LIST - fixedAcross), up / (room.height - fixedUp)),
    1,
    context.plan.units,
  );
  return {
    title: titleOf(drawing, context),
    orientation: "landscape",
    scale: scale.words,
    draw: (box) => partShapes(context, drawing, rows, scale, box),
  };
}

/** The part's name with its length in the plan's units; of a support the height that is drawn. */
function titleOf(drawing: PartDrawing, { plan }: PaperContext): string {
  const [, name, mm] = /^(.*?),? (\d+(?:\.\d+)?) mm$/.exec(drawing.name) ?? [null, drawing.name, ""];
  if (mm === "") return drawing.name;
  const length = partLength(Number(mm) / 1000, plan);
  const isSupport = plan.kit.supports.some((s) => s.name === name);
  return isSupport ? `${name}, drawn ${length} high` : `${name} ${length}`;
}

function partShapes(
  context: PaperContext,
  drawing: PartDrawing,
  rows: readonly Placed[][],
  scale: Scale,
  box: Box,
): Shape[] {
  const per = 1 / (scale.m_per_mm * 1000);
  const marks = pieceMarks(drawing);
  const shapes: Shape[] = [];
  let y = box.y;
  rows.forEach((row, n) => {
    const top = y + HEAD + (n === 0 ? chainRoom(drawing) : 0);
    let x = box.x + LEFT;
    for (const view of row) {
      const at = { x, y: top, per };
      shapes.push(
        words(view.title, [x, top - (n === 0 && view === row[0] ? chainRoom(drawing) : 0) - 2.6], {
          weight: "semibold",
          size: 2.4,
        }),
        ...viewShapes(drawing, view, at, marks),
        ...(n === 0 && view === row[0] ? alongChains(context, drawing, view.bounds, at) : []),
        ...(view.kind === "end" ? acrossChains(context, drawing, view.bounds, at) : []),
        ...(view.kind === "end" ? heightChain(context, drawing, view.bounds, at) : []),
      );
      x += wide(view.bounds) * per + BESIDE;
    }
    y = top + Math.max(...row.map((v) => high(v.bounds))) * per + GAP;
  });
  const list = { x: box.x + box.width - LIST + 6, y: box.y, width: LIST - 6, height: box.height };
  const { shapes: listed, foot } = pieceList(context, drawing, marks, list);
  const end = loneEnd(drawing, rows);
  const at = { x: list.x + 8, y: foot + 8, per };
  return [
    ...shapes,
    ...listed,
    ...(end
      ? [
          words(end.title, [list.x, at.y - 2.6], { weight: "semibold", size: 2.4 }),
          ...viewShapes(drawing, end, at, marks),
          ...acrossChains(context, drawing, end.bounds, at),
          ...heightChain(context, drawing, end.bounds, at),
        ]
      : []),
    ...scaleBar(scale, [list.x, box.y + box.height - 3.4], context.plan.units),
  ];
}
