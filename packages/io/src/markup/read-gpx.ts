import type { Document, Element } from "@xmldom/xmldom";
import { gpx } from "@tmcw/togeojson";
import type { JsonObject } from "@causey/engine/formula";
import { LayerBuilder, jsonOf, layerName, type LayerBudget, type VectorLayer } from "../layer-form/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { converted, parseXml } from "./parse-xml.ts";

/** Most attributes of the first element: each name space is searched for at every position. */
const ATTRIBUTE_LIMIT = 60;
const KINDS = ["waypoints", "tracks", "routes"] as const;
type Kind = (typeof KINDS)[number];

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
  const document = parseXml(found, bytes, "gpx");
  const attributes = document.documentElement?.attributes.length ?? 0;
  if (attributes > ATTRIBUTE_LIMIT)
    found.error({
      code: "gpx-attributes",
      place: "first element",
      value: `${attributes} attributes`,
      message: `The first element has more than ${ATTRIBUTE_LIMIT} attributes.`,
      mend: "Export the file again without extensions.",
    });
  checkPositions(found, document, budget.features);
  found.throwIfErrors();
  const layers = KINDS.map(
    (kind) => [kind, new LayerBuilder(found, `${layerName(name)} ${kind}`, budget)] as const,
  );
  const builders = new Map(layers);
  const counts = { waypoints: 0, tracks: 0, routes: 0 };
  for (const { properties, geometry } of converted(found, () => gpx(document).features)) {
    const { coordinateProperties: _, _gpxType, ...rest } = properties ?? {};
    const kind: Kind = _gpxType === "trk" ? "tracks" : _gpxType === "rte" ? "routes" : "waypoints";
    counts[kind] += 1;
    builders.get(kind)!.add(null, jsonOf(rest) as JsonObject, geometry);
  }
  warnShortLines(found, document, counts.tracks + counts.routes);
  return layers.filter(([kind]) => counts[kind] > 0).map(([, b]) => b.layer(found.file, "lon-lat"));
}

/** The converter passes over positions that it cannot read; here each of them is a problem. */
function checkPositions(found: Findings, document: Document, most: number): void {
  const count = ["wpt", "trk", "rte"].reduce((n, tag) => n + document.getElementsByTagName(tag).length, 0);
  if (count > most)
    found.stop({
      code: "too-many-features",
      place: "file",
      value: `${count} waypoints, tracks and routes`,
      message: `The file holds more than the ${most} features that are read.`,
      mend: "Keep those that touch the site.",
    });
  for (const tag of ["wpt", "trkpt", "rtept"])
    Array.from(document.getElementsByTagName(tag)).forEach((point, i) => {
      if (degrees(point, "lon", 180) && degrees(point, "lat", 90)) return;
      const name = point.getElementsByTagName("name").item(0)?.textContent;
      found.error({
        code: "gpx-position",
        place: `${tag} ${i + 1}${name ? ` (${quote(name)})` : ""}`,
        value: `lat ${point.getAttribute("lat") ?? "missing"}, lon ${point.getAttribute("lon") ?? "missing"}`,
        message: "The position is not a latitude and a longitude in degrees.",
        mend: "Correct it, or take it out of the file.",
      });
    });
}

function degrees(point: Element, attribute: string, most: number): boolean {
  const text = point.getAttribute(attribute)?.trim() ?? "";
  return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(text) && Math.abs(Number(text)) <= most;
}

function warnShortLines(found: Findings, document: Document, read: number): void {
  const all = document.getElementsByTagName("trk").length + document.getElementsByTagName("rte").length;
  if (all > read)
    found.warn({
      code: "gpx-short",
      place: "tracks and routes",
      value: `${all - read} of ${all}`,
      message: `${all - read} tracks or routes have fewer than two positions and were left out.`,
      mend: "Mark single places as waypoints.",
    });
}
