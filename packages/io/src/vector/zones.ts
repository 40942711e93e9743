import type { Problem } from "@causey/engine/formula";
import type { Crs, WaterKind, Zone, ZoneUse } from "@causey/engine/site";
import { Findings } from "../problem/index.ts";
import { readCollection, type RawFeature } from "./features.ts";
import type { Placement } from "./placement.ts";
import { Properties, reportTwins } from "./properties.ts";
import { readPolygons } from "./rings.ts";
import { PAIRS_PER_FILE, type PairBudget } from "./self-crossing.ts";

export const ZONE_USES = [
  "habitat",
  "closed",
  "seasonal-closure",
  "buffer",
  "soft-ground",
  "channel",
  "pool",
  "parcel",
] as const satisfies readonly ZoneUse[];

export const WATER_KINDS = ["creek", "ditch", "pool", "panne"] as const satisfies readonly WaterKind[];

export interface ZonesRead {
  readonly zones: readonly Zone[];
  readonly warnings: readonly Problem[];
}

/**
 * Reads `zones.geojson`: Polygon and MultiPolygon features with the properties id, name, use, source, and where they
 * apply sensitivity (habitats), water (channels and pools), from and to (seasonal closures, month and day) and hidden. Other properties are left
 * unread. Names are text, whatever they look like.
 *
 * file   name, for messages
 * crs    the site's system: coordinates come out in it, rings open
 * Throws `ProblemError` with every fault of the file.
 */
export function readZones(file: string, bytes: Uint8Array, crs: Crs): ZonesRead {
  const found = new Findings(file);
  const { features, placement } = readCollection(found, bytes, crs);
  const budget = { pairs: PAIRS_PER_FILE };
  const zones = features.flatMap((f) => readZone(found, f, placement, budget) ?? []);
  const ids = features.flatMap((f) => (f.id === null ? [] : [{ key: f.id, place: f.place }]));
  reportTwins(found, ids, "id", "zone-twins");
  found.throwIfErrors();
  return { zones, warnings: found.warnings };
}

function readZone(
  found: Findings,
  feature: RawFeature,
  placement: Placement,
  budget: PairBudget,
): Zone | null {
  const p = new Properties(found, feature);
  const polygons = readPolygons(found, feature, placement, budget);
  const use = p.choice("use", ZONE_USES);
  const sensitivity = p.number("sensitivity", 0);
  const from = p.monthDay("from");
  const to = p.monthDay("to");
  const buffer_m = p.number("buffer_m", 0);
  const contact = p.optionalText("contact");
  const owner = p.optionalText("owner");
  const water = p.value("water") === undefined ? undefined : p.choice("water", WATER_KINDS);
  const zone = {
    id: p.id(),
    name: p.text("name", 'Give the zone a name ("name").'),
    use,
    polygons: polygons ?? [],
    ...(sensitivity === undefined ? {} : { sensitivity }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    hidden: p.flag("hidden"),
    source: p.text("source", 'Say who drew the zone, when and from what ("source").'),
    ...(buffer_m === undefined ? {} : { buffer_m }),
    ...(contact === undefined ? {} : { contact }),
    ...(owner === undefined ? {} : { owner }),
    ...(water === undefined ? {} : { water }),
  };
  checkDays(p, zone);
  if (!p.isSound || polygons === null) return null;
  warnOfGaps(found, feature.place, zone);
  return zone;
}

/** Both days of a closure, or none: one alone is a slip. */
function checkDays(p: Properties, zone: Zone): void {
  for (const [key, day, other] of [
    ["from", zone.from, zone.to],
    ["to", zone.to, zone.from],
  ] as const)
    if (day === undefined && other !== undefined && p.value(key) === undefined)
      p.fault(key, undefined, "has only one of its two days", `Give "${key}" too, as month and day.`);
}

/** What is allowed but has an effect that the user may not expect. */
function warnOfGaps(found: Findings, place: string, zone: Zone): void {
  if (zone.use === "habitat" && zone.sensitivity === undefined)
    found.warn({
      code: "zone-sensitivity",
      place: `${place}, sensitivity`,
      message: `The habitat "${zone.name}" has no sensitivity: it counts as plain ground.`,
      mend: 'Give "sensitivity": harm per square metre, where plain upland grass is 1.',
    });
  if (zone.use === "seasonal-closure" && zone.from === undefined)
    found.warn({
      code: "zone-days",
      place: `${place}, from`,
      message: `The seasonal closure "${zone.name}" has no days: it counts as closed all year.`,
      mend: 'Give its first and last day (from, to) as month and day, such as "04-15".',
    });
}
