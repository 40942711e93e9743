import { expect, test } from "vitest";
import { violations } from "./support/axe.ts";
import { picture, wide } from "./support/browser.ts";
import { afterRevision, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

const open = async (name: "Kit" | "Layout" | "Materials"): Promise<void> => {
  await sheet.page.getByRole("link", { name, exact: true }).click();
  await sheet.page.getByRole("heading", { level: 1, name }).waitFor();
};
const options = (label: string) =>
  sheet.page
    .getByLabel(label, { exact: true })
    .locator("option")
    .evaluateAll((all) =>
      all.map((o) => ({
        id: (o as HTMLOptionElement).value,
        words: o.textContent!,
        barred: (o as HTMLOptionElement).disabled,
      })),
    );

test("creosote, penta and what salt water forbids cannot be chosen and say why; copper then bars zinc-plated screws (small docks guidance; FEMA P-499)", async () => {
  const { page } = sheet;
  await open("Kit");
  const offered = await options("Preservative");
  const of = (id: string) => offered.find((o) => o.id === id)!;
  for (const id of ["creosote", "penta"]) {
    expect(of(id).barred, id).toBe(true);
    expect(of(id).words).toContain("not here, not for small docks");
  }
  expect(of("acq")).toMatchObject({ barred: true });
  expect(of("acq").words).toContain("not for timber in salt water");
  expect(of("acza").barred).toBe(false);
  expect(offered.slice(0, 2).map((o) => o.id)).not.toContain("creosote");
  await expect(
    page.getByLabel("Preservative", { exact: true }).selectOption("creosote", { timeout: 1000 }),
  ).rejects.toThrow();
  expect((await planOf(page)).kit.lumber.preservative).toBeNull();

  const before = await settled(page);
  await page.getByLabel("Preservative", { exact: true }).selectOption("acza");
  await afterRevision(page, before);
  expect((await planOf(page)).kit.lumber).toMatchObject({ treatment: "treated", preservative: "acza" });
  const screws = await options("Screws of the frame");
  const zinc = screws.find((o) => o.id === "screw-10x3-zinc")!;
  expect(zinc).toMatchObject({ barred: true });
  expect(zinc.words).toContain("copper");

  const next = await settled(page);
  await page.getByLabel("Screws of the frame", { exact: true }).selectOption("screw-10x3-316");
  await afterRevision(page, next);
  const { kit } = await planOf(page);
  expect([kit.cross_pieces.screw, kit.platform.screw, kit.curb!.screw]).toEqual(
    Array(3).fill("screw-10x3-316"),
  );
  await picture(page, "kit-choices");
  expect(await violations(page)).toEqual([]);
});

test("dead ends with their signs stand beside the map, spare modules and what is left over beside the order", async () => {
  const { page } = sheet;
  await open("Layout");
  const ends = page.locator("[data-dead-end]");
  expect(await ends.count()).toBeGreaterThan(0);
  expect(await ends.first().textContent()).toMatch(
    /sign at joint J\d+: the last place to turn is|ends on platform/,
  );
  expect(await violations(page)).toEqual([]);
  await open("Materials");
  const rows = page.locator('table[aria-label="Spare modules"] tbody tr');
  expect(await rows.count()).toBeGreaterThan(0);
  for (const row of await rows.all()) {
    const [inWalkway, spare] = (await row.locator("td").allTextContents()).map(Number) as [number, number];
    expect(spare).toBe(Math.ceil(inWalkway * 0.03 - 1e-9));
  }
  expect(await page.locator(".cuttings h3").first().textContent()).toMatch(
    /[\d.]+ % is left over or sawdust/,
  );
  const before = await settled(page);
  await page.getByLabel(/Monitoring, a year/).fill("0");
  await page.getByLabel(/Monitoring, a year/).press("Enter");
  await afterRevision(page, before);
  expect((await page.locator(".gaps li").allTextContents()).join("\n")).toContain(
    "No monitoring is budgeted",
  );
  expect(await violations(page)).toEqual([]);
});
