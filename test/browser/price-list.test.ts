import { readPrices } from "@causey/io/prices";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { violations } from "./support/axe.ts";
import { phone, picture, wide } from "./support/browser.ts";
import { folderOf, openPlan } from "./support/open-plan.ts";
import { afterRevision, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

/** A yard's quote as it is handed over the counter: other heads, semicolons, its own words for the timber. */
const QUOTE = `Item;Length ft;Price GBP;Quoted
2x6 treated;8;9.80;2026-10-02
2x4 treated;8;6.20;2026-10-02
5/4x6 decking;12;11.40;2026-10-02
Joist hanger 2x6;;1.10;2026-10-02
`;
const taken = [
  ["2x4", 2438.4, 6.2],
  ["2x6", 2438.4, 9.8],
  ["5/4x6", 3657.6, 11.4],
] as const;

const pricesOf = async (page: Page) => {
  const { file } = (await planOf(page)).prices;
  return readPrices(file, (await folderOf(page)).get(file)!).prices;
};
const takeIn = async (page: Page, name: string, text: string): Promise<void> => {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: "Take in a price list" }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: "text/csv", buffer: Buffer.from(text) });
  await page.getByRole("dialog").waitFor();
};
const undo = async (page: Page): Promise<void> => {
  const before = await settled(page);
  await page.getByRole("button", { name: "Undo" }).click();
  await afterRevision(page, before);
};

test("the note on the prices leads to the fields of the list", async () => {
  const { page } = sheet;
  await page.getByRole("link", { name: "Materials", exact: true }).click();
  await page.getByRole("button", { name: "Go to the price list" }).click();
  const button = page.getByRole("button", { name: "Take in a price list" });
  expect(await button.evaluate((b) => b === document.activeElement)).toBe(true);
  const box = (await button.boundingBox())!;
  expect(box.y).toBeGreaterThan(0);
  expect(box.y).toBeLessThan(600);
});

test("a yard's quote in another currency is refused for adding, with a mend; replacing names what the order would lack", async () => {
  const { page } = sheet;
  await takeIn(page, "yard-quote.csv", QUOTE);
  const dialog = page.getByRole("dialog");
  await dialog.getByText("Still to be said: who gave the prices.").waitFor();
  await dialog.getByLabel("Source of the prices").fill("Marsh Timber, by mail");
  await dialog.getByLabel("Source of the prices").press("Enter");
  await dialog.locator(".problem", { hasText: "The file is in GBP, the list in USD" }).waitFor();
  expect(await dialog.getByRole("button", { name: "Take over" }).isDisabled()).toBe(true);
  await dialog.getByLabel("The list that is there").selectOption("replace");
  const lacking = dialog.locator("[data-missing]");
  await lacking.waitFor();
  expect(Number(await lacking.getAttribute("data-missing"))).toBeGreaterThan(0);
  expect(await lacking.innerText()).toContain("screw-10x3");
  expect(await dialog.locator("[data-kept-money]").innerText()).toMatch(/Labour, one hour: \d+/);
  expect(await violations(page)).toEqual([]);
  await picture(page, "price-list-replace");
  await page.keyboard.press("Escape");
  await dialog.waitFor({ state: "detached" });
});

test("in the list's own currency three rows take the place of three prices, and every other stays as it was", async () => {
  const { page } = sheet;
  const before = await settled(page);
  await page.getByLabel("Currency", { exact: false }).fill("GBP");
  await page.getByLabel("Currency", { exact: false }).blur();
  await afterRevision(page, before);
  expect(await page.locator("[data-kept-money]").innerText()).toMatch(
    /given in USD and count as GBP[^]*Labour, one hour: \d+[^]*Delivery: \d+[^]*Disposal: \d+/,
  );
  const old = await pricesOf(page);
  await takeIn(page, "yard-quote.csv", QUOTE);
  const dialog = page.getByRole("dialog");
  expect(await dialog.getByLabel("2x6 treated").inputValue()).toBe("2x6");
  expect(await dialog.getByLabel("5/4x6 decking").inputValue()).toBe("5/4x6");
  expect(await dialog.getByLabel("Joist hanger 2x6").inputValue()).toBe("");
  await dialog.getByLabel("Source of the prices").fill("Marsh Timber, by mail");
  await dialog.getByLabel("Source of the prices").press("Enter");
  await dialog.getByText("3 prices of the list are replaced, 0 added").waitFor();
  expect(await dialog.locator(".notes").innerText()).toContain('"treated" makes no difference');
  expect(await dialog.getByText("1 row left out").count()).toBe(1);
  expect(await violations(page)).toEqual([]);
  await picture(page, "price-list-add");
  const revision = await settled(page);
  await dialog.getByRole("button", { name: "Add 3 prices" }).click();
  await afterRevision(page, revision);
  const fresh = await pricesOf(page);
  const changed = fresh.filter((p) => !old.some((o) => JSON.stringify(o) === JSON.stringify(p)));
  expect(changed.map((p) => [p.item, p.length_mm, p.price])).toEqual(
    expect.arrayContaining(taken.map((row) => [...row])),
  );
  expect(changed).toHaveLength(taken.length);
  expect(changed.every((p) => p.source === "Marsh Timber, by mail" && p.date === "2026-10-02")).toBe(true);
  expect(fresh).toHaveLength(old.length);
  expect(fresh.filter((p) => !changed.includes(p))).toEqual(
    old.filter(
      (o) => !taken.some(([item, length]) => o.item === item && Math.abs((o.length_mm ?? 0) - length) < 1),
    ),
  );
});

