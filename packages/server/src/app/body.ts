import { ProblemError, type JsonObject } from "@causey/engine/formula";
import { parseJson } from "@causey/io/json";
import { Findings } from "@causey/io/problem";
import type { Context, MiddlewareHandler } from "hono";
import { bodyLimit } from "hono/body-limit";
import { problemAnswer, requestProblem } from "./answers.ts";

/** Largest plan folder or archive that is taken in, and largest JSON [bytes]. */
export const UPLOAD_BYTES = 100 * 1024 * 1024;
/** Largest single file that is laid beside a plan [bytes]. */
export const FILE_BYTES = 400 * 1024 * 1024;
export const JSON_BYTES = 5 * 1024 * 1024;

/** Refuses a body beyond `maxSize` bytes as soon as that is known: by its announced length or while it comes in. */
export const limitBody = (maxSize: number): MiddlewareHandler =>
  bodyLimit({
    maxSize,
    onError: (c) =>
      problemAnswer(c, 413, [
        requestProblem(
          "too-large",
          "body",
          c.req.header("content-length") ?? "",
          `More than ${maxSize / 1024 / 1024} MB are not taken in.`,
          "Cut the terrain to the site, or leave out what the plan does not need.",
        ),
      ]),
  });

/** The media type of the body, without its parameters. */
export const contentType = (c: Context): string =>
  (c.req.header("content-type") ?? "").split(";")[0]!.trim().toLowerCase();

export const wrongType = (c: Context, wanted: string): Response =>
  problemAnswer(c, 415, [
    requestProblem(
      "content-type",
      "Content-Type",
      contentType(c),
      "This kind of content is not read here.",
      `Send ${wanted}.`,
    ),
  ]);

/** The body as a JSON object, read strictly. Throws `ProblemError`. */
export async function jsonObject(c: Context): Promise<JsonObject> {
  const value = parseJson(new Findings("request"), new Uint8Array(await c.req.arrayBuffer()), JSON_BYTES);
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return value as JsonObject;
  throw new ProblemError([
    requestProblem("json", "body", value, "A JSON object is expected.", "Put the values between { and }."),
  ]);
}

/** Only JSON that says so: a form of a foreign page cannot send this type without asking first. */
export const onlyJson: MiddlewareHandler = async (c, next) =>
  contentType(c) === "application/json" ? next() : wrongType(c, "application/json");
