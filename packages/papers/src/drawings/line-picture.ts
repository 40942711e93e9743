import { northArrow, pictureScale, scaleBar, type Scale } from "../frame/index.ts";
import { boxShape, type Box, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { LabelRoom } from "./label-room.ts";
import { LEAST_KEY, keyEntries, keyHeight, keyShapes } from "./picture-key.ts";
import { keepOffWalkway, placeShapes } from "./plan-walkway.ts";
import { clearing, zoneLabels, zonesOf } from "./plan-zones.ts";
import { extentAround, toSheet, type Extent, type SheetView } from "./view.ts";
import { lineOfWalkway } from "./vicinity.ts";

const GAP = 3;
/** Ground around the walkway that the picture shows too: a share of the longer side, and at least [m]. */
const AROUND = { share: 0.05, least_m: 3 };
/** Room for the names of plots at the edge of the ground shown [mm]. */
const NAMES = 4;
/** Names stand left and right of their plots: a narrow line gets this beside it too where the key leaves it [mm]. */
const BESIDE = 14;
/** A narrower picture leaves no room for names and north [mm]. */
const LEAST_WIDTH = 70;
/** The picture may be so much higher than its ground asks for, where the page has room [mm]. */
const HIGHER = 8;
const NORTH = { width: 16, height: 22 };

export interface LinePicture {
  /** "1 : 1500" or "1 in = 120 ft". */
  readonly scale: string;
  readonly shapes: readonly Shape[];
}

/**
 * A small plan of the line for a page of words: areas, walkway, start and plots, north, scale bar, and a key of what
 * occurs in it. The picture is cut to the line and takes the largest scale that fits; what it leaves of the width is
 * the key's.
 *
 * returns null when nothing is placed yet
 */
export function linePicture(context: PaperContext, space: Box): LinePicture | null {
  const extent = extentOfLine(context);
  if (extent === null) return null;
  const [w, s, e, n] = extent;
  const widest = space.width - LEAST_KEY - GAP;
  const scale = pictureScale(
    Math.max((e - w) / (widest - 2 * NAMES), (n - s) / (space.height - 2 * NAMES)),
    1,
    context.plan.units,
  );
  const need = (metres: number): number => metres / scale.m_per_mm + 2 * NAMES;
  const viewOf = (width: number, height: number): SheetView => ({
    box: { x: space.x, y: space.y, width, height },
    m_per_mm: scale.m_per_mm,
    middle: [(w + e) / 2, (s + n) / 2],
  });
  const keyOf = (width: number): number =>
    keyHeight(keyEntries(context, viewOf(width, space.height)), space.width - width - GAP);
  const widths = [need(e - w) + 2 * BESIDE, need(e - w)].map((v) =>
    Math.min(widest, Math.max(v, LEAST_WIDTH)),
  );
  const width = widths.find((v) => keyOf(v) <= space.height) ?? widths[0]!;
  const height = Math.min(space.height, Math.max(need(n - s), keyOf(width)) + HIGHER);
  const shown = viewOf(width, height);
  const keyBox = { x: space.x + width + GAP, y: space.y, width: space.width - width - GAP, height };
  return {
    scale: scale.words,
    shapes: [...mapShapes(context, shown), ...keyAndBar(context, shown, keyBox, scale)],
  };
}

function extentOfLine({ plan, results }: PaperContext): Extent | null {
  const points = [
    ...results.layout.parts.flatMap((p) => p.outline.flat(2)),
    ...[...plan.starts, ...plan.plots].map((p) => [p.x, p.y] as const),
  ];
  const bare = extentAround(points, 0);
  if (bare === null) return null;
  const longer = Math.max(bare[2] - bare[0], bare[3] - bare[1]);
  return extentAround(points, Math.max(AROUND.share * longer, AROUND.least_m));
}

function mapShapes(context: PaperContext, view: SheetView): Shape[] {
  const { box } = view;
  const north = freeCorner(context, view);
  const labels = new LabelRoom(box);
  labels.keep(north);
  keepOffWalkway(context, view, labels);
  const places = placeShapes(context, view, labels);
  const names = zoneLabels(context, view, labels, 1.9);
  return [
    {
      kind: "clip",
      box,
      shapes: [...zonesOf(context, view), ...lineOfWalkway(context, view), ...names, ...places],
    },
    boxShape(box, { stroke: { ink: "ink", width: 0.25 } }),
    clearing(north),
    ...northArrow([north.x + NORTH.width / 2, north.y + 5]),
  ];
}

/** The corner for north: the first in which neither walkway nor start nor plot lies, the upper right one when all do. */
function freeCorner({ plan, results }: PaperContext, view: SheetView): Box {
  const { box } = view;
  const [left, right] = [box.x + 0.6, box.x + box.width - NORTH.width - 0.6];
  const [top, bottom] = [box.y + 0.6, box.y + box.height - NORTH.height - 0.6];
  const corners = [
    [right, top],
    [left, top],
    [right, bottom],
    [left, bottom],
  ].map(([x, y]): Box => ({ x: x!, y: y!, ...NORTH }));
  const points = [
    ...results.layout.parts.flatMap((p) => p.outline.flat(2)),
    ...[...plan.starts, ...plan.plots].map((p) => [p.x, p.y] as const),
  ].map((p) => toSheet(view, p));
  const isFree = (c: Box): boolean =>
    points.every(([x, y]) => x < c.x - 2 || x > c.x + c.width + 2 || y < c.y - 2 || y > c.y + c.height + 2);
  return corners.find(isFree) ?? corners[0]!;
}

/** The key beside the picture with the scale bar at its foot. */
const keyAndBar = (context: PaperContext, view: SheetView, box: Box, scale: Scale): Shape[] => [
  ...keyShapes(keyEntries(context, view), box, scale.words),
  ...scaleBar(scale, [box.x + 1.5, box.y + box.height - 3.4], context.plan.units),
];
