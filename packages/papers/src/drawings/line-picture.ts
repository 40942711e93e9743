import { northArrow, roundScale, scaleBar } from "../frame/index.ts";
import { area, boxShape, stroked, words, type Box, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { wrap } from "../text/index.ts";
import { LabelRoom } from "./label-room.ts";
import { keepOffWalkway, placeShapes } from "./plan-walkway.ts";
import { clearing, zoneLabels, zonesOf } from "./plan-zones.ts";
import { extentAround } from "./view.ts";
import { lineOfWalkway } from "./vicinity.ts";

/** Column of words beside the picture [mm]. */
const KEY = 44;
/** Ground around the walkway that the picture shows too [m]. */
const AROUND_M = 10;
const SIZE = 2.1;

/** A small plan of the line for a page of words: areas, walkway, start and plots, north, scale bar, and a key. */
export function linePicture(context: PaperContext, space: Box): Shape[] {
  const { plan, results } = context;
  const box: Box = { ...space, width: space.width - KEY - 3 };
  const points = [
    ...results.layout.parts.flatMap((p) => p.outline.flat(2)),
    ...[...plan.starts, ...plan.plots].map((p) => [p.x, p.y] as const),
  ];
  const extent = extentAround(points, AROUND_M);
  if (extent === null) return [];
  const [w, s, e, n] = extent;
  const scale = roundScale(Math.max((e - w) / box.width, (n - s) / (box.height - 10)), 1, plan.units);
  const middle = [(w + e) / 2, (s + n) / 2 - 4 * scale.m_per_mm] as const;
  const view = { box, m_per_mm: scale.m_per_mm, middle };
  const barBox: Box = { x: box.x + 0.6, y: box.y + box.height - 8.8, width: 54, height: 8.2 };
  const northBox: Box = { x: box.x + box.width - 16.6, y: box.y + 0.6, width: 16, height: 22 };
  const labels = new LabelRoom(box);
  labels.keep(barBox);
  labels.keep(northBox);
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
    clearing(barBox),
    ...scaleBar(scale, [barBox.x + 4, barBox.y + 3.4], plan.units),
    clearing(northBox),
    ...northArrow([northBox.x + 8, northBox.y + 5]),
    ...keyShapes({ ...space, x: space.x + space.width - KEY, width: KEY }, scale.words),
  ];
}

/** What the signs of the picture mean. */
function keyShapes(box: Box, scale: string): Shape[] {
  const rows: readonly (readonly [words: string, sample: (y: number) => Shape])[] = [
    [
      "line of the walkway",
      (y) =>
        stroked(
          [
            [box.x, y],
            [box.x + 6, y],
          ],
          { ink: "ink", width: 0.9 },
        ),
    ],
    [
      "start",
      (y) =>
        area(
          [
            [
              [box.x + 3, y + 1.3],
              [box.x + 4.4, y - 1.1],
              [box.x + 1.6, y - 1.1],
            ],
          ],
          { fill: "ink" },
        ),
    ],
    [
      "plot; dashed circle: keep off",
      (y) =>
        boxShape(
          { x: box.x + 2, y: y - 1, width: 2, height: 2 },
          { stroke: { ink: "plants", width: 0.45 }, fill: "white" },
        ),
    ],
  ];
  const foot = [
    ...wrap(`Scale ${scale}. Areas carry their names where there is room.`, box.width, SIZE),
    ...wrap("The site plan shows every area, level and part with its legend.", box.width, SIZE),
  ];
  return [
    words("The line", [box.x, box.y + 3], { weight: "semibold", size: 2.6 }),
    ...rows.flatMap(([text, sample], i) => {
      const y = box.y + 8 + i * 5;
      return [sample(y), words(text, [box.x + 8.5, y + 0.8], { size: SIZE })];
    }),
    ...foot.map((text, i) => words(text, [box.x, box.y + 24 + i * 3], { size: SIZE, ink: "second" })),
  ];
}
