import type { Json, JsonObject } from "@causey/engine/formula";
import {
  LayerBuilder,
  layerName,
  type LayerBudget,
  type Position,
  type VectorLayer,
} from "../layer-form/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { numberWithin } from "./decimal-degrees.ts";
import { parseXml } from "./parse-xml.ts";
import {
  attribute,
  childOf,
  childrenOf,
  eachElement,
  elementsIn,
  textOf,
  type XmlElement,
} from "./xml-element.ts";

const POSITIONS = ["wpt", "trkpt", "rtept"] as const;
type PositionTag = (typeof POSITIONS)[number];
const isPosition = (name: string): name is PositionTag => POSITIONS.includes(name as PositionTag);

/** Fields of a waypoint, track or route that become properties (GPX 1.0 and 1.1). */
const FIELDS = ["name", "cmt", "desc", "type", "time", "keywords", "src", "number", "sym"] as const;

/**
 * Reads GPX 1.0 and 1.1: one layer each for waypoints, tracks and routes that the file holds, in longitude and
 * latitude on WGS 84. Times and readings along a track are left out. Throws `ProblemError`.
 */
export function readGpx(
  found: Findings,
  name: string,
  bytes: Uint8Array,
  budget: LayerBudget,
): readonly VectorLayer[] {
  const root = parseXml(found, bytes, "gpx");
  const places = new Positions(found);
  eachElement(root, (e) => {
    if (isPosition(e.name)) places.check(e, e.name);
  });
  found.throwIfErrors();
  const layer = (what: string): LayerBuilder => new LayerBuilder(found, `${layerName(name)} ${what}`, budget);
  const [waypoints, tracks, routes] = [layer("waypoints"), layer("tracks"), layer("routes")];
  const counts = { waypoints: 0, tracks: 0, routes: 0, short: 0 };
  const addLine = (builder: LayerBuilder, key: "tracks" | "routes", e: XmlElement): void => {
    const parts = key === "tracks" ? childrenOf(e, "trkseg") : [e];
    const lines = parts
      .map((part) => childrenOf(part, key === "tracks" ? "trkpt" : "rtept").map((p) => places.take(p)))
      .filter((line) => line.length > 1);
    if (lines.length === 0) return void (counts.short += 1);
    counts[key] += 1;
    builder.add(
      null,
      propertiesOf(e),
      lines.length === 1
        ? { type: "LineString", coordinates: lines[0] }
        : { type: "MultiLineString", coordinates: lines },
    );
  };
  for (const e of elementsIn(root))
    if (e.name === "wpt") {
      counts.waypoints += 1;
      waypoints.add(null, propertiesOf(e), { type: "Point", coordinates: places.take(e) });
    } else if (e.name === "trk") addLine(tracks, "tracks", e);
    else if (e.name === "rte") addLine(routes, "routes", e);
  places.refuseStrays();
  warnShortLines(found, counts.short, counts.short + counts.tracks + counts.routes);
  return (
    [
      ["waypoints", waypoints],
      ["tracks", tracks],
      ["routes", routes],
    ] as const
  )
    .filter(([key]) => counts[key] > 0)
    .map(([, builder]) => builder.layer(found.file, "lon-lat"));
}

/** Every position of the file: each is checked, and each must come to stand in a waypoint, track or route. */
class Positions {
  readonly #found: Findings;
  readonly #at = new Map<XmlElement, Position>();
  readonly #counts = { wpt: 0, trkpt: 0, rtept: 0 };

  constructor(found: Findings) {
    this.#found = found;
  }

  check(e: XmlElement, tag: PositionTag): void {
    this.#counts[tag] += 1;
    const [lat, lon] = [attribute(e, "lat"), attribute(e, "lon")];
    const [y, x] = [numberWithin(lat?.trim() ?? "", 90), numberWithin(lon?.trim() ?? "", 180)];
    if (x !== null && y !== null) return void this.#at.set(e, [x, y]);
    const name = textOf(childOf(e, "name"));
    this.#found.error({
      code: "gpx-position",
      place: `${tag} ${this.#counts[tag]}${name === "" ? "" : ` (${quote(name)})`}`,
      value: `lat ${lat ?? "missing"}, lon ${lon ?? "missing"}`,
      message: "The position is not a latitude and a longitude in degrees.",
      mend: "Correct it, or take it out of the file.",
    });
  }

  /** The position of a checked element, which then stands where it should. */
  take(e: XmlElement): Position {
    const at = this.#at.get(e)!;
    this.#at.delete(e);
    return at;
  }

  refuseStrays(): void {
    if (this.#at.size === 0) return;
    const [stray] = this.#at.keys();
    this.#found.error({
      code: "gpx-stray",
      place: stray!.name,
      value: `${this.#at.size} positions`,
      message: "Positions stand where GPX has no place for them, outside of any waypoint, track or route.",
      mend: "Export the file again from the program it came from.",
    });
  }
}

/** Fields, extensions (by their tags, without a colon) and links. */
function propertiesOf(e: XmlElement): JsonObject {
  const properties = new Map<string, Json>();
  for (const field of FIELDS) {
    const text = textOf(childOf(e, field));
    if (text !== "") properties.set(field, text);
  }
  for (const extensions of childrenOf(e, "extensions"))
    eachElement(extensions, (x) => {
      if (x !== extensions && elementsIn(x).length === 0)
        properties.set(x.name.replace(":", "_"), textOf(x).trim());
    });
  const links = childrenOf(e, "link").map((link): Json => {
    const [href, text, type] = [
      attribute(link, "href"),
      textOf(childOf(link, "text")),
      textOf(childOf(link, "type")),
    ];
    return { href, ...(text === "" ? {} : { text }), ...(type === "" ? {} : { type }) };
  });
  if (links.length > 0) properties.set("links", links);
  return Object.fromEntries(properties);
}

function warnShortLines(found: Findings, short: number, all: number): void {
  if (short > 0)
    found.warn({
      code: "gpx-short",
      place: "tracks and routes",
      value: `${short} of ${all}`,
      message: `${short} tracks or routes have fewer than two positions and were left out.`,
      mend: "Mark single places as waypoints.",
    });
}
