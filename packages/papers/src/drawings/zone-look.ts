import type { Zone, ZoneUse } from "@causey/engine/site";
import {
  area,
  hatched,
  type Hatch,
  type Ink,
  type PathShape,
  type Point,
  type Shape,
} from "../scene/index.ts";

/** How each kind of area is drawn: outline, tint and hatch, told apart without colour. */
export interface ZoneLook {
  readonly words: string;
  readonly ink: Ink;
  readonly fill?: PathShape["fill"];
  readonly hatch?: Omit<Hatch, "ink">;
  readonly dash?: readonly number[];
}

const looks: Readonly<Record<ZoneUse, ZoneLook>> = {
  habitat: { words: "habitat", ink: "plants", dash: [2.4, 0.8] },
  closed: {
    words: "closed area",
    ink: "closed",
    fill: "pale-closed",
    hatch: { angle_deg: 45, gap: 1.4, width: 0.16, crossed: true },
  },
  "seasonal-closure": {
    words: "closed for a season",
    ink: "closed",
    hatch: { angle_deg: 45, gap: 1.8, width: 0.16 },
  },
  buffer: {
    words: "buffer, keep out",
    ink: "warning",
    hatch: { angle_deg: -45, gap: 2.4, width: 0.14 },
    dash: [1.2, 0.8],
  },
  "soft-ground": {
    words: "soft ground",
    ink: "earth",
    hatch: { angle_deg: 0, gap: 1.6, width: 0.12, dash: [1, 1.2] },
  },
  channel: {
    words: "channel",
    ink: "water",
    fill: "pale-water",
    hatch: { angle_deg: 0, gap: 1.3, width: 0.12 },
  },
  pool: {
    words: "pool",
    ink: "water",
    fill: "pale-water",
    hatch: { angle_deg: 0, gap: 1.1, width: 0.1, crossed: true },
  },
  parcel: { words: "parcel line", ink: "second", dash: [5, 1, 1, 1] },
};

/** Hatches of habitats, one after the other: each habitat of a site has its own as long as they last. */
const habitatHatches: readonly Omit<Hatch, "ink">[] = [
  { angle_deg: 60, gap: 4.5, width: 0.1, dash: [0.8, 3.2] },
  { angle_deg: 0, gap: 3, width: 0.12, dash: [0.35, 2.6] },
  { angle_deg: 90, gap: 1.5, width: 0.12, dash: [1.4, 0.9] },
  { angle_deg: -60, gap: 3.2, width: 0.1, dash: [2.2, 1.6] },
  { angle_deg: 0, gap: 2.4, width: 0.1, dash: [1.2, 1.2], crossed: true },
  { angle_deg: 30, gap: 2.6, width: 0.1 },
];

/** A symbol of the legend: one for each habitat, one for each other use. */
export interface ZoneSymbol {
  readonly look: ZoneLook;
  readonly words: string;
  readonly zones: readonly Zone[];
}

/** Areas that lie lowest are drawn first. */
const order: readonly Exclude<ZoneUse, "habitat">[] = [
  "soft-ground",
  "pool",
  "channel",
  "buffer",
  "seasonal-closure",
  "closed",
  "parcel",
];

/** The symbols that these zones need, in the order in which they are drawn. */
export function zoneSymbols(zones: readonly Zone[]): ZoneSymbol[] {
  const habitats = zones
    .filter((z) => z.use === "habitat")
    .map((zone, i): ZoneSymbol => ({
      look: { ...looks.habitat, hatch: habitatHatches[i % habitatHatches.length]! },
      words: habitatWords(zone),
      zones: [zone],
    }));
  const others = order.flatMap((use): ZoneSymbol[] => {
    const mine = zones.filter((z) => z.use === use);
    return mine.length > 0 ? [{ look: looks[use], words: wordsOf(use, mine), zones: mine }] : [];
  });
  return [...habitats, ...others];
}

/** A habitat by name; one that is only numbered says what its number is of, and what harm to it counts. */
const habitatWords = (zone: Zone): string =>
  isNumber(zone.name) && zone.sensitivity !== undefined
    ? `habitat ${zone.name}: harm counts ${Number(zone.sensitivity.toFixed(2))} times that to plain ground`
    : `habitat: ${zone.name}`;

/** Names such as "1", "2b" or "07" say nothing on a drawing. */
const isNumber = (name: string): boolean => /^[\s\d.,#-]*\p{L}?$/u.test(name);

/** The name of an area as it stands on drawings and in tables: a mere number gets its kind before it. */
export const nameOnPaper = (zone: Pick<Zone, "name" | "use">): string =>
  isNumber(zone.name) ? `${looks[zone.use].words} ${zone.name}` : zone.name;

/** What stands beside the symbol: a closure says its days. */
function wordsOf(use: ZoneUse, zones: readonly Zone[]): string {
  const days = zones.flatMap((z) => (z.from && z.to ? [`${z.name} ${dayOf(z.from)} to ${dayOf(z.to)}`] : []));
  return days.length > 0 ? `${looks[use].words}: ${days.join("; ")}` : looks[use].words;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** "04-15" as "15 Apr". */
function dayOf(monthDay: string): string {
  const [month, day] = monthDay.split("-").map(Number);
  return `${day} ${MONTHS[(month ?? 0) - 1] ?? monthDay}`;
}

/** An area in its look. */
export function zoneShapes(look: ZoneLook, rings: readonly (readonly Point[])[]): Shape[] {
  return [
    ...(look.fill ? [area(rings, { fill: look.fill })] : []),
    ...(look.hatch ? hatched(rings, { ...look.hatch, ink: look.ink }) : []),
    area(rings, { stroke: outlineOf(look) }),
  ];
}

/** Fill and hatch of an area without its outline. */
export const zoneFill = (look: ZoneLook, rings: readonly (readonly Point[])[]): Shape[] =>
  zoneShapes(look, rings).slice(0, -1);

export const outlineOf = (look: ZoneLook): NonNullable<PathShape["stroke"]> => ({
  ink: look.ink,
  width: look === looks.parcel ? 0.35 : 0.22,
  ...(look.dash ? { dash: look.dash } : {}),
});
