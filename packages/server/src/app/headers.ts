import type { MiddlewareHandler } from "hono";

/**
 * What a page of this server may do: run and load only what this server sends. No script stands in a page itself;
 * WebAssembly is allowed for the solver, and worker scripts may be blobs. Styles come from files alone.
 */
const policy = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join("; ");

/** For bytes that somebody uploaded: whatever they are, they do nothing. */
export const INERT_POLICY = "default-src 'none'; sandbox; frame-ancestors 'none'";

const always: Readonly<Record<string, string>> = {
  "content-security-policy": policy,
  "x-content-type-options": "nosniff",
  "x-frame-options": "DENY",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "permissions-policy": "camera=(), microphone=(), geolocation=(self)",
};

/** Sets the protective headers on every answer, errors too, and keeps the answers of the API out of caches. */
export const protectiveHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(always)) if (!c.res.headers.has(name)) c.header(name, value);
  if (!c.res.headers.has("cache-control")) c.header("cache-control", "no-store");
};
