import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { violations } from "./support/axe.ts";
import { picture, wide } from "./support/browser.ts";
import { afterRevision, goTo, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

/** Types into a field and waits until the change is saved and worked out. */
const type = async (page: Page, label: string, words: string): Promise<void> => {
  const before = await settled(page);
  const field = page.getByLabel(label, { exact: false }).first();
  await field.fill(words);
  await field.blur();
  await afterRevision(page, before);
};
const undo = async (page: Page): Promise<void> => {
  const before = await settled(page);
  await page.getByRole("button", { name: "Undo" }).click();
  await afterRevision(page, before);
};

test("names, days of laying and the day of removal are changed on the Request page, and each is taken back", async () => {
  const { page } = sheet;
  await goTo(page, "Request");
  const before = await planOf(page);
  await type(page, "Name of the plan", "Traps by the creek");
  expect(await page.locator(".title-name").innerText()).toBe("Traps by the creek");
  await type(page, "Name of the site", "Quillet");
  await type(
    page,
    "Laying, last day",
    before.laying.to.replace(/\d$/, (d) => String((Number(d) + 1) % 9)),
  );
  await type(page, "Taken out by", "2031-10-30");
  await picture(page, "request-plan-fields");
  const after = await planOf(page);
  expect(after).toMatchObject({
    name: "Traps by the creek",
    site_name: "Quillet",
    removal: { by: "2031-10-30" },
  });
  expect(after.laying.to).not.toBe(before.laying.to);
  for (let n = 0; n < 4; n++) await undo(page);
  expect(await planOf(page)).toEqual(before);
});

test("fields that are filled faster than they are saved are all kept", async () => {
  const { page } = sheet;
  await goTo(page, "Request");
  const [before, revision] = [await planOf(page), await settled(page)];
  const words = {
    "Who asks": "R. Tern",
    Organisation: "School of the Estuary",
    "How to reach them": "hut 4",
  };
  for (const [label, answer] of Object.entries(words))
    await page.getByLabel(label, { exact: true }).fill(answer);
  await page.getByLabel("Overall width", { exact: true }).first().fill("0.6 in");
  await page.keyboard.press("Tab");
  await page.getByText("At least 3 15/16 in.").waitFor();
  await afterRevision(page, revision + 2);
  expect((await planOf(page)).request).toEqual({
    ...before.request,
    requester: "R. Tern",
    organisation: "School of the Estuary",
    contact: "hut 4",
  });
  expect((await planOf(page)).visits).toEqual(before.visits);
  for (let n = 0; n < 3; n++) await undo(page);
  expect(await planOf(page)).toEqual(before);
});

test("weights of harm are changed among the layout's lists, per square foot where lengths are in feet", async () => {
  const { page } = sheet;
  await goTo(page, "Layout");
  await page.getByRole("button", { name: "Lists" }).click();
  const before = await planOf(page);
  await type(page, "Shaded ground (USD a sq ft)", "2");
  await type(page, "Crossing a channel or pool", "250");
  await page.getByLabel("Crossing a channel or pool").scrollIntoViewIfNeeded();
  await picture(page, "layout-weights");
  const { weights } = (await planOf(page)).layout;
  expect(weights.shade_per_m2).toBeCloseTo(2 / 0.09290304, 9);
  expect(weights.crossing).toBe(250);
  await undo(page);
  await undo(page);
  expect((await planOf(page)).layout).toEqual(before.layout);
});

test("more room under the modules raises the deck: the least height follows, and undo brings the old deck back", async () => {
  const { page } = sheet;
  await goTo(page, "Layout");
  const least = page.locator('[data-figure="lowest-clear"] .figure-value');
  const before = await least.innerText();
  await page.getByRole("button", { name: "Lists" }).click();
  await type(page, "Clear under the modules, at least", "9 in");
  expect((await planOf(page)).layout.min_clear_mm).toBeCloseTo(228.6, 6);
  const inches = /^(\d+)/.exec(await least.innerText());
  expect(Number(inches![1])).toBeGreaterThanOrEqual(9);
  await undo(page);
  expect(await least.innerText()).toBe(before);
});

test("one price is changed, the cost follows, and undo brings the old list back", async () => {
  const { page } = sheet;
  await goTo(page, "Materials");
  const [before, revision] = [await planOf(page), await settled(page)];
  const cost = page.locator('[data-figure="cost"] .figure-value');
  const dear = await cost.innerText();
  await page.getByRole("button", { name: "Change prices" }).click();
  const dialog = page.getByRole("dialog");
  await dialog
    .getByLabel(/\(USD\)/)
    .first()
    .fill("99");
  await dialog.getByLabel("Source of the new prices").fill("Creek yard");
  await dialog.getByLabel("Day of the new prices").click();
  expect(await violations(page)).toEqual([]);
  await picture(page, "prices-dialog");
  await dialog.getByRole("button", { name: "Keep 1 price" }).click();
  await afterRevision(page, revision);
  expect((await planOf(page)).prices.file).not.toBe(before.prices.file);
  expect(await cost.innerText()).not.toBe(dear);
  await undo(page);
  expect(await planOf(page)).toEqual(before);
  expect(await cost.innerText()).toBe(dear);
});

const list = (head: string, row: string): Buffer => Buffer.from(`${head}\n${row}\n`);
const HEAD = "item,description,length_ft,pack,price,currency,date,source";

test("a file of prices replaces the list with its currency; one without dates is refused line by line, and nothing changes", async () => {
  const { page } = sheet;
  const dialog = page.getByRole("dialog");
  const take = async (name: string, buffer: Buffer): Promise<void> => {
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", { name: "Take in a price list" }).click(),
    ]);
    await chooser.setFiles({ name, mimeType: "text/csv", buffer });
    await dialog.getByLabel("The list that is there").selectOption("replace");
  };
  const [before, revision] = [await planOf(page), await settled(page)];
  await take("bad.csv", list(HEAD, "2x4,Deal,8,1,7.50,GBP,,Yard"));
  await dialog.locator(".problem", { hasText: "no date" }).filter({ hasText: "line 2" }).waitFor();
  expect(await dialog.getByRole("button", { name: "Take over" }).isDisabled()).toBe(true);
  await page.keyboard.press("Escape");
  expect(await planOf(page)).toEqual(before);
  await take("yard.csv", list(HEAD, "2x4,Deal,8,1,7.50,GBP,2026-05-01,Yard"));
  await dialog.getByRole("button", { name: "Replace the list with 1 price" }).click();
  await afterRevision(page, revision);
  expect(await planOf(page)).toMatchObject({ prices: { file: "yard.csv" }, money: { currency: "GBP" } });
  expect(await page.locator(".problem", { hasText: "no date" }).count()).toBe(0);
  await picture(page, "materials-prices");
});

test("another currency is written through the list, and no number changes", async () => {
  const { page } = sheet;
  await type(page, "Currency", "eur");
  const { money, prices } = await planOf(page);
  expect(money.currency).toBe("EUR");
  expect(prices.file).not.toBe("yard.csv");
  await page.getByRole("button", { name: "Change prices" }).click();
  expect(await page.getByRole("dialog").getByLabel("Deal (EUR)").inputValue()).toBe("7.5");
  await page.keyboard.press("Escape");
  expect(sheet.complaints).toEqual([]);
});
