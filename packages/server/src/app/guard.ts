import { createHash, timingSafeEqual } from "node:crypto";
import type { Context, MiddlewareHandler } from "hono";
import { getCookie, setCookie } from "hono/cookie";
import { problemAnswer, requestProblem } from "./answers.ts";
import type { Access } from "./options.ts";

/** The names under which a browser on this machine reaches the server. */
const hostsOf = ({ port }: Access): readonly string[] =>
  ["127.0.0.1", "localhost"].map((name) => (port === 80 ? name : `${name}:${port}`));

/**
 * Answers only to the server's own names. A foreign page can point a name of its own at 127.0.0.1 (rebinding), but
 * its requests still carry that name.
 */
export function hostGuard(access: Access): MiddlewareHandler {
  const hosts = new Set(hostsOf(access));
  return async (c, next) => {
    const host = c.req.header("host");
    if (host !== undefined && hosts.has(host)) return next();
    const mend = `Use http://${hostsOf(access)[0]}.`;
    return problemAnswer(c, 421, [
      requestProblem("host", "Host", host, "This server does not go by that name.", mend),
    ]);
  };
}

/** What changes something must come from a page of this very server: a browser names the page's origin itself. */
export function originGuard(access: Access): MiddlewareHandler {
  const hosts = new Set(hostsOf(access));
  return async (c, next) => {
    if (c.req.method === "GET" || c.req.method === "HEAD") return next();
    const origin = c.req.header("origin");
    const host = c.req.header("host");
    if (host !== undefined && hosts.has(host) && origin === `http://${host}`) return next();
    return problemAnswer(c, 403, [
      requestProblem(
        "origin",
        "Origin",
        origin,
        "A change must come from a page of this server.",
        `From a script send the header "Origin: http://${hostsOf(access)[0]}".`,
      ),
    ]);
  };
}

/** Cookies do not tell ports apart, so the port stands in the name: two servers do not sign each other out. */
const cookieName = ({ port }: Access): string => `causey_${port}`;

/** Lets in only a browser that came by the start address. */
export function sessionGuard(access: Access): MiddlewareHandler {
  return async (c, next) => {
    if (isSame(getCookie(c, cookieName(access)), access.session)) return next();
    return problemAnswer(c, 401, [
      requestProblem(
        "session",
        "Cookie",
        "",
        "This browser has not been let in yet.",
        "Open the address that was printed when Causey was started.",
      ),
    ]);
  };
}

/**
 * The start address `/?token=...`: a right token sets the cookie and leads to the address without it, so that the
 * token is not left in the address bar. Null when the request carries no token.
 */
export function startLink(access: Access, c: Context): Response | null {
  const token = c.req.query("token");
  if (token === undefined) return null;
  if (!isSame(token, access.token)) {
    const words = "This start address is from an earlier start. Use the one that was printed last.\n";
    return c.text(words, 401);
  }
  setCookie(c, cookieName(access), access.session, { httpOnly: true, sameSite: "Strict", path: "/" });
  return c.redirect("/", 303);
}

/** Compares in a time that tells nothing of where two secrets differ. */
function isSame(given: string | undefined, secret: string): boolean {
  const digest = (text: string): Buffer => createHash("sha256").update(text).digest();
  return given !== undefined && timingSafeEqual(digest(given), digest(secret));
}
