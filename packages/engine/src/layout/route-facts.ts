import { defineConstant } from "../formula/index.ts";
import {
  bounds,
  isInside,
  polygonsArea,
  signedDistance,
  type Plot,
  type Point,
  type Polygons,
  type Site,
  type WaterKind,
  type Zone,
} from "../site/index.ts";
import { customParts, type StandardParts } from "./custom-parts.ts";
import { deadEnds, type DeadEnd } from "./dead-ends.ts";
import { PLAIN_SENSITIVITY, habitatsOf, isWater } from "./fields.ts";
import { cutAlong } from "./line-in-area.ts";
import { partLines, type PartLine } from "./route-lines.ts";
import { sharedArea, toPaths } from "./shared-area.ts";
import type { Layout } from "./types.ts";

/** A channel crossed at less than this is called a ditch. */
export const ditchUnder = defineConstant(
  "layout.ditch-width",
  "Clear width below which a crossed channel is called a ditch",
  "w_d",
  3,
  "m",
  { id: "trade-practice", title: "Common practice, no source", status: "practice" },
);

/** A stretch of the walkway on one owner's ground. */
export interface ParcelCrossed {
  readonly zone: string;
  readonly name: string;
  /** Null = the parcel does not say. */
  readonly owner: string | null;
  /** Of the middle line inside the parcel. */
  readonly length_m: number;
  /** Of parts over the parcel. */
  readonly area_m2: number;
  readonly parts: readonly string[];
}

export interface WaterCrossed {
  readonly zone: string;
  readonly name: string;
  /** As the area says what it is; otherwise a pool, or by its width a channel or a ditch. */
  readonly type: "channel" | WaterKind;
  readonly part: string;
  /** Along the middle line, from the first to the last edge; 0 when only a side of the part lies over it. */
  readonly width_m: number;
  /** Half way across; the middle of the part when its middle line misses the water. */
  readonly at: readonly [number, number];
}

export interface SensitiveStretch {
  readonly zone: string;
  readonly name: string;
  readonly sensitivity: number;
  readonly length_m: number;
}

export interface PlotClear {
  readonly plot: string;
  readonly keep_off_m: number;
  /** From the plot to the nearest part or foot; null = there is no part. */
  readonly nearest_m: number | null;
  /** Of parts and feet inside the keep-off circle. */
  readonly overlap_m2: number;
}

/** What permit papers ask of one route, besides its figures. */
export interface RouteFacts {
  readonly length_m: number;
  readonly parcels: readonly ParcelCrossed[];
  /** Middle line outside every parcel. */
  readonly no_parcel_m: number;
  readonly crossings: readonly WaterCrossed[];
  /** Middle line in habitats more sensitive than plain ground; where two overlap, the more sensitive counts. */
  readonly sensitive_m: number;
  readonly sensitive: readonly SensitiveStretch[];
  readonly dead_ends: readonly DeadEnd[];
  readonly plots: readonly PlotClear[];
  /** Tags of parts that are none of the kit's own. */
  readonly custom_parts: readonly string[];
  readonly custom_because: string;
}

/**
 * What the route crosses: parcels with their owners, water with clear widths, sensitive ground, dead ends, and how near
 * it comes to each plot. Lengths are of the parts' middle lines, areas exact to the clipping (0.1 mm).
 *
 * kit  lengths of its modules and side of its platform: what is not of these was made for its place
 */
export function routeFacts(layout: Layout, site: Site, kit: StandardParts): RouteFacts {
  const lines = partLines(layout);
  const parcels = site.zones.filter((z) => z.use === "parcel");
  const sensitive = sensitiveStretches(lines, site);
  return {
    length_m: lines.reduce((sum, l) => sum + l.length_m, 0),
    parcels: parcels.flatMap((z) => parcelCrossed(lines, z)),
    no_parcel_m: lengthWhere(lines, parcels, (p) => !parcels.some((z) => isInside(z.polygons, ...p))),
    crossings: lines.flatMap((line) =>
      site.zones
        .filter((z) => isWater(z) && line.part.bridges.includes(z.id))
        .map((z) => waterCrossed(line, z)),
    ),
    sensitive_m: sensitive.reduce((sum, s) => sum + s.length_m, 0),
    sensitive,
    dead_ends: deadEnds(layout),
    plots: site.plots.map((p) => plotClear(layout, p)),
    ...customParts(layout, kit),
  };
}

