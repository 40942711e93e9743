// Limits are those of the rule profiles: each has its source beside it in data/src/rules, and the ones that public pages
// print are held against those pages in engine/test/published/rules.test.ts. Here only what the checks make of them.
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fieldCart, stoutKit, straightLayout, visitOf } from "../../test/support/straight-walkway.ts";

import type { Kit } from "../kit/index.ts";
import type { Layout } from "../layout/index.ts";
import type { Cart } from "../plan/document.ts";

import { FT, check, byId, statusOf, useOf, withPlatform } from "../../test/support/rule-setup.ts";

const boards = (gap_mm: number): Kit => ({
  ...stoutKit,
  deck: { kind: "boards", size: "2x6", gap_mm, width_mm: 609.6, screw: "screw-10x3", screws_per_bearing: 2 },
});

/** Five boards whose gaps come out as asked. */
const fiveBoards = (gap_mm: number): Layout => straightLayout([(5 * 139.7 + 4 * gap_mm) / 1000]);

describe("openings", () => {
  const ball = (profile: string, gap_mm: number): string =>
    statusOf(check({ profile, plan: { kit: boards(gap_mm) }, layout: fiveBoards(gap_mm) }), "opening.ball");
  const gap = (profile: string, gap_mm: number): string =>
    statusOf(check({ profile, plan: { kit: boards(gap_mm) }, layout: fiveBoards(gap_mm) }), "opening.gap");

  test("12.7 mm is met and 13 mm is not on an accessible trail", () => {
    expect(ball("aba-trail", 12.7)).toBe("pass");
    expect(ball("aba-trail", 13)).toBe("fail");
  });
  test("3/4 in and no less on a puncheon, about 10 mm by the guidance of the UK", () => {
    expect(gap("trail-structures", 19.05)).toBe("pass");
    expect(gap("trail-structures", 18)).toBe("fail");
    expect(gap("uk-paths", 13)).toBe("pass");
    expect(gap("uk-paths", 13.2)).toBe("fail");
  });
  test("mesh of 2 in keeps a foot out, and lets a ball over 1/2 in through", () => {
    const met = byId(check({}), "opening.ball.met")!;
    expect(met.status === "pass" && met.demand).toBeCloseTo(0.0508 - 0.0034, 5);
    expect(statusOf(check({ profile: "aba-trail" }), "opening.ball")).toBe("fail");
  });
  test("long openings along travel are not met", () => {
    const panel = (along: number, across: number): Kit => ({
      ...stoutKit,
      deck: {
        kind: "bar-grating",
        name: "Bar grating",
        thickness_mm: 25,
        panel_length_mm: 1200,
        width_mm: 609.6,
        gap_mm: 0,
        opening_along_mm: along,
        opening_across_mm: across,
        open_share: 0.7,
        mass_kg_m2: 20,
        soak_kg_m2: 0,
        fastener: "mesh-clip",
        fasteners_per_panel: 4,
        strength: { moment_n: 2000, stiffness_nm: 20_000, creep: 1, source: "test", status: "practice" },
      },
    });
    const turned = (kit: Kit): string =>
      statusOf(check({ profile: "aba-trail", plan: { kit } }), "opening.direction");
    expect(turned(panel(100, 12))).toBe("fail");
    expect(turned(panel(12, 100))).toBe("pass");
  });
  test("a wheel narrower than the opening, and with a shorter contact, drops in", () => {
    const wheel = (wheel_width_mm: number, wheel_contact_mm: number): string =>
      statusOf(
        check({ plan: { visits: [visitOf({ cart: { ...fieldCart, wheel_width_mm, wheel_contact_mm } })] } }),
        "opening.wheel",
      );
    expect(wheel(30, 30)).toBe("fail");
    expect(wheel(50, 30)).toBe("pass");
    expect(wheel(30, 60)).toBe("pass");
  });
  test("a wider gap never comes nearer to the rule", () => {
    const mm = fc.integer({ min: 5, max: 40 });
    const use = (g: number): number =>
      Math.max(
        ...check({ plan: { kit: boards(g) }, layout: fiveBoards(g) })
          .filter((r) => r.id.startsWith("opening.ball"))
          .map(useOf),
      );
    fc.assert(
      fc.property(mm, mm, (a, b) => {
        expect(use(Math.max(a, b))).toBeGreaterThanOrEqual(use(Math.min(a, b)));
      }),
      { numRuns: 15 },
    );
  });
});

describe("widths and passing", () => {
  test("24 in of mesh are wide enough for staff and too narrow for an accessible trail", () => {
    expect(statusOf(check({}), "width.clear")).toBe("pass");
    expect(statusOf(check({ profile: "aba-trail" }), "width.clear")).toBe("fail");
  });
  test("without a platform 1000 ft is met and more is not", () => {
    const long = (count: number): string =>
      statusOf(
        check({ profile: "aba-trail", layout: straightLayout(Array(count).fill(10 * FT)) }),
        "width.passing",
      );
    expect(long(100)).toBe("pass");
    expect(long(101)).toBe("fail");
  });
  test("two ways without passing places are held to the wider rule in the UK", () =>
    expect(statusOf(check({ profile: "uk-paths" }), "width.two-way")).toBe("fail"));
});

describe("carts", () => {
  const of = (cart: Cart, id: string): string =>
    statusOf(check({ plan: { visits: [visitOf({ cart })] }, layout: withPlatform() }), id);

  test("wheels and 1 in on each side between the upturned edges", () => {
    // Clear: 609.6 less four wires of 3.4 mm; the wheel 50 mm, margins 50.8 mm.
    const widest = 609.6 - 4 * 3.4 - 50 - 50.8;
    expect(of({ ...fieldCart, track_mm: widest - 0.01 }, "cart.width")).toBe("pass");
    expect(of({ ...fieldCart, track_mm: widest + 0.01 }, "cart.width")).toBe("fail");
  });
  test("the circle of the cart's diagonal in the platform's clear square", () => {
    // 1828.8 less 50.8 of margin: with 640 mm of width a length of sqrt(1778^2 - 640^2) = 1658.8 mm turns.
    expect(of({ ...fieldCart, length_mm: 1658 }, "cart.turning")).toBe("pass");
    expect(of({ ...fieldCart, length_mm: 1660 }, "cart.turning")).toBe("fail");
  });
  test("unknown sizes cannot be checked and say which", () => {
    const cart = { ...fieldCart, length_mm: null };
    const plan = { visits: [visitOf({ cart })] };
    const found = byId(check({ plan, layout: withPlatform() }), "cart.turning.unknown")!;
    expect(found.status === "cannot-check" && found.missing).toEqual(['the overall length of "Field cart"']);
  });
  test("no turning platform, no turning check; a wider or longer cart never turns more easily", () => {
    expect(statusOf(check({}), "cart.turning")).toBe("");
    const size = fc.integer({ min: 300, max: 2500 });
    const use = (width_mm: number, length_mm: number): number => {
      const plan = { visits: [visitOf({ cart: { ...fieldCart, width_mm, length_mm } })] };
      return Math.max(
        ...check({ plan, layout: withPlatform() })
          .filter((r) => r.id.startsWith("cart.turning"))
          .map(useOf),
      );
    };
    fc.assert(
      fc.property(size, size, size, (w, l, more) => {
        expect(use(w + more, l)).toBeGreaterThanOrEqual(use(w, l));
        expect(use(w, l + more)).toBeGreaterThanOrEqual(use(w, l));
      }),
      { numRuns: 10 },
    );
  });
});
