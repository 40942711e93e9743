import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { samplePlan, square } from "../../test/plan/sample-plan.ts";
import { DomainError } from "../units/index.ts";
import { applyEdit, describeEdit, revertEdit, type Edit, type Plan } from "./index.ts";

/** Freezes the whole tree, so that an edit which writes into its input throws. */
function frozen<T>(value: T): T {
  if (typeof value === "object" && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(frozen);
  }
  return value;
}

const place = fc.double({ min: -1e7, max: 1e7, noNaN: true }).map((x) => x + 0);
const share = fc.double({ min: 0, max: 1e4, noNaN: true });
const length = fc.double({ min: 0.01, max: 1e4, noNaN: true });
const weights = fc.record({ money: share, shade_per_m2: share, contact_per_m2: share, crossing: share });
const layout = fc.record({
  weights,
  heading_step_deg: fc.constantFrom(5, 15, 90),
  first_heading_deg: place,
  max_grade: length,
  min_clear_mm: share,
  lines: fc.constant([]),
  passing_every_m: fc.constantFrom(null, 60),
  as_laid: fc.constant([]),
  slop_mm: share,
});
/** One number that picks among what the plan has at that moment, so that removals and additions can mix. */
const pick = fc.nat();

type Maker = (plan: Plan) => Edit;
const of = <T>(list: readonly T[], n: number): T => list[n % list.length]!;
const maker: fc.Arbitrary<Maker> = fc.oneof(
  fc.tuple(pick, place, place).map(([n, x, y]): Maker => (p) => ({
    type: "move-plot",
    plot: of(p.plots, n).id,
    x,
    y,
  })),
  fc.tuple(pick, place, place).map(([n, x, y]): Maker => (p) => ({
    type: "move-start",
    start: of(p.starts, n).id,
    x,
    y,
  })),
  fc.tuple(pick, share, length).map(([n, keep_off_m, reach_m]): Maker => (p) => ({
    type: "set-plot-reach",
    plot: of(p.plots, n).id,
    keep_off_m,
    reach_m,
  })),
  fc.tuple(pick, place, fc.boolean()).map(([n, x, placed]): Maker => (p) => {
    const id = `zone-${p.zones.map((z) => z.id).join("+").length}-${p.zones.length}-${n}`;
    const at = n % (p.zones.length + 1);
    return { type: "add-zone", zone: square(id, "tern colony", x, x), ...(placed ? { at } : {}) };
  }),
  pick.map(
    (n): Maker =>
      (p) =>
        p.zones.length > 0
          ? { type: "remove-zone", zone: of(p.zones, n).id }
          : { type: "rename", name: `Renamed ${n}` },
  ),
  fc.tuple(pick, fc.constantFrom("USD", "GBP")).map(([n, currency]): Maker => () => ({
    type: "set-price-list",
    file: `prices-${n}.csv`,
    currency,
  })),
  weights.map((w): Maker => () => ({ type: "set-weights", weights: w })),
  layout.map((l): Maker => () => ({ type: "set-layout", layout: l })),
  fc.tuple(pick, fc.integer({ min: 1, max: 9 })).map(([n, people]): Maker => (p) => ({
    type: "set-visit",
    visit: { ...of(p.visits, n), people, plots: [of(p.plots, n).id] },
  })),
  share.map((joint_gap_mm): Maker => (p) => ({ type: "set-kit", kit: { ...p.kit, joint_gap_mm } })),
  fc
    .constantFrom("us" as const, "metric" as const)
    .map((units): Maker => () => ({ type: "set-units", units })),
  fc.stringMatching(/^[a-z]{1,9}$/).map((name): Maker => () => ({ type: "rename", name })),
  fc.tuple(share, place).map(
    ([donated_share, z_m]): Maker =>
      (p) =>
        z_m > 0
          ? { type: "set-section", section: "money", value: { ...p.money, donated_share } }
          : {
              type: "set-section",
              section: "levels",
              value: p.levels.map((level) => ({ ...level, z_m })),
            },
  ),
);

function applied(plan: Plan, edit: Edit): { readonly plan: Plan; readonly inverse: Edit } {
  const result = applyEdit(plan, edit);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
}

