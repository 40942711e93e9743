import type { Findings } from "../problem/index.ts";

/** Tags of TIFF 6.0 and OGC GeoTIFF 1.1 that are read here. */
export const TAG = {
  width: 256,
  height: 257,
  bits: 258,
  compression: 259,
  photometric: 262,
  strip_offsets: 273,
  samples: 277,
  rows_per_strip: 278,
  strip_bytes: 279,
  planar: 284,
  predictor: 317,
  tile_width: 322,
  tile_height: 323,
  tile_offsets: 324,
  tile_bytes: 325,
  format: 339,
  pixel_scale: 33550,
  tiepoints: 33922,
  transformation: 34264,
  geo_keys: 34735,
  gdal_metadata: 42112,
  gdal_nodata: 42113,
} as const;

/** Bytes of one value by field type; a type that is not listed cannot be read. */
const TYPE_BYTES: Readonly<Record<number, number>> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  16: 8,
  17: 8,
  18: 8,
};

interface Entry {
  readonly type: number;
  readonly count: number;
  /** Where the values stand in the file. */
  readonly at: number;
}

/**
 * The first directory of a TIFF or BigTIFF file. Every count and offset is held against the length of the file before
 * anything is read or allocated: a file of a few bytes can claim billions of values.
 */
export class TiffDirectory {
  readonly little: boolean;
  readonly #found: Findings;
  readonly #view: DataView;
  readonly #entries = new Map<number, Entry>();

  constructor(found: Findings, bytes: Uint8Array) {
    this.#found = found;
    this.#view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.little = bytes[0] === 0x49;
    this.#need(0, 8, "header");
    const big = this.#u16(2) === 43;
    if (big) this.#need(0, 16, "header");
    this.#readEntries(big ? this.#u64(8) : this.#u32(4), big);
  }

  has(tag: number): boolean {
    return this.#entries.has(tag);
  }

  /** All numbers of a tag, or null when the file lacks it. Refuses a tag with more than `most` values. */
  numbers(tag: number, most: number): readonly number[] | null {
    const entry = this.#entries.get(tag);
    if (entry === undefined) return null;
    const size = TYPE_BYTES[entry.type];
    if (size === undefined || entry.type === 2)
      this.#bad(tag, `has the field type ${entry.type}, not numbers`);
    if (entry.count > most || entry.count < 1)
      this.#bad(tag, `holds ${entry.count} values, at most ${most} are expected`);
    this.#need(entry.at, entry.count * size, `tag ${tag}`);
    return Array.from({ length: entry.count }, (_, i) => this.#number(entry.type, entry.at + i * size));
  }

  /** The first number of a tag; `otherwise` when the file lacks it. */
  number(tag: number, otherwise: number): number {
    return this.numbers(tag, 64)?.[0] ?? otherwise;
  }

  /** The text of a tag up to its first NUL; null when the file lacks it. */
  text(tag: number, most: number): string | null {
    const entry = this.#entries.get(tag);
    if (entry === undefined) return null;
    if (entry.count > most) this.#bad(tag, `holds ${entry.count} characters, at most ${most} are read`);
    this.#need(entry.at, entry.count, `tag ${tag}`);
    const codes = Array.from({ length: entry.count }, (_, i) => this.#view.getUint8(entry.at + i));
    const end = codes.indexOf(0);
    return String.fromCharCode(...(end < 0 ? codes : codes.slice(0, end)));
  }

  #readEntries(start: number, big: boolean): void {
    const [head, step] = big ? [8, 20] : [2, 12];
    this.#need(start, head, "directory");
    const count = big ? this.#u64(start) : this.#u16(start);
    if (count === 0 || count > 4096)
      this.#stop(
        `byte ${start}`,
        `${count} tags`,
        "The directory of the file holds an impossible number of tags.",
      );
    this.#need(start, head + count * step, "directory");
    for (let i = 0; i < count; i++) {
      const at = start + head + i * step;
      const type = this.#u16(at + 2);
      const values = big ? this.#u64(at + 4) : this.#u32(at + 4);
      const field = at + (big ? 12 : 8);
      const inside = (TYPE_BYTES[type] ?? 1) * values <= (big ? 8 : 4);
      const place = inside ? field : big ? this.#u64(field) : this.#u32(field);
      this.#entries.set(this.#u16(at), { type, count: values, at: place });
    }
  }

  #number(type: number, at: number): number {
    const { little } = this;
    switch (type) {
      case 1:
      case 7:
        return this.#view.getUint8(at);
      case 6:
        return this.#view.getInt8(at);
      case 3:
        return this.#u16(at);
      case 8:
        return this.#view.getInt16(at, little);
      case 4:
        return this.#u32(at);
      case 9:
        return this.#view.getInt32(at, little);
      case 5:
        return this.#u32(at) / this.#u32(at + 4);
      case 10:
        return this.#view.getInt32(at, little) / this.#view.getInt32(at + 4, little);
      case 11:
        return this.#view.getFloat32(at, little);
      case 12:
        return this.#view.getFloat64(at, little);
      case 17:
        return Number(this.#view.getBigInt64(at, little));
      default:
        return this.#u64(at);
    }
  }

  #u16(at: number): number {
    return this.#view.getUint16(at, this.little);
  }

  #u32(at: number): number {
    return this.#view.getUint32(at, this.little);
  }

  /** Beyond 2^53 the number is inexact, but any such offset lies outside every file, and `#need` refuses it. */
  #u64(at: number): number {
    return Number(this.#view.getBigUint64(at, this.little));
  }

  #need(at: number, length: number, what: string): void {
    const size = this.#view.byteLength;
    if (at + length <= size) return;
    this.#found.stop({
      code: "terrain-truncated",
      place: `byte ${Math.min(at, size)}`,
      value: `${what}: ${length} bytes at byte ${at}, file ends at byte ${size}`,
      message: `The file ends at byte ${size}, but its ${what} should reach to byte ${at + length}.`,
      mend: "Copy or export the file again; it is cut off or damaged.",
    });
  }

  #bad(tag: number, fault: string): never {
    return this.#stop(`tag ${tag}`, fault, `Tag ${tag} of the file ${fault}.`);
  }

  #stop(place: string, value: string, message: string): never {
    return this.#found.stop({
      code: "terrain-tiff",
      place,
      value,
      message,
      mend: "Export the terrain again as a single-band GeoTIFF.",
    });
  }
}
