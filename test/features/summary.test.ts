// The summary sheet as a reader takes it: what it says of a plan is held against values worked out here by hand.
import { readyKit } from "@causey/data/kits";
import { beforeAll, describe, expect, test } from "vitest";
import { summary } from "@causey/papers/summary";
import { deriveLane, kitAtHeight, onFoot, sheetTexts, type Derived } from "../support/lane-plan.ts";

const flat = (texts: readonly string[]): string => texts.join(" ").replaceAll(/\s+/g, " ");
const words = (d: Derived, sheet = "summary"): string => flat(sheetTexts(d, sheet));

/** A strip of channel along the lane's side, which no walkway crosses. */
const channel = {
  type: "Feature",
  properties: { id: "c", name: "Side drain", use: "channel", source: "test" },
  geometry: {
    type: "Polygon",
    coordinates: [
      [
        [7.2, 0.5],
        [7.7, 0.5],
        [7.7, 27],
        [7.2, 27],
        [7.2, 0.5],
      ],
    ],
  },
};

let d: Derived;
beforeAll(async () => {
  d = await deriveLane({ units: "metric", kit: kitAtHeight(0.6) });
});

describe("crossings", () => {
  test("without a channel or pool among the areas no sheet says that there is none", () => {
    const said = "not looked for: no channel or pool area was given";
    expect(words(d)).toContain(`Crossings of channels and pools ${said}`);
    expect(words(d, "route")).toContain(said);
    expect(words(d, "route")).not.toMatch(/Water crossed None/);
    expect(summary(d.results, d.plan)).toContain(said);
  });

  test("with a channel beside the line there is none", async () => {
    const beside = await deriveLane({ zones: [channel] });
    expect(words(beside)).toContain("Crossings of channels and pools none");
    expect(words(beside, "route")).toContain("Water crossed None.");
  });
});

test("the deck 600 mm over level ground is so high at its first joint", () => {
  expect(words(d)).toContain("Greatest height of the deck over ground 600 mm, at joint J1");
  expect(summary(d.results, d.plan)).toMatch(/Greatest height of the deck \.+ 600 mm, at joint J1/);
  const figure = d.results.figures.find((f) => f.id === "highest-deck")!;
  expect(figure.value).toBeCloseTo(0.6, 9);
  expect(figure.working).toHaveLength(1);
});

test("each plot is reached along the walkway, and ends short of it by the distance on the ground", () => {
  const [reached] = d.results.layout.reached;
  const joint = d.results.layout.joints.find((j) => j.id === reached!.joint)!;
  const short = Math.hypot(joint.x - 4, joint.y - 22).toFixed(2);
  expect(words(d)).toMatch(
    new RegExp(`Reaches Plot P1 [\\d.]+ m along the walkway, ends ${short.replace(".", "\\.")} m from it`),
  );
});

test("money: the column of whole amounts adds up to the total shown, labour with the range of its hours", () => {
  const texts = sheetTexts(d, "summary");
  const after = (label: string): string => texts[texts.indexOf(label) + 1]!;
  const whole = (label: string): number =>
    Number(/^USD ([\d,]+)/.exec(after(label))![1]!.replaceAll(",", ""));
  const column = ["Materials", "Tax", "Delivery", "Labour, laying", "Removal", "Disposal", "Contingency"];
  const sum = column.map(whole).reduce((a, b) => a + b);
  expect(sum).toBe(whole("Laid and taken out, the lines above together"));
  expect(sum).toBe(Math.round(d.results.cost.total));
  expect(sum + whole("Work in the jig, inspection rounds, repair, and their contingency")).toBe(
    whole("The whole project, 3 calendar years"),
  );
  // 30 USD an hour.
  const laying = d.results.cost.labour.filter((l) => l.work === "laying");
  const [low, high] = (["low_h", "high_h"] as const).map((k) =>
    Math.round(laying.reduce((h, l) => h + l[k], 0) * 30),
  );
  expect(after("Labour, laying")).toMatch(new RegExp(`\\(USD ${low} to USD ${high}\\)$`));
  expect(texts.filter((t) => /USD [\d,]+\.\d\d/.test(t))).toEqual([]);
});

