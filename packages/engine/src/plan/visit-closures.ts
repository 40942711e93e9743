import { defineConstant } from "../formula/index.ts";
import { overlapArea, type Layout } from "../layout/index.ts";
import { isShut, ruledArea, signedDistance, type Zone } from "../site/index.ts";
import { showQuantity, type UnitSystem } from "../units/index.ts";
import type { Visit } from "./document.ts";

export interface VisitClosuresInput {
  readonly visits: readonly Visit[];
  readonly zones: readonly Zone[];
  readonly layout: Layout;
  /** ISO day by which the walkway is out: the last day of visits that have none. */
  readonly out: string;
  readonly units: UnitSystem;
}

/** A closed area without a buffer of its own is asked about when the walkway passes nearer than this. */
export const nearClosure = defineConstant(
  "plan.near-closure",
  "Distance at which a closed area without a buffer is still asked about",
  "d_c",
  50,
  "m",
  { id: "trade-practice", title: "Common practice, no source", status: "practice" },
);

/**
 * Visits whose days meet the closed season of an area that the walkway passes through, or nearer than its buffer; for
 * an area without a buffer, nearer than `nearClosure`. The search holds closures against the days of laying alone, so
 * such a line can be found and must be said.
 */
export function visitClosureCautions(input: VisitClosuresInput): string[] {
  const { visits, zones, out } = input;
  return zones
    .filter((zone) => zone.use === "seasonal-closure")
    .flatMap((zone) => {
      const met = visits.filter((v) => isShut(zone, v.from, v.to ?? out));
      const place = met.length === 0 ? null : placeWords(zone, input);
      return place === null ? [] : met.map((visit) => closureWords(visit, zone, place, out));
    });
}

/** How the walkway lies to a closed area; null when it keeps off. */
function placeWords(zone: Zone, { layout, units }: VisitClosuresInput): string | null {
  const outlines = layout.parts.map((p) => p.outline);
  const say = (m: number): string => showQuantity(m, "m", units);
  if (overlapArea(outlines, zone.polygons) > 0) return "through it";
  if (zone.buffer_m !== undefined && zone.buffer_m > 0)
    return overlapArea(outlines, ruledArea(zone)) > 0 ? `within its buffer of ${say(zone.buffer_m)}` : null;
  const near = Math.min(...layout.joints.map((j) => signedDistance(zone.polygons, j.x, j.y)));
  return near < nearClosure({})
    ? `${say(near)} from it at the nearest joint; it has no buffer of its own`
    : null;
}

/** A hidden area keeps its days and its officer to itself: this text also stands on papers. */
function closureWords(visit: Visit, zone: Zone, place: string, out: string): string {
  const days =
    zone.from && zone.to ? `closed ${zone.from} to ${zone.to}, month-day` : "closed, days not told";
  const officer = zone.contact ? `the officer (${zone.contact})` : "the officer";
  const period = `${visit.from} to ${visit.to ?? out}`;
  return zone.hidden
    ? `The visit "${visit.name}", ${period}, meets the closed season of "${zone.name}", and the walkway passes near: ask the officer.`
    : `The visit "${visit.name}", ${period}, meets the closed season of "${zone.name}" (${days}), and the walkway passes ${place}: ask ${officer} whether visits may go on then. The line was held against closures for the days of laying alone.`;
}
