import { createHash } from "node:crypto";
import type { Plan } from "@causey/engine/plan";
import type { Page } from "playwright-core";

export type XY = readonly [number, number];

/**
 * Opens the start address and waits for the first worked-out layout. The demo's sweep over headings is cut to one
 * heading beforehand, so that each change is worked out in seconds.
 */
export async function openSheet(page: Page, url: string): Promise<void> {
  await setHeadingStep(page, url, 90);
  await page.goto(url);
  await settled(page);
}

/** Sets the step of the sweep as another window would, by the server's own address. 90 means one heading. */
export async function setHeadingStep(page: Page, url: string, step: number): Promise<void> {
  const { request } = page.context();
  await request.get(url);
  const { origin } = new URL(url);
  const list = (await (await request.get(`${origin}/api/plans`)).json()) as { plans: { id: string }[] };
  const at = `${origin}/api/plans/${list.plans[0]!.id}`;
  const { plan, revision } = (await (await request.get(at)).json()) as { plan: Plan; revision: number };
  if (plan.layout.heading_step_deg === step) return;
  const edit = { type: "set-layout", layout: { ...plan.layout, heading_step_deg: step } };
  const answer = await request.post(`${at}/edits`, { headers: { origin }, data: { base: revision, edit } });
  if (!answer.ok()) throw new Error(`The step could not be set: ${await answer.text()}`);
}

/** Opens a page by its peg. */
export const goTo = async (page: Page, title: string): Promise<void> => {
  await page.getByRole("link", { name: title, exact: true }).click();
  await page.getByRole("heading", { level: 1, name: title }).waitFor();
};

/** Waits until the plan is saved and the figures belong to its revision. */
export async function settled(page: Page): Promise<number> {
  const handle = await page.waitForFunction(
    () => {
      const head = document.querySelector(".title-sub")?.textContent ?? "";
      const status = document.querySelector(".status")?.textContent ?? "";
      const saved = /revision (\d+), saved/.exec(head)?.[1];
      const worked = /Worked out for revision (\d+)/.exec(status)?.[1];
      return saved !== undefined && saved === worked ? Number(saved) : null;
    },
    null,
    { timeout: 120_000 },
  );
  return (await handle.jsonValue())!;
}

/** Waits until the next revision is saved and worked out. */
export async function afterRevision(page: Page, before: number): Promise<number> {
  await page.waitForFunction(
    (old) =>
      Number(/revision (\d+)/.exec(document.querySelector(".title-sub")?.textContent ?? "")?.[1]) > old,
    before,
  );
  return settled(page);
}

export const planIdOf = (page: Page): string =>
  new URLSearchParams(new URL(page.url()).hash.split("?")[1]).get("plan")!;

/** The plan as the server holds it now. */
export const planOf = async (page: Page): Promise<Plan> =>
  page.evaluate(async (id) => {
    const answer = await fetch(`api/plans/${id}`);
    return ((await answer.json()) as { plan: unknown }).plan;
  }, planIdOf(page)) as Promise<Plan>;

/** A digest of the drawn line: two are equal when every part stands where it stood. */
export const line = async (page: Page): Promise<string> =>
  createHash("sha256")
    .update(await outlines(page))
    .digest("hex");

/** Outlines of all parts, as they stand on the map. */
export const outlines = (page: Page): Promise<string> =>
  page.locator(".part-body").evaluateAll((paths) => paths.map((p) => p.getAttribute("d")).join(" "));

/** The strip: every part with its figure. */
export const strip = (page: Page): Promise<string> =>
  page.locator(".cell").evaluateAll((cells) => cells.map((c) => c.getAttribute("aria-label")).join("\n"));

/** The figures by id, as they read on the screen. */
export const figures = (page: Page): Promise<Readonly<Record<string, string>>> =>
  page
    .locator("[data-figure]")
    .evaluateAll((rows) =>
      Object.fromEntries(
        rows.map((r) => [(r as HTMLElement).dataset["figure"]!, r.querySelector("dd")!.textContent]),
      ),
    );

/** From grid metres to a place on the screen, found from where two plots are drawn. */
export async function screenOf(page: Page, plan: Plan): Promise<(ground: XY) => XY> {
  const [a, b] = farthestPair(plan.plots.map((p) => ({ id: p.id, at: [p.x, p.y] as XY })));
  const [pa, pb] = [
    await middleOf(page, `[data-plot="${a.id}"] .plot-square`),
    await middleOf(page, `[data-plot="${b.id}"] .plot-square`),
  ];
  const scale = Math.hypot(pb[0] - pa[0], pb[1] - pa[1]) / Math.hypot(b.at[0] - a.at[0], b.at[1] - a.at[1]);
  return ([x, y]) => [pa[0] + (x - a.at[0]) * scale, pa[1] - (y - a.at[1]) * scale];
}

interface Named {
  readonly id: string;
  readonly at: XY;
}

function farthestPair(all: readonly Named[]): [Named, Named] {
  const pairs = all.flatMap((a, i) => all.slice(i + 1).map((b): [Named, Named] => [a, b]));
  const apart = ([a, b]: [Named, Named]): number => Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
  return pairs.toSorted((p, q) => apart(q) - apart(p))[0]!;
}

export async function middleOf(page: Page, selector: string): Promise<XY> {
  let [last, box] = [await boxOf(page, selector), await boxOf(page, selector)];
  while (last.x !== box.x || last.y !== box.y || last.width !== box.width) {
    last = box;
    box = await boxOf(page, selector);
  }
  return [box.x + box.width / 2, box.y + box.height / 2];
}

/** A box as it is drawn once the page has had two frames to follow its state. */
async function boxOf(page: Page, selector: string) {
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
  return (await page.locator(selector).first().boundingBox())!;
}

/** Presses, moves in steps as a hand does, and lets go. */
export async function drag(page: Page, from: XY, to: XY): Promise<void> {
  await page.mouse.move(...from);
  await page.mouse.down();
  for (let k = 1; k <= 8; k++)
    await page.mouse.move(from[0] + ((to[0] - from[0]) * k) / 8, from[1] + ((to[1] - from[1]) * k) / 8);
  await page.mouse.up();
}

/** Presses Tab until the focus stands on what is wanted. */
export async function tabTo(page: Page, selector: string, most = 120): Promise<void> {
  for (let k = 0; k < most; k++) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((s) => document.activeElement?.matches(s) ?? false, selector)) return;
  }
  throw new Error(`Tab never came to ${selector}`);
}

/** Corner points of an SVG path that has only straight lines. */
export const corners = (path: string): XY[] =>
  [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);
