// Row 2 of the first form: the printed request form can be keyed back. Every question that is printed must be known
// here, and every answer must come to stand in the plan.
import type { Plan } from "@causey/engine/plan";
import type { Locator } from "playwright-core";
import { expect, test } from "vitest";
import { deriveLane, sheetTexts } from "../support/lane-plan.ts";
import { violations } from "./support/axe.ts";
import { picture, wide } from "./support/browser.ts";
import { afterRevision, goTo, planOf, settled } from "./support/sheet.ts";
import { sheetSession } from "./support/session.ts";

const sheet = sheetSession(wide);

/** Keys one answer, as a person does who copies from paper, and waits until it is saved. */
async function key(within: Locator, label: string, answer: string): Promise<void> {
  const { page } = sheet;
  const before = await settled(page);
  const words = label.replaceAll(/[()]/g, String.raw`\$&`);
  const field = within.getByLabel(new RegExp(String.raw`^${words}( \(lb\))?( \*)?$`));
  if ((await field.evaluate((e) => e.tagName)) === "SELECT") await field.selectOption({ label: answer });
  else {
    await field.fill(answer);
    await field.blur();
  }
  await afterRevision(page, before);
}

async function press(within: Locator, name: string): Promise<void> {
  const before = await settled(sheet.page);
  await within.getByRole("button", { name, exact: true }).click();
  await afterRevision(sheet.page, before);
}

/** Question of the form, the field that takes its answer, and the answer. */
const persons = {
  "1  Name": ["Who asks", "R. Tern"],
  "2  Organisation": ["Organisation", "School of the Estuary"],
  "3  How to reach you": ["How to reach them", "hut 4, extension 12"],
  "4  Day of this request": ["Asked on", "2027-01-12"],
  "5  Purpose and need": [
    "Purpose and need",
    "Traps are emptied every week; they cannot be reached by boat.",
  ],
  "7  Are wet feet at high water accepted? (yes / no)": ["Wet feet at high water", "not accepted"],
} as const;
const alternatives = {
  "6  Could it be done without a structure, by boat, or in another season? Why not?": [
    ["No structure", "The mud does not carry a person."],
    ["By boat", "The creek is dry at half tide."],
    ["Another season", "The traps stand all year."],
  ],
} as const;
const plot = {
  Name: ["Name", "Trap 9"],
  East: ["East on the grid (m)", "1152"],
  North: ["North on the grid (m)", "2096"],
  "Keep off, all round": ["Keep off, all round", "4 ft"],
  "Reached from": ["Reached from", "5 ft"],
} as const;
const visit = {
  "Times a year": ["Times a year", "40"],
  People: ["People at once", "2"],
  "Mass, with pack": ["Mass of one, with pack", "210"],
  "First day": ["First day", "2027-06-01"],
  "Last day": ["Last day", "2028-09-30"],
} as const;
const cart = {
  Empty: [["Empty", "40"]],
  "Load, dry": [["Load, dry", "120"]],
  "Mud and water": [["Mud and water on top", "15"]],
  "Width x length": [
    ["Overall width", "26 in"],
    ["Overall length, with handles", "60 in"],
  ],
  "Wheels apart": [["Wheels apart, across", "20 in"]],
  "Wheel width": [["Width of a wheel", "2 in"]],
  Axles: [["Axles", "one"]],
} as const;

