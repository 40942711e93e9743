import { expect, test } from "vitest";
import { violations } from "./support/axe.ts";
import { picture, wide } from "./support/browser.ts";
import { afterRevision, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

const open = async (name: "Request" | "Site" | "Water" | "Checks"): Promise<void> => {
  await sheet.page.getByRole("link", { name, exact: true }).click();
  await sheet.page.getByRole("heading", { level: 1, name }).waitFor();
};
const proof = async () => (await planOf(sheet.page)).proof;
/** Does something and waits until the plan with it is saved. */
async function saved(act: () => Promise<void>): Promise<void> {
  const before = await settled(sheet.page);
  await act();
  await afterRevision(sheet.page, before);
}

test("loads of rules, a carry party and stacks are told on the page Request", async () => {
  const { page } = sheet;
  await open("Request");
  await saved(() => page.getByLabel("Walkway, 60 psf all over").click());
  await saved(() => page.getByLabel("Several people carry one load between them").click());
  await saved(async () => {
    await page.getByLabel("Modules stacked on a laid one").fill("3");
    await page.keyboard.press("Enter");
  });
  expect(await proof()).toMatchObject({
    load_rules: ["asce-walkway"],
    carry: { people: 4 },
    stacked_modules: 3,
  });
  expect(await violations(page)).toEqual([]);
});

test("what a flood brings is told on the page Water; a month with ice can be ticked", async () => {
  const { page } = sheet;
  await open("Water");
  await saved(async () => {
    await page.getByLabel("Speed of the water (ft/s)").fill("1.5");
    await page.keyboard.press("Enter");
  });
  await saved(() => page.getByLabel("Small waves reach the walkway").click());
  await saved(() => page.getByLabel("Ice in Feb").click());
  const { flood } = await proof();
  expect(flood.speed_m_s).toBeCloseTo(1.5 * 0.3048, 9);
  expect(flood.wave).toEqual({ height_m: 0.1, period_s: 1.5 });
  expect(flood.ice_months).toEqual([2]);
  expect(await violations(page)).toEqual([]);
  await picture(page, "proof-flood");
});

test("how the ground scatters and sinks is told in the lists of the page Site", async () => {
  const { page } = sheet;
  await open("Site");
  await page.getByText("Lists", { exact: true }).click();
  await saved(async () => {
    await page.getByLabel("How the ground sinks under pressure").selectOption({ index: 2 });
  });
  await saved(() => page.getByLabel("A soft layer settles under it for years").click());
  const { ground } = await proof();
  expect(ground.sinkage).not.toBeNull();
  expect(ground.soft_layer).toMatchObject({ thickness_m: 1 });
  expect(await violations(page)).toEqual([]);
});

test("used timber and the design code are chosen on the page Checks; a code without values for the wood is barred", async () => {
  const { page } = sheet;
  await open("Checks");
  await saved(async () => {
    await page.getByLabel("Timber of the kit").selectOption({ index: 1 });
  });
  expect((await proof()).used_timber).toMatchObject({ cycles: 1 });
  const codes = await page
    .getByLabel("Design code")
    .locator("option")
    .evaluateAll((all) =>
      all.map((o) => [(o as HTMLOptionElement).value, (o as HTMLOptionElement).disabled]),
    );
  expect(codes).toEqual([
    ["us-asd-2018", false],
    ["ec5-2004", true],
  ]);
  expect(sheet.complaints).toEqual([]);
});
