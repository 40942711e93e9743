import { InflateFault, inflate } from "../inflate/index.ts";

/** Says what went wrong inside a compressed block; the reader adds which block of which file. */
export class BlockFault extends Error {}

/**
 * Unpacks one compressed block.
 *
 * compression  TIFF number: 1 none, 5 LZW, 8 and 32946 DEFLATE, 32773 PackBits, 50000 ZSTD
 * most         bytes of a whole block; a block that unpacks to more is an attack and stops the work at once
 * Throws `BlockFault`.
 */
export async function decodeBlock(compression: number, data: Uint8Array, most: number): Promise<Uint8Array> {
  switch (compression) {
    case 5:
      return lzw(data, most);
    case 8:
    case 32946:
      return deflate(data, most);
    case 32773:
      return packBits(data, most);
    case 50000:
      return zstd(data, most);
    default:
      return data;
  }
}

/** Most bytes that `length` packed bytes can unpack to, by method: DEFLATE 1032 to 1, PackBits 128 to 2. */
export function mostUnpacked(compression: number, length: number): number {
  if (compression === 8 || compression === 32946) return 1032 * length;
  if (compression === 32773) return 64 * length;
  if (compression === 5) return Math.ceil((length * 8) / 9) * (4096 - END);
  return compression === 50000 ? (ZSTD_BLOCK * length) / 4 : length;
}

function deflate(data: Uint8Array, most: number): Uint8Array {
  try {
    return inflate(data, most, "zlib");
  } catch (cause) {
    if (!(cause instanceof InflateFault)) throw cause;
    throw new BlockFault(
      cause.why === "too-much" ? tooMuch(most) : "is damaged: its DEFLATE data cannot be unpacked",
      { cause },
    );
  }
}

const tooMuch = (most: number): string => `unpacks to more than the ${most} bytes it may hold`;

const CLEAR = 256;
const END = 257;

/** LZW of TIFF 6.0, section 13: codes of 9 to 12 bits, highest bit first, widened one code early. */
export function lzw(data: Uint8Array, most: number): Uint8Array {
  const out = new Uint8Array(most);
  const start = new Int32Array(4097);
  const length = new Int32Array(4097);
  let written = 0;
  let next = END + 1;
  let width = 9;
  let previous = -1;
  for (let bit = 0; bit + width <= data.length * 8;) {
    const code = readBits(data, bit, width);
    bit += width;
    if (code === END) break;
    if (code === CLEAR) {
      [next, width, previous] = [END + 1, 9, -1];
      continue;
    }
    if (code > next || (code === next && previous < 0))
      throw new BlockFault("is damaged: its LZW data is wrong");
    const from = code < CLEAR ? -1 : code < next ? start[code]! : start[next]!;
    const count = code < CLEAR ? 1 : code < next ? length[code]! : length[next]!;
    if (written + count > most) throw new BlockFault(tooMuch(most));
    if (from < 0) out[written] = code;
    else for (let i = 0; i < count; i++) out[written + i] = out[from + i]!;
    if (previous >= 0 && next < 4096) next += 1;
    if (next < 4096) [start[next], length[next]] = [written, count + 1];
    previous = written;
    written += count;
    if (next + 1 >= 1 << width && width < 12) width += 1;
  }
  return out.subarray(0, written);
}

function readBits(data: Uint8Array, bit: number, width: number): number {
  const at = bit >> 3;
  const word = (data[at]! << 16) | ((data[at + 1] ?? 0) << 8) | (data[at + 2] ?? 0);
  return (word >> (24 - (bit & 7) - width)) & ((1 << width) - 1);
}

/** PackBits of TIFF 6.0, section 9. */
export function packBits(data: Uint8Array, most: number): Uint8Array {
  const out = new Uint8Array(most);
  let written = 0;
  for (let at = 0; at < data.length;) {
    const n = (data[at]! << 24) >> 24;
    at += 1;
    if (n === -128) continue;
    const count = n < 0 ? 1 - n : n + 1;
    if (written + count > most) throw new BlockFault(tooMuch(most));
    if (n < 0) out.fill(data[at] ?? 0, written, written + count);
    else out.set(data.subarray(at, at + count), written);
    at += n < 0 ? 1 : count;
    written += count;
  }
  return out.subarray(0, written);
}

/**
 * ZSTD by the package zstddec. The room is given, from the block headers: what the frame claims of itself is not
 * believed, and the package's way for frames that claim nothing never ends on a damaged one.
 */
async function zstd(data: Uint8Array, most: number): Promise<Uint8Array> {
  const room = zstdBound(data);
  if (room > 4 * most + 2 * ZSTD_BLOCK) throw new BlockFault(tooMuch(most));
  const { ZSTDDecoder } = await import("zstddec");
  const decoder = new ZSTDDecoder();
  await decoder.init();
  const block = room === 0 ? new Uint8Array(0) : decoder.decode(data, Math.min(room, most));
  // The package answers an error of the decoder with nothing.
  if (block.length === 0) throw new BlockFault("is damaged: its ZSTD data cannot be unpacked");
  return block;
}

const ZSTD_BLOCK = 131_072;

/** Most bytes a ZSTD frame can unpack to (RFC 8878, section 3.1.1): the sum over its blocks. */
function zstdBound(data: Uint8Array): number {
  const view = new DataView(data.buffer, data.byteOffset, data.byteLength);
  const wrong = (): never => {
    throw new BlockFault("is damaged: its ZSTD data cannot be unpacked");
  };
  if (data.length < 6 || view.getUint32(0, true) !== 0xfd2fb528) wrong();
  const flags = data[4]!;
  const single = (flags & 32) !== 0;
  const contentBytes = [single ? 1 : 0, 2, 4, 8][flags >> 6]!;
  let at = 5 + (single ? 0 : 1) + [0, 1, 2, 4][flags & 3]! + contentBytes;
  for (let sum = 0; ;) {
    if (at + 3 > data.length) wrong();
    const head = data[at]! | (data[at + 1]! << 8) | (data[at + 2]! << 16);
    const [kind, size] = [(head >> 1) & 3, head >> 3];
    if (kind === 3 || size > ZSTD_BLOCK) wrong();
    sum += kind === 2 ? ZSTD_BLOCK : size;
    at += 3 + (kind === 1 ? 1 : size);
    if (head & 1) {
      if (at > data.length) wrong();
      return sum;
    }
  }
}