test("a row that was not recognised is taken in when its item is chosen, and a column can be chosen by hand", async () => {
  const { page } = sheet;
  await takeIn(page, "odd.csv", "What,How long,Each\nStuds from the barn,8,5.00\n");
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Column: item").selectOption("what");
  await dialog.getByLabel("Column: length", { exact: true }).selectOption("how long");
  await dialog.getByLabel("Lengths are in").selectOption("ft");
  await dialog.getByLabel("Column: price").selectOption("each");
  for (const [label, words] of [
    ["Currency of the file", "gbp"],
    ["Day of the prices", "2026-11-01"],
    ["Source of the prices", "The barn"],
  ] as const)
    await dialog.getByLabel(label).fill(words);
  await dialog.getByLabel("Source of the prices").blur();
  await dialog.getByText("0 prices can be taken over, 1 row left out").waitFor();
  await dialog.getByLabel("Studs from the barn").selectOption("2x4");
  const revision = await settled(page);
  await dialog.getByRole("button", { name: "Add 1 price" }).click();
  await afterRevision(page, revision);
  expect((await pricesOf(page)).filter((p) => p.source === "The barn")).toMatchObject([
    { item: "2x4", length_mm: 2438.4, price: 5, currency: "GBP", date: "2026-11-01" },
  ]);
  await undo(page);
});

test("what is not stocked any more leaves the list, the sums say that they are incomplete, and undo brings it back", async () => {
  const { page } = sheet;
  const before = await pricesOf(page);
  await page.getByRole("button", { name: "Change prices" }).click();
  const dialog = page.getByRole("dialog");
  const screws = before.filter((p) => p.item === "screw-10x3");
  expect(screws.length).toBeGreaterThan(0);
  for (const { description } of screws)
    await dialog.getByRole("checkbox", { name: `${description}: not stocked` }).check();
  expect(await dialog.locator("[data-missing]").innerText()).toContain("screw-10x3");
  expect(await violations(page)).toEqual([]);
  await picture(page, "price-list-not-stocked");
  const revision = await settled(page);
  await dialog.getByRole("button", { name: "Take out 1 price" }).click();
  await afterRevision(page, revision);
  expect(await pricesOf(page)).toEqual(before.filter((p) => p.item !== "screw-10x3"));
  const gap = "incomplete: 1 item without a price";
  for (const figure of ["cost", "budget", "cost-per-visit"])
    expect(await page.locator(`[data-figure="${figure}"] .figure-gap`).innerText()).toBe(gap);
  expect(await violations(page)).toEqual([]);
  await picture(page, "materials-incomplete");
  await page.getByRole("link", { name: "Layout", exact: true }).click();
  expect(await page.locator('[data-figure="cost"] .figure-gap').innerText()).toBe(gap);
  await picture(page, "layout-incomplete");
  await undo(page);
  expect(await page.locator(".figure-gap").count()).toBe(0);
  expect(await pricesOf(page)).toEqual(before);
  expect(sheet.complaints).toEqual([]);
});

test("on a phone every field of the quote can be reached and hit", async () => {
  const { page } = sheet;
  await page.setViewportSize(phone.viewport!);
  await page.getByRole("link", { name: "Materials", exact: true }).click();
  await takeIn(page, "yard-quote.csv", QUOTE);
  const dialog = page.getByRole("dialog");
  await picture(page, "price-list-phone");
  const small = await dialog
    .locator("select, input, button")
    .evaluateAll((all) => all.filter((e) => e.getBoundingClientRect().height < 44).map((e) => e.outerHTML));
  expect(small).toEqual([]);
  expect(await dialog.evaluate((d) => d.scrollWidth <= d.clientWidth)).toBe(true);
  await dialog.getByLabel("Joist hanger 2x6").scrollIntoViewIfNeeded();
  await picture(page, "price-list-phone-rows");
  expect(await violations(page)).toEqual([]);
});

test("a plan in which nothing is laid shows no cost and no budget, and its prices can be taken in all the same", async () => {
  const { page } = sheet;
  await page.setViewportSize(wide.viewport!);
  await page.keyboard.press("Escape");
  const folder = new Map(await folderOf(page));
  const change = (name: string, of: (content: Record<string, unknown>) => object): void => {
    const content = JSON.parse(new TextDecoder().decode(folder.get(name))) as Record<string, unknown>;
    folder.set(name, new TextEncoder().encode(JSON.stringify(of(content))));
  };
  change("plan.json", (plan) => ({ ...plan, name: "Nothing yet", visits: [] }));
  change("places.geojson", (places) => ({
    ...places,
    features: (places["features"] as { properties: { kind: string } }[]).filter(
      (f) => f.properties.kind !== "plot",
    ),
  }));
  await openPlan(page, sheet.url, folder, "layout");
  await settled(page);
  await page.locator("[data-nothing-laid]").waitFor();
  await picture(page, "layout-nothing-laid");
  const money = ["cost", "budget", "cost-per-visit"].map((id) => `[data-figure="${id}"]`).join();
  expect(await page.locator(money).count()).toBe(0);
  await page.getByRole("link", { name: "Materials", exact: true }).click();
  await page.locator("[data-nothing-laid]").waitFor();
  expect(await page.locator(money).count()).toBe(0);
  expect(await page.getByRole("table", { name: "Budget by year" }).count()).toBe(0);
  await picture(page, "materials-nothing-laid");
  expect(await violations(page)).toEqual([]);
  await page.getByRole("button", { name: "Take in a price list" }).waitFor();
  expect(sheet.complaints).toEqual([]);
});
