import type { Context } from "hono";
import { INERT_POLICY } from "./headers.ts";

/**
 * Bytes to be saved, never shown: whatever an upload claims to be, it comes back as plain bytes that no browser runs.
 *
 * name  for the saved file; any characters (RFC 6266 with the encoding of RFC 8187)
 */
export const download = (
  c: Context,
  bytes: Uint8Array,
  name: string,
  type: "application/octet-stream" | "application/zip" = "application/octet-stream",
): Response =>
  c.body(bytes as Uint8Array<ArrayBuffer>, 200, {
    "content-type": type,
    "content-disposition": `attachment; filename="${plainName(name)}"; filename*=UTF-8''${extendedName(name)}`,
    "content-security-policy": INERT_POLICY,
    "cache-control": "no-store",
  });

/** The last part of the name in letters that every browser reads. */
const plainName = (name: string): string => lastPart(name).replace(/[^A-Za-z0-9._ -]/g, "_");

const extendedName = (name: string): string =>
  encodeURIComponent(lastPart(name)).replace(
    /['()*]/g,
    (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`,
  );

const lastPart = (name: string): string => name.split(/[\\/]/).at(-1) || "file";
