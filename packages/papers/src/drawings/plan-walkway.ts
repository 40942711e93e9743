import type { Part } from "@causey/engine/layout";
import { area, boxShape, disc, stroked, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { textWidth } from "../text/index.ts";
import { around, type LabelRoom } from "./label-room.ts";
import { shower } from "./show.ts";
import { extentAround, toSheet, type SheetView } from "./view.ts";

/** Below this length on the sheet a part is too small for a tag [mm]. */
const LEAST_FOR_TAG = 3.4;
const TAG = 1.9;

/** Outlines of the parts, platforms crossed, joints as dots. */
export function walkwayShapes({ results }: PaperContext, view: SheetView): Shape[] {
  const { parts, joints } = results.layout;
  const outlines = parts.flatMap((part): Shape[] => {
    const rings = part.outline.flat().map((ring) => ring.map((p) => toSheet(view, p)));
    const [a, b, c, d] = rings[0] ?? [];
    const isCrossed = part.kind === "platform" && a && b && c && d;
    return [
      area(rings, { stroke: { ink: "ink", width: part.kind === "platform" ? 0.35 : 0.25 }, fill: "white" }),
      ...(isCrossed
        ? [stroked([a, c], { ink: "ink", width: 0.13 }), stroked([b, d], { ink: "ink", width: 0.13 })]
        : []),
    ];
  });
  return [
    ...outlines,
    ...joints.map((j) => disc(toSheet(view, [j.x, j.y]), view.m_per_mm > 0.7 ? 0.3 : 0.45, { fill: "ink" })),
  ];
}

/** Keeps wider labels off the walkway itself. */
export function keepOffWalkway({ results }: PaperContext, view: SheetView, labels: LabelRoom): void {
  for (const part of results.layout.parts) {
    const extent = extentAround(
      part.outline.flat(2).map((p) => toSheet(view, p)),
      0.4,
    );
    if (extent)
      labels.shun({
        x: extent[0],
        y: extent[1],
        width: extent[2] - extent[0],
        height: extent[3] - extent[1],
      });
  }
}

/** Tags of the parts beside them, where the scale leaves room. */
export function tagShapes({ results }: PaperContext, view: SheetView, labels: LabelRoom): Shape[] {
  return results.layout.parts.flatMap((part) => {
    const length = (part.kind === "module" ? part.length_m : part.side_m) / view.m_per_mm;
    if (length < LEAST_FOR_TAG) return [];
    return labels.label(part.id, besidePart(part, view, textWidth(part.id, TAG)), {
      size: TAG,
      mayCover: true,
    });
  });
}

/** Left and right of a part's middle, clear of its outline. */
function besidePart(part: Part, view: SheetView, width: number, farther = [0, 1.5]): Point[] {
  const points = part.outline.flat(2).map((p) => toSheet(view, p));
  const [x, y] = [0, 1].map((k) => points.reduce((s, p) => s + p[k]!, 0) / points.length) as [number, number];
  const turn = (part.heading_deg * Math.PI) / 180;
  const across: Point = [Math.cos(turn), Math.sin(turn)];
  const half = Math.max(...points.map((p) => (p[0] - x) * across[0] + (p[1] - y) * across[1]));
  const reach = half + 0.7 + (Math.abs(across[0]) * width) / 2 + Math.abs(across[1]) * TAG * 0.6;
  return farther
    .flatMap((more) => [reach + more, -reach - more])
    .map((r): Point => [x + across[0] * r, y + across[1] * r]);
}

const NAME = 2.4;

/**
 * Start and plots with their names and keep-off circles. Every sign is kept clear before the first name is placed, so
 * that none stands under another; a name that finds no room clear of the walkway lies over it rather than nowhere.
 */
export function placeShapes({ plan }: PaperContext, view: SheetView, labels: LabelRoom): Shape[] {
  const plots = plan.plots.map((plot) => ({
    name: plot.name,
    at: toSheet(view, [plot.x, plot.y]),
    circle: plot.keep_off_m / view.m_per_mm,
  }));
  const starts = plan.starts.map(({ name, x, y }) => ({ name, at: toSheet(view, [x, y]), circle: 0 }));
  const all = [...plots, ...starts];
  for (const { at } of all) labels.keep({ x: at[0] - 1.6, y: at[1] - 1.6, width: 3.2, height: 3.2 });
  const look = { size: NAME, weight: "semibold" } as const;
  const names = all.flatMap(({ name, at, circle }) => {
    const off = circle > 0 ? Math.max(circle, 1.6) + 1 : 2.4;
    const spots = [0, 3, 6].flatMap((more) => around(at, off + more, name, NAME, "semibold"));
    const free = labels.label(name, spots, look);
    return free.length > 0 ? free : labels.label(name, spots, { ...look, mayCover: true });
  });
  return [
    ...plots.flatMap(({ at, circle }) => plotSign(at, circle)),
    ...starts.map(({ at }) => startSign(at)),
    ...names,
  ];
}

const plotSign = (at: Point, circle: number): Shape[] => [
  disc(at, circle, { stroke: { ink: "plants", width: 0.25, dash: [1, 0.6] } }),
  boxShape(
    { x: at[0] - 1.1, y: at[1] - 1.1, width: 2.2, height: 2.2 },
    { stroke: { ink: "plants", width: 0.45 }, fill: "white" },
  ),
];

const startSign = ([x, y]: Point): Shape =>
  area(
    [
      [
        [x, y + 1.6],
        [x + 1.7, y - 1.3],
        [x - 1.7, y - 1.3],
      ],
    ],
    { fill: "ink" },
  );

const SIGN = 1.9;

/** Dead ends with a way back: the place of the sign that names the last place to turn, as a T. */
export function signShapes({ results }: PaperContext, view: SheetView, labels: LabelRoom): Shape[] {
  const places = new Set(results.route.dead_ends.filter((e) => e.back_m > 0).map((e) => e.sign_at));
  return results.layout.joints
    .filter((j) => places.has(j.id))
    .flatMap((j): Shape[] => {
      const at = toSheet(view, [j.x, j.y]);
      const text = `sign at ${j.id}: last turn`;
      const look = { size: SIGN, ink: "warning" } as const;
      const spots = around(at, 1.8, text, SIGN, "regular");
      const free = labels.label(text, spots, look);
      return [
        ...signMark(at),
        ...(free.length > 0 ? free : labels.label(text, spots, { ...look, mayCover: true })),
      ];
    });
}

/** A T, 2.2 mm high. */
export const signMark = ([x, y]: Point): Shape[] => [
  stroked(
    [
      [x, y],
      [x, y - 2.2],
    ],
    { ink: "warning", width: 0.4 },
  ),
  stroked(
    [
      [x - 1.1, y - 2.2],
      [x + 1.1, y - 2.2],
    ],
    { ink: "warning", width: 0.4 },
  ),
];

/** Crossings of channels and pools with the clear width that is bridged. */
export function crossingLabels(context: PaperContext, view: SheetView, labels: LabelRoom): Shape[] {
  const { plan, results } = context;
  const show = shower(plan);
  return results.evaluation.crossings
    .filter((c) => plan.zones.some((z) => z.id === c.zone))
    .flatMap((c) => {
      const part = results.layout.parts.find((p) => p.id === c.part);
      if (!part) return [];
      const text = `${c.part} over ${c.name}, ${show(c.clear_m, "m")} clear`;
      const spots = besidePart(part, view, textWidth(text, 2.1), [0, 1.5, 3, 5, 7, 9, 12, 16]);
      const look = { size: 2.1, ink: "water" } as const;
      const free = labels.label(text, spots, look);
      return free.length > 0 ? free : labels.label(text, spots, { ...look, mayCover: true });
    });
}