describe("apply and take back", () => {
  test("an edit and then its inverse give the plan back, for every kind of edit", () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(maker, (make) => {
        const before = frozen(samplePlan());
        const edit = frozen(make(before));
        seen.add(edit.type);
        const after = applied(before, edit);
        const back = applied(frozen(after.plan), after.inverse);
        expect(back.plan).toEqual(before);
        expect(revertEdit(after.plan, after.inverse)).toEqual(before);
        // and the inverse of the inverse does the edit again
        expect(applied(back.plan, back.inverse).plan).toEqual(after.plan);
      }),
      { numRuns: 400, seed: 7 },
    );
    expect(seen.size).toBe(13);
  });

  test("a random sequence, taken back in reverse order, gives the first plan", () => {
    fc.assert(
      fc.property(fc.array(maker, { minLength: 1, maxLength: 30 }), (makers) => {
        const first = frozen(samplePlan());
        const inverses: Edit[] = [];
        let plan: Plan = first;
        for (const make of makers) {
          const step = applied(plan, make(plan));
          inverses.push(step.inverse);
          plan = frozen(step.plan);
        }
        for (const inverse of inverses.reverse()) plan = revertEdit(plan, inverse);
        expect(plan).toEqual(first);
      }),
      { numRuns: 60, seed: 11 },
    );
  });

  test("an edit survives being written to JSON and read back", () => {
    fc.assert(
      fc.property(maker, (make) => {
        const before = samplePlan();
        const edit = make(before);
        const read = JSON.parse(JSON.stringify(edit)) as Edit;
        expect(applied(before, read).plan).toEqual(applied(before, edit).plan);
      }),
      { numRuns: 100, seed: 13 },
    );
  });

  test("what an edit does not touch is the same object as before", () => {
    const before = samplePlan();
    const { plan } = applied(before, { type: "move-plot", plot: "p2", x: 1, y: 2 });
    expect(plan.plots[0]).toBe(before.plots[0]);
    expect(plan.kit).toBe(before.kit);
    expect(plan.zones).toBe(before.zones);
    expect(plan.plots[1]).toEqual({ ...before.plots[1], x: 1, y: 2 });
  });

  test("a removed zone comes back at its place in the list", () => {
    const before = samplePlan();
    const { plan, inverse } = applied(before, { type: "remove-zone", zone: "sedge" });
    expect(plan.zones.map((z) => z.id)).toEqual(["pool"]);
    expect(inverse).toEqual({ type: "add-zone", zone: before.zones[0], at: 0 });
  });

  test("an edit that mended a fault can be taken back", () => {
    const faulty = samplePlan({ visits: [{ ...samplePlan().visits[0]!, plots: [] }] });
    const mended = applied(faulty, { type: "set-visit", visit: samplePlan().visits[0]! });
    expect(revertEdit(mended.plan, mended.inverse)).toEqual(faulty);
  });

  test("an inverse of another plan is a broken promise", () => {
    expect(() => revertEdit(samplePlan({ zones: [] }), { type: "remove-zone", zone: "sedge" })).toThrow(
      DomainError,
    );
  });
});

describe("refusals name every fault at once", () => {
  const visit = samplePlan().visits[0]!;
  const zone = square("sedge", "doubled", 0, 0);
  const cases: readonly (readonly [string, Edit, readonly string[]])[] = [
    ["an unknown plot", { type: "move-plot", plot: "p9", x: NaN, y: 2 }, ["plot", "x"]],
    ["an unknown start", { type: "move-start", start: "no", x: 0, y: Infinity }, ["start", "y"]],
    [
      "a reach of nothing",
      { type: "set-plot-reach", plot: "p1", keep_off_m: -1, reach_m: 0 },
      ["keep_off_m", "reach_m"],
    ],
    ["a doubled zone", { type: "add-zone", zone, at: 7 }, ["zone.id", "at"]],
    [
      "a zone of two corners and one NaN",
      {
        type: "add-zone",
        zone: {
          ...zone,
          id: " ",
          sensitivity: -2,
          polygons: [
            [
              [
                [0, 0],
                [NaN, 1],
              ],
            ],
          ],
        },
      },
      ["zone.id", "zone.sensitivity", "zone.polygons", "zone.polygons"],
    ],
    [
      "a zone without outline",
      { type: "add-zone", zone: { ...zone, id: "n", polygons: [] } },
      ["zone.polygons"],
    ],
    ["an unknown zone", { type: "remove-zone", zone: "no" }, ["zone"]],
    [
      "weights below nothing",
      { type: "set-weights", weights: { money: -1, shade_per_m2: NaN, contact_per_m2: 1, crossing: 1 } },
      ["weights.money", "weights.shade_per_m2"],
    ],
    [
      "a layout without a heading step",
      { type: "set-layout", layout: { ...samplePlan().layout, heading_step_deg: 0, max_grade: 0 } },
      ["layout.heading_step_deg", "layout.max_grade"],
    ],
    [
      "a visit to nowhere, by half a person, backwards in time",
      {
        type: "set-visit",
        visit: { ...visit, plots: ["p1", "p7"], people: 0.5, from: "2027-05-01", to: "2027-04-01" },
      },
      ["visit.plots[1]", "visit.people", "visit.to"],
    ],
    [
      "a visit on a day that is none",
      { type: "set-visit", visit: { ...visit, id: "other", plots: [], from: "2027-02-30" } },
      ["visit.id", "visit.plots", "visit.from"],
    ],
    [
      "a cart of two axles in one place",
      {
        type: "set-visit",
        visit: {
          ...visit,
          cart: {
            name: "cart",
            empty_kg: 30,
            load_kg: 100,
            wet_kg: 0,
            width_mm: null,
            length_mm: null,
            track_mm: 500,
            axle_distance_mm: 0,
            axles: 2,
            wheel_width_mm: 40,
            wheel_contact_mm: 0,
          },
        },
      },
      ["visit.cart.axle_distance_mm", "visit.cart.wheel_contact_mm"],
    ],
    ["an empty name", { type: "rename", name: "  " }, ["name"]],
    ["an edit of a newer version", { type: "paint-it" } as never, ["type"]],
  ];
  test.each(cases)("%s", (_title, edit, places) => {
    const result = applyEdit(samplePlan(), edit);
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.problems.map((p) => p.place)).toEqual(places);
    for (const p of result.problems) expect(p.mend).not.toBe("");
  });
});

