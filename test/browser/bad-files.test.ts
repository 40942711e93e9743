import { spawnSync } from "node:child_process";
import type { Locator, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import type { Plan } from "@causey/engine/plan";
import { badLayers, areaGeoJson } from "../support/bad-layers.ts";
import { badReadings } from "../support/bad-readings.ts";
import { temporaryFolder } from "../support/shell.ts";
import { openPage, picture, wide } from "./support/browser.ts";
import { openSheet, planOf, settled } from "./support/sheet.ts";
import { startCausey, type Running } from "./support/start.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);
let untouched: { readonly revision: number; readonly plan: Plan };

async function openLists(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Site", exact: true }).click();
  await page.getByRole("heading", { level: 1, name: "Site" }).waitFor();
  await page.getByRole("button", { name: "Lists" }).click();
}

beforeAll(async () => {
  sheet.page.setDefaultTimeout(60_000);
  await openLists(sheet.page);
  untouched = { revision: await settled(sheet.page), plan: await planOf(sheet.page) };
});

/** A dialog that a failed test leaves open would stand in the way of all others. */
afterEach(async () => {
  if ((await sheet.page.getByRole("dialog").count()) > 0) await sheet.page.keyboard.press("Escape");
});

/** The dialog behind one "Bring in from a file", with the file chosen in it. */
async function choose(place: string, name: string, bytes: string | Uint8Array): Promise<Locator> {
  await sheet.page.locator(place).getByRole("button", { name: "Bring in from a file" }).click();
  const dialog = sheet.page.getByRole("dialog");
  await dialog
    .locator('input[type="file"]')
    .setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
  return dialog;
}

/** Closes the dialog; the plan is the one that was there, to the last byte. */
async function closeUnchanged(dialog: Locator): Promise<void> {
  await dialog.getByRole("button", { name: "Close without a change" }).click();
  await dialog.waitFor({ state: "detached" });
  expect(await settled(sheet.page)).toBe(untouched.revision);
  expect(await planOf(sheet.page)).toEqual(untouched.plan);
}

/** The entry of the list of problems that says this, with its place and its mend. */
async function problemSaying(
  inside: Locator,
  message: RegExp,
): Promise<{ readonly place: string; readonly mend: string }> {
  const entry = inside
    .locator(".problem")
    .filter({ has: sheet.page.locator(".problem-message", { hasText: message }) })
    .first();
  await entry.waitFor();
  expect(await entry.isVisible()).toBe(true);
  return {
    place: (await entry.locator(".problem-place").textContent())!,
    mend: (await entry.locator(".problem-mend").textContent())!,
  };
}

const takeOver = (dialog: Locator): Locator => dialog.getByRole("button", { name: /^Take over/ });

describe("check shots from a file", () => {
  test.each(badReadings.map((bad) => [bad.title, bad] as const))(
    "%s: said in the dialog, and the plan stays as it is",
    async (_title, bad) => {
      const dialog = await choose('[data-import="check-shots"]', "shots.csv", bad.csv);
      for (const [label, value] of Object.entries(bad.choose ?? {}))
        await dialog.getByLabel(label, { exact: true }).selectOption(value);
      const { place, mend } = await problemSaying(dialog, bad.message);
      expect(place).toContain("shots.csv");
      expect(place).toMatch(bad.place);
      expect(mend).toMatch(bad.mend);
      expect(await takeOver(dialog).isDisabled()).toBe(bad.isRefused);
      for (const words of bad.listed ?? [])
        expect(await dialog.locator(".notes").textContent()).toMatch(words);
      await closeUnchanged(dialog);
    },
  );
});

describe("areas from a file", () => {
  const told = badLayers.filter((bad) => bad.code !== "ring-open" && bad.code !== "layer-crs");
  test.each(told.map((bad) => [bad.title, bad] as const))(
    "%s: said in the dialog, nothing can be taken over, and the plan stays as it is",
    async (_title, bad) => {
      const dialog = await choose('[data-layer-import="zones"]', bad.name, bad.bytes());
      const { place, mend } = await problemSaying(dialog, bad.message);
      expect(place).toContain(bad.name);
      expect(place).toMatch(bad.place);
      expect(mend).toMatch(bad.mend);
      expect(await takeOver(dialog).isDisabled()).toBe(true);
      await closeUnchanged(dialog);
    },
  );

  test("an unclosed polygon: said once rule and source are given, and the plan stays as it is", async () => {
    const bad = badLayers.find((b) => b.code === "ring-open")!;
    const dialog = await choose('[data-layer-import="zones"]', bad.name, bad.bytes());
    await dialog.getByLabel("Rule", { exact: true }).selectOption("pool");
    const source = dialog.getByLabel(/^Source/);
    await source.fill("Walked in 2026");
    await source.press("Enter");
    const { place, mend } = await problemSaying(dialog, bad.message);
    expect(place).toMatch(bad.place);
    expect(place).toMatch(bad.value);
    expect(mend).toMatch(bad.mend);
    expect(await takeOver(dialog).isDisabled()).toBe(true);
    await picture(sheet.page, "bad-open-ring");
    await closeUnchanged(dialog);
  });

  test("a shapefile without .prj: the system is asked for, with why, and nothing is chosen beforehand", async () => {
    const bad = badLayers.find((b) => b.code === "layer-crs")!;
    const dialog = await choose('[data-layer-import="zones"]', bad.name, bad.bytes());
    const system = dialog.getByLabel("Its coordinates are in", { exact: true });
    expect(await system.inputValue()).toBe("");
    expect(
      await dialog.getByText(/The file does not say it\. A local grid has no known place/).isVisible(),
    ).toBe(true);
    expect(await takeOver(dialog).isDisabled()).toBe(true);
    await closeUnchanged(dialog);
  });

  test("a name that is a formula is a name like any other: it may be taken over", async () => {
    const dialog = await choose(
      '[data-layer-import="zones"]',
      "pans.geojson",
      areaGeoJson(undefined, "local", "=1+1"),
    );
    await dialog.getByLabel("Rule", { exact: true }).selectOption("pool");
    const source = dialog.getByLabel(/^Source/);
    await source.fill("Walked in 2026");
    await source.press("Enter");
    await dialog.getByText("1 area", { exact: true }).waitFor();
    expect(await takeOver(dialog).isDisabled()).toBe(false);
    await closeUnchanged(dialog);
  });
});

describe("a plan as .zip", () => {
  const archives = badLayers.filter((bad) => bad.code === "archive-entry");
  test.each(archives.map((bad) => [bad.title, bad] as const))(
    "%s: refused in the list of plans",
    async (_title, bad) => {
      const { page } = sheet;
      await page.getByRole("button", { name: "Plans" }).click();
      const dialog = page.getByRole("dialog");
      await dialog
        .locator('input[type="file"]')
        .setInputFiles({ name: bad.name, mimeType: "application/zip", buffer: Buffer.from(bad.bytes()) });
      const { mend } = await problemSaying(dialog, bad.message);
      expect(mend).toMatch(bad.mend);
      expect(await dialog.locator(".plan-entry").count()).toBe(1);
      await page.keyboard.press("Escape");
      await dialog.waitFor({ state: "detached" });
      expect(await planOf(page)).toEqual(untouched.plan);
    },
  );
});

const small = temporaryFolder();
const isSmallDisk =
  process.platform === "linux" &&
  spawnSync("mount", ["-t", "tmpfs", "-o", "size=6m", "none", small]).status === 0;

describe.skipIf(!isSmallDisk)("a data folder on a disk of 6 MB", () => {
  let full: Running;
  beforeAll(async () => {
    full = await startCausey(small);
  });
  afterAll(async () => {
    await full?.close();
    spawnSync("umount", [small]);
    expect(full?.faults).toEqual([]);
  });

  test("full while a terrain file is laid beside the plan: said on the page, the plan stays as it is and can be read again", async () => {
    const { page } = await openPage(sheet.browser, wide);
    await openSheet(page, full.url);
    await openLists(page);
    const before = { revision: await settled(page), plan: await planOf(page) };
    await page
      .locator('.file-row input[type="file"]')
      .first()
      .setInputFiles({ name: "large.asc", mimeType: "text/plain", buffer: Buffer.alloc(8_000_000, 32) });
    const entry = page.locator(".problem").filter({ hasText: "data folder is full" }).first();
    await entry.waitFor();
    expect(await entry.locator(".problem-mend").textContent()).toContain("Free some space");
    await page.reload();
    expect(await settled(page)).toBe(before.revision);
    expect(await planOf(page)).toEqual(before.plan);
    await page.close();
  });
});
