import { isInside } from "@causey/engine/site";
import type { Plan } from "@causey/engine/plan";
import { expect, test } from "vitest";
import { picture, wide } from "./support/browser.ts";
import {
  afterRevision,
  corners,
  drag,
  figures,
  line,
  middleOf,
  outlines,
  planOf,
  screenOf,
  settled,
  strip,
  type XY,
} from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

/** A plot and a place for it with a channel in between, so that the walkway must go another way. */
function acrossChannel(plan: Plan): { readonly plot: string; readonly to: XY } {
  const channels = plan.zones.filter((z) => z.use === "channel").flatMap((z) => z.polygons);
  const water = plan.zones
    .filter((z) => z.use !== "habitat" && z.use !== "parcel")
    .flatMap((z) => z.polygons);
  const along = (plot: XY, dx: number, dy: number, d: number): XY => [plot[0] + dx * d, plot[1] + dy * d];
  for (const plot of plan.plots)
    for (const [dx, dy] of [
      [-1, 0],
      [1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const way = Array.from({ length: 70 }, (_, d) => along([plot.x, plot.y], dx, dy, d));
      const enters = way.findIndex(([x, y]) => isInside(channels, x, y));
      const leaves = way.findIndex(([x, y], d) => enters > 0 && d > enters && !isInside(channels, x, y));
      const to = way[leaves + 6];
      const isClear =
        to &&
        [0, 2, 4, 6].every((r) => !isInside(water, to[0] + r, to[1]) && !isInside(water, to[0] - r, to[1]));
      if (enters > 0 && leaves > 0 && to && isClear) return { plot: plot.id, to };
    }
  throw new Error("The demo has no plot beside a channel.");
}

test("the page opens with the line, the strip and the figures, and the browser has no complaint", async () => {
  const { page, complaints } = sheet;
  expect(await page.locator("h1").allTextContents()).toEqual(["Layout"]);
  const parts = await page.locator(".part-body").count();
  expect(parts).toBeGreaterThan(5);
  expect(await page.locator(".cell").count()).toBe(parts);
  const read = await figures(page);
  expect(Object.keys(read).length).toBeGreaterThan(4);
  for (const text of Object.values(read)) expect(text).toMatch(/\d/);
  expect(await page.locator(".contour").count()).toBeGreaterThan(2);
  expect(await page.locator(".survey-line a[aria-current=page]").textContent()).toContain("Layout");
  await picture(page, "layout-wide");
  expect(complaints).toEqual([]);
});

test("a plot dragged over a channel changes line, strip and figures; undo brings the first ones back", async () => {
  const { page } = sheet;
  const before = { line: await line(page), strip: await strip(page), figures: await figures(page) };
  const revision = await settled(page);
  const plan = await planOf(page);
  const { plot, to } = acrossChannel(plan);
  const from = plan.plots.find((p) => p.id === plot)!;
  const at = await screenOf(page, plan);
  await drag(page, at([from.x, from.y]), at(to));
  const moved = await afterRevision(page, revision);
  expect(await line(page)).not.toBe(before.line);
  expect(await strip(page)).not.toBe(before.strip);
  expect(await figures(page)).not.toEqual(before.figures);
  const saved = (await planOf(page)).plots.find((p) => p.id === plot)!;
  expect(Math.hypot(saved.x - to[0], saved.y - to[1])).toBeLessThan(1);
  await picture(page, "layout-plot-moved");

  await page.getByRole("button", { name: "Undo" }).click();
  const undone = await afterRevision(page, moved);
  expect(await line(page)).toBe(before.line);
  expect(await figures(page)).toEqual(before.figures);

  await page.getByRole("button", { name: "Redo" }).click();
  await afterRevision(page, undone);
  expect(await line(page)).not.toBe(before.line);
});

test("a reload shows the same plan, page and figures", async () => {
  const { page } = sheet;
  const before = { line: await line(page), strip: await strip(page), figures: await figures(page) };
  await page.reload();
  await settled(page);
  expect({ line: await line(page), strip: await strip(page), figures: await figures(page) }).toEqual(before);
});

test("an area closed over the line moves the line out of it; taken away again, the line comes back", async () => {
  const { page } = sheet;
  const before = await line(page);
  const revision = await settled(page);
  const plan = await planOf(page);
  const at = await screenOf(page, plan);
  const middle = await lineMiddle();
  const box = (
    [
      [-5, -5],
      [5, -5],
      [5, 5],
      [-5, 5],
    ] as const
  ).map(([dx, dy]): XY => at([middle[0] + dx, middle[1] + dy]));
  await page.getByRole("button", { name: "Close an area" }).click();
  for (const corner of box.slice(0, 3)) await page.mouse.click(...corner);
  await page.mouse.dblclick(...box[3]!);
  await page.getByLabel("Name").fill("Wet hollow");
  await page.getByRole("button", { name: "Close this area" }).click();
  const closed = await afterRevision(page, revision);
  expect(await line(page)).not.toBe(before);
  const zone = (await planOf(page)).zones.at(-1)!;
  expect(zone).toMatchObject({ name: "Wet hollow", use: "closed", hidden: false });
  const area = corners((await page.locator(`[data-zone="${zone.id}"] .zone-edge`).getAttribute("d"))!);
  const inside = corners(await outlines(page)).filter(([x, y]) => isInside([[area]], x, y));
  expect(inside).toEqual([]);
  await picture(page, "layout-area-closed");

  await page.getByRole("button", { name: /^Wet hollow/ }).click();
  await page.getByRole("button", { name: "Take this area away" }).click();
  await afterRevision(page, closed);
  expect(await line(page)).toBe(before);

  /** A ground point on the longest run of the line, away from plots and start. */
  async function lineMiddle(): Promise<XY> {
    const boxes = await page.locator(".part-body").evaluateAll((all) =>
      all.map((e) => {
        const { x, y, width, height } = e.getBoundingClientRect();
        return [x + width / 2, y + height / 2] as [number, number];
      }),
    );
    const signs = [...plan.plots, ...plan.starts].map((p) => at([p.x, p.y]));
    const room = (b: XY): number => Math.min(...signs.map((s) => Math.hypot(s[0] - b[0], s[1] - b[1])));
    const best = boxes.toSorted((p, q) => room(q) - room(p))[0]!;
    const [o, e] = [at([0, 0]), at([1, 1])];
    return [(best[0] - o[0]) / (e[0] - o[0]), (best[1] - o[1]) / (e[1] - o[1])];
  }
});

test("a figure opens its working with formula, inputs, value and source, and gives the focus back", async () => {
  const { page } = sheet;
  const opener = page.locator("[data-figure] button").first();
  const ids = Object.keys(await figures(page));
  let steps = 0;
  for (const id of ids) {
    await page.locator(`[data-figure="${id}"] button`).click();
    const dialog = page.getByRole("dialog");
    await dialog.waitFor();
    expect(await dialog.getByRole("heading", { name: "How it was found" }).isVisible()).toBe(true);
    const shown = await dialog.locator(".step").count();
    if (shown > steps) {
      steps = shown;
      expect(await dialog.locator(".step-formula").first().textContent()).toContain("=");
      expect(await dialog.locator(".step .source").first().textContent()).not.toBe("");
      await picture(page, "working-wide");
    }
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    expect(
      await page.evaluate(() =>
        document.activeElement?.closest("[data-figure]")?.getAttribute("data-figure"),
      ),
    ).toBe(id);
  }
  expect(steps).toBeGreaterThan(0);
  expect(await opener.isVisible()).toBe(true);
});

test("pointing at the strip points at the map, and pointing at the map points at the strip", async () => {
  const { page } = sheet;
  const cell = page.locator(".cell").nth(2);
  const part = (await cell.getAttribute("data-part"))!;
  await cell.hover();
  expect(await page.locator(".part-pointed path").count()).toBe(1);
  expect(await page.locator(".strip-note").textContent()).toContain(part);
  await cell.click();
  expect(await page.locator(".part-chosen path").count()).toBe(1);
  await page.keyboard.press("ArrowRight");
  const next = await page.locator(".cell-chosen").getAttribute("data-part");
  expect(next).not.toBe(part);
  await page.keyboard.press("Escape");
  expect(await page.locator(".cell-chosen").count()).toBe(0);

  const other = page.locator(".cell").nth(4);
  await page.mouse.move(
    ...(await middleOf(page, `.part[data-part="${await other.getAttribute("data-part")}"] .part-body`)),
  );
  expect(await other.getAttribute("class")).toContain("cell-pointed");
});

test("feet and inches or metres by one switch, kept with the plan", async () => {
  const { page } = sheet;
  const revision = await settled(page);
  const isUs = (await planOf(page)).units === "us";
  const before = await figures(page);
  await page.getByRole("button", { name: isUs ? "metres" : "feet and inches" }).click();
  const switched = await afterRevision(page, revision);
  const after = await figures(page);
  expect(after).not.toEqual(before);
  expect(Object.values(after).join(" ")).toMatch(isUs ? /\d m\b/ : /\d ft\b/);
  await page.getByRole("button", { name: "Undo" }).click();
  await afterRevision(page, switched);
  expect(await figures(page)).toEqual(before);
});
