import type { BrowserContextOptions } from "playwright-core";
import { describe, expect, test } from "vitest";
import { violations } from "./support/axe.ts";
import { openPage, phone, picture, wide } from "./support/browser.ts";
import { openSheet } from "./support/sheet.ts";
import { causeySession } from "./support/session.ts";

const session = causeySession();

const screens: readonly [string, BrowserContextOptions][] = [
  ["wide", wide],
  ["phone", phone],
  ["wide-night", { ...wide, colorScheme: "dark" }],
  ["phone-night", { ...phone, colorScheme: "dark" }],
];

describe.each(screens)("%s", (name, options) => {
  test("axe-core 4.14 finds no violation on either page, in a working, in the list of plans or in a dialog", async () => {
    const { page } = await openPage(session.browser, options);
    await openSheet(page, session.url);
    await page.waitForTimeout(300);
    expect(await violations(page)).toEqual([]);
    await picture(page, `axe-layout-${name}`);

    await page.locator("[data-figure] button").last().click();
    await page.getByRole("dialog").waitFor();
    expect(await violations(page)).toEqual([]);
    await picture(page, `axe-working-${name}`);
    await page.keyboard.press("Escape");
    await page.getByRole("dialog").waitFor({ state: "detached" });

    await page.getByRole("button", { name: "by numbers" }).click();
    await page.getByRole("dialog").waitFor();
    expect(await violations(page)).toEqual([]);
    await picture(page, `axe-by-numbers-${name}`);
    await page.keyboard.press("Escape");
    await page.getByRole("dialog").waitFor({ state: "detached" });

    await page.getByRole("button", { name: "Plans" }).click();
    await page.locator(".plan-entry").first().waitFor();
    expect(await violations(page)).toEqual([]);
    await picture(page, `axe-plans-${name}`);
    await page.keyboard.press("Escape");
    await page.getByRole("dialog").waitFor({ state: "detached" });

    await page.getByRole("link", { name: "Checks" }).click();
    await page.locator(".check-name").first().click();
    await page.locator(".check-detail").waitFor();
    expect(await violations(page)).toEqual([]);
    await picture(page, `axe-checks-${name}`);
    await page.close();
  });
});

test("on a phone nothing is cut off at the side, the map comes first, and what is pressed is 44 pixels high", async () => {
  const { page } = await openPage(session.browser, phone);
  await openSheet(page, session.url);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  const [map, first] = [
    await page.locator(".site-map").boundingBox(),
    await page.locator("h1").boundingBox(),
  ];
  expect(map!.y).toBeLessThan(first!.y);
  const small = await page
    .locator("button:visible, a:visible, summary:visible, [role=option]")
    .evaluateAll((all) =>
      all
        .map((e) => ({ text: e.textContent, height: e.getBoundingClientRect().height }))
        .filter((e) => e.height < 43.5),
    );
  expect(small).toEqual([]);
  await page.close();
});
