import fc from "fast-check";
import type { Edit, Plan } from "@causey/engine/plan";
import { describe, expect, test } from "vitest";
import { rebaseEdit } from "./rebase-edit.ts";

const plot = (id: string, x: number) => ({ id, name: id, x, y: 0, keep_off_m: 1, reach_m: 2 });
const planWith = (part: object): Plan =>
  ({
    request: { requester: "", organisation: "", purpose: "", options: [] },
    plots: [plot("P1", 1), plot("P2", 2)],
    visits: [{ id: "v", name: "Visit", plots: ["P1"], cart: { empty_kg: 20, load_kg: 40 } }],
    layout: { max_grade: 0.1, weights: { money: 1, crossing: 100 } },
    ...part,
  }) as unknown as Plan;
const seen = planWith({});
const section = <S extends "request" | "plots" | "visits">(name: S, value: unknown): Edit =>
  ({ type: "set-section", section: name, value }) as unknown as Edit;
/** The plan after an edit of a section, as the server would give it back. */
const after = (plan: Plan, edit: Edit): Plan =>
  edit.type === "set-section" ? ({ ...plan, [edit.section]: edit.value } as Plan) : plan;

test("an edit of the plan that was seen stays the very edit that it is", () => {
  const edit = section("request", { ...seen.request, requester: "Tern" });
  expect(rebaseEdit(edit, seen, seen)).toBe(edit);
});

describe("two changes made of the same plan, sent one after the other", () => {
  const both = (first: Edit, second: Edit): Plan => {
    const now = after(seen, first);
    return after(now, rebaseEdit(second, seen, now));
  };

  test("two fields of one form: both stand", () => {
    const first = section("request", { ...seen.request, requester: "Tern" });
    const second = section("request", { ...seen.request, organisation: "School" });
    expect(both(first, second).request).toMatchObject({ requester: "Tern", organisation: "School" });
  });

  test("one field twice: the later word stands", () => {
    const typed = (requester: string) => section("request", { ...seen.request, requester });
    expect(both(typed("T"), typed("Tern")).request.requester).toBe("Tern");
  });

  test("fields of two rows, and of a cart inside a row", () => {
    const [one, two] = seen.plots;
    const moved = both(
      section("plots", [{ ...one, x: 9 }, two]),
      section("plots", [one, { ...two, name: "Trap" }]),
    );
    expect(moved.plots).toMatchObject([{ x: 9 }, { id: "P2", name: "Trap" }]);
    const visit = seen.visits[0]!;
    const heavy = section("visits", [{ ...visit, cart: { ...visit.cart, load_kg: 60 } }]);
    const wet = section("visits", [{ ...visit, name: "Traps", cart: { ...visit.cart, empty_kg: 25 } }]);
    expect(both(heavy, wet).visits[0]).toMatchObject({ name: "Traps", cart: { empty_kg: 25, load_kg: 60 } });
  });

  test("a row added and a row changed; a row taken away stays away unless it was changed after", () => {
    const [one, two] = seen.plots;
    const added = both(
      section("plots", [one, two, plot("P3", 3)]),
      section("plots", [{ ...one, x: 5 }, two]),
    );
    expect(added.plots).toMatchObject([{ id: "P1", x: 5 }, { id: "P2" }, { id: "P3" }]);
    const without = section("plots", [two]);
    expect(both(without, section("plots", [one, { ...two, x: 7 }])).plots).toMatchObject([
      { id: "P2", x: 7 },
    ]);
    expect(both(without, section("plots", [{ ...one, x: 7 }, two])).plots.map((p) => p.id)).toEqual([
      "P1",
      "P2",
    ]);
  });

  test("plots of a visit: one ticked, one unticked", () => {
    const visit = seen.visits[0]!;
    const ticked = section("visits", [{ ...visit, plots: ["P1", "P2"] }]);
    const unticked = section("visits", [{ ...visit, plots: [] }]);
    expect(both(ticked, unticked).visits[0]!.plots).toEqual(["P2"]);
  });
});

test("weights and the rest of the layout's choices do not undo each other", () => {
  const now = planWith({ layout: { ...seen.layout, max_grade: 0.08 } });
  const edit = {
    type: "set-layout",
    layout: { ...seen.layout, weights: { money: 1, crossing: 5 } },
  } as unknown as Edit;
  expect(rebaseEdit(edit, seen, now)).toMatchObject({
    layout: { max_grade: 0.08, weights: { crossing: 5 } },
  });
});

test("property: changes of different fields stand both, in either order", () => {
  const keys = ["requester", "organisation", "purpose"] as const;
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.constantFrom(...keys), { minLength: 2, maxLength: 2 }),
      fc.string(),
      fc.string(),
      ([a, b], x, y) => {
        const first = section("request", { ...seen.request, [a!]: x });
        const second = section("request", { ...seen.request, [b!]: y });
        const ends = [
          [first, second],
          [second, first],
        ].map(([one, two]) => {
          const now = after(seen, one!);
          return after(now, rebaseEdit(two!, seen, now)).request;
        });
        for (const end of ends) expect(end).toEqual({ ...seen.request, [a!]: x, [b!]: y });
      },
    ),
  );
});
