import { expect, test } from "vitest";
import { openPage, phone, picture, wide } from "./support/browser.ts";
import { afterRevision, middleOf, openSheet, planOf, screenOf, settled } from "./support/sheet.ts";
import { causeySession } from "./support/session.ts";

const session = causeySession();

test("a line is drawn on to a plot: the press beside it counts, and the parts lead to that plot", async () => {
  const { page, complaints } = await openPage(session.browser, wide);
  await openSheet(page, session.url);
  const revision = await settled(page);
  const plan = await planOf(page);
  const [start, plot] = [plan.starts[0]!, plan.plots[0]!];
  await page.getByRole("button", { name: "Draw the line" }).click();
  const at = await screenOf(page, plan);
  await page.mouse.click(...at([start.x, start.y]));
  await page.mouse.click(...at([start.x, plot.y - 12]));
  const [x, y] = await middleOf(page, `[data-plot="${plot.id}"] .plot-square`);
  await page.mouse.move(x + 60, y + 30);
  expect(await page.locator(".map-hint").textContent()).toMatch(/Heading \d+°.*Platforms turn square: /);
  expect(await page.locator(".area-line").evaluate((e) => getComputedStyle(e).fill)).toBe("none");
  await picture(page, "draw-line-wide");
  const bar = (await page.locator(".map-hint").boundingBox())!;
  const map = (await page.locator(".map-surface").boundingBox())!;
  expect(bar.y).toBeGreaterThanOrEqual(map.y + map.height - 1);

  await page.mouse.click(x + 11, y + 11);
  expect(await page.locator(".area-corner").count()).toBe(3);
  await page.keyboard.press("Enter");
  await afterRevision(page, revision);
  const [line] = (await planOf(page)).layout.lines;
  expect(line!.plot).toBe(plot.id);
  expect(line!.points.at(-1)).toEqual([plot.x, plot.y]);
  const broken = await page.locator("[data-broken]").evaluateAll((all) => all.map((e) => e.textContent));
  expect(new Set(broken).size).toBe(broken.length);
  await picture(page, "draw-line-drawn");
  expect(complaints).toEqual([]);
  await page.close();
});

test("on a phone the words of drawing lie below the map, and no button lies on another", async () => {
  const { page } = await openPage(session.browser, phone);
  await openSheet(page, session.url);
  // The line of the test before is drawn: all four buttons are there.
  await page.getByRole("button", { name: "Search the line" }).waitFor();
  await overlapFree(".map-buttons button");
  const surface = (await page.locator(".map-surface").boundingBox())!;
  const search = (await page.getByRole("button", { name: "Search the line" }).boundingBox())!;
  expect(search.y).toBeGreaterThanOrEqual(surface.y + surface.height - 1);
  await picture(page, "draw-line-phone-before");
  await page.getByRole("button", { name: "Draw the line" }).tap();
  await overlapFree(".map-buttons button, .map-hint button");
  const map = (await page.locator(".map-surface").boundingBox())!;
  await page.touchscreen.tap(map.x + 120, map.y + 150);
  await page.touchscreen.tap(map.x + 220, map.y + 250);
  const hint = (await page.locator(".map-hint").boundingBox())!;
  expect(hint.y).toBeGreaterThanOrEqual(map.y + map.height - 1);
  expect(await page.locator(".map-hint").textContent()).toContain("Heading");
  await picture(page, "draw-line-phone");
  await page.close();

  async function overlapFree(selector: string): Promise<void> {
    const boxes = await page.locator(selector).evaluateAll((all) =>
      all.map((e) => {
        const { left, top, right, bottom } = e.getBoundingClientRect();
        return { name: e.textContent, left, top, right, bottom };
      }),
    );
    const over = boxes.flatMap((a, i) =>
      boxes
        .slice(i + 1)
        .filter(
          (b) =>
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1,
        )
        .map((b) => `${a.name} over ${b.name}`),
    );
    expect(over).toEqual([]);
  }
});
