import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { geoTags, writeTiff } from "../../packages/io/test/support/tiff.ts";
import { violations } from "./support/axe.ts";
import { picture, wide } from "./support/browser.ts";
import { afterRevision, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide, async (page, url) => {
  await page.goto(url);
  await settled(page);
});

/** 60 x 50 cells of 1 m in UTM zone 30 north, rising from west to east. */
/** East and north in it, and the same as latitude and longitude by gdaltransform 3 (PROJ). */
const gate = { grid: [500_010, 5_700_025], degrees: ["51.4514070", "-2.9998561"] } as const;
const trap = { grid: [500_035, 5_700_030], degrees: ["51.4514520", "-2.9994963"] } as const;
const terrain = (epsg: number | null): Buffer => {
  const heights = Float32Array.from({ length: 3000 }, (_, i) => 1 + (i % 60) / 60);
  const tags = geoTags(500_000, 5_700_050, 1, 1, epsg);
  return Buffer.from(writeTiff(60, 50, heights, { tags }));
};
const chooseTerrain = async (page: Page, epsg: number | null): Promise<void> => {
  const [chooser] = await Promise.all([
    page.waitForEvent("filechooser"),
    page.getByRole("button", { name: /Choose (a|another) terrain/ }).click(),
  ]);
  await chooser.setFiles({ name: "lower-fen.tif", mimeType: "image/tiff", buffer: terrain(epsg) });
  await page.locator(".new-plan").getByText("60 by 50 m").waitFor();
};
const openForm = async (page: Page): Promise<void> => {
  await page.getByRole("button", { name: "Plans" }).click();
  await page.getByRole("button", { name: "Start a new plan" }).click();
};
/** Waits until the sheet shows the plan of this name, worked out. */
const started = async (page: Page, name: string): Promise<void> => {
  await page.locator(".title-name", { hasText: name }).waitFor();
  await settled(page);
};

test("what is not answered yet is told together, and the form breaks no rule of access", async () => {
  const { page } = sheet;
  await openForm(page);
  await page.getByRole("button", { name: "Start the plan" }).click();
  await page.locator(".problem").nth(2).waitFor();
  expect(await page.locator(".problem-message").allTextContents()).toEqual([
    "Name of the plan: not told yet.",
    "Terrain: not told yet.",
    "Vertical datum: not told yet.",
  ]);
  expect(await violations(page)).toEqual([]);
});

test("a plan starts from a GeoTIFF by clicks: it is named, lies in the file's system, and its ground is on the map", async () => {
  const { page } = sheet;
  await page.locator(".new-plan").getByLabel("Name of the plan").fill("Lower fen, traps");
  await page.locator(".new-plan").getByLabel("Name of the site").fill("Lower fen");
  await chooseTerrain(page, 32_630);
  expect(await page.locator(".new-plan").innerText()).toContain("EPSG:32630");
  expect(await page.locator(".new-plan").getByLabel("Coordinate system").count()).toBe(0);
  await page.locator(".new-plan").getByLabel("Vertical datum of the heights").fill("ODN");
  const form = page.locator(".new-plan");
  await form.getByLabel("Start, east on the grid (m)").fill(gate.degrees[0]);
  await form.getByLabel("Start, north on the grid (m)").fill(gate.degrees[1]);
  await page.getByRole("button", { name: "Start the plan" }).click();
  await form.getByText("These look like degrees: choose latitude and longitude beside.").waitFor();
  await form.getByLabel("Start given as").selectOption({ label: "latitude and longitude (WGS 84)" });
  await form.getByLabel("Latitude (°)").fill(gate.degrees[0]);
  await form.getByLabel("Longitude (°)").fill(gate.degrees[1]);
  await picture(page, "new-plan-form");
  await page.getByRole("button", { name: "Start the plan" }).click();
  await started(page, "Lower fen, traps");
  await page.locator(".map-surface canvas").first().waitFor();
  await picture(page, "new-plan-started");
  expect(await planOf(page)).toMatchObject({
    name: "Lower fen, traps",
    site_name: "Lower fen",
    crs: { epsg: 32_630 },
    vertical_datum: "ODN",
    terrain: { kind: "grid", file: "lower-fen.tif" },
    plots: [],
    starts: [{ x: expect.closeTo(gate.grid[0], 1) as number, y: expect.closeTo(gate.grid[1], 1) as number }],
  });
  expect(await page.locator(".title-sub").innerText()).toContain("Lower fen");
});

