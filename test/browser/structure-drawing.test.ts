import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { violations } from "./support/axe.ts";
import { openPage, phone, picture, wide, type WatchedPage } from "./support/browser.ts";
import { causeySession } from "./support/session.ts";
import { openSheet } from "./support/sheet.ts";

const causey = causeySession();

const told = (page: Page): Promise<string | null> => page.locator(".structure-told").textContent();
const chosenLength = (page: Page): Promise<string[]> =>
  page
    .locator(".structure-choice [aria-pressed=true]")
    .evaluateAll((all) => all.map((b) => (b as HTMLElement).dataset["frame"]!));

async function openChecks(screen: typeof wide): Promise<WatchedPage> {
  const sheet = await openPage(causey.browser, screen);
  await openSheet(sheet.page, causey.url);
  await sheet.page.goto(sheet.page.url().replace(/#\/\w+/, "#/checks"));
  await sheet.page.locator(".structure-picture").waitFor();
  return sheet;
}

describe("on a desk", () => {
  let sheet: WatchedPage;
  beforeAll(async () => {
    sheet = await openChecks(wide);
  });
  afterAll(() => sheet.page.close());

  test("the drawing shows the longest module with its loads, three strips and three peaks", async () => {
    const { page } = sheet;
    const words = await page.locator(".scene-picture text").allTextContents();
    for (const title of ["Bending moment", "Shear", "Sag"]) expect(words).toContain(title);
    expect(words.filter((w) => /^\d+ lb$/.test(w)).length).toBeGreaterThan(0);
    expect(await page.locator(".peak-spot").count()).toBe(3);
    expect(await chosenLength(page)).toEqual(["module.3645mm"]);
    await picture(page, "structure-wide");
  });

  test("a chosen check turns the drawing to its length and effect, with the demand of the check as the peak", async () => {
    const { page } = sheet;
    const row = page.locator('[data-check="stringer-bending.2426mm"]');
    await row.locator(".check-name").click();
    await page.locator('[data-frame="module.2426mm"][aria-pressed=true]').waitFor();
    const demand = /^([\d,]+ lb ft) of/.exec((await row.locator("td").nth(2).textContent())!)![1]!;
    expect(await told(page)).toContain(`Bending moment ${demand} at`);
    await page.locator('[data-check="stringer-shear.3645mm"] .check-name').click();
    await page.locator('[data-frame="module.3645mm"][aria-pressed=true]').waitFor();
    expect(await told(page)).toMatch(/^Shear [\d,]+ lb at /);
  });

  test("pointing at a peak shows its figure and its loads; leaving it shows the chosen one again", async () => {
    const { page } = sheet;
    await page.locator('[data-peak="sag"]').hover();
    await page.locator(".structure-told", { hasText: /^Sag \d+\.\d\d in at/ }).waitFor();
    await page.locator("h1").hover();
    await page.locator(".structure-told", { hasText: /^Shear/ }).waitFor();
  });

  test("length and peak are chosen by keys, and nothing moves when they change", async () => {
    const { page } = sheet;
    const room = async () => (await page.locator(".structure").boundingBox())!.height;
    const before = await room();
    await page.locator('[data-frame="module.2426mm"]').focus();
    await page.keyboard.press("Enter");
    expect(await chosenLength(page)).toEqual(["module.2426mm"]);
    await page.locator('[data-peak="moment"]').focus();
    expect(await told(page)).toMatch(/^Bending moment/);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset["peak"])).toBe("shear");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    expect(await page.locator('[data-peak="sag"]').getAttribute("aria-pressed")).toBe("true");
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement!.className)).toContain("station-scroll");
    expect(await room()).toBe(before);
  });

  test("the table beside it holds a row for every station, its largest figures those of the peaks", async () => {
    const { page } = sheet;
    const rows = await page
      .locator(".station-table tbody tr")
      .evaluateAll((all) => all.map((tr) => [...tr.children].map((cell) => cell.textContent)));
    expect(rows.length).toBeGreaterThan(15);
    expect(rows[0]![0]).toBe("0 in");
    expect(rows.at(-1)![0]).toBe("7 ft 11 1/2 in");
    const moments = rows.map((r) => Number(/^-?[\d,]+/.exec(r[1]!)![0].replace(",", "")));
    await page.locator('[data-peak="moment"]').focus();
    const peak = Number(/moment ([\d,]+) lb ft/.exec((await told(page))!)![1]!.replace(",", ""));
    expect(Math.abs(Math.max(...moments) - peak)).toBeLessThanOrEqual(1);
  });

  test("axe finds nothing, and the browser complains of nothing", async () => {
    expect(await violations(sheet.page)).toEqual([]);
    expect(sheet.complaints).toEqual([]);
  });
});

describe("in one hand", () => {
  let sheet: WatchedPage;
  beforeAll(async () => {
    sheet = await openChecks(phone);
  });
  afterAll(() => sheet.page.close());

  test("drawing and table fit into 390 px, and a peak is large enough for a finger", async () => {
    const { page } = sheet;
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    const box = (await page.locator(".structure-picture").boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(390);
    const spot = (await page.locator('[data-peak="shear"]').boundingBox())!;
    expect(Math.min(spot.width, spot.height)).toBeGreaterThanOrEqual(44);
    const small = await page
      .locator(".scene-picture text")
      .evaluateAll((all) => Math.min(...all.map((t) => t.getBoundingClientRect().height)));
    expect(small).toBeGreaterThan(10);
    await picture(page, "structure-phone");
  });

  test("a tap on a peak tells its figure", async () => {
    const { page } = sheet;
    await page.locator('[data-peak="sag"]').tap();
    await page.locator(".structure-told", { hasText: /^Sag/ }).waitFor();
    expect(await page.locator('[data-peak="sag"]').getAttribute("aria-pressed")).toBe("true");
  });

  test("axe finds nothing, and the browser complains of nothing", async () => {
    expect(await violations(sheet.page)).toEqual([]);
    expect(sheet.complaints).toEqual([]);
  });
});
