import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { phone, picture } from "./support/browser.ts";
import { afterRevision, middleOf, planOf, screenOf, settled, type XY } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(phone);

/** One finger or more, put down, moved together in steps, and lifted. */
async function touch(page: Page, from: readonly XY[], to: readonly XY[]): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const at = (t: number) =>
    from.map(([x, y], id) => ({ id, x: x + (to[id]![0] - x) * t, y: y + (to[id]![1] - y) * t }));
  await session.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: at(0) });
  for (let k = 1; k <= 8; k++)
    await session.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: at(k / 8) });
  await session.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await session.detach();
}

const apart = async (page: Page): Promise<number> => {
  const plots = (await planOf(page)).plots;
  const [a, b] = [
    await middleOf(page, `[data-plot="${plots[0]!.id}"] .plot-square`),
    await middleOf(page, `[data-plot="${plots[1]!.id}"] .plot-square`),
  ];
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
};

/** A place on the map with no plot near it, where a finger moves nothing but the map. */
async function freeGround(page: Page): Promise<XY> {
  const box = (await page.locator(".map-surface").boundingBox())!;
  const plots = await Promise.all(
    (await planOf(page)).plots.map((p) => middleOf(page, `[data-plot="${p.id}"] .plot-square`)),
  );
  for (let y = box.y + 90; y < box.y + box.height - 60; y += 10)
    for (let x = box.x + 90; x < box.x + box.width - 90; x += 10)
      if (plots.every((p) => Math.hypot(p[0] - x, p[1] - y) > 95)) return [x, y];
  throw new Error("There is no free ground on the map.");
}

test("two fingers zoom the map, one finger moves it", async () => {
  const { page } = sheet;
  // Both views are the one that the button gives: the first view of a page was fitted to an earlier revision's line.
  await page.getByRole("button", { name: "Walkway" }).tap();
  const before = await apart(page);
  const [x, y] = await freeGround(page);
  const fingers = (half: number): XY[] => [
    [x - half, y],
    [x + half, y],
  ];
  await touch(page, fingers(30), fingers(60));
  expect((await apart(page)) / before).toBeCloseTo(2, 1);
  const plot = (await planOf(page)).plots[0]!.id;
  const [px, py] = await middleOf(page, `[data-plot="${plot}"] .plot-square`);
  const [fx, fy] = await freeGround(page);
  await touch(page, [[fx, fy]], [[fx - 30, fy + 30]]);
  const [qx, qy] = await middleOf(page, `[data-plot="${plot}"] .plot-square`);
  expect(qx - px).toBeCloseTo(-30, 0);
  expect(qy - py).toBeCloseTo(30, 0);
  await page.getByRole("button", { name: "Walkway" }).tap();
  expect(await apart(page)).toBeCloseTo(before, 0);
});

test("a plot is moved with a finger", async () => {
  const { page } = sheet;
  const revision = await settled(page);
  const plan = await planOf(page);
  const plot = plan.plots[0]!;
  const at = await screenOf(page, plan);
  await touch(page, [at([plot.x, plot.y])], [at([plot.x + 8, plot.y + 6])]);
  await afterRevision(page, revision);
  const moved = (await planOf(page)).plots[0]!;
  expect(Math.hypot(moved.x - plot.x - 8, moved.y - plot.y - 6)).toBeLessThan(1);
});

test("a tapped cell of the strip says what governs its part, and the strip scrolls on", async () => {
  const { page } = sheet;
  const cell = page.locator(".cell").nth(1);
  const part = (await cell.getAttribute("data-part"))!;
  await cell.tap();
  expect(await page.locator(".strip-note").textContent()).toContain(part);
  expect(await page.locator(".part-chosen path").count()).toBe(1);
  await page.locator(".cell").last().scrollIntoViewIfNeeded();
  expect(await page.locator(".strip-view").evaluate((view) => view.scrollLeft)).toBeGreaterThan(100);
  await picture(page, "phone-strip");
});

test("what is seldom needed folds away and works from there", async () => {
  const { page } = sheet;
  const revision = await settled(page);
  const isUs = (await planOf(page)).units === "us";
  await page.getByText("More", { exact: true }).tap();
  await picture(page, "phone-more");
  await page.getByRole("button", { name: isUs ? "metres" : "feet and inches" }).tap();
  await afterRevision(page, revision);
  expect((await planOf(page)).units).toBe(isUs ? "metric" : "us");
});
