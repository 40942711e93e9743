import { writeFileSync, mkdirSync, readFileSync } from "node:fs";
import { launch, openPage, wide } from "./browser/support/browser.ts";
import { afterRevision, openSheet, planOf, settled } from "./browser/support/sheet.ts";
import { startCausey } from "./browser/support/start.ts";
import { writeGeoPackage } from "@causey/io/geopackage";

const out = "/tmp/layer-shots";
mkdirSync(out, { recursive: true });
const causey = await startCausey();
const browser = await launch();
const { page, complaints } = await openPage(browser, wide);
try {
  await openSheet(page, causey.url);
  const plan = await planOf(page);
  const { x, y } = plan.plots[0]!;
  console.log("plot", x, y, "zones", plan.zones.length);
  const sq = (dx: number, dy: number) => [[x + dx, y + dy], [x + dx + 4, y + dy], [x + dx + 4, y + dy + 4], [x + dx, y + dy + 4], [x + dx, y + dy]];
  const gj = (crs: boolean, names: (string | null)[]) => JSON.stringify({ type: "FeatureCollection", name: "reeds", ...(crs ? { crs: { type: "name", properties: { name: "local" } } } : {}),
    features: names.map((name, i) => ({ type: "Feature", properties: { name, art: i ? "birds" : "reed" }, geometry: { type: "Polygon", coordinates: [sq(12 + 8 * i, 12)] } })) });
  const file = (name: string, text: string | Uint8Array) => { writeFileSync(`${out}/${name}`, text); return `${out}/${name}`; };
  await page.getByRole("link", { name: "Site", exact: true }).click();
  await page.getByRole("heading", { level: 1, name: "Site" }).waitFor();
  const lists = page.getByRole("button", { name: "Lists" });
  if (await lists.count()) await lists.click();
  const before = await settled(page);
  await page.locator('[data-layer-import="zones"] button').click();
  const dialog = page.getByRole("dialog");
  await dialog.waitFor();
  const give = async (path: string) => dialog.locator('input[type="file"]').setInputFiles(path);
  await give(file("bad.geojson", gj(true, ["North reed", null])));
  await dialog.getByLabel("Rule", { exact: true }).selectOption("closed");
  await dialog.getByLabel("Source", { exact: true }).fill("survey 2024");
  await dialog.getByLabel("Source", { exact: true }).blur();
  await dialog.getByText("stands against it").waitFor();
  await page.screenshot({ path: `${out}/1-bad.png` });
  await dialog.locator(".problems").scrollIntoViewIfNeeded();
  await dialog.getByRole("button", { name: "Take over" }).scrollIntoViewIfNeeded();
  await page.screenshot({ path: `${out}/1b-bad.png` });
  await give(file("good.geojson", gj(true, ["North reed", "Bird island"])));
  await dialog.getByText("good.geojson").waitFor();
  await dialog.getByLabel("Rule: from").selectOption("=art");
  await page.screenshot({ path: `${out}/2-words.png` });
  await dialog.getByLabel('"reed" means').selectOption("habitat");
  await dialog.getByLabel('"birds" means').selectOption("seasonal-closure");
  await dialog.getByLabel("Source", { exact: true }).fill("survey 2024");
  await dialog.getByLabel("Source", { exact: true }).blur();
  await dialog.getByLabel("Harm per area, of habitats", { exact: true }).fill("4");
  await dialog.getByLabel("First day (month-day)", { exact: true }).fill("04-15");
  await dialog.getByLabel("Last day (month-day)", { exact: true }).fill("08-01");
  await dialog.getByLabel("Last day (month-day)", { exact: true }).blur();
  await dialog.getByRole("button", { name: "Take over 2 areas" }).waitFor();
  await dialog.getByRole("button", { name: "Take over 2 areas" }).scrollIntoViewIfNeeded();
  await page.screenshot({ path: `${out}/3-good.png` });
  await dialog.getByRole("button", { name: "Take over 2 areas" }).click();
  const rev = await afterRevision(page, before);
  const now = await planOf(page);
  console.log("taken", now.zones.length, JSON.stringify(now.zones.slice(-2)));
  await page.screenshot({ path: `${out}/4-taken.png` });
  // again: clash
  await page.locator('[data-layer-import="zones"] button').click();
  // a GeoPackage without a system: SQLite in the browser, the system is asked for
  const gpkg = await writeGeoPackage([
    { name: "pools", crs: { local: "x" }, features: [{ id: "p", properties: { name: "North reed" }, geometry: { type: "Polygon", coordinates: [sq(30, 30) as never] } }] },
    { name: "posts", crs: { local: "x" }, features: [{ id: "q", properties: { name: "Post" }, geometry: { type: "Point", coordinates: [x, y] } }] },
  ]);
  await give(file("pools.gpkg", gpkg));
  await dialog.getByLabel("Layer").waitFor();
  console.log("gpkg layers:", await dialog.getByLabel("Layer").locator("option").allTextContents());
  await page.screenshot({ path: `${out}/5-gpkg.png` });
  await dialog.getByLabel("Its coordinates are in").selectOption("site");
  await dialog.getByLabel("Rule", { exact: true }).selectOption("pool");
  await dialog.getByLabel("Source", { exact: true }).fill("survey 2024");
  await dialog.getByLabel("Source", { exact: true }).blur();
  await dialog.getByText("The plan already has the area").waitFor();
  await dialog.getByRole("button", { name: "Take over" }).scrollIntoViewIfNeeded();
  await page.screenshot({ path: `${out}/6-clash.png` });
  await dialog.getByText("Replace each area whose id is there").click();
  await dialog.getByRole("button", { name: "Take over 1 area" }).click();
  const rev2 = await afterRevision(page, rev);
  const then = await planOf(page);
  console.log("replaced", then.zones.length, then.zones.filter((z) => z.id === "north-reed").map((z) => z.use));
  await page.getByRole("button", { name: /^Undo/ }).first().click();
  await afterRevision(page, rev2);
  const undone = await planOf(page);
  console.log("undone", undone.zones.length, undone.zones.filter((z) => z.id === "north-reed").map((z) => z.use));
  // drawings
  await page.getByRole("link", { name: "Drawings", exact: true }).click();
  await page.getByRole("heading", { level: 1, name: "Drawings" }).waitFor();
  await page.getByRole("button", { name: "For a handheld receiver (GPX)" }).click();
  await page.getByText("GPX needs longitude and latitude").waitFor();
  await page.screenshot({ path: `${out}/7-gpx.png` });
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "For a mapping program (GeoPackage)" }).click(),
  ]);
  const saved = `${out}/down.gpkg`;
  await download.saveAs(saved);
  console.log(download.suggestedFilename(), readFileSync(saved).length, readFileSync(saved).subarray(0, 15).toString());
} catch (e) {
  console.log(e);
  await page.screenshot({ path: `${out}/fault.png` });
} finally {
  console.log("complaints", complaints, "faults", causey.faults);
  await browser.close();
  await causey.close();
}
