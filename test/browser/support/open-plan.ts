import { readArchive, writeArchive } from "@causey/io/archive";
import type { Page } from "playwright-core";
import { planIdOf } from "./sheet.ts";

/** Brings a plan folder into the running Causey and opens a page of it. */
export async function openPlan(
  page: Page,
  url: string,
  files: ReadonlyMap<string, Uint8Array>,
  at: "site" | "layout",
): Promise<string> {
  const { request } = page.context();
  await request.get(url);
  const { origin } = new URL(url);
  const answer = await request.post(`${origin}/api/plans`, {
    headers: { origin, "content-type": "application/zip" },
    data: Buffer.from(writeArchive(files)),
  });
  if (!answer.ok()) throw new Error(`The plan was not taken in: ${await answer.text()}`);
  const { id } = (await answer.json()) as { id: string };
  await page.goto(`${origin}/#/${at}?plan=${id}`);
  await savedRevision(page);
  return id;
}

/** Waits until the page says that a revision later than `before` is saved. */
export async function savedRevision(page: Page, before = 0): Promise<number> {
  const handle = await page.waitForFunction((old) => {
    const head = document.querySelector(".title-sub")?.textContent ?? "";
    const saved = Number(/revision (\d+), saved/.exec(head)?.[1] ?? 0);
    return saved > old ? saved : null;
  }, before);
  return (await handle.jsonValue())!;
}

/** The plan's folder as the page hands it out. */
export async function folderOf(page: Page): Promise<ReadonlyMap<string, Uint8Array>> {
  const answer = await page
    .context()
    .request.get(`${new URL(page.url()).origin}/api/plans/${planIdOf(page)}/archive`);
  return readArchive(new Uint8Array(await answer.body()));
}
