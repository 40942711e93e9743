import { expect, test } from "vitest";
import { planCautions } from "../../engine/src/plan/cautions.ts";
import { sceneTexts } from "../src/scene/index.ts";
import { paperSet, type PaperContext } from "../src/set/index.ts";
import { contextOf } from "./support/marsh.ts";

const context = contextOf("us", "a4");
const { results, plan } = context;

const pagesOf = (change: Partial<PaperContext["results"]>, sheet: "a4" | "letter" = "a4") =>
  paperSet(
    {
      ...context,
      plan: { ...plan, papers: { ...plan.papers, sheet } },
      results: { ...results, ...change },
    },
    ["summary"],
  ).pages;
const wordsOf = (change: Partial<PaperContext["results"]>): string =>
  pagesOf(change)
    .flatMap((page) => sceneTexts(page.shapes))
    .join(" ");

test.each(["a4", "letter"] as const)(
  "one page on %s with the picture of the line, its key and north",
  (sheet) => {
    const pages = pagesOf({}, sheet);
    expect(pages).toHaveLength(1);
    const texts = sceneTexts(pages[0]!.shapes);
    for (const words of ["The line", "line of the walkway", "grid north"]) expect(texts).toContain(words);
  },
);

test("a sum stands once: years and volunteers that change nothing get no row of their own", () => {
  const { cost, budget } = results;
  const alone = { ...budget, mid: cost.total, low: cost.total - 10, high: cost.total + 10, cash: cost.total };
  const same = wordsOf({ budget: alone });
  expect(same).toContain("The whole project");
  expect(same).not.toContain("Laid and taken out, the lines above together");
  expect(same).not.toContain("volunteers' hours");
  const more = wordsOf({ budget: { ...alone, mid: cost.total + 500, high: cost.total + 900, cash: 100 } });
  expect(more).toContain("Laid and taken out, the lines above together");
  expect(more).toContain("USD 500 ");
  expect(more).toMatch(/of it to be paid in money/);
});

const lines = (change: Partial<PaperContext["results"]>): string => wordsOf(change).replaceAll(/\s+/g, " ");
const open = results.checks.find((c) => c.status === "cannot-check")!;
const lack = (kind: typeof open.kind, ...missing: string[]) =>
  ({ ...open, kind, status: "cannot-check", missing }) as typeof open;
const failed = results.checks.find((c) => c.status === "fail")!;
const met = results.checks.find((c) => c.status === "pass")!;

test("what cannot be checked leads, by kind and number, with what is missing most often", () => {
  const checks = [
    met,
    lack("uplift", "a flood level"),
    lack("bearing", "ground strength"),
    lack("bearing", "ground strength", "a cart width"),
  ];
  const words = lines({ checks });
  expect(words).toContain(
    "Checks 3 cannot be checked and are not met until then; 1 meets the chosen rule, 0 do not apply.",
  );
  expect(words).toContain(
    "Cannot be checked: bearing of the ground (2), staying put in a flood (1). Missing most often: ground strength (2 of 3).",
  );
});

test("kinds that are open beyond the sixth are counted", () => {
  const kinds = ["seat", "deck", "edge", "grade", "width", "cart", "tipping", "lifting", "setback"] as const;
  const words = lines({ checks: kinds.map((kind) => lack(kind, "x")) });
  expect(words).toContain("9 cannot be checked");
  expect(words).toContain("room for the cart (1), and 3 more kinds. Missing: x.");
});

test("what fails stands by kind with its worst share; a plan without open or failed checks says that there is none", () => {
  const fail = (title: string, kind: typeof open.kind, utilisation: number) =>
    ({ ...failed, title, kind, utilisation }) as typeof failed;
  const words = lines({
    checks: [fail("Uplift, C1", "uplift", 1.2), fail("Uplift, C5", "uplift", 1.5), fail("Rail", "edge", 3)],
  });
  expect(words).toContain("Checks 3 do not meet the chosen rule; 0 meet it");
  expect(words).toMatch(
    /Does not meet it: Rail, 3\.00 of the limit\..*Does not meet it: Uplift, C5, 1\.50 of the limit; 1 more of this kind\./,
  );
  expect(lines({ checks: [met] })).toContain(
    "Checks None fails and none is open: 1 meets the chosen rule, 0 do not apply.",
  );
});

test("every flag for an engineer stands in short; without one it says what that does not mean", () => {
  const flag = (title: string, because: string) => ({ ...results.engineer[0]!, title, because });
  expect(
    lines({ engineer: [flag("Tall", "it is 4 ft high"), flag("Long span", "it spans 18 ft.")] }),
  ).toContain("A licensed engineer must look at: Tall: it is 4 ft high; Long span: it spans 18 ft.");
  expect(lines({ engineer: [] })).toContain("that does not mean that none is needed");
});

test("the greatest height of the deck over ground stands with its joint", () => {
  const { layout } = results;
  const joints = layout.joints.map((j) => (j.id === "B/1" ? { ...j, ground_m: 1, deck_m: 1.9144 } : j));
  expect(lines({ layout: { ...layout, joints } })).toContain(
    "Greatest height of the deck over ground 3 ft, at joint B/1",
  );
});