test("every question of the printed form has its field: answers are keyed back line by line and stand in the plan", async () => {
  const { page } = sheet;

  const texts = sheetTexts(await deriveLane({}), "request-form");
  const heads = ["Who asks, and for what", "Plots", "Visits", "Carts"];
  const tables = heads.slice(1).map((head, i) => {
    const from = texts.indexOf(head);
    const to = i + 2 < heads.length ? texts.indexOf(heads[i + 2]!) : undefined;
    return texts.slice(from + 1, to);
  });
  expect(texts.filter((t) => /^\d {2}/.test(t))).toEqual(
    [...Object.keys(persons), ...Object.keys(alternatives)].toSorted(),
  );
  for (const [k, [first, questions]] of (
    [
      ["Plot", plot],
      ["Visit", { Plots: null, ...visit }],
      ["Visit", cart],
    ] as const
  ).entries()) {
    const at = tables[k]!.indexOf(first);
    const end = tables[k]!.findIndex((t, i) => i > at && /^[PV]1$/.test(t));
    expect(tables[k]!.slice(at + 1, end).toSorted()).toEqual(Object.keys(questions).toSorted());
  }

  await goTo(page, "Site");
  await page.getByRole("button", { name: "Lists", exact: true }).click();
  const old = new Set((await planOf(page)).plots.map((p) => p.id));
  await press(page.locator("body"), "Add a plot");
  const { id } = (await planOf(page)).plots.find((p) => !old.has(p.id))!;
  for (const [label, answer] of Object.values(plot))
    await key(page.locator(`[data-row="${id}"]`), label, answer);

  await goTo(page, "Request");
  const body = page.locator("body");
  for (const [label, answer] of Object.values(persons)) await key(body, label, answer);
  for (const [kind, why] of Object.values(alternatives).flat()) {
    await key(body, kind, "rejected");
    await key(body, `Why, ${kind.toLowerCase()}`, why);
  }
  const had = (await planOf(page)).visits.map((v) => v.id);
  await press(body, "Add a visit");
  const fresh = (await planOf(page)).visits.find((v) => !had.includes(v.id))!;
  const row = page.locator(`[data-visit="${fresh.id}"]`);
  for (const [label, answer] of Object.values(visit)) await key(row, label, answer);
  for (const other of fresh.plots.filter((p) => p !== id)) {
    const name = (await planOf(page)).plots.find((p) => p.id === other)!.name;
    const before = await settled(page);
    await row.getByLabel(name, { exact: true }).click();
    await afterRevision(page, before);
  }
  await press(row, "They bring a cart");
  for (const [label, answer] of Object.values(cart).flat()) await key(row, label, answer);
  await row.scrollIntoViewIfNeeded();
  expect(await violations(page)).toEqual([]);
  await picture(page, "request-form-keyed");

  const kept = await planOf(page);
  expect(kept.request).toMatchObject({
    requester: "R. Tern",
    organisation: "School of the Estuary",
    contact: "hut 4, extension 12",
    received: "2027-01-12",
    purpose: persons["5  Purpose and need"][1],
    wet_feet_ok: false,
  });
  for (const [kind, reason] of [
    ["no-structure", "The mud does not carry a person."],
    ["by-boat", "The creek is dry at half tide."],
    ["another-season", "The traps stand all year."],
  ])
    expect(kept.request.options).toContainEqual({ kind, status: "rejected", reason });
  const trap = kept.plots.find((p) => p.id === id)!;
  expect(trap).toMatchObject({ name: "Trap 9", x: 1152, y: 2096 });
  expect(trap.keep_off_m).toBeCloseTo(4 * 0.3048, 9);
  expect(trap.reach_m).toBeCloseTo(5 * 0.3048, 9);
  expectVisit(
    kept.visits.find((v) => v.id === fresh.id)!,
    id,
  );
  expect(sheet.complaints).toEqual([]);
});

/** Exact conversions: 1 lb = 0.45359237 kg, 1 in = 25.4 mm (international yard and pound, 1959). */
function expectVisit(v: Plan["visits"][number], plotId: string): void {
  expect(v).toMatchObject({
    plots: [plotId],
    per_year: 40,
    people: 2,
    from: "2027-06-01",
    to: "2028-09-30",
  });
  expect(v.person_kg).toBeCloseTo(210 * 0.45359237, 9);
  const c = v.cart!;
  expect([c.empty_kg, c.load_kg, c.wet_kg]).toEqual(
    [40, 120, 15].map((lb) => expect.closeTo(lb * 0.45359237, 9) as number),
  );
  expect([c.width_mm, c.length_mm, c.track_mm, c.wheel_width_mm]).toEqual(
    [26, 60, 20, 2].map((inch) => expect.closeTo(inch * 25.4, 9) as number),
  );
  expect(c.axles).toBe(1);
}
