import { beforeAll, expect, test } from "vitest";
import { picture, wide } from "./support/browser.ts";
import { settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);
beforeAll(async () => {
  await sheet.page.getByRole("link", { name: "Checks" }).click();
  await sheet.page.locator(".check-row").first().waitFor();
});

const statuses =
  /^(meets the chosen rule|does not meet the chosen rule|cannot be checked: missing .+|does not apply: .+)/;

test("every check shows its status in the agreed words, with demand, capacity and share where it was judged", async () => {
  const { page } = sheet;
  expect(await page.locator("h1").allTextContents()).toEqual(["Checks"]);
  const rows = await page.locator(".check-row").evaluateAll((all) =>
    all.map((row) => ({
      status: row.querySelector(".check-status")!.textContent,
      cells: [...row.querySelectorAll("td")].map((td) => td.textContent),
      isJudged: /check-(pass|fail)/.test(row.className),
    })),
  );
  expect(rows.length).toBeGreaterThan(4);
  for (const row of rows) {
    expect(row.status).toMatch(statuses);
    expect(row.status).not.toMatch(/safe|approved/i);
    if (row.isJudged) expect(row.cells[2]).toMatch(/\d.* of .*\d/);
    else expect(row.cells[2]).toBe("");
  }
});

test("a check opens down to its rule and working, and says what it carries the other way round", async () => {
  const { page } = sheet;
  await page.locator(".check-pass .check-name, .check-fail .check-name").first().click();
  const detail = page.locator(".check-detail");
  await detail.waitFor();
  for (const head of ["The other way round", "Rule", "Working"])
    expect(await detail.getByRole("heading", { name: head }).isVisible()).toBe(true);
  expect(await detail.locator(".step").count()).toBeGreaterThan(0);
  expect(await detail.locator(".source").first().textContent()).not.toBe("");
  await picture(page, "checks-wide");
});

test("the part chosen on the strip leaves its own checks, and a check points at its parts", async () => {
  const { page } = sheet;
  const all = await page.locator(".check-row").count();
  const cell = page.locator(".cell").first();
  const part = (await cell.getAttribute("data-part"))!;
  await cell.click();
  const some = await page.locator(".check-row").count();
  expect(some).toBeGreaterThan(0);
  expect(some).toBeLessThan(all);
  expect(await page.locator(".checks-filter").textContent()).toContain(part);
  await page.locator(".check-row").first().hover();
  expect(await page.locator(".cell-pointed").count()).toBeGreaterThan(0);
  await picture(page, "checks-of-one-part");
  await page.getByRole("button", { name: "All parts" }).click();
  expect(await page.locator(".check-row").count()).toBe(all);
});

test("cautions stand on the page, and the page is kept over a reload", async () => {
  const { page, complaints } = sheet;
  expect(await page.locator(".cautions li").count()).toBeGreaterThan(0);
  await page.reload();
  await page.locator(".check-row").first().waitFor({ timeout: 120_000 });
  await settled(page);
  expect(await page.locator("h1").allTextContents()).toEqual(["Checks"]);
  expect(complaints).toEqual([]);
});
