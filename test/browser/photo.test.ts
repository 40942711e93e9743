import { freshPlanFiles, siteOfStart } from "@causey/io/fresh";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { geoTags, writeTiff } from "../../packages/io/test/support/tiff.ts";
import { violations } from "./support/axe.ts";
import { openPage, phone, picture, wide, type WatchedPage } from "./support/browser.ts";
import { folderOf, openPlan, savedRevision } from "./support/open-plan.ts";
import { planOf } from "./support/sheet.ts";
import { causeySession } from "./support/session.ts";

const session = causeySession();

const screens: readonly [string, BrowserContextOptions][] = [
  ["wide", wide],
  ["phone", phone],
];
/** The photo: 240 x 160 pixels of a quarter metre, reed with a creek through it, from east 90 to 150, north 30 to 70. */
const [COLS, ROWS] = [240, 160];
const isCreek = (col: number, row: number): boolean => Math.abs(col - 120 - 40 * Math.sin(row / 25)) < 12;
const colourAt = (col: number, row: number): readonly [number, number, number] =>
  isCreek(col, row) ? [70, 110, 140] : [140 + ((col * 7 + row * 3) % 20), 150, 80];
const WORLD = "0.25\n0\n0\n-0.25\n90.125\n69.875\n";

function geoTiff(): Buffer {
  const colours = Array.from({ length: COLS * ROWS }, (_, i) =>
    colourAt(i % COLS, Math.floor(i / COLS)),
  ).flat();
  const tags = [
    ...geoTags(90, 70, 0.25, 0.25, null),
    { tag: 256, type: 4, values: [COLS] } as const,
    { tag: 258, type: 3, values: [8, 8, 8] } as const,
    { tag: 262, type: 3, values: [2] } as const,
    { tag: 277, type: 3, values: [3] } as const,
    { tag: 339, type: 3, values: [1, 1, 1] } as const,
  ];
  return Buffer.from(
    writeTiff(COLS * 3, ROWS, colours, { kind: "uint", bits: 8, compression: "deflate", tags }),
  );
}

/** The same picture as the browser itself writes it. */
async function drawn(page: Page, type: "image/png" | "image/jpeg"): Promise<Buffer> {
  const address = await page.evaluate(
    ({ cols, rows, mime }) => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [cols, rows];
      const pen = canvas.getContext("2d")!;
      for (let row = 0; row < rows; row++)
        for (let col = 0; col < cols; col++) {
          const creek = Math.abs(col - 120 - 40 * Math.sin(row / 25)) < 12;
          pen.fillStyle = creek ? "rgb(70,110,140)" : "rgb(150,150,80)";
          pen.fillRect(col, row, 1, 1);
        }
      return canvas.toDataURL(mime);
    },
    { cols: COLS, rows: ROWS, mime: type },
  );
  return Buffer.from(address.split(",")[1]!, "base64");
}

const dialog = (page: Page) => page.getByRole("dialog");
const lists = (page: Page): Promise<void> => page.getByRole("button", { name: "Lists", exact: true }).click();
const map = (page: Page): Promise<void> => page.getByRole("button", { name: "Map", exact: true }).click();

async function lay(
  page: Page,
  files: readonly { name: string; mimeType: string; buffer: Buffer }[],
): Promise<void> {
  await lists(page);
  await page.locator("[data-photo] button").first().click();
  await dialog(page).waitFor();
  await dialog(page)
    .locator('input[type="file"]')
    .first()
    .setInputFiles([...files]);
}

/** Waits for the photo on the map; its own pixel in the middle of its east edge. */
async function shown(page: Page): Promise<{ readonly pixel: readonly number[]; readonly opacity: string }> {
  await page.locator("canvas.map-photo").waitFor();
  return page.locator("canvas.map-photo").evaluate((canvas) => {
    const element = canvas as HTMLCanvasElement;
    const { data } = element.getContext("2d")!.getImageData(element.width - 3, element.height / 2, 1, 1);
    return { pixel: [...data], opacity: element.style.opacity };
  });
}

