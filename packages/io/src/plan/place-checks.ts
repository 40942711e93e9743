import {
  bounds,
  groundAt,
  isInside,
  isShut,
  rasterExtent,
  type Plot,
  type Raster,
  type Start,
  type Zone,
} from "@causey/engine/site";
import type { Plan } from "@causey/engine/plan";
import { Findings, quote } from "../problem/index.ts";
import { extentText } from "./terrain-checks.ts";

export interface Places {
  readonly starts: readonly Start[];
  readonly plots: readonly Plot[];
}

interface NamedPlace {
  readonly what: "start" | "plot";
  readonly at: Start;
}

const all = ({ starts, plots }: Places): NamedPlace[] => [
  ...starts.map((at) => ({ what: "start", at }) as const),
  ...plots.map((at) => ({ what: "plot", at }) as const),
];

const spot = (p: Start): string => `${p.x.toFixed(1)}, ${p.y.toFixed(1)}`;
const placeOf = ({ what, at }: NamedPlace): string => `${what} ${quote(at.name)} (${at.id})`;

/** A walkway needs somewhere to begin and somewhere to go: an unfinished plan may be read, but says so. */
export function checkAnyPlace(found: Findings, places: Places): void {
  for (const kind of ["start", "plot"] as const)
    if (places[`${kind}s`].length === 0)
      found.warn({
        code: "no-places",
        place: "features",
        message: `There is no ${kind} yet: no walkway can be laid out.`,
        mend: `Add one on the Site page, among its Lists; in places.geojson it is a Point with "kind": "${kind}".`,
      });
}

/** Starts and plots must lie on the terrain, where it has data. */
export function checkOnTerrain(found: Findings, places: Places, terrain: Raster, terrainFile: string): void {
  const [west, south, east, north] = rasterExtent(terrain);
  for (const place of all(places)) {
    const { x, y } = place.at;
    const isOff = x < west || x > east || y < south || y > north;
    if (!isOff && !Number.isNaN(groundAt(terrain, x, y))) continue;
    found.error({
      code: isOff ? "place-off-terrain" : "place-on-nodata",
      place: placeOf(place),
      value: spot(place.at),
      message: isOff
        ? `The ${place.what} ${quote(place.at.name)} at ${spot(place.at)} lies outside the terrain of ${terrainFile} (${extentText(terrain)}).`
        : `The ${place.what} ${quote(place.at.name)} at ${spot(place.at)} lies on or beside cells of ${terrainFile} that hold no data: its ground is unknown.`,
      mend: isOff
        ? "Correct its position (are east and north swapped, or is it in another system?), or give terrain that covers it."
        : "Move it onto known ground, or survey the ground there and add it to the terrain.",
    });
  }
}

/** Nothing may be laid in a shut zone, and no walkway starts in the water. */
export function checkInZones(
  found: Findings,
  places: Places,
  zones: readonly Zone[],
  laying: Plan["laying"],
): void {
  for (const place of all(places))
    for (const zone of zones) {
      if (!isInside(zone.polygons, place.at.x, place.at.y)) continue;
      if (isShut(zone, laying.from, laying.to)) shut(found, place, zone, laying);
      else if (place.what === "start" && (zone.use === "channel" || zone.use === "pool"))
        inWater(found, place, zone);
    }
}

function shut(found: Findings, place: NamedPlace, zone: Zone, laying: Plan["laying"]): void {
  const days =
    zone.use === "seasonal-closure" && zone.from !== undefined ? `, ${zone.from} to ${zone.to}` : "";
  found.error({
    code: "place-in-shut-zone",
    place: placeOf(place),
    value: spot(place.at),
    message:
      `The ${place.what} ${quote(place.at.name)} at ${spot(place.at)} lies in the zone ${quote(zone.name)} ` +
      `(${zone.use}${days}), which is shut during the laying, ${laying.from} to ${laying.to}.`,
    mend:
      zone.use === "seasonal-closure"
        ? "Move it out of the zone, or lay the walkway outside the closure (laying in plan.json)."
        : "Move it out of the zone; whoever drew the zone decides whether its border may change.",
  });
}

const inWater = (found: Findings, place: NamedPlace, zone: Zone): void =>
  found.error({
    code: "start-in-water",
    place: placeOf(place),
    value: spot(place.at),
    message: `The start ${quote(place.at.name)} at ${spot(place.at)} lies in the ${zone.use} ${quote(zone.name)}.`,
    mend: "Move the start onto firm ground.",
  });

/** A zone far from the terrain has no effect, which its owner would not expect. */
export function checkZonesOnTerrain(found: Findings, zones: readonly Zone[], terrain: Raster): void {
  const [west, south, east, north] = rasterExtent(terrain);
  for (const zone of zones) {
    const box = bounds(zone.polygons);
    if (box === null || (box[0] <= east && box[2] >= west && box[1] <= north && box[3] >= south)) continue;
    found.warn({
      code: "zone-off-terrain",
      place: `zone ${quote(zone.name)} (${zone.id})`,
      value: `east ${box[0].toFixed(1)} to ${box[2].toFixed(1)}, north ${box[1].toFixed(1)} to ${box[3].toFixed(1)}`,
      message: `The zone ${quote(zone.name)} lies wholly outside the terrain (${extentText(terrain)}): it has no effect.`,
      mend: "Check its coordinates and their system, or leave it out.",
    });
  }
}
