import { monthDayWords, type Zone, type ZoneUse } from "@causey/engine/site";

export const zoneUseWords: Readonly<Record<ZoneUse, string>> = {
  habitat: "habitat",
  closed: "closed",
  "seasonal-closure": "closed for a season",
  buffer: "buffer, keep out",
  "soft-ground": "soft ground",
  channel: "channel",
  pool: "pool",
  parcel: "parcel line",
};

/** Zones are drawn in this order, so that a rule is never hidden by the ground it lies on. */
const order: readonly ZoneUse[] = [
  "habitat",
  "soft-ground",
  "pool",
  "channel",
  "parcel",
  "buffer",
  "seasonal-closure",
  "closed",
];

export const drawingOrder = (zones: readonly Zone[]): readonly Zone[] =>
  zones.toSorted((a, b) => order.indexOf(a.use) - order.indexOf(b.use));

/** What a zone says on the map. A hidden zone says so and gives no name. */
export function zoneLabel(zone: Zone): string {
  if (zone.hidden) return "hidden: kept out of papers";
  if (zone.use === "seasonal-closure" && zone.from && zone.to)
    return `closed ${monthDayWords(zone.from)} to ${monthDayWords(zone.to)}`;
  return zone.name;
}

/** Areas drawn on this page carry this source. */
export const DRAWN_HERE = "drawn on the map";

/** Areas that a hand tool may take away again; surveyed ground stays. */
export const isRemovable = (zone: Zone): boolean => zone.use === "closed" || zone.source === DRAWN_HERE;