/** Length of middle lines whose places satisfy a test that changes at the edges of some zones only. */
const lengthWhere = (
  lines: readonly PartLine[],
  zones: readonly Zone[],
  test: (p: Point) => boolean,
): number => lines.reduce((sum, line) => sum + lineWhere(line, zones, test), 0);

const lineWhere = ({ from, to }: PartLine, zones: readonly Zone[], test: (p: Point) => boolean): number =>
  cutAlong(
    [from.x, from.y],
    [to.x, to.y],
    zones.map((z) => z.polygons),
  ).reduce((sum, s) => sum + (test(s.middle) ? s.to_m - s.from_m : 0), 0);

function parcelCrossed(lines: readonly PartLine[], zone: Zone): ParcelCrossed[] {
  const paths = toPaths(zone.polygons);
  const over = lines
    .filter((l) => boxesMeet(l.part.outline, zone.polygons))
    .map((line) => ({ line, area: sharedArea([line.part.outline], paths) }))
    .filter((o) => o.area > 0);
  if (over.length === 0) return [];
  const inside = (p: Point): boolean => isInside(zone.polygons, ...p);
  return [
    {
      zone: zone.id,
      name: zone.name,
      owner: zone.owner ?? null,
      length_m: lengthWhere(lines, [zone], inside),
      area_m2: over.reduce((sum, o) => sum + o.area, 0),
      parts: over.map((o) => o.line.part.id),
    },
  ];
}

function waterCrossed({ part, from, to }: PartLine, zone: Zone): WaterCrossed {
  const wet = cutAlong([from.x, from.y], [to.x, to.y], [zone.polygons]).filter((s) =>
    isInside(zone.polygons, ...s.middle),
  );
  const [begin, end] = [wet[0]?.from_m ?? 0, wet.at(-1)?.to_m ?? 0];
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const half = wet.length === 0 ? 0.5 : (begin + end) / 2 / long;
  const width_m = end - begin;
  return {
    zone: zone.id,
    name: zone.name,
    type: zone.water ?? (zone.use === "pool" ? "pool" : width_m < ditchUnder({}) ? "ditch" : "channel"),
    part: part.id,
    width_m,
    at: [from.x + (to.x - from.x) * half, from.y + (to.y - from.y) * half],
  };
}

function sensitiveStretches(lines: readonly PartLine[], site: Site): SensitiveStretch[] {
  const habitats = [...habitatsOf(site)].reverse();
  const most = (p: Point): Zone | undefined => habitats.find((z) => isInside(z.polygons, ...p));
  return habitats
    .filter((z) => z.sensitivity! > PLAIN_SENSITIVITY)
    .map((z) => ({
      zone: z.id,
      name: z.name,
      sensitivity: z.sensitivity!,
      length_m: lengthWhere(lines, habitats, (p) => most(p) === z),
    }))
    .filter((s) => s.length_m > 0);
}

function plotClear(layout: Layout, plot: Plot): PlotClear {
  const shapes = [...layout.parts.map((p) => p.outline), ...layout.joints.map((j) => j.feet)];
  const nearest = Math.min(...shapes.map((s) => Math.max(0, signedDistance(s, plot.x, plot.y))));
  const circle = circleOf(plot);
  return {
    plot: plot.id,
    keep_off_m: plot.keep_off_m,
    nearest_m: Number.isFinite(nearest) ? nearest : null,
    overlap_m2:
      nearest >= plot.keep_off_m || polygonsArea(circle) === 0 ? 0 : sharedArea(shapes, toPaths(circle)),
  };
}

/** The keep-off circle with 360 corners on it. */
const circleOf = ({ x, y, keep_off_m: r }: Plot): Polygons => [
  [
    Array.from({ length: 360 }, (_, k) => {
      const a = (k * Math.PI) / 180;
      return [x + r * Math.cos(a), y + r * Math.sin(a)] as const;
    }),
  ],
];

function boxesMeet(a: Polygons, b: Polygons): boolean {
  const [p, q] = [bounds(a), bounds(b)];
  return p !== null && q !== null && p[0] <= q[2] && q[0] <= p[2] && p[1] <= q[3] && q[1] <= p[3];
}