describe.each(screens)("%s: a plan on a photo and typed stations alone", (screen, options) => {
  let sheet: WatchedPage;
  beforeAll(async () => {
    sheet = await openPage(session.browser, options);
    const site = siteOfStart({ local: "Site grid" }, "Gate bench mark", [100, 50], 1.8);
    await openPlan(sheet.page, session.url, freshPlanFiles(`Fen by hand, ${screen}`, { site }), "site");
  });
  afterAll(async () => {
    expect(sheet.complaints).toEqual([]);
    await sheet.page.close();
  });

  test("a GeoTIFF without a system is refused until the user says that it lies on the plan's grid; then it lies under the map of Site and Layout, and in the folder", async () => {
    const { page } = sheet;
    await page.getByRole("link", { name: "Site", exact: true }).click();
    const before = await savedRevision(page);
    const buffer = geoTiff();
    await lay(page, [{ name: "fen.tif", mimeType: "image/tiff", buffer }]);
    const refused = dialog(page).locator(".problem", { hasText: "does not say which coordinate system" });
    await refused.waitFor();
    expect(await refused.textContent()).toContain('the local grid "Site grid"');
    const go = dialog(page).getByRole("button", { name: "Lay it under the map" });
    expect(await go.isDisabled()).toBe(true);
    expect(await violations(page)).toEqual([]);
    await picture(page, `photo-refused-${screen}`);
    await dialog(page)
      .getByLabel(/^I have checked/)
      .check();
    await refused.waitFor({ state: "detached" });
    await dialog(page)
      .getByLabel(/^Shown at/)
      .fill("80");
    await dialog(page)
      .getByLabel(/^Shown at/)
      .press("Enter");
    expect(await violations(page)).toEqual([]);
    await go.click();
    await dialog(page).waitFor({ state: "detached" });
    await savedRevision(page, before);

    expect((await planOf(page)).photo).toEqual({
      file: "fen.tif",
      world: null,
      crs_confirmed: true,
      opacity: 0.8,
    });
    expect(Buffer.from((await folderOf(page)).get("fen.tif")!).equals(buffer)).toBe(true);
    await map(page);
    const [col, row] = [COLS - 3, ROWS / 2];
    expect(await shown(page)).toEqual({ pixel: [...colourAt(col, row), 255], opacity: "0.8" });
    await picture(page, `photo-site-${screen}`);
    await page.getByRole("button", { name: "Photo", exact: true }).click();
    await page.locator("canvas.map-photo").waitFor({ state: "detached" });
    await page.getByRole("link", { name: "Layout", exact: true }).click();
    expect((await shown(page)).opacity).toBe("0.8");
    expect(await violations(page)).toEqual([]);
    await picture(page, `photo-layout-${screen}`);
  });

  test.each([
    ["png", "image/png", "pgw"],
    ["jpg", "image/jpeg", "jgw"],
  ] as const)(
    "a %s has no place without its world file; with it, it lies where the file says; undone, the photo before is back",
    async (ending, mimeType, world) => {
      const { page } = sheet;
      await page.getByRole("link", { name: "Site", exact: true }).click();
      const before = await savedRevision(page);
      await lay(page, [{ name: `fen.${ending}`, mimeType, buffer: await drawn(page, mimeType) }]);
      await dialog(page).locator(".problem", { hasText: "does not say where it lies" }).waitFor();
      await dialog(page)
        .locator('input[type="file"]')
        .nth(1)
        .setInputFiles({ name: `fen.${world}`, mimeType: "text/plain", buffer: Buffer.from(WORLD) });
      await dialog(page)
        .getByLabel(/^I have checked/)
        .check();
      await dialog(page).getByText("wide,").waitFor();
      expect(await violations(page)).toEqual([]);
      await dialog(page).getByRole("button", { name: "Lay it under the map" }).click();
      await dialog(page).waitFor({ state: "detached" });
      const saved = await savedRevision(page, before);
      expect((await planOf(page)).photo!.world).toEqual([0.25, 0, 0, -0.25, 90.125, 69.875]);
      await map(page);
      const { pixel } = await shown(page);
      [150, 150, 80].forEach((v, i) => expect(Math.abs(pixel[i]! - v)).toBeLessThan(8));
      await page.getByRole("button", { name: "Undo" }).click();
      await savedRevision(page, saved);
      expect((await planOf(page)).photo!.file).toBe("fen.tif");
    },
  );
});