describe("visits", () => {
  const cart = {
    name: "Sample cart",
    empty_kg: 10,
    load_kg: 20,
    wet_kg: 0,
    width_mm: 500,
    length_mm: 1000,
    track_mm: 400,
    axle_distance_mm: 0,
    axles: 1,
    wheel_width_mm: 50,
    wheel_contact_mm: 90,
  } as const;
  const visits = ["One", "Two", "Three", "Four", "Five"].map((name, i) => ({
    ...onFoot,
    id: name,
    name,
    people: i + 1,
    cart: i === 1 ? cart : null,
    per_year: 10 + i,
    to: i === 2 ? null : onFoot.to,
  }));

  test("three stand in a line each, with people, cart, times a year and days; the others are counted", async () => {
    const said = words(await deriveLane({ visits }));
    expect(said).toContain("Visit: One 1 person, no cart; 10 a year, 2027-05-24 to 2029-05-23");
    expect(said).toContain('Visit: Two 2 people, cart "Sample cart"; 11 a year, 2027-05-24 to 2029-05-23');
    expect(said).toContain("Visit: Three 3 people, no cart; 12 a year, 2027-05-24 to no last day told");
    expect(said).toContain("Visits and 2 more");
    expect(said).not.toContain("Visit: Four");
  });
});

test("timber with its treatment, and the deck by name", async () => {
  expect(words(d)).toContain("Timber Spruce-Pine-Fir No.1/No.2, untreated");
  expect(words(d)).toMatch(/Deck 762 mm wide, boards 2x6, 13 mm apart/);
  const kit = readyKit("salt-grating")!;
  const grating = words(await deriveLane({ kit, units: "metric" }));
  expect(grating).toContain("Timber Southern Pine No.2, treated with Copper azole (CA-B, CA-C)");
  expect(grating).toContain(`mm wide, ${(kit.deck as { name: string }).name}`);
});

test("the heaviest part that is laid, soaked, with the people who carry it: a platform counts where one is laid", async () => {
  const masses = ({ kit }: typeof d.results) => ({
    module: Math.max(...kit.modules.map((m) => m.mass_soaked.value!)),
    platform: kit.platform.mass_soaked.value!,
  });
  const straight = await deriveLane({ units: "metric", laying: { carriers: 6 } });
  const { module, platform } = masses(straight.results);
  const heaviest = straight.results.evaluation.platforms > 0 ? Math.max(module, platform) : module;
  const said = /Heaviest part to carry (\d+(?:\.\d+)?) kg soaked, by 6 people/.exec(words(straight));
  expect(Number(said?.[1])).toBeCloseTo(heaviest, 0);
});

describe("applicant in the title block", () => {
  const titled = (request: object, applicant: string): string =>
    words({
      ...d,
      plan: {
        ...d.plan,
        request: { ...d.plan.request, requester: "", organisation: "", ...request },
        papers: { ...d.plan.papers, applicant },
      },
    });
  test("who asked for access stands in for one that is not told", () => {
    const asked = { requester: "Ada Reed", organisation: "Field club" };
    expect(titled(asked, " ")).toContain("Applicant asked by Ada Reed, Field club Waterbody");
    expect(titled({ organisation: "Field club" }, "")).toContain("Applicant asked by Field club Waterbody");
    expect(titled(asked, "The Trust")).toContain("Applicant The Trust Waterbody");
    expect(titled({}, "")).toContain("Applicant not told yet Waterbody");
  });
});

test("without levels and record the sheet says that neither is given", () => {
  expect(words(d)).toContain("Water levels: none given.");
  expect(words(d)).toContain("Hours under water cannot be told: no record and no tide table is given.");
});

test.each(["a4", "letter"] as const)(
  "fourteen plots of long names: one page on %s, those beyond the eighth are counted",
  (sheet) => {
    const name = "A long name of a plot in the far corner of the lower meadow by the old sluice";
    const plots = Array.from({ length: 14 }, (_, i) => ({
      ...d.plan.plots[0]!,
      id: `P${i}`,
      name: `${name} ${i}`,
    }));
    const [reached] = d.results.layout.reached;
    const layout = { ...d.results.layout, reached: plots.map((p) => ({ ...reached!, plot: p.id })) };
    const said = sheetTexts(
      {
        ...d,
        plan: { ...d.plan, plots, papers: { ...d.plan.papers, sheet } },
        results: { ...d.results, layout },
      },
      "summary",
    );
    expect(said.filter((t) => t === "sheet 1 of 1")).toHaveLength(1);
    expect(flat(said)).toContain("Plots and 6 more");
  },
);
