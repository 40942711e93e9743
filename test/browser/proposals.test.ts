import { expect, test } from "vitest";
import { boardKit, laneFiles } from "../support/lane-plan.ts";
import { violations } from "./support/axe.ts";
import { picture, wide } from "./support/browser.ts";
import { afterRevision, planIdOf, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

/** A short lane on a kit whose long modules are too weak. */
const files = laneFiles({
  wide: 12,
  kit: boardKit({
    stringers: { count: 2, size: "2x6", overall_mm: 711.2 },
    platform: { ...boardKit().platform, stringers: { size: "2x6", count: 4 } },
  }),
});

const sheet = sheetSession(wide, async (page, url) => {
  await page.goto(url);
  await settled(page);
  const demo = planIdOf(page);
  await page.getByRole("button", { name: "Plans" }).click();
  await page.locator("input[type=file]").setInputFiles(
    [...files].map(([name, bytes]) => ({
      name,
      mimeType: "application/octet-stream",
      buffer: Buffer.from(bytes),
    })),
  );
  await page.waitForFunction((old) => location.hash.split("plan=")[1] !== old, demo);
  await settled(page);
});

const bending = "Stringer bending, 11 ft 11 1/2 in module";

test("a failing check is asked what would make it pass, by keyboard; the answers carry figures, the page has no fault for axe", async () => {
  const { page } = sheet;
  await page.getByRole("link", { name: "Checks", exact: true }).click();
  await page.getByRole("button", { name: bending }).click();
  await page.locator(".check-detail").getByText("does not meet the chosen rule").waitFor();
  await page.getByRole("button", { name: "Look for changes" }).focus();
  await page.keyboard.press("Enter");
  await page.getByRole("button", { name: "Apply: 2x8 stringers" }).waitFor({ timeout: 60_000 });
  const words = await page.locator(".proposal-list li").allTextContents();
  const deeper = words.find((w) => w.startsWith("2x8 stringers"))!;
  expect(deeper).toMatch(/then \.\d+ of what it carries; \+\$[\d.,]+; \+[\d.,]+ lb in all; heaviest module/);
  expect(await violations(page)).toEqual([]);
  await picture(page, "proposals");
});

test("one press applies it: the check then has the promised share; undo returns", async () => {
  const { page } = sheet;
  const item = page.locator(".proposal-list li").filter({ hasText: "2x8 stringers" });
  const promised = /then (\.\d+)/.exec((await item.textContent()) ?? "")![1];
  const before = await settled(page);
  await page.getByRole("button", { name: "Apply: 2x8 stringers" }).click();
  await afterRevision(page, before);
  expect((await planOf(page)).kit.stringers.size).toBe("2x8");
  const share = page.locator(".check-detail-share");
  await share.getByText(promised!, { exact: true }).waitFor();
  await page.locator(".check-detail.check-pass").waitFor();
  expect(await page.locator(".proposals").count()).toBe(0);
  const applied = await settled(page);
  await page.getByRole("button", { name: "Undo" }).click();
  await afterRevision(page, applied);
  expect((await planOf(page)).kit.stringers.size).toBe("2x6");
  await page.locator(".check-detail.check-fail").waitFor();
});
