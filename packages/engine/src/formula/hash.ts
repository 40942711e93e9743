import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { DomainError } from "../units/index.ts";

/**
 * JSON text that is the same for equal values: keys sorted by code unit, no spaces, absent (`undefined`) members
 * left out. Throws `DomainError` on a number that is not finite and on anything JSON cannot carry.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === "boolean" || typeof value === "string") return JSON.stringify(value);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new DomainError("not-a-finite-number", { value: String(value) });
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(",")}]`;
  if (typeof value === "object") return canonicalObject(value as Readonly<Record<string, unknown>>);
  throw new DomainError("not-json", { type: typeof value });
}

function canonicalObject(value: Readonly<Record<string, unknown>>): string {
  const members = Object.keys(value)
    .filter((key) => value[key] !== undefined)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonicalJson(value[key])}`);
  return `{${members.join(",")}}`;
}

/** SHA-256 over the canonical JSON of a value, 64 hexadecimal digits. The order of keys makes no difference. */
export const hashJson = (value: unknown): string => bytesToHex(sha256(utf8ToBytes(canonicalJson(value))));
