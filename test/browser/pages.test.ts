import { readFileSync } from "node:fs";
import type { BrowserContextOptions, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { violations } from "./support/axe.ts";
import { openPage, phone, picture, wide } from "./support/browser.ts";
import { afterRevision, openSheet, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

const pages = ["Request", "Site", "Water", "Layout", "Kit", "Checks", "Materials", "Drawings"] as const;
const open = async (page: Page, name: (typeof pages)[number]): Promise<void> => {
  await page.getByRole("link", { name, exact: true }).click();
  await page.getByRole("heading", { level: 1, name }).waitFor();
};

describe("Request", () => {
  test("who asks, a visit without a last day, and why there is a structure: kept over a reload, gaps flagged", async () => {
    const { page } = sheet;
    await open(page, "Request");
    const before = await settled(page);
    await page.getByLabel("Organisation").fill("Reed Works");
    await page.getByLabel("Organisation").press("Enter");
    await afterRevision(page, before);
    const next = await settled(page);
    await page.locator('[data-visit="traps"]').getByLabel("Last day").fill("");
    await page.locator('[data-visit="traps"]').getByLabel("Last day").blur();
    await afterRevision(page, next);
    expect(await page.locator('[data-gap="visits[0].to"]').textContent()).toContain("no last day");
    await page.reload();
    await settled(page);
    expect(await page.getByLabel("Organisation").inputValue()).toBe("Reed Works");
    expect((await planOf(page)).visits[0]!.to).toBeNull();
    await picture(page, "request");
  });

  test("a number that is none stays in the field with its fault, and nothing is saved", async () => {
    const { page } = sheet;
    await open(page, "Request");
    const before = await settled(page);
    const people = page.locator('[data-visit="traps"]').getByLabel("People at once");
    await people.fill("two");
    await people.press("Enter");
    expect(await people.inputValue()).toBe("two");
    expect(await page.getByText('"two" is not a number.').isVisible()).toBe(true);
    expect(await settled(page)).toBe(before);
    await people.fill("2");
    await people.press("Enter");
  });
});

describe("Site", () => {
  test("a buffer in feet and inches is kept in metres to the last digit", async () => {
    const { page } = sheet;
    await open(page, "Site");
    await page.getByRole("button", { name: "Lists" }).click();
    const before = await settled(page);
    const buffer = page.locator('[data-row="tern-colony"]').getByLabel("Kept clear around it");
    await buffer.fill("3 ft 6 in");
    await buffer.press("Enter");
    await afterRevision(page, before);
    const zone = (await planOf(page)).zones.find((z) => z.id === "tern-colony")!;
    expect(zone.buffer_m).toBeCloseTo(42 * 0.0254, 9);
    await page.getByRole("button", { name: "Undo" }).click();
    await afterRevision(page, before + 1);
    await picture(page, "site-lists");
  });

  test("a file that is no terrain is laid beside the plan, but the plan that names it is refused with the reason", async () => {
    const { page } = sheet;
    await open(page, "Site");
    await page.getByRole("button", { name: "Lists" }).click();
    const before = await settled(page);
    await page
      .locator('.file-row input[type="file"]')
      .first()
      .setInputFiles({
        name: "photo.asc",
        mimeType: "text/plain",
        buffer: Buffer.from("not a grid at all"),
      });
    await page.locator(".notice .problem").first().waitFor();
    expect(await page.locator(".notice .problem-message").first().textContent()).not.toBe("");
    expect(await settled(page)).toBe(before);
    await page.getByRole("button", { name: "Done" }).click();
  });
});

describe("Water", () => {
  test("a level moves, hours under water follow, and a level without its years is flagged", async () => {
    const { page } = sheet;
    await open(page, "Water");
    expect(await page.locator(".wet-table tbody tr").count()).toBeGreaterThan(20);
    const before = await settled(page);
    const years = page.locator('[data-row="mhw"]').getByLabel("Years it holds for");
    await years.fill("");
    await years.press("Enter");
    await afterRevision(page, before);
    expect(await page.locator('[data-level="mhw"]').first().textContent()).toContain("for which years");
    await picture(page, "water");
  });

  test("14 dry hours and windows stand day by day at the joint that is chosen, with the time to be back", async () => {
    const { page } = sheet;
    await open(page, "Water");
    const days = page.locator(".dry-table tbody tr");
    expect(await days.count()).toBe(12);
    expect(await days.first().getAttribute("data-day")).toBe("2027-05-10");
    expect(await days.first().textContent()).toMatch(/\d+\.\d h/);
    const choice = page.getByLabel("At the joint");
    const other = (await choice.locator("option").allTextContents()).find((o) => !o.includes("plot"))!;
    await choice.selectOption({ label: other });
    expect(await page.locator(".dry-table caption").textContent()).toContain(`joint ${other},`);
  });

  test("tide stations around a typed place come with their source; another datum is not taken over", async () => {
    const { page } = sheet;
    await open(page, "Water");
    await page.getByLabel("Longitude of the site").fill("-79.93");
    await page.getByLabel("Longitude of the site").press("Enter");
    await page.getByLabel("Latitude of the site").fill("32.78");
    await page.getByLabel("Latitude of the site").press("Enter");
    await page.getByRole("button", { name: "Look for stations" }).click();
    await page.locator(".stations-found li").first().waitFor();
    const onLand = page.locator(".stations-found li", { hasText: "NAVD88" });
    expect(await onLand.first().textContent()).toMatch(/NAVD88.*Tarrowmere datum/s);
    expect(await page.getByRole("button", { name: "Take these levels" }).count()).toBe(0);
  });
});

describe("Layout", () => {
  test("19, 20 owners crossed and crossings with type and width stand in the column beside the map", async () => {
    const { page } = sheet;
    await open(page, "Layout");
    const route = page.locator('section[aria-labelledby="route-head"]');
    await route.waitFor();
    const words = await route.textContent();
    for (const word of ["Tarrowmere Trust", "Quillet Bay Commoners", "Quillet Creek", "creek", "Low meadow"])
      expect(words).toContain(word);
    expect(words).not.toMatch(/orchid/i);
  });

  test("a joint read back a hand's breadth off is told, and the parts after it are fitted anew; undone, the plan is as before", async () => {
    const { page } = sheet;
    await open(page, "Layout");
    await page.getByRole("button", { name: "Lists", exact: true }).click();
    const before = await settled(page);
    await page.getByRole("button", { name: "Add a laid joint" }).click();
    const next = await afterRevision(page, before);
    expect(await page.locator('[data-laid="J1"]').textContent()).toContain("within what the parts allow");
    const east = page.getByLabel("East on the grid (m)");
    await east.fill(String(Number(await east.inputValue()) + 0.4));
    await east.press("Enter");
    await afterRevision(page, next);
    expect(await page.locator('[data-laid="J1"]').textContent()).toContain("more than the parts allow");
    await picture(page, "layout-lists");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.getByRole("button", { name: "Undo" }).click();
    await page.waitForFunction(() => document.querySelector("[data-laid]") === null);
    await settled(page);
    expect((await planOf(page)).layout.as_laid).toEqual([]);
    await page.getByRole("button", { name: "Map", exact: true }).click();
  });
});

describe("Kit", () => {
  test("a narrower deck changes drawing, masses and checks; a recipe that cannot be built is refused with its mend", async () => {
    const { page } = sheet;
    await open(page, "Kit");
    const before = await settled(page);
    const massOf = (): Promise<string | null> =>
      page.locator(".kit-group").first().locator(".figure-value").first().textContent();
    const [mass, drawing] = [await massOf(), await page.locator(".part-views").innerHTML()];
    await page.getByLabel("Width of the deck").fill("2 ft 10 in");
    await page.getByLabel("Width of the deck").press("Enter");
    await afterRevision(page, before);
    expect(await massOf()).not.toBe(mass);
    expect(await page.locator(".part-views").innerHTML()).not.toBe(drawing);
    const next = await settled(page);
    await page.getByLabel("Stringers, outside to outside").fill("4 in");
    await page.getByLabel("Stringers, outside to outside").press("Enter");
    await page.locator(".notice .problem-mend").first().waitFor();
    expect(await settled(page)).toBe(next);
    await page.getByRole("button", { name: "Done" }).click();
    await picture(page, "kit");
  });
});

describe("Materials", () => {
  test("the order's amounts add up to the materials, and a zero removal is warned about", async () => {
    const { page } = sheet;
    await open(page, "Materials");
    const amounts = await page
      .locator('table[aria-label="Order list"] tbody tr')
      .evaluateAll((rows) => rows.map((r) => Number(r.children[6]!.textContent!.replaceAll(/[$,]/g, ""))));
    const materials = await page
      .locator('table[aria-label="Budget by year"] tbody tr')
      .evaluateAll(
        (rows) => rows.find((r) => r.textContent!.includes("Materials"))!.children[3]!.textContent,
      );
    expect(amounts.reduce((s, a) => s + Math.round(a * 100), 0)).toBe(
      Math.round(Number(materials!.replaceAll(/[$,]/g, "")) * 100),
    );
    const before = await settled(page);
    const removal = page.getByLabel(/Removal, share of the laying hours/);
    await removal.fill("0");
    await removal.press("Enter");
    await afterRevision(page, before);
    expect((await page.locator(".gaps").allTextContents()).join(" ")).toContain("Removal stands at zero");
    await picture(page, "materials");
  });
});

describe("Drawings", () => {
  test("the sheets are drawn with the plan's own figures, turned by keys, and taken as one PDF", async () => {
    const { page } = sheet;
    await open(page, "Drawings");
    await page.locator(".paper-page svg").waitFor();
    const text = await page.locator(".paper-page svg").textContent();
    expect(text).toContain("Length of walkway");
    await page.getByRole("button", { name: "Next page" }).press("Enter");
    await page.getByText(/Vicinity and key map, page 2 of/).waitFor();
    expect(await page.locator(".paper-page svg").textContent()).not.toContain("Rare plant");
    const coming = page.waitForEvent("download");
    await page.getByRole("button", { name: "Take as PDF" }).click();
    const file = await (await coming).path();
    expect(readFileSync(file).subarray(0, 5).toString("latin1")).toBe("%PDF-");
    await picture(page, "drawings");
  });
});

test("the browser had nothing to complain of but the changes that were refused", () => {
  const refused = /the server responded with a status of 4(00|09|22)/;
  expect(sheet.complaints.filter((c) => !refused.test(c))).toEqual([]);
});

const screens: readonly [string, BrowserContextOptions][] = [
  ["wide", wide],
  ["phone", phone],
  ["phone-night", { ...phone, colorScheme: "dark" }],
];
describe.each(screens)("%s", (name, options) => {
  test("every page: no violation found by axe-core 4.14, nothing cut off at the side, printed without its frame", async () => {
    const { page } = await openPage(sheet.browser, options);
    await openSheet(page, sheet.url);
    for (const title of pages) {
      await open(page, title);
      if (title === "Drawings") await page.locator(".paper-page svg").waitFor();
      expect(await violations(page), title).toEqual([]);
      const wideness = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wideness, title).toBeLessThanOrEqual(options.viewport!.width);
      await picture(page, `page-${title.toLowerCase()}-${name}`);
    }
    await page.emulateMedia({ media: "print" });
    expect(await page.locator(".paper-page").isVisible()).toBe(true);
    await page.close();
  });
});

test("by keys alone: from the peg of a page to a field of its form and back", async () => {
  const { page } = sheet;
  await open(page, "Request");
  await page.getByRole("link", { name: "Request", exact: true }).focus();
  for (let k = 0; k < 60; k++) {
    const label = await page.evaluate(
      () => (document.activeElement as Partial<HTMLInputElement> | null)?.labels?.[0]?.textContent ?? "",
    );
    if (label.startsWith("Who asks")) break;
    await page.keyboard.press("Tab");
  }
  const before = await settled(page);
  await page.keyboard.press("Control+A");
  await page.keyboard.type("Keyed Name");
  await page.keyboard.press("Enter");
  await afterRevision(page, before);
  expect((await planOf(page)).request.requester).toBe("Keyed Name");
});
