import { Hono } from "hono";
import { fileNameFault } from "@causey/io/files";
import { notFound, problemAnswer, requestProblem } from "./answers.ts";
import { contentType, FILE_BYTES, limitBody, UPLOAD_BYTES, wrongType } from "./body.ts";
import { download } from "./download.ts";
import { readAll } from "./files-beside.ts";
import type { AppOptions } from "./options.ts";
import { isUpload, uploadedFiles } from "./upload.ts";

/** The plans: list, take in, read, and give back as an archive. */
export function plansApi({ store, plans }: AppOptions): Hono {
  const api = new Hono();

  api.get("/", async (c) => c.json({ plans: await store.listPlans() }));

  api.post("/", limitBody(UPLOAD_BYTES), async (c) => {
    if (!isUpload(contentType(c)))
      return wrongType(c, "application/zip, or multipart/form-data with the files");
    const files = await uploadedFiles(c, plans);
    const reading = await plans.read(files);
    if (!reading.ok) return problemAnswer(c, 422, reading.problems);
    const created = await store.createPlan(reading.plan, plans.beside(reading.plan, files));
    return c.json({ ...created, warnings: reading.warnings }, 201);
  });

  api.get("/:id", async (c) => {
    const id = c.req.param("id");
    const loaded = await store.loadPlan(id);
    if (!loaded) return notFound(c, "plan", id);
    const { undo, redo, ...rest } = loaded;
    return c.json({ ...rest, undo: undo?.summary ?? null, redo: redo?.summary ?? null });
  });

  api.get("/:id/history", async (c) => {
    const records = await store.history(c.req.param("id"));
    return c.json({ revisions: records.map(({ edit: _edit, inverse: _inverse, ...shown }) => shown) });
  });

  api.get("/:id/files/:name{.+}", async (c) => {
    const { id, name } = c.req.param();
    const bytes = await store.readFile(id, name);
    return bytes ? download(c, bytes, name) : notFound(c, "file", name);
  });

  api.put("/:id/files/:name{.+}", limitBody(FILE_BYTES), async (c) => {
    const { id, name } = c.req.param();
    if (contentType(c) !== "application/octet-stream") return wrongType(c, "application/octet-stream");
    const fault = fileNameFault(name) ?? (plans.takesIn(name) ? "it is written from the plan itself" : null);
    if (fault)
      return problemAnswer(c, 422, [
        requestProblem(
          "file-name",
          "file",
          name,
          `The file's name is refused: ${fault}.`,
          "Rename the file.",
        ),
      ]);
    return c.json(await store.addFile(id, name, new Uint8Array(await c.req.arrayBuffer())), 201);
  });

  api.get("/:id/archive", async (c) => {
    const id = c.req.param("id");
    const loaded = await store.loadPlan(id);
    if (!loaded) return notFound(c, "plan", id);
    const files = await readAll(store, id, loaded.files);
    for (const [name, bytes] of plans.write(loaded.plan)) files.set(name, bytes);
    return download(c, plans.writeArchive(files), `${loaded.plan.name}.zip`, "application/zip");
  });

  return api;
}
