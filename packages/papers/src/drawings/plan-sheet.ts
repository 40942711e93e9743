import { northArrow, scaleBar, type Scale } from "../frame/index.ts";
import { boxShape, type Box, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { LabelRoom } from "./label-room.ts";
import { LEGEND_WIDTH } from "./legend.ts";
import { contourLabels, groundShapes, limitShapes, waterLabels, type PlanGround } from "./plan-ground.ts";
import {
  crossingLabels,
  keepOffWalkway,
  placeShapes,
  signShapes,
  tagShapes,
  walkwayShapes,
} from "./plan-walkway.ts";
import { clearing, coversStrongZone, zoneLabels, zonesOf } from "./plan-zones.ts";
import { toSheet, type SheetView } from "./view.ts";

/** The map's box beside the legend. */
export const mapBox = (space: Box): Box => ({ ...space, width: space.width - LEGEND_WIDTH - 4 });

const NORTH = { width: 16, height: 22 } as const;
const BAR = { width: 54, height: 8.2 } as const;
const INSET = 0.6;

type Corner = "north-west" | "north-east" | "south-west" | "south-east";

/**
 * The first corner of the map where a thing of this size covers no part, start or plot, and if there is one, no water
 * and no closure either; the first corner of all when none is free.
 */
function freeCorner(
  context: PaperContext,
  view: SheetView,
  size: { readonly width: number; readonly height: number },
  corners: readonly [Corner, ...Corner[]],
  taken: readonly Box[],
): Box {
  const { results, plan } = context;
  const { box } = view;
  const points = [
    ...results.layout.parts.flatMap((p) => p.outline.flat(2)),
    ...[...plan.starts, ...plan.plots].map((p) => [p.x, p.y] as const),
  ].map((p) => toSheet(view, p));
  const boxAt = (corner: Corner): Box => ({
    ...size,
    x: corner.endsWith("west") ? box.x + INSET : box.x + box.width - size.width - INSET,
    y: corner.startsWith("north") ? box.y + INSET : box.y + box.height - size.height - INSET,
  });
  const isFree = (b: Box): boolean =>
    points.every(([x, y]) => x < b.x || x > b.x + b.width || y < b.y || y > b.y + b.height) &&
    taken.every(
      (t) => t.x + t.width <= b.x || b.x + b.width <= t.x || t.y + t.height <= b.y || b.y + b.height <= t.y,
    );
  const free = corners.map(boxAt).filter(isFree);
  return free.find((b) => !coversStrongZone(context, view, b)) ?? free[0] ?? boxAt(corners[0]);
}

/** The walkway and everything regulated around it, cut at the map's edge, with scale bar and north arrow. */
export function planSheet(
  context: PaperContext,
  view: SheetView,
  scale: Scale,
  ground: PlanGround,
  kept: readonly Box[] = [],
): Shape[] {
  const { plan } = context;
  const { box } = view;
  const labels = new LabelRoom(box);
  const northBox = freeCorner(
    context,
    view,
    NORTH,
    ["north-east", "north-west", "south-east", "south-west"],
    kept,
  );
  const barBox = freeCorner(
    context,
    view,
    BAR,
    ["south-west", "south-east", "north-west", "north-east"],
    [...kept, northBox],
  );
  for (const taken of [barBox, northBox, ...kept]) labels.keep(taken);
  keepOffWalkway(context, view, labels);
  const places = placeShapes(context, view, labels);
  const tags = tagShapes(context, view, labels);
  const signs = signShapes(context, view, labels);
  const names = [
    ...crossingLabels(context, view, labels),
    ...waterLabels(ground, view, context, labels),
    ...zoneLabels(context, view, labels),
    ...contourLabels(ground, view, context, labels),
  ];
  return [
    {
      kind: "clip",
      box,
      shapes: [
        ...zonesOf(context, view),
        ...groundShapes(ground, view, plan.levels),
        ...limitShapes(ground, view),
        ...walkwayShapes(context, view),
        ...names,
        ...tags,
        ...signs,
        ...places,
      ],
    },
    boxShape(box, { stroke: { ink: "ink", width: 0.3 } }),
    clearing(barBox),
    ...scaleBar(scale, [barBox.x + 4, barBox.y + 3.4], plan.units),
    clearing(northBox),
    ...northArrow([northBox.x + NORTH.width / 2, northBox.y + 5]),
  ];
}
