import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex } from "@noble/hashes/utils.js";
import type { Raster } from "./types.ts";

/**
 * Ground height by bilinear interpolation between the four nearest cell centres.
 *
 * x, y  point in the site's horizontal system [m]
 * Returns the height [m above the site datum], or NaN outside the grid of centres or beside a cell without data:
 * unknown ground is never guessed. A cell centre itself gives exactly its own value.
 */
export function groundAt(r: Raster, x: number, y: number): number {
  const u = (x - r.x0) / r.dx;
  const v = (y - r.y0) / r.dy;
  if (!(u >= 0 && v >= 0 && u <= r.cols - 1 && v <= r.rows - 1)) return NaN;
  const i = Math.min(Math.floor(u), r.cols - 2);
  const j = Math.min(Math.floor(v), r.rows - 2);
  const fu = u - i;
  const fv = v - j;
  const k = j * r.cols + i;
  const z = r.values;
  const south = blend(z[k]!, z[k + 1]!, fu);
  const north = blend(z[k + r.cols]!, z[k + r.cols + 1]!, fu);
  return blend(south, north, fv);
}

/** A weight of zero takes no part, so that a neighbour without data cannot spoil a point that does not need it. */
const blend = (a: number, b: number, f: number): number => (f === 0 ? a : f === 1 ? b : a + (b - a) * f);

/** West, south, east, north edges of the cells [m]. */
export function rasterExtent(r: Raster): readonly [number, number, number, number] {
  return [r.x0 - r.dx / 2, r.y0 - r.dy / 2, r.x0 + (r.cols - 0.5) * r.dx, r.y0 + (r.rows - 0.5) * r.dy];
}

/** SHA-256 over a raster's shape and heights, 64 hexadecimal digits. */
export function hashRaster(r: Raster): string {
  const shape = new Float64Array([r.cols, r.rows, r.x0, r.y0, r.dx, r.dy]);
  const hash = sha256.create();
  hash.update(new Uint8Array(shape.buffer));
  hash.update(new Uint8Array(r.values.buffer, r.values.byteOffset, r.values.byteLength));
  return bytesToHex(hash.digest());
}
