import type { JsonObject } from "@causey/engine/formula";
import { LayerBuilder, layerName, type LayerBudget, type VectorLayer } from "../layer-form/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import { kmlProperties, lookOf, type KmlDeclared } from "./kml-properties.ts";
import { KmlShapes } from "./kml-shapes.ts";
import { parseXml } from "./parse-xml.ts";
import { attribute, childrenOf, textOf, childOf, type XmlElement } from "./xml-element.ts";

/**
 * Reads KML 2.2: its placemarks as one layer in longitude and latitude on WGS 84, with name, description and
 * ExtendedData as properties. Pictures laid over the ground and links to other files are left out with a warning.
 * Throws `ProblemError`.
 */
export function readKml(found: Findings, name: string, bytes: Uint8Array, budget: LayerBudget): VectorLayer {
  const root = parseXml(found, bytes, "kml");
  const shapes = new KmlShapes(found, root);
  found.throwIfErrors();
  const parts = partsOf(found, root);
  const builder = new LayerBuilder(found, layerName(name), budget);
  for (const placemark of parts.placemarks) {
    const id = attribute(placemark, "id") || null;
    builder.add(id, kmlProperties(placemark, parts), shapes.of(placemark, builder.placeOf(id)));
  }
  warnLeftOut(found, parts.leftOut);
  return builder.layer(found.file, "lon-lat");
}

interface Parts extends KmlDeclared {
  readonly placemarks: readonly XmlElement[];
  /** How many elements of a kind that is not read. */
  readonly leftOut: ReadonlyMap<string, number>;
}

const LEFT_OUT = [
  ["GroundOverlay", "pictures laid over the ground"],
  ["NetworkLink", "links to other files"],
] as const;

function partsOf(found: Findings, root: XmlElement): Parts {
  const placemarks: XmlElement[] = [];
  const [types, styles] = [new Map<string, string>(), new Map<string, JsonObject>()];
  const maps: XmlElement[] = [];
  const leftOut = new Map<string, number>(LEFT_OUT.map(([tag]) => [tag, 0]));
  const visit = (e: XmlElement, isInside: boolean): void => {
    const isPlacemark = e.name === "Placemark";
    if (isPlacemark && isInside) nested(found, e);
    if (isPlacemark) placemarks.push(e);
    else if (e.name === "SimpleField") types.set(attribute(e, "name") ?? "", attribute(e, "type") ?? "");
    else if (e.name === "Style") styles.set(attribute(e, "id") ?? "", lookOf(e));
    else if (e.name === "StyleMap") maps.push(e);
    else if (leftOut.has(e.name)) leftOut.set(e.name, leftOut.get(e.name)! + 1);
    for (const c of e.content) if (typeof c !== "string") visit(c, isInside || isPlacemark);
  };
  visit(root, false);
  for (const map of maps) {
    const normal = childrenOf(map, "Pair")[0];
    const look = normal && styles.get(textOf(childOf(normal, "styleUrl")).trim().replace(/^#/, ""));
    if (look) styles.set(attribute(map, "id") ?? "", look);
  }
  return { placemarks, types, styles, leftOut };
}

const nested = (found: Findings, placemark: XmlElement): never =>
  found.stop({
    code: "kml-nested",
    place: `placemark ${quote(textOf(childOf(placemark, "name")))}`,
    message: "The placemark stands inside another one.",
    mend: "Export the file again from the program it came from.",
  });

function warnLeftOut(found: Findings, counts: ReadonlyMap<string, number>): void {
  for (const [tag, what] of LEFT_OUT) {
    const count = counts.get(tag)!;
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
