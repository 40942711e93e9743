import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { openPage, phone, picture, wide } from "./support/browser.ts";
import { afterRevision, openSheet, planOf, settled } from "./support/sheet.ts";
import { causeySession } from "./support/session.ts";

const session = causeySession();

const go = async (page: Page, name: string): Promise<void> => {
  await page.getByRole("navigation", { name: "Pages" }).getByRole("link", { name, exact: true }).click();
  await page.getByRole("heading", { level: 1, name }).waitFor();
};

test("on a wide screen: files from the map, a plot that is visited, a level without a height, sheets kept", async () => {
  const { page, complaints } = await openPage(session.browser, wide);
  await openSheet(page, session.url);

  await go(page, "Site");
  await page.getByRole("button", { name: "Bring in a file" }).click();
  await page.getByRole("button", { name: "Plots", exact: true }).click();
  await page.getByRole("dialog").getByText("Plots from a file").waitFor();
  await page.keyboard.press("Escape");
  await page.getByRole("dialog").waitFor({ state: "detached" });
  const plan = await planOf(page);
  const [plot, visit] = [plan.plots[0]!, plan.visits[0]!];
  await page.getByRole("button", { name: `Remove ${plot.name}` }).click();
  const notice = page.locator(".notices");
  await notice.getByText(`The visit "${visit.name}" still goes to "${plot.name}".`).waitFor();
  expect(await notice.textContent()).toContain("Untick it on the page Request first");
  expect(await notice.textContent()).not.toContain("visits[");
  expect((await planOf(page)).plots).toEqual(plan.plots);
  await notice.getByRole("button", { name: "Done" }).click();

  await go(page, "Water");
  await page.getByRole("button", { name: "Add a level" }).click();
  await page.getByLabel("What the new level is").selectOption({ label: "mean high water neaps" });
  await page.getByLabel("Name of the new level").fill("Neaps at the sluice");
  const height = page.getByLabel("Height of Neaps at the sluice", { exact: true });
  expect((await planOf(page)).levels).toEqual(plan.levels);
  const revision = await settled(page);
  await height.fill("1.25 m");
  await height.press("Enter");
  await afterRevision(page, revision);
  expect((await planOf(page)).levels.at(-1)).toMatchObject({
    name: "Neaps at the sluice",
    role: "mhwn",
    basis: "mean",
    z_m: 1.25,
  });

  await go(page, "Drawings");
  const sheet = page.getByRole("checkbox").first();
  await sheet.uncheck();
  await go(page, "Water");
  await go(page, "Drawings");
  expect(await page.getByRole("checkbox").first().isChecked()).toBe(false);
  // The browser reports the one edit that the server refused above, and nothing else.
  expect(complaints.map((c) => /status of (\d+)/.exec(c)?.[1] ?? c)).toEqual(["422"]);
  await page.close();
});

test("an area closed for a season asks for its days, as people write them", async () => {
  const { page } = await openPage(session.browser, wide);
  await openSheet(page, session.url);
  const revision = await settled(page);
  await page.getByRole("button", { name: "by numbers" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("What it is").selectOption("closed for a season");
  await dialog.getByLabel("First day").fill("1 Apr");
  await dialog.getByLabel("Last day").fill("08-31");
  await picture(page, "close-area-season");
  await dialog.getByRole("button", { name: "Keep this area" }).click();
  await afterRevision(page, revision);
  const zone = (await planOf(page)).zones.at(-1)!;
  expect(zone).toMatchObject({ use: "seasonal-closure", from: "04-01", to: "08-31" });
  await page.close();
});

test("on a phone the order list shows its amounts whole, and a page of the drawings grows by a tap", async () => {
  const { page } = await openPage(session.browser, phone);
  await openSheet(page, session.url);
  await go(page, "Materials");
  const amounts = await page.locator(".order-amount").evaluateAll((cells) =>
    cells.map((cell) => {
      const { left, right } = cell.getBoundingClientRect();
      return { left, right, overflows: cell.scrollWidth > cell.clientWidth };
    }),
  );
  expect(amounts.length).toBeGreaterThan(3);
  for (const { left, right, overflows } of amounts) {
    expect([left >= 0, right <= 390, overflows]).toEqual([true, true, false]);
  }
  await go(page, "Drawings");
  const drawn = page.locator(".paper-page svg");
  await drawn.waitFor();
  const small = (await drawn.boundingBox())!.width;
  await page.getByRole("button", { name: "Enlarge" }).tap();
  expect((await drawn.boundingBox())!.width).toBeGreaterThan(2 * small);
  expect(await page.locator(".survey-line").getAttribute("class")).toContain("goes-on-left");
  await page.close();
});