describe("an edit in plain words", () => {
  const plan = samplePlan();
  const cases: readonly (readonly [Edit, string])[] = [
    [{ type: "move-plot", plot: "p2", x: 0, y: 0 }, "Moved Plot 2"],
    [{ type: "move-start", start: "gate", x: 0, y: 0 }, "Moved Gate"],
    [{ type: "set-plot-reach", plot: "p1", keep_off_m: 1, reach_m: 1 }, "Changed the reach of Plot 1"],
    [
      { type: "add-zone", zone: { ...square("t", "tern colony", 0, 0), use: "closed" } },
      "Closed an area: tern colony",
    ],
    [{ type: "remove-zone", zone: "sedge" }, "Removed a habitat: tall sedge"],
    [{ type: "remove-zone", zone: "gone" }, "Removed a zone: gone"],
    [{ type: "set-weights", weights: plan.layout.weights }, "Changed the weights of the layout"],
    [{ type: "set-layout", layout: plan.layout }, "Changed the layout's settings"],
    [{ type: "set-visit", visit: plan.visits[0]! }, "Changed the visit: Weekly readings"],
    [{ type: "set-kit", kit: plan.kit }, "Changed the kit: Test kit"],
    [{ type: "set-units", units: "us" }, "Switched to feet and inches"],
    [{ type: "rename", name: "North path" }, "Renamed the plan: North path"],
  ];
  test.each(cases)("%j", (edit, words) => {
    expect(describeEdit(edit, plan)).toBe(words);
  });
});

test("a plot that a visit goes to stays, and the refusal names visit and plot as the plan does", () => {
  const plan = samplePlan();
  const answer = applyEdit(plan, { type: "set-section", section: "plots", value: plan.plots.slice(1) });
  expect(answer).toMatchObject({
    problems: [
      {
        place: "visits[0].plots[0]",
        value: "Plot 1",
        message: 'the visit "Weekly readings" still goes to "Plot 1"',
        mend: "Untick it on the page Request first, then take the plot away.",
      },
    ],
  });
});

test("a price list comes in with its currency, is told in words, and one without name or currency is refused", () => {
  const plan = samplePlan();
  const edit = { type: "set-price-list", file: "yard.csv", currency: "GBP" } as const;
  const done = applyEdit(plan, edit);
  if (!done.ok) throw new Error("refused");
  expect([done.plan.prices.file, done.plan.money.currency]).toEqual(["yard.csv", "GBP"]);
  expect(revertEdit(done.plan, done.inverse)).toEqual(plan);
  expect(describeEdit(edit, plan)).toBe("Changed the price list, now in GBP");
  expect(describeEdit({ ...edit, currency: plan.money.currency }, plan)).toBe("Changed the price list");
  const bad = applyEdit(plan, { type: "set-price-list", file: " ", currency: "pounds" });
  expect(bad.ok ? [] : bad.problems.map((p) => p.place)).toEqual(["file", "currency"]);
});
