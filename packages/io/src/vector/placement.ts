import type { Json } from "@causey/engine/formula";
import type { Crs } from "@causey/engine/site";
import { crsName, lonLatAccuracy, toGrid } from "../crs/index.ts";
import type { Findings } from "../problem/index.ts";

/** Turns a position of the file into the site's grid; null, with a problem reported, for one that has no place. */
export type Placement = (place: string, position: Json | undefined) => readonly [number, number] | null;

const EPSG_NAME = /^(?:urn:(?:x-)?ogc:def:crs:EPSG:[\d.]*:|EPSG:)(\d{1,7})$/i;
const LON_LAT_NAME =
  /^(?:urn:(?:x-)?ogc:def:crs:OGC:[\d.]*:CRS84|OGC:CRS84|(?:urn:(?:x-)?ogc:def:crs:EPSG:[\d.]*:|EPSG:)4326)$/i;

/**
 * Coordinates are longitude and latitude (RFC 7946) unless the older member "crs" names the site's own system: its
 * EPSG code, or "local" (or the grid's own name) for a local grid. Anything else is a problem, never a guess.
 */
export function readPlacement(found: Findings, member: Json | undefined, crs: Crs): Placement {
  if (member === undefined) return lonLatPlacement(found, crs);
  const name = crsMemberName(member);
  if (name === null) return badMember(found, member, crs);
  if (LON_LAT_NAME.test(name)) return lonLatPlacement(found, crs);
  const code = EPSG_NAME.exec(name)?.[1];
  const isSite =
    crs.kind === "epsg" ? Number(code) === crs.code : name === "local" || name === `local:${crs.name}`;
  return isSite ? gridPlacement(found) : badMember(found, name, crs);
}

function crsMemberName(member: Json): string | null {
  if (typeof member !== "object" || member === null || !("properties" in member)) return null;
  const properties = member.properties as Json;
  if (typeof properties !== "object" || properties === null || !("name" in properties)) return null;
  return typeof properties.name === "string" ? properties.name.trim() : null;
}

function badMember(found: Findings, value: unknown, crs: Crs): never {
  const own = crs.kind === "epsg" ? `urn:ogc:def:crs:EPSG::${crs.code}` : "local";
  return found.stop({
    code: "geojson-crs",
    place: "crs",
    value,
    message: `The file's coordinates are in another system than the plan's (${crsName(crs)}).`,
    mend:
      crs.kind === "epsg"
        ? `Export it in longitude and latitude (leave out "crs"), or in ${crsName(crs)} with "crs": {"type": "name", "properties": {"name": "${own}"}}.`
        : 'Export it in the local grid, with "crs": {"type": "name", "properties": {"name": "local"}}.',
  });
}

const pair = (position: Json | undefined): readonly [number, number] | null =>
  Array.isArray(position) && typeof position[0] === "number" && typeof position[1] === "number"
    ? [position[0], position[1]]
    : null;

const notAPosition = (found: Findings, place: string, position: Json | undefined): null => {
  found.error({
    code: "geojson-position",
    place,
    value: position,
    message: "This is not a position of two numbers.",
    mend: "Write [east, north] or [longitude, latitude].",
  });
  return null;
};

/** Beyond this, distances computed in doubles lose their millimetres; no grid on earth reaches it [m]. */
const FARTHEST_M = 1e8;

const gridPlacement =
  (found: Findings): Placement =>
  (place, position) => {
    const at = pair(position);
    return at === null || Math.hypot(...at) > FARTHEST_M ? notAPosition(found, place, position) : at;
  };

function lonLatPlacement(found: Findings, crs: Crs): Placement {
  if (crs.kind === "local")
    return found.stop({
      code: "geojson-crs",
      place: "crs",
      message: `Without a member "crs" the coordinates are longitude and latitude, but the plan is on ${crsName(crs)}.`,
      mend: 'Give coordinates of the local grid in metres, and add "crs": {"type": "name", "properties": {"name": "local"}}.',
    });
  const accuracy = lonLatAccuracy(crs);
  if (accuracy.grade === "unknown")
    return found.stop({
      code: "geojson-datum-shift",
      place: "crs",
      value: "longitude and latitude",
      message: accuracy.note,
      mend: `Export the file in ${crsName(crs)} with "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::${crs.code}"}}.`,
    });
  const map = toGrid(crs);
  let isTold = accuracy.grade === "good";
  return (place, position) => {
    const at = pair(position);
    if (at === null) return notAPosition(found, place, position);
    if (Math.abs(at[0]) > 180 || Math.abs(at[1]) > 90) return notDegrees(found, place, at, crs);
    const spot = map(...at);
    if (spot === null || Math.hypot(...spot) > FARTHEST_M) return notAPosition(found, place, position);
    if (!isTold)
      found.warn({
        code: "datum-shift",
        place: "crs",
        value: "longitude and latitude",
        message: accuracy.note,
        mend: `For exact places export the file in ${crsName(crs)}.`,
      });
    isTold = true;
    return spot;
  };
}

/** Grid coordinates in a file that does not say so: the commonest slip, so the whole file is refused with one message. */
const notDegrees = (
  found: Findings,
  place: string,
  at: readonly [number, number],
  crs: Crs & { kind: "epsg" },
): never =>
  found.stop({
    code: "geojson-degrees",
    place,
    value: `${at[0]}, ${at[1]}`,
    message:
      "These numbers cannot be longitude and latitude; the file does not say which system they are in.",
    mend: `If they are in ${crsName(crs)}, add "crs": {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::${crs.code}"}}; otherwise export the file in longitude and latitude.`,
  });
