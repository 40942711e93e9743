import { ShapeFault } from "../layer-form/index.ts";

const NAMES: Readonly<Record<number, string>> = {
  1: "Point",
  2: "LineString",
  3: "Polygon",
  4: "MultiPoint",
  5: "MultiLineString",
  6: "MultiPolygon",
  7: "GeometryCollection",
};
const DEPTH_LIMIT = 8;
/** Bytes of the head of one shape: byte order and type. */
const HEAD = 5;
const ENVELOPE_BYTES = [0, 32, 48, 48, 64] as const;

/**
 * The shape in a GeoPackage blob (GeoPackage 1.3, clause 2.1.3): its head with any envelope, then well-known binary
 * in either byte order, with or without heights and measures (ISO 13249-3 and the older extended codes). Null for an
 * empty shape. Every count is held against the bytes before memory is taken. Throws `ShapeFault`.
 */
export function readBlob(bytes: Uint8Array): object | null {
  if (bytes.length < 8 || bytes[0] !== 0x47 || bytes[1] !== 0x50)
    throw new ShapeFault("is not stored in the form of a GeoPackage");
  const flags = bytes[3]!;
  if ((flags & 0x20) !== 0) throw new ShapeFault("is stored in an extended form that is not read");
  const envelope = ENVELOPE_BYTES[(flags >> 1) & 7];
  if (envelope === undefined) throw new ShapeFault("has an envelope of an unknown kind");
  if ((flags & 0x10) !== 0) return null;
  if (8 + envelope > bytes.length) throw new ShapeFault("is cut off");
  return new WkbReader(bytes.subarray(8 + envelope)).shape(0);
}

class WkbReader {
  readonly #view: DataView;
  #at = 0;

  constructor(bytes: Uint8Array) {
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  shape(depth: number): object | null {
    if (depth > DEPTH_LIMIT) throw new ShapeFault("is a collection inside collections, too deep to be read");
    this.#need(HEAD);
    const little = this.#view.getUint8(this.#at) === 1;
    const code = this.#view.getUint32(this.#at + 1, little);
    this.#at += HEAD;
    if ((code & 0x20000000) !== 0) this.#at += 4;
    const { name, numbers } = kindOf(code);
    if (name === "Point") return this.#point(little, numbers);
    if (name === "LineString") return { type: name, coordinates: this.#positions(little, numbers) };
    if (name === "Polygon") {
      const coordinates = this.#list(little, 4, () => this.#positions(little, numbers));
      return { type: name, coordinates: coordinates.filter((ring) => ring.length > 0) };
    }
    const geometries = this.#list(little, HEAD, () => this.shape(depth + 1)).filter((s) => s !== null);
    return { type: "GeometryCollection", geometries };
  }

  /** A point of NaN is the empty point. */
  #point(little: boolean, numbers: number): object | null {
    const coordinates = this.#position(little, numbers);
    return coordinates.every(Number.isNaN) ? null : { type: "Point", coordinates };
  }

  #positions(little: boolean, numbers: number): number[][] {
    return this.#list(little, 8 * numbers, () => this.#position(little, numbers));
  }

  #position(little: boolean, numbers: number): number[] {
    this.#need(8 * numbers);
    const at = this.#at;
    this.#at += 8 * numbers;
    return [this.#view.getFloat64(at, little), this.#view.getFloat64(at + 8, little)];
  }

  #list<T>(little: boolean, least: number, read: () => T): T[] {
    this.#need(4);
    const count = this.#view.getUint32(this.#at, little);
    this.#at += 4;
    this.#need(count * least);
    return Array.from({ length: count }, read);
  }

  #need(bytes: number): void {
    if (this.#at + bytes > this.#view.byteLength) throw new ShapeFault("claims more positions than it holds");
  }
}

function kindOf(code: number): { readonly name: string; readonly numbers: number } {
  const base = code & 0x0fffffff;
  const variant = Math.floor(base / 1000);
  const name = variant <= 3 ? NAMES[base % 1000] : undefined;
  if (name === undefined) throw new ShapeFault(`is of a kind that is not read (${code}), such as a curve`);
  const hasZ = variant === 1 || variant === 3 || (code & 0x80000000) !== 0;
  const hasM = variant === 2 || variant === 3 || (code & 0x40000000) !== 0;
  return { name, numbers: 2 + Number(hasZ) + Number(hasM) };
}
