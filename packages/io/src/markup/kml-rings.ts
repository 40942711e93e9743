import type { Document, Element } from "@xmldom/xmldom";
import type { Findings } from "../problem/index.ts";

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

type Corner = readonly string[];

/**
 * Checks every list of coordinates in a KML document and writes it back with single blanks: the converter passes over
 * numbers that it cannot read, and so would shift a height into a latitude, and takes very long over long blanks.
 */
export function checkCoordinates(found: Findings, document: Document): void {
  Array.from(document.getElementsByTagName("coordinates")).forEach((element, i) => {
    const corners = words(words(element.textContent).join(" ").replaceAll(/ ?, ?/g, ","));
    const bad = corners.find((t) => !isPosition(t.split(",")));
    if (bad !== undefined) report(found, `coordinates ${i + 1}`, bad);
    element.textContent = corners.join(" ");
  });
  for (const tag of ["gx:coord", "coord"])
    Array.from(document.getElementsByTagName(tag)).forEach((element, i) => {
      const parts = words(element.textContent);
      if (!isPosition(parts)) report(found, `${tag} ${i + 1}`, parts.join(" "));
      element.textContent = parts.join(" ");
    });
}

const words = (text: string | null): string[] => (text ?? "").split(/\s+/).filter((t) => t !== "");

function isPosition(parts: Corner): boolean {
  if (parts.length < 2 || parts.length > 3 || !parts.every((p) => NUMBER.test(p))) return false;
  return Math.abs(Number(parts[0])) <= 180 && Math.abs(Number(parts[1])) <= 90;
}

const report = (found: Findings, place: string, value: string): void =>
  found.error({
    code: "kml-position",
    place,
    value,
    message: "This is not a longitude and a latitude in degrees (and perhaps a height), with commas between.",
    mend: "Correct it, or take the placemark out of the file.",
  });

/**
 * For each ring of a placemark's areas, in the order of the converter, whether its last corner repeats its first. The
 * converter closes open rings without a word, and drops those of fewer than three corners.
 */
export function ringsClosed(placemark: Element): readonly boolean[] {
  return Array.from(placemark.getElementsByTagName("Polygon"))
    .flatMap((polygon) => Array.from(polygon.getElementsByTagName("LinearRing")))
    .flatMap((ring) => {
      const text = ring.getElementsByTagName("coordinates").item(0)?.textContent ?? "";
      const corners = text.split(" ").map((c) => c.split(",").map(Number));
      const isClosed = alike(corners[0]!, corners.at(-1)!, 2);
      const isClosedInHeight = alike(corners[0]!, corners.at(-1)!, 3);
      return corners.length + (isClosedInHeight ? 0 : 1) >= 4 ? [isClosed] : [];
    });
}

const alike = (a: readonly number[], b: readonly number[], length: number): boolean =>
  Array.from({ length }, (_, i) => a[i] === b[i]).every(Boolean);

type Rings = readonly (readonly unknown[])[];
interface Shape {
  readonly type: string;
  readonly coordinates?: unknown;
  readonly geometries?: readonly Shape[];
}

/** Takes back the corner with which the converter closed an open ring. Null when the rings do not match the file's. */
export function openAgain(shape: Shape | null, closed: readonly boolean[]): Shape | null | undefined {
  let next = 0;
  const open = (rings: Rings): Rings =>
    rings.map((ring) => (closed[next++] === false ? ring.slice(0, -1) : ring));
  const visit = (s: Shape): Shape => {
    if (s.type === "GeometryCollection") return { ...s, geometries: (s.geometries ?? []).map(visit) };
    return s.type === "Polygon" ? { ...s, coordinates: open(s.coordinates as Rings) } : s;
  };
  const answer = shape === null ? null : visit(shape);
  return next === closed.length ? answer : undefined;
}
