import { ringArea } from "@causey/engine/site";
import { crsFromEpsg, toLonLat } from "@causey/io/crs";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { hasOpenData, openData } from "../../packages/io/test/support/open-data.ts";
import { zipOf } from "../../packages/io/test/support/shapefile.ts";
import { groundFolder } from "../open-data/said-plan.ts";
import { violations } from "./support/axe.ts";
import { openPage, phone, picture, wide, type WatchedPage } from "./support/browser.ts";
import { folderOf, openPlan, savedRevision } from "./support/open-plan.ts";
import { planOf, tabTo } from "./support/sheet.ts";
import { causeySession } from "./support/session.ts";

const set = "marsh-dem-stour";
const DATUM = "Ordnance Datum Newlyn";
const file = (name: string): Buffer => Buffer.from(openData(`${set}/${name}`));

const session = causeySession();

const stourFolder = (): ReadonlyMap<string, Uint8Array> =>
  groundFolder({
    crs: { epsg: 27700 },
    datum: DATUM,
    terrain: { kind: "grid", file: "dem-1m.tif", unit: "m", datum: DATUM },
    start: [621_915.5, 233_723.5],
    plot: [621_942.5, 233_664.5],
    files: { "dem-1m.tif": file("dem-1m.tif") },
  });

const platform = (): Buffer =>
  Buffer.from(
    zipOf(
      Object.fromEntries(["shp", "shx", "dbf", "prj"].map((e) => [`platform.${e}`, file(`platform.${e}`)])),
    ),
  );

/** Two plots on the platform, in degrees as KML has them. */
async function plotsKml(): Promise<string> {
  const back = toLonLat(await crsFromEpsg(27700));
  const marks = [
    ["Quadrat 1", 621_960, 233_660],
    ["Quadrat 2", 621_982.5, 233_662.5],
  ] as const;
  const places = marks.map(([name, x, y]) => {
    const [lon, lat] = back(x, y)!;
    return `<Placemark><name>${name}</name><Point><coordinates>${lon},${lat}</coordinates></Point></Placemark>`;
  });
  return `<?xml version="1.0"?><kml xmlns="http://www.opengis.net/kml/2.2"><Document>${places.join("")}</Document></kml>`;
}

/** Heads that no one would guess, semicolons, decimal commas, feet. */
const pegs = "peg;ost;nord;kote;sank\nA1;2040407,2;766800;5,9;1,64\nA2;2040420,5;766790;5,9;3,28\n";

const screens: readonly [string, BrowserContextOptions][] = [
  ["wide", wide],
  ["phone", phone],
];

const lists = (page: Page): Promise<void> => page.getByRole("button", { name: "Lists", exact: true }).click();
const map = (page: Page): Promise<void> => page.getByRole("button", { name: "Map", exact: true }).click();
const dialog = (page: Page) => page.getByRole("dialog");

/** Opens a file dialog by a press of Enter on its button, as the keyboard does, and gives it a file. */
async function giveByKeys(page: Page, name: string, contents: string): Promise<void> {
  const asked = page.waitForEvent("filechooser", { timeout: 30_000 });
  // Once the page has answered, it also knows that its file dialogs are answered from here.
  const focused = await page.evaluate(() => document.activeElement?.outerHTML ?? "nothing");
  await page.keyboard.press("Enter");
  const chooser = await asked.catch((e: unknown) => {
    throw new Error(`No file was asked for; Enter was pressed on ${focused}`, { cause: e });
  });
  await chooser.setFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(contents) });
}

