import { expect, test } from "vitest";
import { picture, wide } from "./support/browser.ts";
import { figures, planOf, setHeadingStep, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

test("a long search shows its progress, is cancelled on request, keeps the older figures marked, and runs again", async () => {
  const { page } = sheet;
  const before = await figures(page);
  await setHeadingStep(page, sheet.url, 30);
  const plot = (await planOf(page)).plots[0]!;
  await page.locator(`[data-plot="${plot.id}"]`).focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Make my change on theirs" }).click();

  const cancel = page.getByRole("button", { name: "Cancel" });
  await cancel.waitFor();
  expect(await page.getByRole("progressbar").count()).toBe(1);
  expect(await page.locator("dl.figures").getAttribute("aria-busy")).toBe("true");
  await picture(page, "search-running");
  await cancel.click();
  await page.locator(".status-marked").waitFor();
  expect(await figures(page)).toEqual(before);
  expect(await page.locator("dl.figures").getAttribute("class")).toContain("outdated");
  expect(await page.locator(".status").textContent()).toMatch(/What is shown is of revision \d+/);
  await picture(page, "search-cancelled");

  await page.getByRole("button", { name: "Search again" }).click();
  await settled(page);
  expect(await page.locator("dl.figures").getAttribute("aria-busy")).toBe("false");
});

test("while the server is away a change is kept and said to be unsaved; it is saved when the server is back", async () => {
  const { page } = sheet;
  const revision = await settled(page);
  const before = (await planOf(page)).plots[0]!;
  await page.context().setOffline(true);
  await page.locator(`[data-plot="${before.id}"]`).focus();
  await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("Enter");
  await page.getByText("Causey's server does not answer.").waitFor();
  expect(await page.locator(".title-sub").textContent()).toContain("1 change not saved yet");
  await picture(page, "server-away");
  await page.context().setOffline(false);
  await page.getByRole("button", { name: "Try again" }).click();
  expect(await settled(page)).toBe(revision + 1);
  expect((await planOf(page)).plots[0]!.x).toBeCloseTo(before.x - 0.5, 6);
});
