import { ProblemError } from "@causey/engine/formula";
import { isDiskFull, StoreError, type StoreFault } from "@causey/runtime/store";
import { Hono, type Context } from "hono";
import { notFound, problemAnswer, requestProblem } from "./answers.ts";
import { calcApi } from "./calc-api.ts";
import { editsApi } from "./edits-api.ts";
import { hostGuard, originGuard, sessionGuard, startLink } from "./guard.ts";
import { protectiveHeaders } from "./headers.ts";
import type { AppOptions } from "./options.ts";
import { plansApi } from "./plans-api.ts";
import { tideStationsApi } from "../tide-stations/index.ts";
import { staticFile } from "./static-files.ts";

/**
 * The whole server as one function from request to answer; it opens no port. Pages are given to anybody who reaches
 * it by its own name, plans only to a browser that came by the start address.
 */
export function createApp(options: AppOptions): Hono {
  const { access } = options;
  const app = new Hono();
  app.use(protectiveHeaders, hostGuard(access), originGuard(access));
  app.use("/api/*", sessionGuard(access));
  app.route("/api/plans", plansApi(options));
  app.route("/api/plans", editsApi(options));
  app.route("/api/calc", calcApi(options));
  app.route("/api/tide-stations", tideStationsApi());
  app.all("/api/*", (c) => notFound(c, "address of the API", c.req.path));
  app.get("*", async (c) => {
    const started = c.req.path === "/" ? startLink(access, c) : null;
    return started ?? (await staticFile(c, options.staticFolder)) ?? notFound(c, "page", c.req.path);
  });
  app.notFound((c) => notFound(c, "page", c.req.path));
  app.onError((error, c) => errorAnswer(c, error, options.report));
  return app;
}

const statusOf: Readonly<Record<StoreFault, 404 | 500 | 503>> = {
  "no-such-plan": 404,
  busy: 503,
  "damaged-file": 500,
  "not-a-store": 500,
  "newer-store": 500,
  "cannot-open": 500,
  "cannot-back-up": 500,
};

/** Problems of the user's go back whole; what went wrong in the server is reported here and named in one line there. */
function errorAnswer(c: Context, error: unknown, report: (error: unknown) => void): Response {
  if (error instanceof ProblemError) return problemAnswer(c, 422, error.problems);
  if (isDiskFull(error)) return diskFull(c);
  const status = error instanceof StoreError ? statusOf[error.code] : 500;
  if (status === 500) report(error);
  const message = error instanceof StoreError ? error.message : "Something went wrong in the server.";
  const code = error instanceof StoreError ? error.code : "server";
  return problemAnswer(c, status, [
    requestProblem(code, "server", "", message, "Try again; the server's window tells more."),
  ]);
}

const diskFull = (c: Context): Response =>
  problemAnswer(c, 507, [
    requestProblem(
      "disk-full",
      "data folder",
      "",
      "The disk that holds Causey's data folder is full. Nothing was kept of this change; what was saved before is whole.",
      "Free some space on that disk, then do it again.",
    ),
  ]);
