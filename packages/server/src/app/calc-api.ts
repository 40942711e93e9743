import { type Json, type JsonObject, type Problem } from "@causey/engine/formula";
import { Hono } from "hono";
import { notFound, problemAnswer, requestProblem } from "./answers.ts";
import { JSON_BYTES, jsonObject, limitBody, onlyJson } from "./body.ts";
import type { AppOptions } from "./options.ts";

/** The registered calculations: their list, and one computed on a JSON input. */
export function calcApi({ calc }: AppOptions): Hono {
  const api = new Hono();

  api.get("/", (c) => c.json(calc.list()));

  api.post("/:id", onlyJson, limitBody(JSON_BYTES), async (c) => {
    const id = c.req.param("id");
    const input = await jsonObject(c);
    const problems = fileKeyProblems(input, "");
    if (problems.length > 0) return problemAnswer(c, 422, problems, { ok: false });
    const outcome = await calc.run(id, input);
    if (outcome === null) return notFound(c, "calculation", id);
    return outcome.ok ? c.json(outcome) : problemAnswer(c, 422, outcome.problems, { ok: false });
  });

  return api;
}

/** Keys that end in `_file` name files of the machine, which only the shell may open. At any depth. */
function fileKeyProblems(value: Json, place: string): Problem[] {
  if (typeof value !== "object" || value === null) return [];
  if (Array.isArray(value)) return value.flatMap((item: Json, i) => fileKeyProblems(item, `${place}[${i}]`));
  return Object.entries(value as JsonObject).flatMap(([key, inner]) => {
    const path = place === "" ? key : `${place}.${key}`;
    return key.endsWith("_file") ? [fileKeyProblem(path, inner)] : fileKeyProblems(inner, path);
  });
}

const fileKeyProblem = (place: string, value: Json): Problem =>
  requestProblem(
    "file-key",
    place,
    value,
    "Files of the machine are not read over the network.",
    "Give the contents, or use `causey calc` in a shell.",
  );
