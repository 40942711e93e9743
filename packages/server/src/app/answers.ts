import { shorten, type Problem } from "@causey/engine/formula";
import type { Context } from "hono";
import type { ContentfulStatusCode } from "hono/utils/http-status";

/** A problem of the request itself; `place` is the part of it: "Host", "body.base", "address". */
export const requestProblem = (
  code: string,
  place: string,
  value: unknown,
  message: string,
  mend: string,
): Problem => ({ code, severity: "error", file: "request", place, value: shorten(value), message, mend });

const titles: Readonly<Partial<Record<ContentfulStatusCode, string>>> = {
  400: "The request cannot be read",
  401: "Not signed in",
  403: "Not allowed",
  404: "Not found",
  405: "Not possible here",
  409: "Somebody else saved first",
  413: "Too large",
  415: "Not a kind of content that is read here",
  421: "Not this server",
  422: "Something has to be mended",
  500: "A fault of the server",
  503: "Busy",
};

/** `application/problem+json` (RFC 9457) that carries every problem; `more` are members beside them. */
export const problemAnswer = (
  c: Context,
  status: ContentfulStatusCode,
  problems: readonly Problem[],
  more: object = {},
): Response =>
  c.body(
    JSON.stringify({ type: "about:blank", title: titles[status] ?? "Refused", status, problems, ...more }),
    status,
    { "content-type": "application/problem+json" },
  );

export const notFound = (c: Context, what: string, value: string): Response =>
  problemAnswer(c, 404, [
    requestProblem(
      "not-found",
      "address",
      value,
      `There is no such ${what}.`,
      "See the list of what is there.",
    ),
  ]);
