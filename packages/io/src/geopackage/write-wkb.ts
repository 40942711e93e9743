import type { Position, Positions, VectorGeometry } from "../layer-form/index.ts";

const CODES: Readonly<Record<VectorGeometry["type"], number>> = {
  Point: 1,
  LineString: 2,
  Polygon: 3,
  MultiPoint: 4,
  MultiLineString: 5,
  MultiPolygon: 6,
};

/** A shape as a GeoPackage blob: head without an envelope, then little-endian well-known binary in two dimensions. */
export function writeBlob(shape: VectorGeometry, srs: number): Uint8Array {
  const out = new Bytes();
  out.bytes(0x47, 0x50, 0, 1);
  out.int(srs);
  writeShape(out, shape);
  return out.done();
}

function writeShape(out: Bytes, shape: VectorGeometry): void {
  out.bytes(1);
  out.int(CODES[shape.type]);
  switch (shape.type) {
    case "Point":
      return out.position(shape.coordinates);
    case "LineString":
      return out.positions(shape.coordinates);
    case "Polygon":
      return out.list(shape.coordinates.map(closedRing), (ring) => out.positions(ring));
    case "MultiPoint":
      return out.list(shape.coordinates, (p) => writeShape(out, { type: "Point", coordinates: p }));
    case "MultiLineString":
      return out.list(shape.coordinates, (l) => writeShape(out, { type: "LineString", coordinates: l }));
    case "MultiPolygon":
      return out.list(shape.coordinates, (p) => writeShape(out, { type: "Polygon", coordinates: p }));
  }
}

function closedRing(ring: Positions): Positions {
  const [first, last] = [ring[0], ring.at(-1)];
  if (first === undefined || last === undefined || (first[0] === last[0] && first[1] === last[1]))
    return ring;
  return [...ring, first];
}

/** A growing row of bytes. */
class Bytes {
  #buffer = new Uint8Array(128);
  #length = 0;

  bytes(...values: readonly number[]): void {
    this.#buffer.set(values, this.#room(values.length));
  }

  int(value: number): void {
    const at = this.#room(4);
    new DataView(this.#buffer.buffer).setInt32(at, value, true);
  }

  position([x, y]: Position): void {
    const at = this.#room(16);
    const view = new DataView(this.#buffer.buffer);
    view.setFloat64(at, x, true);
    view.setFloat64(at + 8, y, true);
  }

  positions(list: Positions): void {
    this.list(list, (p) => this.position(p));
  }

  list<T>(items: readonly T[], write: (item: T) => void): void {
    this.int(items.length);
    items.forEach(write);
  }

  done(): Uint8Array {
    return this.#buffer.slice(0, this.#length);
  }

  /** Makes room and says where it begins. */
  #room(bytes: number): number {
    const at = this.#length;
    this.#length += bytes;
    if (this.#length > this.#buffer.length) {
      const larger = new Uint8Array(2 * this.#length);
      larger.set(this.#buffer);
      this.#buffer = larger;
    }
    return at;
  }
}
