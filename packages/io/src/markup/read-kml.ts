import { kmlGen } from "@tmcw/togeojson";
import type { Document } from "@xmldom/xmldom";
import type { Json, JsonObject } from "@causey/engine/formula";
import { LayerBuilder, jsonOf, layerName, type LayerBudget, type VectorLayer } from "../layer-form/index.ts";
import type { Findings } from "../problem/index.ts";
import { checkCoordinates, openAgain, ringsClosed } from "./kml-rings.ts";
import { converted, parseXml } from "./parse-xml.ts";

/**
 * Reads KML 2.2: its placemarks as one layer in longitude and latitude on WGS 84, with name, description and
 * ExtendedData as properties. Pictures laid over the ground and links to other files are left out with a warning.
 * Throws `ProblemError`.
 */
export function readKml(found: Findings, name: string, bytes: Uint8Array, budget: LayerBudget): VectorLayer {
  const document = parseXml(found, bytes, "kml");
  checkCoordinates(found, document);
  found.throwIfErrors();
  const builder = new LayerBuilder(found, layerName(name), budget);
  const placemarks = Array.from(document.getElementsByTagName("Placemark"));
  const features = kmlGen(document);
  for (const placemark of placemarks) {
    const feature = converted(found, () => features.next().value) as {
      id?: string;
      properties: object;
      geometry: never;
    };
    const shape = openAgain(feature.geometry, ringsClosed(placemark));
    const properties = propertiesOf(feature.properties);
    if (shape === undefined) unreadable(found, builder.placeOf(feature.id ?? null));
    builder.add(feature.id ?? null, properties, shape);
  }
  warnLeftOut(found, document);
  return builder.layer(found.file, "lon-lat");
}

/** A description in HTML is its text; times along a track are left out. */
function propertiesOf(raw: object): JsonObject {
  const { coordinateProperties: _, ...properties } = raw as Readonly<Record<string, unknown>>;
  const entries = Object.entries(jsonOf(properties) as JsonObject).map(([key, value]): [string, Json] => [
    key,
    key === "description" && typeof value === "object" && value !== null && "value" in value
      ? ((value as JsonObject)["value"] ?? null)
      : value,
  ]);
  return Object.fromEntries(entries);
}

const unreadable = (found: Findings, place: string): void =>
  found.error({
    code: "kml-area",
    place,
    message: "The rings of this placemark stand where KML has no place for them.",
    mend: "Draw the area again and export the file once more.",
  });

function warnLeftOut(found: Findings, document: Document): void {
  for (const [tag, what] of [
    ["GroundOverlay", "pictures laid over the ground"],
    ["NetworkLink", "links to other files"],
  ] as const) {
    const count = document.getElementsByTagName(tag).length;
    if (count > 0)
      found.warn({
        code: "kml-left-out",
        place: tag,
        value: count,
        message: `The file holds ${what} (${count}), which are not read.`,
        mend: "Save what they show as placemarks, or give those files themselves.",
      });
  }
}
