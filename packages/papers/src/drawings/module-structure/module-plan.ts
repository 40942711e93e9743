import type { DrawnLoad } from "@causey/engine/checks";
import { showQuantity } from "@causey/engine/units";
import { area, boxShape, hatched, stroked, words, type Point, type Shape } from "../../scene/index.ts";
import { textWidth } from "../../text/index.ts";
import { stringerName, type Effect, type StructureView } from "./view.ts";

/** Marks of loads on the drawing, along and across the walk [m]: a shoe, and the tread of a cart's wheel. */
const FOOT = { long: 0.29, wide: 0.11 } as const;
const WHEEL = { long: 0.3, wide: 0.06 } as const;

/** Where the module lies on the sheet: its start, its middle line, and millimetres of the sheet for one metre. */
export interface PlanPlace {
  readonly x: number;
  readonly middle: number;
  readonly per_m: number;
  /** Height of the type [mm]. */
  readonly size: number;
}

/** The module from above, travel to the right: deck, stringers, cross pieces, and the loads that make a peak. */
export function modulePlan(view: StructureView, loaded: Effect, place: PlanPlace): Shape[] {
  const { frame, deck_width_m } = view;
  const { x, middle, per_m, size } = place;
  const at = (along: number, left: number): Point => [x + along * per_m, middle - left * per_m];
  const half = deck_width_m / 2;
  const ys = frame.stringers_y_m;
  return [
    boxShape(
      { x, y: middle - half * per_m, width: frame.length_m * per_m, height: deck_width_m * per_m },
      { stroke: { ink: "second", width: 0.18, dash: [1.6, 0.8] } },
    ),
    ...frame.rows_x_m.map((row) =>
      stroked([at(row, ys[0]!), at(row, ys.at(-1)!)], { ink: "second", width: 0.6 }),
    ),
    ...ys.map((y) => stroked([at(0, y), at(frame.length_m, y)], { ink: "ink", width: 0.9 })),
    ...ys.map((y, i) =>
      words(
        stringerName(i, ys.length).replace(" stringer", ""),
        [x - size * 5.2, at(0, y)[1] + size * 0.35],
        {
          size: size * 0.9,
          ink: "second",
        },
      ),
    ),
    ...frame.peaks[loaded].loads.flatMap((load) => loadShapes(view, load, at, place)),
  ];
}

/** A load where it stands, its weight beside it: on its other side where the drawing ends. */
function loadShapes(
  { frame, units }: StructureView,
  load: DrawnLoad,
  at: (along: number, left: number) => Point,
  { x, per_m, size }: PlanPlace,
): Shape[] {
  const { long, wide } = load.is_wheel ? WHEEL : FOOT;
  const outline = load.is_wheel ? bar(load, long, wide) : oval(load, long, wide);
  const ring = outline.map(([u, v]) => at(u, v));
  const text = showQuantity(load.weight_n, "N", units);
  const [cx, cy] = at(load.x_m, load.y_m);
  const beside = (long / 2) * per_m + 1;
  const ends = cx + beside + textWidth(text, size, "semibold") > x + frame.length_m * per_m + 12;
  return [
    area([ring], { fill: "white", stroke: { ink: "closed", width: 0.35 } }),
    ...hatched([ring], { ink: "closed", angle_deg: load.is_wheel ? 90 : 45, gap: 0.9, width: 0.2 }),
    words(text, [cx + (ends ? -beside : beside), cy + size * 0.35], {
      size,
      weight: "semibold",
      anchor: ends ? "end" : "start",
      ink: "closed",
      halo: true,
    }),
  ];
}

const bar = ({ x_m, y_m }: DrawnLoad, long: number, wide: number): Point[] => [
  [x_m - long / 2, y_m - wide / 2],
  [x_m + long / 2, y_m - wide / 2],
  [x_m + long / 2, y_m + wide / 2],
  [x_m - long / 2, y_m + wide / 2],
];

const oval = ({ x_m, y_m }: DrawnLoad, long: number, wide: number): Point[] =>
  Array.from({ length: 28 }, (_, i) => {
    const turn = (i * 2 * Math.PI) / 28;
    return [x_m + (Math.cos(turn) * long) / 2, y_m + (Math.sin(turn) * wide) / 2];
  });