async function tabToLabel(page: Page, label: string): Promise<void> {
  const field = dialog(page).getByLabel(new RegExp(`^${label}`));
  for (let k = 0; k < 60; k++) {
    if (await field.evaluate((e) => e === document.activeElement)) return;
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never came to the field ${label}`);
}

describe.skipIf(!hasOpenData(set)).each(screens)("%s: Stour marsh, EPSG:27700", (screen, options) => {
  let sheet: WatchedPage;
  beforeAll(async () => {
    sheet = await openPage(session.browser, options);
    await openPlan(sheet.page, session.url, stourFolder(), "site");
  });
  afterAll(async () => {
    expect(sheet.complaints).toEqual([]);
    await sheet.page.close();
  });

  test("by pressing: the zipped shapefile of the platform comes in as five areas, 25,474 m2, on the map and in zones.geojson", async () => {
    const { page } = sheet;
    const before = await savedRevision(page);
    await lists(page);
    await page.locator("[data-layer-import=zones] button").click();
    await dialog(page).waitFor();
    expect(await violations(page)).toEqual([]);
    await dialog(page)
      .locator('input[type="file"]')
      .setInputFiles({ name: "platform.zip", mimeType: "application/zip", buffer: platform() });
    await dialog(page)
      .getByLabel("Where from: Name", { exact: true })
      .selectOption({ label: 'the field "id"' });
    await dialog(page).getByLabel("Rule", { exact: true }).selectOption("habitat");
    await dialog(page)
      .getByLabel(/^Source/)
      .fill("Goodwin, Mudd and Clubb 2018");
    await dialog(page)
      .getByLabel(/^Source/)
      .press("Enter");
    await dialog(page).locator("[data-layer-count='5']").waitFor();
    expect(await violations(page)).toEqual([]);
    await picture(page, `import-areas-${screen}`);
    await dialog(page).getByRole("button", { name: "Take over 5 areas" }).click();
    await dialog(page).waitFor({ state: "detached" });
    await savedRevision(page, before);

    const zones = (await planOf(page)).zones;
    expect(zones.map((z) => [z.use, z.source])).toEqual(
      Array.from({ length: 5 }, () => ["habitat", "Goodwin, Mudd and Clubb 2018"]),
    );
    const area = zones
      .flatMap((z) => z.polygons)
      .flatMap((rings) => rings.map((ring, i) => (i === 0 ? 1 : -1) * Math.abs(ringArea(ring))))
      .reduce((a, b) => a + b, 0);
    expect(Math.round(area)).toBe(25_474);
    const written = new TextDecoder().decode((await folderOf(page)).get("zones.geojson"));
    expect((JSON.parse(written) as { features: unknown[] }).features).toHaveLength(5);
    await map(page);
    await page.locator(".map-drawing [data-zone]").first().waitFor();
    expect(
      new Set(
        await page
          .locator(".map-drawing [data-zone]")
          .evaluateAll((all) => all.map((e) => (e as HTMLElement).dataset["zone"])),
      ).size,
    ).toBe(5);
    await picture(page, `import-areas-map-${screen}`);
  });

  test("by keys alone: plots out of a KML come in where they lie, on the map and in places.geojson", async () => {
    const { page } = sheet;
    const before = await savedRevision(page);
    await lists(page);
    await tabTo(page, "[data-layer-import=plots] button", 400);
    await page.keyboard.press("Enter");
    await dialog(page).waitFor();
    // The dialog draws the focus in once it stands; a Tab before that would be taken back.
    await page.waitForFunction(() => document.activeElement?.closest("[role=dialog]") !== null);
    await tabTo(page, "[role=dialog] button:not([aria-label])");
    await giveByKeys(page, "plots.kml", await plotsKml());
    await dialog(page).getByLabel("Where from: Name", { exact: true }).waitFor();
    // What cannot be read holds the take-over back: the plan would get another value than the one that stands there.
    const keepOff = dialog(page).getByLabel(/^Keep off, all round/);
    await keepOff.fill("a bit");
    await dialog(page).getByRole("button", { name: "Take over 2 plots" }).click();
    await dialog(page).getByText("What stands in the marked field cannot be read.").waitFor();
    expect(await keepOff.evaluate((e) => e === document.activeElement)).toBe(true);
    for (const [label, length] of [
      ["Keep off, all round", "1.2 m"],
      ["Reached from", "1.8 m"],
    ] as const) {
      await tabToLabel(page, label);
      await page.keyboard.press("Control+a");
      await page.keyboard.type(length);
      await page.keyboard.press("Enter");
    }
    await dialog(page).locator("[data-layer-count='2']").waitFor();
    expect(await violations(page)).toEqual([]);
    await picture(page, `import-plots-${screen}`);
    const take = dialog(page).getByRole("button", { name: "Take over 2 plots" });
    for (let k = 0; k < 60 && !(await take.evaluate((e) => e === document.activeElement)); k++)
      await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await dialog(page).waitFor({ state: "detached" });
    await savedRevision(page, before);

    const plots = (await planOf(page)).plots.slice(-2);
    expect(plots.map((p) => [p.name, p.keep_off_m, p.reach_m])).toEqual([
      ["Quadrat 1", 1.2, 1.8],
      ["Quadrat 2", 1.2, 1.8],
    ]);
    expect(Math.hypot(plots[0]!.x - 621_960, plots[0]!.y - 233_660)).toBeLessThan(0.05);
    expect(new TextDecoder().decode((await folderOf(page)).get("places.geojson"))).toContain("Quadrat 2");
    await map(page);
    await page.locator(`[data-plot="${plots[1]!.id}"]`).waitFor();
    await picture(page, `import-plots-map-${screen}`);
  });

  test("a table of points with heads of its own, decimal commas and feet: columns are named by hand, and two stations come in, in metres", async () => {
    const { page } = sheet;
    const before = await savedRevision(page);
    await lists(page);
    await page.locator("[data-import=stations] button").click();
    await dialog(page).waitFor();
    await dialog(page)
      .locator('input[type="file"]')
      .setInputFiles({ name: "pegs.csv", mimeType: "text/csv", buffer: Buffer.from(pegs) });
    await dialog(page).getByText("Choose the columns of: Name, East, North, Ground level.").waitFor();
    await dialog(page).getByLabel("Decimals are written with").selectOption("comma");
    await dialog(page).getByLabel("Lengths and heights are in").selectOption("ft");
    for (const [label, column] of [
      ["Name", "peg"],
      ["East", "ost"],
      ["North", "nord"],
      ["Ground level", "kote"],
      ["Probe sank", "sank"],
    ] as const)
      await dialog(page).getByLabel(`Column: ${label}`).selectOption(column);
    await dialog(page).locator("[data-import-count='2']").waitFor();
    expect(await violations(page)).toEqual([]);
    await picture(page, `import-stations-${screen}`);
    await dialog(page).getByRole("button", { name: "Take over 2 stations" }).click();
    await dialog(page).waitFor({ state: "detached" });
    await savedRevision(page, before);

    const { stations } = (await planOf(page)).survey;
    expect(stations.map((s) => [s.id, s.ground_m.toFixed(3), s.probe_m!.toFixed(3)])).toEqual([
      ["A1", "1.798", "0.500"],
      ["A2", "1.798", "1.000"],
    ]);
    expect(stations[0]!.x).toBeCloseTo(2_040_407.2 * 0.3048, 6);
    expect(new TextDecoder().decode((await folderOf(page)).get("plan.json"))).toContain('"A2"');
    await page.locator('[data-row="A2"]').waitFor();
    await picture(page, `import-stations-list-${screen}`);
  });
});
