import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { Results } from "@causey/engine/plan";
import { showQuantity } from "@causey/engine/units";
import { causey as causeyShell, temporaryFolder } from "../support/shell.ts";
import { picture, wide } from "./support/browser.ts";
import { line, planIdOf, settled } from "./support/sheet.ts";
import { demoFolder } from "./support/start.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide, async (page, url) => {
  await page.goto(url);
  await settled(page);
});

test("files that are no plan are refused, each fault with its file, place and the way to mend it", async () => {
  const { page } = sheet;
  await page.getByRole("button", { name: "Plans" }).click();
  await page.locator("input[type=file]").setInputFiles({
    name: "plan.json",
    mimeType: "application/json",
    buffer: Buffer.from('{"schema": 1, "name": 7}'),
  });
  await page.locator(".problem").first().waitFor();
  for (const problem of await page.locator(".problem").all()) {
    expect(await problem.locator(".problem-message").textContent()).not.toBe("");
    expect(await problem.locator(".problem-place span").first().textContent()).toMatch(
      /\.json|\.csv|\.asc|\.geojson/,
    );
    expect(await problem.locator(".problem-mend").textContent()).not.toBe("");
  }
  await picture(page, "plan-refused");
});

test("the files of a plan folder open as a plan of its own, with the same line as the demo", async () => {
  const { page } = sheet;
  const first = { id: planIdOf(page), line: await line(page) };
  await page
    .locator("input[type=file]")
    .setInputFiles(readdirSync(demoFolder).map((name) => join(demoFolder, name)));
  await page.waitForFunction(
    (old) => !location.hash.includes(`plan=${old}`) || location.hash.split("plan=")[1] !== old,
    first.id,
  );
  await settled(page);
  expect(planIdOf(page)).not.toBe(first.id);
  expect(await line(page)).toBe(first.line);
  await page.getByRole("button", { name: "Plans" }).click();
  await page.locator(".plan-entry").nth(1).waitFor();
  expect(await page.locator(".plan-entry").count()).toBe(2);
  await page.keyboard.press("Escape");
});

test("the hand-over is a .zip of the plan", async () => {
  const { page } = sheet;
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("link", { name: "Hand over" }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/\.zip$/);
});

test("one value everywhere: the page shows the length, areas and cost that the shell writes for the same folder", async () => {
  const out = join(temporaryFolder(), "out");
  const ran = causeyShell(["plan", demoFolder, "--out", out, "--quiet"]);
  expect(ran.code, ran.error).toBe(0);
  const results = JSON.parse(readFileSync(join(out, "results.json"), "utf8")) as Results;
  for (const id of ["length", "shaded", "contact", "cost"]) {
    const figure = results.figures.find((f) => f.id === id)!;
    const shown = await sheet.page.locator(`[data-figure="${id}"] .figure-value`).innerText();
    const words =
      figure.unit === "money"
        ? figure.value.toLocaleString("en-US", { style: "currency", currency: results.cost.currency })
        : showQuantity(figure.value, figure.unit, results.plan.units);
    expect(shown.replace(/\s*, show the working$/, "").trim(), id).toBe(words);
    if (figure.unit !== "money") expect(ran.out, id).toContain(words);
  }
});
