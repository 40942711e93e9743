import { ProblemError, type Json } from "@causey/engine/formula";
import { applyEdit } from "@causey/engine/plan";
import { readEdit } from "@causey/io/edit";
import type { Store } from "@causey/runtime/store";
import { Hono, type Context } from "hono";
import { notFound, problemAnswer, requestProblem } from "./answers.ts";
import { JSON_BYTES, jsonObject, limitBody, onlyJson } from "./body.ts";
import { filesBeside } from "./files-beside.ts";
import type { AppOptions } from "./options.ts";

/** Changes of a plan: edit, undo, redo. Each names the revision it was made on (`base`). */
export function editsApi({ store, plans }: AppOptions): Hono {
  const api = new Hono();
  const guards = [onlyJson, limitBody(JSON_BYTES)] as const;

  api.post("/:id/edits", ...guards, async (c) => {
    const id = c.req.param("id");
    const body = await jsonObject(c);
    const base = baseOf(body["base"]);
    const edit = readEdit(body["edit"]);
    const loaded = await store.loadPlan(id);
    if (!loaded) return notFound(c, "plan", id);
    if (loaded.revision !== base) return conflict(c, loaded);
    const result = applyEdit(loaded.plan, edit);
    if (!result.ok) return problemAnswer(c, 422, result.problems);
    const faults = await plans.check(result.plan, edit, filesBeside(store, id, loaded.files));
    if (faults.length > 0) return problemAnswer(c, 422, faults);
    const saved = await store.saveEdit(id, base, edit, result.inverse, result.plan);
    return saved.ok ? current(c, store, id) : conflict(c, saved.conflict);
  });

  for (const kind of ["undo", "redo"] as const)
    api.post(`/:id/${kind}`, ...guards, async (c) => {
      const id = c.req.param("id");
      const base = baseOf((await jsonObject(c))["base"]);
      const step = await store[kind](id, base);
      if (step.ok) return current(c, store, id);
      return step.why === "conflict" ? conflict(c, step.conflict) : nothing(c, kind);
    });

  return api;
}

/** The revision that a change was made on. Throws `ProblemError`. */
function baseOf(value: Json | undefined): number {
  if (typeof value === "number" && Number.isInteger(value) && value >= 1) return value;
  throw new ProblemError([
    requestProblem(
      "base",
      "body.base",
      value,
      "The revision that the change was made on is missing.",
      'Give "base" as the revision number that came with the plan.',
    ),
  ]);
}

/** The plan as it stands after a change. */
async function current(c: Context, store: Store, id: string): Promise<Response> {
  const loaded = await store.loadPlan(id);
  if (!loaded) return notFound(c, "plan", id);
  const { plan, revision, undo, redo } = loaded;
  return c.json({ plan, revision, undo: undo?.summary ?? null, redo: redo?.summary ?? null });
}

const conflict = (
  c: Context,
  { revision, plan }: { readonly revision: number; readonly plan: object },
): Response =>
  problemAnswer(
    c,
    409,
    [
      requestProblem(
        "conflict",
        "body.base",
        revision,
        `The plan has moved on to revision ${revision}.`,
        "Compare it with yours and make the change again.",
      ),
    ],
    { revision, plan },
  );

const nothing = (c: Context, kind: "undo" | "redo"): Response =>
  problemAnswer(c, 422, [
    requestProblem(
      `nothing-to-${kind}`,
      "body",
      kind,
      kind === "undo" ? "There is no edit to take back." : "There is nothing to do again.",
      "Load the plan to see what can be taken back.",
    ),
  ]);
