import { expect, test } from "vitest";
import { picture, wide } from "./support/browser.ts";
import { afterRevision, planOf, settled, tabTo } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

test("by keys alone: a plot moves by half metres and by five, Escape leaves it, Enter keeps it", async () => {
  const { page } = sheet;
  const revision = await settled(page);
  const plot = (await planOf(page)).plots[0]!;
  const mine = `[data-plot="${plot.id}"]`;
  await tabTo(page, mine);
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Escape");
  await page.keyboard.press("Shift+ArrowDown");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  expect(await page.locator(".map-hint").textContent()).toContain(plot.name);
  await picture(page, "keyboard-plot");
  await page.keyboard.press("Enter");
  await afterRevision(page, revision);
  const moved = (await planOf(page)).plots[0]!;
  expect([moved.x - plot.x, moved.y - plot.y].map((v) => Math.round(v * 100) / 100)).toEqual([1, -5]);
  expect(await page.evaluate((s) => document.activeElement?.matches(s), mine)).toBe(true);
});

test("by keys alone: a working opens and closes, and the page changes", async () => {
  const { page } = sheet;
  await tabTo(page, ".figure-value");
  await page.keyboard.press("Enter");
  await page.getByRole("dialog").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("dialog").waitFor({ state: "detached" });
  await tabTo(page, 'a.peg[href*="checks"]');
  await page.keyboard.press("Enter");
  await page.locator(".check-row").first().waitFor();
  await tabTo(page, ".check-name");
  await page.keyboard.press("Enter");
  await page.locator(".check-detail").waitFor();
  await tabTo(page, '[role="option"]', 400);
  await page.keyboard.press("ArrowRight");
  expect(await page.locator(".cell-chosen").count()).toBe(1);
  await page.keyboard.press("Escape");
  await tabTo(page, 'a.peg[href*="layout"]', 400);
  await page.keyboard.press("Enter");
  await page.locator(".part-body").first().waitFor();
});

test("by keys alone: an area is closed with the cross, and another by numbers", async () => {
  const { page } = sheet;
  const revision = await settled(page);
  await tabTo(page, ".map-surface");
  await tabTo(page, ".map-buttons fieldset:nth-child(2) button:first-of-type");
  await page.keyboard.press("Enter");
  const press = async (...keys: string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  await press(" ", "ArrowRight", "ArrowRight", "ArrowRight", " ", "Shift+ArrowDown", " ");
  expect(await page.locator(".area-corner").count()).toBe(3);
  await picture(page, "keyboard-area");
  await press("Enter");
  await page.getByRole("dialog").waitFor();
  await press("Enter");
  const first = await afterRevision(page, revision);
  expect((await planOf(page)).zones.at(-1)).toMatchObject({ use: "closed", name: "Closed area 1" });

  await tabTo(page, ".map-buttons fieldset:nth-child(2) button:last-of-type");
  await press("Enter");
  await page.getByRole("dialog").waitFor();
  await press("Enter");
  await afterRevision(page, first);
  const zone = (await planOf(page)).zones.at(-1)!;
  expect(zone).toMatchObject({ use: "closed", name: "Closed area 2" });
  expect(zone.polygons[0]![0]).toHaveLength(4);
});
