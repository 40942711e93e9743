import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import type { Series } from "./series.ts";

/** SHA-256 over a series: what it is, its times and its levels; 64 hexadecimal digits. */
export function hashSeries({ kind, basis, attribution, zone_note, t_s, z_m }: Series): string {
  const hash = sha256.create();
  hash.update(utf8ToBytes(JSON.stringify([kind, basis, attribution, zone_note, t_s.length])));
  for (const list of [t_s, z_m]) hash.update(new Uint8Array(list.buffer, list.byteOffset, list.byteLength));
  return bytesToHex(hash.digest());
}
