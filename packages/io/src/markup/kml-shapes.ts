import type { Position } from "../layer-form/index.ts";
import type { Findings } from "../problem/index.ts";
import { numberWithin } from "./decimal-degrees.ts";
import { childOf, childrenOf, eachElement, elementsIn, textOf, type XmlElement } from "./xml-element.ts";

/** Further away than any height of a position [m]; it is checked to be a number and left out. */
const ANY_HEIGHT = 1e9;

interface Shape {
  readonly type: "Point" | "LineString" | "Polygon";
  readonly coordinates: unknown;
}

/**
 * Shapes of KML placemarks. Every list of coordinates is read as it stands: a number that is none is a problem, an
 * outline that is not closed stays open, and a list where KML has no place for one is told.
 */
export class KmlShapes {
  readonly #found: Findings;
  /** Lists of coordinates by their elements, until a shape takes them. */
  readonly #lists = new Map<XmlElement, readonly Position[]>();

  /** Reads and checks every list of coordinates inside `root`. */
  constructor(found: Findings, root: XmlElement) {
    this.#found = found;
    const counts = new Map<string, number>();
    eachElement(root, (e) => {
      if (e.name !== "coordinates" && e.name !== "gx:coord" && e.name !== "coord") return;
      const count = (counts.get(e.name) ?? 0) + 1;
      counts.set(e.name, count);
      const text = textOf(e).trim();
      const corners = e.name === "coordinates" ? cornersOf(text) : [text.split(/\s+/)];
      this.#lists.set(
        e,
        corners.map((c) => positionOf(c) ?? this.#fault(`${e.name} ${count}`, c.join(","))),
      );
    });
  }

  #fault(place: string, value: string): Position {
    this.#found.error({
      code: "kml-position",
      place,
      value,
      message:
        "This is not a longitude and a latitude in degrees (and perhaps a height), with commas between.",
      mend: "Correct it, or take the placemark out of the file.",
    });
    return [0, 0];
  }

  /** The shape of a placemark, null for none. `place` names it in messages. */
  of(placemark: XmlElement, place: string): object | null {
    const shapes: Shape[] = [];
    this.#collect(placemark, place, shapes);
    let strays = 0;
    eachElement(placemark, (e) => {
      if (this.#lists.has(e)) strays += 1;
    });
    if (strays > 0) this.#stray(place, strays);
    if (shapes.length < 2) return shapes[0] ?? null;
    return { type: "GeometryCollection", geometries: shapes };
  }

  #collect(parent: XmlElement, place: string, shapes: Shape[]): void {
    for (const e of elementsIn(parent)) {
      if (/^(MultiGeometry|(gx:)?MultiTrack)$/.test(e.name)) this.#collect(e, place, shapes);
      else if (e.name === "Point") this.#point(e, place, shapes);
      else if (e.name === "LineString" || e.name === "LinearRing")
        this.#line(this.#take(childOf(e, "coordinates")), shapes);
      else if (e.name === "Polygon") this.#polygon(e, shapes);
      else if (e.name === "Track" || e.name === "gx:Track")
        this.#line(
          elementsIn(e).flatMap((c) => this.#take(c.name === "coord" || c.name === "gx:coord" ? c : null)),
          shapes,
        );
    }
  }

  #take(e: XmlElement | null): readonly Position[] {
    if (e === null) return [];
    const list = this.#lists.get(e) ?? [];
    this.#lists.delete(e);
    return list;
  }

  #point(e: XmlElement, place: string, shapes: Shape[]): void {
    const list = this.#take(childOf(e, "coordinates"));
    if (list.length > 1)
      this.#found.error({
        code: "kml-position",
        place,
        value: `${list.length} positions`,
        message: "A point has more than one position.",
        mend: "Write a position without blanks, as -70.5,41.25; draw a line as a line.",
      });
    if (list.length > 0) shapes.push({ type: "Point", coordinates: list[0] });
  }

  /** A track of one position is a point. */
  #line(list: readonly Position[], shapes: Shape[]): void {
    if (list.length > 1) shapes.push({ type: "LineString", coordinates: list });
    else if (list.length === 1) shapes.push({ type: "Point", coordinates: list[0] });
  }

  #polygon(e: XmlElement, shapes: Shape[]): void {
    const rings = ["outerBoundaryIs", "innerBoundaryIs"]
      .flatMap((border) => childrenOf(e, border))
      .flatMap((border) => childrenOf(border, "LinearRing"))
      .map((ring) => this.#take(childOf(ring, "coordinates")));
    if (rings.length > 0) shapes.push({ type: "Polygon", coordinates: rings });
  }

  #stray(place: string, lists: number): void {
    this.#found.error({
      code: "kml-area",
      place,
      value: `${lists} lists of coordinates`,
      message: "Coordinates of this placemark stand where KML has no place for them.",
      mend: "Draw it again and export the file once more.",
    });
  }
}

/** "1,2 3,4", and with blanks about its commas too, as some programs write it. Blanks are made single first: long ones take very long otherwise. */
const cornersOf = (text: string): readonly (readonly string[])[] =>
  text === ""
    ? []
    : text
        .split(/\s+/)
        .join(" ")
        .replaceAll(/ ?, ?/g, ",")
        .split(" ")
        .map((corner) => corner.split(","));

function positionOf(parts: readonly string[]): Position | null {
  if (parts.length < 2 || parts.length > 3) return null;
  const [lon, lat] = [numberWithin(parts[0]!, 180), numberWithin(parts[1]!, 90)];
  const isSound = parts.length === 2 || numberWithin(parts[2]!, ANY_HEIGHT) !== null;
  return lon === null || lat === null || !isSound ? null : [lon, lat];
}