test("amounts in whole units add up to the total that is shown, though each alone would round up", () => {
  const { cost } = results;
  const [one] = cost.lines;
  const amounts = [10.5, 20.5, 30.5, 0.25];
  const titles = ["Beams", "Bolts", "Barge", "Bits"];
  const change = {
    ...cost,
    lines: titles.map((title, i) => ({ ...one!, line: "delivery" as const, title, amount: amounts[i]! })),
    total: 61.75,
  };
  const words = lines({ cost: change, budget: { ...results.budget, low: 61.75, mid: 61.75, high: 61.75 } });
  const shown = titles.map((t) => Number(new RegExp(`${t} USD (\\d+)`).exec(words)![1]));
  expect(shown.reduce((a, b) => a + b)).toBe(62);
  expect(words).toMatch(/The whole project, 1 calendar year, incomplete USD 62 /);
  shown.forEach((v, i) => expect(Math.abs(v - amounts[i]!)).toBeLessThan(1));
});

test("labour shows its middle figure and its range", () => {
  const entry = { ...results.budget.entries[0]!, id: "labour", low: 80.4, mid: 120, high: 159.6 };
  expect(lines({ budget: { ...results.budget, entries: [entry] } })).toContain(
    "Labour, laying USD 120 (USD 80 to USD 160)",
  );
});

test("money says that it is incomplete and on example prices before its first sum", () => {
  const { cost } = results;
  const items = ["a1", "b2", "c3", "d4", "e5", "f6"];
  const unpriced = items.map((item) => ({ item, needed: 1 }));
  const [source] = cost.price_sources;
  const some = lines({ cost: { ...cost, unpriced, price_sources: [{ ...source!, is_example: true }] } });
  expect(some).toContain(
    "Money, incomplete, all on example prices • Incomplete: without a price, left out of every sum: a1; b2; c3; d4; and 2 more.",
  );
  const real = lines({ cost: { ...cost, unpriced: [], price_sources: [{ ...source!, is_example: false }] } });
  expect(real).not.toMatch(/incomplete|example prices/i);
});

test("cautions true of every walkway stand in short, and in full on the check summary", () => {
  const cautions = planCautions({
    plan,
    checks: [],
    cost: results.cost,
    deck: ["The deck drowns."],
    visits: [],
  });
  const words = lines({ cautions });
  for (const part of ["The deck drowns.", "nobody works alone", "two or more lift a module", "check summary"])
    expect(words).toContain(part);
  const full = paperSet({ ...context, results: { ...results, cautions } }, ["checks"])
    .pages.flatMap((page) => sceneTexts(page.shapes))
    .join(" ");
  for (const caution of cautions) expect(full).toContain(caution);
});

test("more cautions than fit are counted", () => {
  const cautions = Array.from({ length: 11 }, (_, i) => `Caution number ${i + 1}.`);
  const words = lines({ cautions });
  expect(words).toContain("Caution number 8.");
  expect(words).not.toContain("Caution number 9.");
  expect(words).toContain("3 more, and every caution in full: on the check summary sheet.");
});

test("hours under water of ground and deck by the record, with band and year where known", () => {
  const share = (s: number, low: number | null, high: number | null, hours_per_year: number | null) => ({
    share: s,
    low,
    high,
    hours_per_year,
  });
  const record = {
    kind: "levels",
    basis: "predicted",
    from: "2027-01-01T00:00Z",
    to: "2027-12-31T00:00Z",
    gaps: 0,
  } as unknown as NonNullable<typeof results.water.record>;
  const joints = [
    { joint: "J1", ground: share(0.1, null, null, null), deck: share(0, null, null, null) },
    { joint: "J2", ground: share(0.125, 0.09, 0.151, 1096), deck: share(0.0004, null, null, 3.5) },
  ];
  const words = lines({ water: { ...results.water, record, joints } });
  expect(words).toContain(
    "at joint J2, 12.5 % of the time (9.0 % to 15.1 %), about 1,096 hours a year; the wettest deck, at joint J2, under 0.1 % of the time, about 4 hours a year.",
  );
  expect(words).toContain("predicted levels, no wind, of 2027-01-01 to 2027-12-31");
  const dry = lines({ water: { ...results.water, record, joints: joints.slice(0, 1) } });
  expect(dry).toContain("10.0 % of the time; the wettest deck, never. The record does not cover a year.");
});

test("without a record the hours under water cannot be told", () => {
  expect(lines({ water: { ...results.water, record: null, cautions: [] } })).toContain(
    "Hours under water cannot be told: no record and no tide table is given.",
  );
});

test("shaded ground in no habitat is named as plain ground", () => {
  const evaluation = {
    ...results.evaluation,
    shaded_m2: 115,
    shaded_by_zone: [{ zone: "z2", name: "2", area_m2: 68.4 }],
  };
  // 68.4 m2 and the other 46.6 m2 at 10.7639 sq ft.
  expect(lines({ evaluation })).toContain(
    "of it habitat 2 736 sq ft; plain ground, in no habitat named here, 502 sq ft",
  );
});
