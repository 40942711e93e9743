import {
  groundAt,
  isShut,
  ruledArea,
  type Plot,
  type Polygons,
  type Site,
  type Zone,
} from "../site/index.ts";
import { AreaSum } from "./area-sum.ts";
import { placeOf, type Lattice } from "./lattice.ts";
import { INSIDE, markZone } from "./zone-mask.ts";

/** Ground outside every habitat counts as plain upland grass. */
export const PLAIN_SENSITIVITY = 1;

/** What the lattice reads of ground and zones alone: it stays while only plots move. */
export interface GroundFields {
  /** Ground at every point [m above the site datum], NaN where unknown. */
  readonly ground: Float32Array;
  readonly sensitivity: Float32Array;
  readonly leastSensitivity: number;
  /** 1: the point's cell touches a shut zone or unknown ground. */
  readonly shutPoints: Uint8Array;
  /** Sensitivity summed over points. */
  readonly harm: AreaSum;
  /** Points whose cell touches a channel or pool. */
  readonly water: AreaSum;
}

/** Fields of one lattice: read in constant time by the search. */
export interface Fields extends GroundFields {
  /** Points whose cell touches what no part may cover: shut zones, keep-off circles, unknown ground. */
  readonly blocked: AreaSum;
}

/** Zones that no part may cover while laying, each with the buffer around it. */
export const shutAreas = (site: Site, from: string, to: string): readonly Polygons[] =>
  site.zones.filter((z) => isShut(z, from, to)).map(ruledArea);

/** Areas that no part may cover: shut zones with their buffers, and the keep-off circle of every plot. */
export const noPartAreas = (site: Site, from: string, to: string): readonly Polygons[] => [
  ...shutAreas(site, from, to),
  ...keepOffAreas(site.plots),
];

/** The keep-off circles of plots that have one. */
export const keepOffAreas = (plots: readonly Plot[]): readonly Polygons[] =>
  plots.filter((p) => p.keep_off_m > 0).map((p) => circleAround(p.x, p.y, p.keep_off_m));

/** A many-sided ring that contains the circle. */
function circleAround(x: number, y: number, radius: number): Polygons {
  const sides = 48;
  const r = radius / Math.cos(Math.PI / sides);
  return [[Array.from({ length: sides }, (_, k) => at(x, y, r, (2 * Math.PI * k) / sides))]];
}
const at = (x: number, y: number, r: number, a: number): [number, number] => [
  x + r * Math.cos(a),
  y + r * Math.sin(a),
];

export const isWater = (z: Zone): boolean => z.use === "channel" || z.use === "pool";

/** Habitats by rising sensitivity, so that the most sensitive is written last. */
export const habitatsOf = (site: Site): readonly Zone[] =>
  site.zones
    .filter((z) => z.use === "habitat" && z.sensitivity !== undefined)
    .sort((a, b) => a.sensitivity! - b.sensitivity! || (a.id < b.id ? -1 : 1));

/** `taken`: outlines of parts that already lie there. */
export const makeFields = (
  l: Lattice,
  site: Site,
  from: string,
  to: string,
  taken: readonly Polygons[] = [],
): Fields => blockAlso(l, groundFields(l, site, from, to), [...keepOffAreas(site.plots), ...taken]);

/** Reads terrain and zones at every point of a lattice. */
export function groundFields(l: Lattice, site: Site, from: string, to: string): GroundFields {
  const points = l.nx * l.ny;
  const ground = new Float32Array(points);
  for (let j = 0; j < l.ny; j++)
    for (let i = 0; i < l.nx; i++) {
      const [x, y] = placeOf(l, i, j);
      ground[j * l.nx + i] = groundAt(site.terrain, x, y);
    }
  const shutPoints = touched(l, shutAreas(site, from, to), new Uint8Array(points));
  for (let p = 0; p < points; p++) shutPoints[p] = shutPoints[p] !== 0 || Number.isNaN(ground[p]!) ? 1 : 0;
  const water = touched(
    l,
    site.zones.filter(isWater).map((z) => z.polygons),
    new Uint8Array(points),
  );
  const sensitivity = new Float32Array(points).fill(PLAIN_SENSITIVITY);
  for (const zone of habitatsOf(site)) paint(l, zone, sensitivity);
  return {
    ground,
    sensitivity,
    leastSensitivity: sensitivity.reduce((a, b) => Math.min(a, b), Infinity),
    shutPoints,
    harm: new AreaSum(l.nx, l.ny, (p) => sensitivity[p]!, false),
    water: new AreaSum(l.nx, l.ny, (p) => (water[p] !== 0 ? 1 : 0), true),
  };
}

/** The same ground with further areas that no part may cover. */
export function blockAlso(l: Lattice, ground: GroundFields, areas: readonly Polygons[]): Fields {
  const blocked = touched(l, areas, ground.shutPoints.slice());
  return { ...ground, blocked: new AreaSum(l.nx, l.ny, (p) => (blocked[p] !== 0 ? 1 : 0), true) };
}

/** Marks the points whose cell touches an area. */
function touched(l: Lattice, areas: readonly Polygons[], mask: Uint8Array): Uint8Array {
  for (const area of areas) markZone(l, area, l.step * Math.SQRT1_2, mask);
  return mask;
}

function paint(l: Lattice, zone: Zone, sensitivity: Float32Array): void {
  const mask = new Uint8Array(l.nx * l.ny);
  markZone(l, zone.polygons, 0, mask);
  for (let p = 0; p < mask.length; p++) if ((mask[p]! & INSIDE) !== 0) sensitivity[p] = zone.sensitivity!;
}
