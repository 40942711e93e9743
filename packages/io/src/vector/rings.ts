import type { Json } from "@causey/engine/formula";
import { ringArea, type Polygons, type Ring } from "@causey/engine/site";
import type { Findings } from "../problem/index.ts";
import type { RawFeature } from "./features.ts";
import type { Placement } from "./placement.ts";
import { findCrossing, type PairBudget } from "./self-crossing.ts";

/** Most corners of one ring: an outline drawn along the cells of a 1 m raster for 50 km. */
const RING_LIMIT = 50_000;
/** A ring around less ground than this is a slip of the pen [m2]. */
const LEAST_AREA = 0.01;

/**
 * The polygons of a zone in the site's grid, rings open (the first corner is not repeated). Reports lines and points,
 * rings that are not closed, have fewer than three corners, hold no area or cross themselves; null after a fault.
 */
export function readPolygons(
  found: Findings,
  feature: RawFeature,
  placement: Placement,
  budget: PairBudget,
): Polygons | null {
  const type = feature.geometry["type"];
  const coordinates = feature.geometry["coordinates"];
  if (type !== "Polygon" && type !== "MultiPolygon") return notAnArea(found, feature, type);
  const polygons = type === "Polygon" ? [coordinates ?? null] : coordinates;
  if (!Array.isArray(polygons) || polygons.length === 0) return noRings(found, feature, coordinates);
  const read = polygons.map((rings: Json, i) => {
    if (!Array.isArray(rings) || rings.length === 0) return noRings(found, feature, rings);
    const part = polygons.length > 1 ? `, part ${i + 1}` : "";
    const each = rings.map((ring: Json, n) =>
      readRing(found, `${feature.place}${part}, ring ${n + 1}`, ring, placement, budget),
    );
    return each.every((ring) => ring !== null) ? each : null;
  });
  return read.every((rings) => rings !== null) ? read : null;
}

function notAnArea(found: Findings, feature: RawFeature, type: Json | undefined): null {
  const isLine = type === "LineString" || type === "MultiLineString";
  found.error({
    code: "zone-geometry",
    place: feature.place,
    value: type,
    message: isLine
      ? "A zone is an area; this is a line, and how wide it is would have to be guessed."
      : "A zone is a Polygon or a MultiPolygon; this is neither.",
    mend: isLine
      ? "Widen the line into an area in your mapping program (buffer it by half the width of the channel or ditch)."
      : "Draw the outline of the zone as an area.",
  });
  return null;
}

function noRings(found: Findings, feature: RawFeature, value: unknown): null {
  ringFault(found, feature.place, value, "The polygon has no ring of corners", "Draw its outline.");
  return null;
}

const ringFault = (found: Findings, place: string, value: unknown, message: string, mend: string): void =>
  found.error({ code: "zone-ring", place, value, message: `${message}.`, mend });

function readRing(
  found: Findings,
  place: string,
  raw: Json,
  placement: Placement,
  budget: PairBudget,
): Ring | null {
  if (!Array.isArray(raw)) {
    ringFault(found, place, raw, "This is not a list of corners", "Draw the outline again.");
    return null;
  }
  if (raw.length > RING_LIMIT) {
    const mend = "Simplify the outline in your mapping program.";
    ringFault(
      found,
      place,
      `${raw.length} corners`,
      `The ring has more than the ${RING_LIMIT} corners that are read`,
      mend,
    );
    return null;
  }
  if (raw.length > 1 && !samePosition(raw[0], raw.at(-1))) {
    const mend = "Repeat the first corner at the end of the ring.";
    ringFault(found, place, raw.at(-1), "The ring is not closed: its last corner is not its first", mend);
    return null;
  }
  const corners = raw.slice(0, -1).map((p, i) => placement(`${place}, corner ${i + 1}`, p));
  if (!corners.every((c) => c !== null)) return null;
  return checkShape(found, place, corners, budget) ? corners : null;
}

const samePosition = (a: Json | undefined, b: Json | undefined): boolean =>
  Array.isArray(a) && Array.isArray(b) && a[0] === b[0] && a[1] === b[1];

function checkShape(found: Findings, place: string, ring: Ring, budget: PairBudget): boolean {
  const distinct = new Set(ring.map(([x, y]) => `${x} ${y}`)).size;
  if (distinct < 3) {
    ringFault(
      found,
      place,
      `${distinct} corners`,
      "The ring has fewer than three different corners",
      "Draw its outline.",
    );
    return false;
  }
  const crossing = findCrossing(ring, budget);
  if (crossing === "too-intricate") {
    const mend = "Simplify the outline in your mapping program.";
    ringFault(
      found,
      place,
      `${ring.length} corners`,
      "The ring is too intricate to be checked for crossing itself",
      mend,
    );
    return false;
  }
  if (crossing !== null) {
    const [x, y] = crossing;
    const mend =
      "Redraw the outline so that its edges do not cross (most mapping programs have a command for it).";
    ringFault(found, place, `near ${x.toFixed(2)}, ${y.toFixed(2)}`, "The ring crosses itself", mend);
    return false;
  }
  if (Math.abs(ringArea(ring)) >= LEAST_AREA) return true;
  ringFault(
    found,
    place,
    `${Math.abs(ringArea(ring)).toFixed(4)} m²`,
    "The ring encloses no ground",
    "Draw its outline.",
  );
  return false;
}
