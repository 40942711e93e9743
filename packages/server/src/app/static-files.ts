import { readFile } from "node:fs/promises";
import { extname, join } from "node:path";
import type { Context } from "hono";

const types: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
  ".woff": "font/woff",
  ".ttf": "font/ttf",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
};

/** A part of a path that can only be a name: no dot in front, so neither ".." nor a hidden file. */
const PART = /^[A-Za-z0-9_@~-][A-Za-z0-9._@~-]*$/;

/**
 * A file of the built pages, or null. Names under `assets/` carry a hash of their contents and may be kept for ever;
 * the page that names them is never kept.
 */
export async function staticFile(c: Context, folder: string): Promise<Response | null> {
  const path = c.req.path === "/" ? "/index.html" : c.req.path;
  const parts = path.slice(1).split("/");
  const type = types[extname(path)];
  if (type === undefined || !parts.every((part) => PART.test(part))) return null;
  const bytes = await readIfThere(join(folder, ...parts));
  if (bytes === null) return path === "/index.html" ? notBuilt(c) : null;
  return c.body(bytes, 200, { "content-type": type, "cache-control": caching(parts) });
}

function caching(parts: readonly string[]): string {
  if (parts[0] === "assets") return "public, max-age=31536000, immutable";
  return parts.at(-1)?.endsWith(".html") ? "no-store" : "no-cache";
}

async function readIfThere(path: string): Promise<Uint8Array<ArrayBuffer> | null> {
  try {
    return new Uint8Array(await readFile(path));
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : "";
    if (code === "ENOENT" || code === "ENOTDIR" || code === "EISDIR") return null;
    throw error;
  }
}

const notBuilt = (c: Context): Response =>
  c.text("The pages are not built yet: run `npm run build` and reload.\n", 503);