test("a plot added on the Site page lies on the new ground, is put to its place by degrees off a phone, and the plan is worked out with it", async () => {
  const { page } = sheet;
  await page.getByRole("button", { name: "Lists" }).click();
  await page.getByRole("button", { name: "Add a plot" }).click();
  await page.locator('[data-row="P1"]').waitFor();
  const row = page.locator('[data-row="P1"]');
  await row.getByLabel("Place given as").selectOption({ label: "latitude and longitude (WGS 84)" });
  // Pasted into the first field as a phone gives it: both fields are filled.
  await row.getByLabel("Latitude (°)").evaluate((field, text) => {
    const data = new DataTransfer();
    data.setData("text", text);
    field.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, trap.degrees.join(", "));
  expect(await row.getByLabel("Longitude (°)").inputValue()).toBe(trap.degrees[1]);
  await row.getByLabel("Longitude (°)").press("Enter");
  await page.waitForFunction(() =>
    / revision 3, saved/.test(document.querySelector(".title-sub")!.textContent!),
  );
  await settled(page);
  const [plot] = (await planOf(page)).plots;
  expect(plot!.x).toBeCloseTo(trap.grid[0], 1);
  expect(plot!.y).toBeCloseTo(trap.grid[1], 1);
  await row.getByText("From latitude").waitFor();
  expect(await row.getByLabel("East on the grid (m)").inputValue()).toMatch(/^50003[45]/);
  expect(await violations(page)).toEqual([]);
  await picture(page, "site-place-by-degrees");
});

test("a file that names no system is asked for it; a code that cannot be laid out in is refused with another", async () => {
  const { page } = sheet;
  await openForm(page);
  await page.locator(".new-plan").getByLabel("Name of the plan").fill("Fen by pegs");
  await chooseTerrain(page, null);
  await page.locator(".new-plan").getByLabel("Vertical datum of the heights").fill("Peg 1");
  await page.locator(".new-plan").getByLabel("Coordinate system").selectOption("epsg");
  await page.locator(".new-plan").getByLabel("EPSG code").fill("2263");
  await page.getByRole("button", { name: "Start the plan" }).click();
  await page.locator(".problem", { hasText: "EPSG:32118" }).first().waitFor();
  await picture(page, "new-plan-refused");
  await page.locator(".new-plan").getByLabel("Coordinate system").selectOption("local");
  await page.getByRole("button", { name: "Start the plan" }).click();
  await started(page, "Fen by pegs");
  expect((await planOf(page)).crs).toEqual({ local: "Site grid" });
});

test("without terrain a plan starts from the ground at its start", async () => {
  const { page } = sheet;
  await openForm(page);
  await page.locator(".new-plan").getByLabel("Name of the plan").fill("Bare fen");
  await page.locator(".new-plan").getByLabel("Heights of the ground").selectOption("stations");
  await page.locator(".new-plan").getByLabel("Coordinate system").selectOption("local");
  await page.locator(".new-plan").getByLabel("Vertical datum of the heights").fill("Peg 1");
  await page.locator(".new-plan").getByLabel("Start, east on the grid").fill("0");
  await page.locator(".new-plan").getByLabel("Start, north on the grid").fill("0");
  await page.locator(".new-plan").getByLabel("Height of the ground at the start").fill("3.5 m");
  await page.getByRole("button", { name: "Start the plan" }).click();
  await started(page, "Bare fen");
  const plan = await planOf(page);
  expect(plan.survey.stations).toMatchObject([{ x: 0, y: 0, ground_m: 3.5 }]);
  expect(plan.water_kg_m3).toBe(1000);

  // A density that nobody typed follows the kind of water; one that was typed stays.
  await page.getByRole("link", { name: "Water", exact: true }).click();
  const kind = page.getByLabel("The water is");
  const first = await settled(page);
  await kind.selectOption("salt");
  await afterRevision(page, first + 1);
  expect(await planOf(page)).toMatchObject({ water: { exposure: "salt" }, water_kg_m3: 1026 });
  const density = page.getByLabel("Density of the water (kg/m³)");
  await density.fill("1019");
  await density.press("Enter");
  await afterRevision(page, first + 2);
  await kind.selectOption("fresh");
  await afterRevision(page, first + 3);
  expect(await planOf(page)).toMatchObject({ water: { exposure: "fresh" }, water_kg_m3: 1019 });
  expect(sheet.complaints.filter((c) => !c.includes("422"))).toEqual([]);
});
