import { overlapArea, type Layout } from "../layout/index.ts";
import { isShut, ruledArea, type Zone } from "../site/index.ts";
import type { Visit } from "./document.ts";

export interface VisitClosuresInput {
  readonly visits: readonly Visit[];
  readonly zones: readonly Zone[];
  readonly layout: Layout;
  /** ISO day by which the walkway is out: the last day of visits that have none. */
  readonly out: string;
}

/**
 * Visits whose days meet the closed season of an area that the walkway passes through, or nearer than its buffer.
 * The search holds closures against the days of laying alone, so such a line can be found and must be said.
 */
export function visitClosureCautions({ visits, zones, layout, out }: VisitClosuresInput): string[] {
  const outlines = layout.parts.map((p) => p.outline);
  return zones
    .filter((zone) => zone.use === "seasonal-closure")
    .flatMap((zone) => {
      const met = visits.filter((v) => isShut(zone, v.from, v.to ?? out));
      if (met.length === 0 || overlapArea(outlines, ruledArea(zone)) <= 0) return [];
      const place =
        overlapArea(outlines, zone.polygons) > 0 ? "through it" : `within its buffer of ${zone.buffer_m} m`;
      return met.map((visit) => closureWords(visit, zone, place, out));
    });
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
