import { decodeText } from "../files/index.ts";
import { quote, type Findings } from "../problem/index.ts";
import type { XmlElement } from "./xml-element.ts";
import { XmlReader } from "./xml-reader.ts";

/** Largest KML or GPX that is read [bytes]: a track of 100,000 positions with heights and times fits. */
const BYTE_LIMIT = 12_000_000;

/** The first element of a KML or GPX file, which must be `root`. Throws `ProblemError`. */
export function parseXml(found: Findings, bytes: Uint8Array, root: "kml" | "gpx"): XmlElement {
  const text = decodeText(found, bytes, BYTE_LIMIT).replace(/^\ufeff/, "");
  const element = new XmlReader(found, text.includes("\r") ? text.replaceAll(/\r\n?/g, "\n") : text).read();
  if (element.name !== root)
    found.stop({
      code: "xml-root",
      place: "first element",
      value: element.name,
      message: `The first element is ${quote(element.name)}, not ${quote(root)}.`,
      mend: `Export the file as ${root.toUpperCase()} again.`,
    });
  return element;
}
