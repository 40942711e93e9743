import { workLimit } from "@causey/engine/layout";
import { northArrow, roundScale, scaleBar, type Scale } from "../frame/index.ts";
import { area, boxShape, disc, stroked, words, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import type { Draft, Room, Sheet } from "../set/sheet.ts";
import { textWidth } from "../text/index.ts";
import { contoursOf, contourStep, waterLines, type GroundLine } from "./ground-lines.ts";
import { legendShapes, LEGEND_WIDTH } from "./legend.ts";
import { levelText } from "./show.ts";
import { WORK_BESIDE_M } from "./site-plan-constants.ts";
import {
  extentAround,
  extentOfView,
  LabelRoom,
  meets,
  toSheet,
  type Extent,
  type SheetView,
} from "./view.ts";
import { zoneOrder, zoneShapes } from "./zone-look.ts";

/** Room around the walkway on the plan, and the ground beside it that the work may touch [m]. */
const AROUND_M = 12;

/** A plan coarser than this gets detail sheets [metres for one millimetre]. */
const READABLE = { us: (50 * 0.3048) / 25.4, metric: 0.5 } as const;
const DETAIL = { us: (40 * 0.3048) / 25.4, metric: 0.5 } as const;
const DETAIL_WORDS = { us: "1 in = 40 ft", metric: "1 : 500" } as const;

/** The site plan: the whole walkway on one sheet, and detail sheets with match lines where that one is too small. */
export const sitePlan: Sheet = {
  id: "site-plan",
  title: "Site plan",
  about: "Ground, regulated areas under their own symbols, walkway, water lines, parcels, limit of work.",
  drafts: (context, room) => {
    const ground = groundOf(context);
    const extent = planExtent(context);
    const whole = overview(context, room, extent, ground);
    return [whole.draft, ...details(context, room, extent, ground, whole.scale)];
  },
};

interface Ground {
  readonly lines: readonly GroundLine[];
  readonly step: number;
  readonly limit: readonly (readonly (readonly [number, number])[])[];
}

function groundOf({ site, results, plan }: PaperContext): Ground {
  const step = contourStep(site.terrain, plan.units);
  return {
    lines: [...contoursOf(site.terrain, step), ...waterLines(site.terrain, plan.levels)],
    step,
    limit: workLimit(results.layout, WORK_BESIDE_M).flat(),
  };
}

function planExtent({ results, plan }: PaperContext): Extent {
  const points = [
    ...results.layout.parts.flatMap((p) => p.outline.flat(2)),
    ...[...plan.starts, ...plan.plots].map((p) => [p.x, p.y] as const),
  ];
  return extentAround(points, AROUND_M) ?? [0, 0, 100, 100];
}

function overview(
  context: PaperContext,
  room: Room,
  extent: Extent,
  ground: Ground,
): { readonly draft: Draft; readonly scale: Scale } {
  const [w, h] = [extent[2] - extent[0], extent[3] - extent[1]];
  const orientation = w > h ? "landscape" : "portrait";
  const box = mapBox(room[orientation]);
  const scale = roundScale(Math.max(w / box.width, h / box.height), 1, context.plan.units);
  const middle = [(extent[0] + extent[2]) / 2, (extent[1] + extent[3]) / 2] as const;
  return {
    scale,
    draft: {
      title: "Site plan",
      orientation,
      scale: scale.words,
      draw: (space) =>
        planSheet(context, { box: mapBox(space), m_per_mm: scale.m_per_mm, middle }, scale, ground, space),
    },
  };
}

const mapBox = (space: Box): Box => ({ ...space, width: space.width - LEGEND_WIDTH - 4 });

/** Detail sheets over the parts alone, at a scale that shows their tags. */
function details(context: PaperContext, room: Room, extent: Extent, ground: Ground, whole: Scale): Draft[] {
  const { units } = context.plan;
  if (whole.m_per_mm <= READABLE[units] + 1e-9) return [];
  const scale: Scale = { m_per_mm: DETAIL[units], words: DETAIL_WORDS[units] };
  const box = mapBox(room.landscape);
  const [tileW, tileH] = [box.width * scale.m_per_mm, box.height * scale.m_per_mm];
  const cols = Math.max(1, Math.ceil((extent[2] - extent[0]) / tileW));
  const rows = Math.max(1, Math.ceil((extent[3] - extent[1]) / tileH));
  const west = (extent[0] + extent[2]) / 2 - (cols * tileW) / 2;
  const north = (extent[1] + extent[3]) / 2 + (rows * tileH) / 2;
  const tiles = Array.from({ length: rows * cols }, (_, n) => {
    const [i, j] = [n % cols, Math.floor(n / cols)];
    return [west + (i + 0.5) * tileW, north - (j + 0.5) * tileH] as const;
  }).filter((middle) => {
    const tile = extentOfView({ box, m_per_mm: scale.m_per_mm, middle });
    return context.results.layout.parts.some((p) => meets(tile, extentAround(p.outline.flat(2), 0)!));
  });
  return tiles.map((middle, n) => ({
    title: `Site plan, detail ${n + 1} of ${tiles.length}`,
    orientation: "landscape",
    scale: scale.words,
    draw: (space) => [
      ...planSheet(context, { box: mapBox(space), m_per_mm: scale.m_per_mm, middle }, scale, ground, space),
      ...matchWords(mapBox(space), n + 1, tiles.length),
    ],
  }));
}

const matchWords = (box: Box, n: number, of: number): Shape[] =>
  of === 1
    ? []
    : [
        words(`Edges of the map are match lines; detail ${n} of ${of}`, [box.x + 2, box.y + 3.4], {
          size: 2.1,
          ink: "second",
          halo: true,
        }),
      ];

function planSheet(
  context: PaperContext,
  view: SheetView,
  scale: Scale,
  ground: Ground,
  space: Box,
): Shape[] {
  const { plan } = context;
  const { box } = view;
  const labels = new LabelRoom(box);
  const bar: Point = [box.x + 6, box.y + box.height - 5];
  labels.keep({ x: bar[0] - 3, y: bar[1] - 3, width: 62, height: 8 });
  labels.keep({ x: box.x + box.width - 16, y: box.y + 2, width: 14, height: 22 });
  return [
    {
      kind: "clip",
      box,
      shapes: [
        ...zonesOf(context, view),
        ...groundShapes(ground, view, labels, context),
        ...ground.limit.map((ring) =>
          area([ring.map((p) => toSheet(view, p))], {
            stroke: { ink: "warning", width: 0.25, dash: [1.6, 1] },
          }),
        ),
        ...walkwayShapes(context, view, labels),
        ...placeShapes(context, view, labels),
        ...zoneLabels(context, view, labels),
      ],
    },
    boxShape(box, { stroke: { ink: "ink", width: 0.3 } }),
    boxShape({ x: bar[0] - 3, y: bar[1] - 3.2, width: 60, height: 7.4 }, { fill: "white" }),
    ...scaleBar(scale, bar, plan.units),
    ...northArrow([box.x + box.width - 9, box.y + 7]),
    ...legendShapes(context, ground.step, {
      x: box.x + box.width + 4,
      y: space.y,
      width: LEGEND_WIDTH,
      height: space.height,
    }),
  ];
}

function zonesOf({ plan }: PaperContext, view: SheetView): Shape[] {
  const extent = extentOfView(view);
  return zoneOrder.flatMap((use) =>
    plan.zones
      .filter((zone) => zone.use === use)
      .flatMap((zone) => zone.polygons)
      .filter((rings) => meets(extent, extentAround(rings.flat(), 0) ?? extent))
      .flatMap((rings) =>
        zoneShapes(
          use,
          rings.map((ring) => ring.map((p) => toSheet(view, p))),
        ),
      ),
  );
}

function groundShapes(ground: Ground, view: SheetView, labels: LabelRoom, { plan }: PaperContext): Shape[] {
  const looks = {
    contour: { ink: "rule", width: 0.12 },
    index: { ink: "earth", width: 0.2 },
    water: { ink: "water", width: 0.35, dash: [3, 1] },
  } as const;
  const named = new Map<string, number>();
  return ground.lines.flatMap((line): Shape[] => {
    const points = line.points.map((p) => toSheet(view, p));
    const text =
      line.kind === "water"
        ? `${line.label} ${levelText(line.z_m, plan)}`
        : line.kind === "index"
          ? levelText(line.z_m, plan)
          : "";
    const isTold = (named.get(text) ?? 0) >= MOST_NAMES;
    const at = text === "" || isTold ? null : labelSpot(points, text, labels);
    if (at) named.set(text, (named.get(text) ?? 0) + 1);
    return [
      stroked(points, looks[line.kind]),
      ...(at
        ? [words(text, at, { size: 1.9, ink: line.kind === "water" ? "water" : "earth", halo: true })]
        : []),
    ];
  });
}

/** The same height or level is named this often on one sheet. */
const MOST_NAMES = 2;

/** The first free place along a line for its label; none on short lines. */
function labelSpot(points: readonly Point[], text: string, labels: LabelRoom): Point | null {
  if (points.length < 12) return null;
  const width = textWidth(text, 1.9);
  for (const share of [0.5, 0.3, 0.7, 0.15, 0.85]) {
    const [x, y] = points[Math.floor(points.length * share)]!;
    if (labels.take({ x, y: y - 1.9, width: width + 1, height: 2.4 })) return [x, y];
  }
  return null;
}

/** Parts with their outlines, joints as short strokes, tags where they fit. */
function walkwayShapes({ results, plan }: PaperContext, view: SheetView, labels: LabelRoom): Shape[] {
  const { parts, joints } = results.layout;
  const outlines = parts.map((p) =>
    area(
      p.outline.flat().map((ring) => ring.map((q) => toSheet(view, q))),
      { stroke: { ink: "ink", width: p.kind === "platform" ? 0.35 : 0.25 }, fill: "white" },
    ),
  );
  const marks = joints.map((j) => disc(toSheet(view, [j.x, j.y]), 0.35, { fill: "ink" }));
  const isReadable = view.m_per_mm <= READABLE[plan.units] + 1e-9;
  const tags = parts.flatMap((p) => {
    if (!isReadable) return [];
    const ring = p.outline[0]![0]!;
    const middle = toSheet(view, [
      ring.reduce((s, q) => s + q[0], 0) / ring.length,
      ring.reduce((s, q) => s + q[1], 0) / ring.length,
    ]);
    const width = textWidth(p.id, 1.8);
    const at: Point = [middle[0] + 1.6, middle[1] - 1.2];
    return labels.take({ x: at[0], y: at[1] - 1.8, width, height: 2.2 })
      ? [words(p.id, at, { size: 1.8, halo: true })]
      : [];
  });
  return [...outlines, ...marks, ...tags];
}

function placeShapes({ plan }: PaperContext, view: SheetView, labels: LabelRoom): Shape[] {
  const named = (at: Point, name: string, off: number): Shape[] => {
    const width = textWidth(name, 2.4, "semibold");
    const spots: readonly Point[] = [
      [at[0] + off, at[1] - 1],
      [at[0] - off - width, at[1] - 1],
      [at[0] - width / 2, at[1] + off + 2],
    ];
    const spot = spots.find(([x, y]) => labels.take({ x, y: y - 2.4, width, height: 3 }));
    return spot ? [words(name, spot, { size: 2.4, weight: "semibold", halo: true })] : [];
  };
  return [
    ...plan.plots.flatMap((plot) => {
      const at = toSheet(view, [plot.x, plot.y]);
      const circle = plot.keep_off_m / view.m_per_mm;
      return [
        disc(at, circle, { stroke: { ink: "plants", width: 0.25, dash: [1, 0.6] } }),
        boxShape(
          { x: at[0] - 1.1, y: at[1] - 1.1, width: 2.2, height: 2.2 },
          { stroke: { ink: "plants", width: 0.45 }, fill: "white" },
        ),
        ...named(at, plot.name, Math.max(circle, 1.6) + 1),
      ];
    }),
    ...plan.starts.flatMap((start): Shape[] => {
      const [x, y] = toSheet(view, [start.x, start.y]);
      return [
        area(
          [
            [
              [x, y - 1.7],
              [x + 1.6, y + 1.2],
              [x - 1.6, y + 1.2],
            ],
          ],
          { fill: "ink" },
        ),
        ...named([x, y], start.name, 2.4),
      ];
    }),
  ];
}

/** Names of areas and owners of parcels, where there is room. */
function zoneLabels({ plan }: PaperContext, view: SheetView, labels: LabelRoom): Shape[] {
  return plan.zones.flatMap((zone) => {
    const ring = zone.polygons[0]?.[0] ?? [];
    if (ring.length === 0) return [];
    const text = zone.use === "parcel" && zone.owner ? `${zone.name}, ${zone.owner}` : zone.name;
    const width = textWidth(text, 2.1);
    const spots = labelPoints(ring).map((p) => toSheet(view, p));
    const spot = spots.find(([x, y]) => labels.take({ x: x - width / 2, y: y - 2.1, width, height: 2.8 }));
    return spot ? [words(text, spot, { size: 2.1, ink: "second", anchor: "middle", halo: true })] : [];
  });
}

/** Places where the name of an area may stand: its middle, then the middles of its corners with it. */
function labelPoints(ring: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const [x, y] = [0, 1].map((k) => ring.reduce((s, p) => s + p[k]!, 0) / ring.length) as [number, number];
  const step = Math.max(1, Math.floor(ring.length / 6));
  return [
    [x, y],
    ...ring
      .filter((_, i) => i % step === 0)
      .map(([a, b]): readonly [number, number] => [(a + x) / 2, (b + y) / 2]),
  ];
}
