import type { Zone } from "@causey/engine/site";
import { area, stroked, type Box, type Point, type Shape } from "../scene/index.ts";
import type { PaperContext } from "../set/context.ts";
import { textWidth } from "../text/index.ts";
import { clipLine, clipRing } from "./clip.ts";
import type { LabelRoom } from "./label-room.ts";
import { extentAround, extentOfView, meets, toSheet, type SheetView } from "./view.ts";
import { nameOnPaper, outlineOf, zoneFill, zoneSymbols, type ZoneLook } from "./zone-look.ts";

type Ground = readonly (readonly [number, number])[];

/** Every area of the plan in its symbol, cut at the map's edge. */
export function zonesOf({ plan }: PaperContext, view: SheetView): Shape[] {
  return zoneSymbols(plan.zones).flatMap(({ look, zones }) => {
    const rings = zones.flatMap((z) => z.polygons).filter((polygon) => isSeen(polygon.flat(), view));
    const fills = rings.flatMap((polygon) =>
      zoneFill(
        look,
        polygon.map((ring) => clipRing(onSheet(ring, view), view.box)).filter((ring) => ring.length > 0),
      ),
    );
    return [...fills, ...outlines(rings.flat(), look, view)];
  });
}

const isSeen = (points: Ground, view: SheetView): boolean => {
  const extent = extentAround(points, 0);
  return extent !== null && meets(extentOfView(view), extent);
};

/** Whether any of these areas may show in the view. */
export const areSeen = (zones: readonly Zone[], view: SheetView): boolean =>
  zones.some((z) => z.polygons.some((polygon) => isSeen(polygon.flat(), view)));

const onSheet = (ring: Ground, view: SheetView): Point[] => ring.map((p) => toSheet(view, p));

/** Outlines; where two areas share an edge it is drawn once, so that its dashes stay dashes. */
function outlines(rings: readonly Ground[], look: ZoneLook, view: SheetView): Shape[] {
  const stroke = outlineOf(look);
  const drawn = new Set<string>();
  return rings.flatMap((ring) => {
    const runs: Point[][] = [[]];
    ring.forEach((b, i) => {
      const a = ring[(i + ring.length - 1) % ring.length]!;
      const key = [a.join(), b.join()].sort().join(" ");
      if (drawn.has(key)) runs.push([toSheet(view, b)]);
      else {
        if (runs.at(-1)!.length === 0) runs.at(-1)!.push(toSheet(view, a));
        runs.at(-1)!.push(toSheet(view, b));
      }
      drawn.add(key);
    });
    return runs.flatMap((run) => clipLine(run, view.box)).map((run) => stroked(run, stroke));
  });
}

/** Names of areas and owners of parcels, where there is room inside them. */
export function zoneLabels({ plan }: PaperContext, view: SheetView, labels: LabelRoom, size = 2.1): Shape[] {
  const ordered = [...plan.zones].sort((a, b) => rank(a) - rank(b));
  return ordered.flatMap((zone) => {
    const text =
      zone.use === "parcel" && zone.owner ? `${nameOnPaper(zone)}, owner ${zone.owner}` : nameOnPaper(zone);
    const spots = zone.polygons.flatMap((polygon) => innerPoints(polygon, view, text, size));
    if (zone.use === "parcel" || zone.use === "habitat")
      clearFirst(spots, plan.zones, view, textWidth(text, size) / 2);
    return labels.label(text, spots, { size, ink: zone.use === "parcel" ? "ink" : "second" });
  });
}

/** Whether a box on the sheet lies over water, a closure, a buffer or soft ground. */
export function coversStrongZone({ plan }: PaperContext, view: SheetView, box: Box): boolean {
  const strong = strongRings(plan.zones, view);
  // Every 2 mm: a narrower channel would be no more than its outline.
  const shares = (mm: number): number[] =>
    Array.from({ length: Math.ceil(mm / 2) + 1 }, (_, i) => i / Math.ceil(mm / 2));
  return shares(box.width).some((u) =>
    shares(box.height).some((v) =>
      strong.some((rings) => isWithin(rings, [box.x + u * box.width, box.y + v * box.height])),
    ),
  );
}

/** Areas whose symbol must not be hidden or misnamed: all but parcels and habitats. */
const strongRings = (zones: readonly Zone[], view: SheetView): Point[][][] =>
  zones
    .filter((z) => z.use !== "parcel" && z.use !== "habitat" && isSeen(z.polygons.flat(2), view))
    .flatMap((z) => z.polygons.map((polygon) => polygon.map((ring) => onSheet(ring, view))));

/** Moves those places to the end whose words would lie over water or a closure: they would seem to name it. */
function clearFirst(spots: Point[], zones: readonly Zone[], view: SheetView, half: number): void {
  const strong = strongRings(zones, view);
  const isCovered = ([x, y]: Point): boolean =>
    [-half, 0, half].some((off) => strong.some((rings) => isWithin(rings, [x + off, y])));
  const ranked = spots.map((at) => ({ at, isCovered: isCovered(at) }));
  const ordered = [...ranked.filter((s) => !s.isCovered), ...ranked.filter((s) => s.isCovered)];
  spots.splice(0, spots.length, ...ordered.map((s) => s.at));
}

/** Water and closures are named before the wide areas around them. */
const rank = (zone: Zone): number => (zone.use === "parcel" ? 1 : zone.use === "habitat" ? 2 : 0);

const STEPS = 14;

/**
 * Places inside the seen part of an area, those deepest inside it first; beside it when it is too narrow to hold the
 * words.
 */
function innerPoints(polygon: readonly Ground[], view: SheetView, text: string, size: number): Point[] {
  if (!isSeen(polygon.flat(), view)) return [];
  const rings = polygon.map((ring) => clipRing(onSheet(ring, view), view.box)).filter((r) => r.length > 0);
  const extent = extentAround(rings[0] ?? [], 0);
  if (!extent) return [];
  const [x0, y0, x1, y1] = extent;
  const found: { readonly at: Point; readonly depth: number }[] = [];
  for (let i = 0; i < STEPS; i++)
    for (let j = 0; j < STEPS; j++) {
      const at: Point = [x0 + ((i + 0.5) / STEPS) * (x1 - x0), y0 + ((j + 0.5) / STEPS) * (y1 - y0)];
      if (isWithin(rings, at)) found.push({ at, depth: Math.min(...rings.map((r) => nearest(r, at))) });
    }
  found.sort((a, b) => b.depth - a.depth);
  const inside = found.map((f) => f.at);
  if ((found[0]?.depth ?? 0) > size) return inside;
  const half = textWidth(text, size) / 2 + 1;
  return [
    ...inside.flatMap(([x, y]): Point[] => [
      [x + half + 1, y],
      [x - half - 1, y],
    ]),
    ...inside,
  ];
}

function isWithin(rings: readonly (readonly Point[])[], [x, y]: Point): boolean {
  let inside = false;
  for (const ring of rings)
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [xi, yi] = ring[i]!;
      const [xj, yj] = ring[j]!;
      if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
    }
  return inside;
}

/** Distance to the nearest corner: near enough to rank places by. */
const nearest = (ring: readonly Point[], [x, y]: Point): number =>
  ring.reduce((least, [a, b]) => Math.min(least, Math.hypot(a - x, b - y)), Infinity);

/** A white ground under what stands on the map. */
export const clearing = (box: Box): Shape =>
  area(
    [
      [
        [box.x, box.y],
        [box.x + box.width, box.y],
        [box.x + box.width, box.y + box.height],
        [box.x, box.y + box.height],
      ],
    ],
    { fill: "white" },
  );
