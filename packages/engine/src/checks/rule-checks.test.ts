import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  checkedPlan,
  checksInput,
  fieldCart,
  levelSite,
  stoutKit,
  straightLayout,
  visitOf,
} from "../../test/support/straight-walkway.ts";
import { zone } from "../../test/support/small-site.ts";
import type { Kit } from "../kit/index.ts";
import type { Layout, PlatformPart } from "../layout/index.ts";
import type { Cart, Plan } from "../plan/document.ts";
import type { Raster, Site } from "../site/index.ts";
import { engineerFlags, runChecks, type CheckResult, type RuleCheckKind } from "./index.ts";

const FT = 0.3048;
const IN = 0.0254;

/** Half-metre cells around a walkway along x from 0 to 12 m. */
function ground(heightAt: (x: number, y: number) => number): Raster {
  const [cols, rows] = [45, 41];
  const values = new Float32Array(cols * rows);
  for (let j = 0; j < rows; j++)
    for (let i = 0; i < cols; i++) values[j * cols + i] = heightAt(-5 + i / 2, -10 + j / 2);
  return { cols, rows, x0: -5, y0: -10, dx: 0.5, dy: 0.5, values };
}
const level = (z: number): Raster => ground(() => z);

interface Setup {
  readonly profile?: string;
  readonly plan?: Partial<Plan>;
  readonly site?: Partial<Site>;
  readonly layout?: Layout;
  readonly overrides?: Plan["rules"]["overrides"];
}
const check = ({ profile = "staff-access", plan = {}, site = {}, layout, overrides = [] }: Setup) =>
  runChecks(
    checksInput({
      plan: checkedPlan({ rules: { profile, overrides }, ...plan }),
      site: levelSite({ terrain: level(1), ...site }),
      ...(layout ? { layout } : {}),
    }),
  );
const byId = (results: readonly CheckResult[], id: string): CheckResult | undefined =>
  results.find((r) => r.id === id);
const statusOf = (results: readonly CheckResult[], id: string): string =>
  results
    .filter((r) => r.id.startsWith(`${id}.`))
    .map((r) => r.status)
    .join(" ");
const useOf = (r: CheckResult | undefined): number => (r && "utilisation" in r ? r.utilisation : NaN);

/** The walkway with its deck at a height over level ground at 1 m. */
const decked = (fall_m: number, lengths: readonly number[] = [3, 3]): Layout => {
  const layout = straightLayout(lengths);
  return { ...layout, joints: layout.joints.map((j) => ({ ...j, deck_m: 1 + fall_m })) };
};

describe("edges by the height of the fall", () => {
  const rail = (profile: string, fall_m: number): string =>
    statusOf(check({ profile, layout: decked(fall_m) }), "edge.rail");

  test.each([
    ["building-guard", 30 * IN, "pass"],
    ["building-guard", 30 * IN + 0.001, "fail"],
    ["osha-workplace", 4 * FT - 0.001, "pass"],
    ["osha-workplace", 4 * FT, "fail"],
    ["staff-access", 4 * FT - 0.001, "pass"],
    ["staff-access", 4 * FT, "fail"],
    ["nz-structures", 0.999, "pass"],
    ["nz-structures", 1, "fail"],
  ] as const)("%s at %d m: %s", (profile, fall, status) => expect(rail(profile, fall)).toBe(status));

  test.each([
    [1.5, "pass"],
    [1.501, "fail"],
  ] as const)("New Zealand consent at %d m: %s", (fall, status) =>
    expect(statusOf(check({ profile: "nz-structures", layout: decked(fall) }), "edge.consent")).toBe(status),
  );

  test("the fall is to the bed of a creek beside the deck, not to the ground at the joints", () => {
    const terrain = ground((x, y) => (y > 0.6 && x > 2 && x < 4 ? -0.5 : 1));
    const results = check({ site: { terrain }, layout: decked(0.5) });
    const broken = byId(results, "edge.rail.broken")!;
    expect(broken.status === "fail" && broken.demand).toBeCloseTo(2, 5);
    expect(broken.parts).toEqual(["M0", "M1"]);
  });

  test("unknown ground within reach is not a pass; a fall that is too deep already is a failure all the same", () => {
    const holes = ground((x, y) => (y > 0.6 ? NaN : 1));
    expect(statusOf(check({ site: { terrain: holes }, layout: decked(0.5) }), "edge.rail")).toBe(
      "cannot-check",
    );
    expect(statusOf(check({ site: { terrain: holes }, layout: decked(2) }), "edge.rail")).toBe("fail");
  });

  test("no rail: a curb must be there; 12 in of fall go without for staff, none do on a trail bridge", () => {
    const bare: Kit = { ...stoutKit, deck: { ...stoutKit.deck, upturn_mm: 0 } as Kit["deck"], curb: null };
    const curb = (profile: string, fall: number, kit: Kit): string =>
      statusOf(check({ profile, layout: decked(fall), plan: { kit } }), "edge.curb");
    expect(curb("staff-access", 12 * IN, bare)).toBe("not-applicable");
    expect(curb("staff-access", 12 * IN + 0.001, bare)).toBe("fail");
    expect(curb("staff-access", 0.5, stoutKit)).toBe("pass");
    expect(curb("trail-structures", 0.2, bare)).toBe("fail");
    expect(curb("trail-structures", 0.2, stoutKit)).toBe("pass");
    expect(curb("ada-route", 0.2, stoutKit)).toBe("fail");
  });

  test("a higher deck never comes nearer to the rule", () => {
    const height = fc.double({ min: 0.2, max: 3, noNaN: true });
    const use = (fall: number): number =>
      Math.max(
        ...check({ layout: decked(fall, [3]) })
          .filter((r) => r.id.startsWith("edge.rail"))
          .map(useOf),
      );
    fc.assert(
      fc.property(height, height, (a, b) => {
        expect(use(Math.max(a, b))).toBeGreaterThanOrEqual(use(Math.min(a, b)));
      }),
      { numRuns: 25 },
    );
  });

  test("parts share results: at most one for those that meet the rule and one for those that do not", () => {
    const layout = decked(0.5, [3, 3, 3]);
    const mixed = {
      ...layout,
      joints: layout.joints.map((j, i) => ({ ...j, deck_m: i === 3 ? 2.5 : j.deck_m })),
    };
    const found = check({ layout: mixed }).filter((r) => r.id.startsWith("edge.rail"));
    expect(found.map((r) => [r.status, r.parts])).toEqual([
      ["fail", ["M2"]],
      ["pass", ["M0", "M1"]],
    ]);
  });
});

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

describe("grade and steps", () => {
  const sloped = (rises: readonly number[], length = 3): Layout => {
    const layout = straightLayout(rises.map(() => length));
    let up = 0;
    const heights = [0, ...rises.map((r) => (up += r))];
    return { ...layout, joints: layout.joints.map((j, i) => ({ ...j, deck_m: 1.4 + heights[i]! })) };
  };
  test("1:9 for 20 ft fails by the band's length, and its rests at the walkway's own ends are there", () => {
    const length = 10 * FT;
    const results = check({ profile: "aba-trail", layout: sloped([length / 9, length / 9], length) });
    expect(statusOf(results, "grade.aba.run-8")).toBe("fail");
    expect(statusOf(results, "grade.steepest")).toBe("pass");
    expect(statusOf(results, "grade.rests")).toBe("pass");
    expect(statusOf(results, "grade.share")).toBe("fail");
  });
  test("level parts meet every rule of grade; the step onto the deck does not on an accessible trail", () => {
    const results = check({ profile: "aba-trail" });
    expect(statusOf(results, "grade.steepest")).toBe("pass");
    expect(statusOf(results, "grade.step")).toBe("fail");
    expect(statusOf(results, "grade.cross-slope")).toBe("not-applicable");
    expect(statusOf(check({}), "grade.step")).toBe("");
  });
  test("a ramp in the kit takes the place of the step and counts as a part", () => {
    const kit: Kit = { ...stoutKit, ramp: { lengths_mm: [2000, 6000], max_grade: 1 / 12 } };
    const results = check({ profile: "aba-trail", plan: { kit } });
    expect(statusOf(results, "grade.step")).toBe("not-applicable");
    expect(byId(results, "grade.steepest.met")?.parts).toContain("J0");
  });
  test("an accessible route: 12 in of ramp need handrails, 6 in do not", () => {
    const ramp = (rise: number): string =>
      statusOf(check({ profile: "ada-route", layout: sloped([rise], 3.6576) }), "grade.handrail");
    expect(ramp(12 * IN)).toBe("fail");
    expect(ramp(6 * IN)).toBe("");
    expect(ramp(0.1829 * 1.001)).toBe("fail");
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

const turning: PlatformPart = {
  id: "P1",
  kind: "platform",
  use: "turning",
  branch: "B1",
  side_m: 1.8288,
  x: 6.9,
  y: 0,
  heading_deg: 90,
  from: "J2",
  exits: { ahead: "J3", left: "J3", right: "J3" },
  along_m: 6,
  outline: [],
  bridges: [],
};
function withPlatform(): Layout {
  const layout = straightLayout([3, 3, 1.8288]);
  return { ...layout, parts: [...layout.parts.slice(0, 2), turning] };
}

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

describe("distance from a creek's bank", () => {
  // A creek from x 4 to 7, its bed 1.2 m under the marsh; joints at 0, 3, 6 and so on.
  const creek = [zone("creek", "channel", 4, -8, 7, 8)];
  const terrain = ground((x) => (x >= 4 && x <= 7 ? -0.2 : 1));
  const at = (x: number): Layout => {
    const layout = straightLayout([3]);
    const feet = [
      [
        [
          [x - 0.1, -0.3],
          [x + 0.1, -0.3],
          [x + 0.1, 0.3],
          [x - 0.1, 0.3],
        ],
      ],
    ] as const;
    return {
      ...layout,
      joints: layout.joints.map((j, i) => ({ ...j, x: i === 0 ? x : -4.5, feet: i === 0 ? feet : [] })),
    };
  };
  const result = (x: number, overrides: Plan["rules"]["overrides"] = []) =>
    check({ site: { zones: creek, terrain }, layout: at(x), overrides });

  test("as far off as the bank is high: 1.2 m from the foot to the edge", () => {
    const met = byId(result(2.7), "setback.bank.met")!;
    expect(met.status === "pass" && [met.demand, met.capacity]).toEqual([1.2, 1.2]);
    expect(byId(result(2.75), "setback.bank.broken")?.parts).toEqual(["J0"]);
  });
  test("a foot in the channel is not met", () =>
    expect(useOf(byId(result(5), "setback.bank.broken"))).toBeGreaterThan(1));
  test("the factor is the project's to change, with a reason, and the result says so", () => {
    const own = {
      rule: "common.bank-setback",
      value: 0.5,
      reason: "rock under the turf",
      by: "A. Warden",
      date: "2027-01-05",
    };
    const met = byId(result(3.2, [own]), "setback.bank.met")!;
    expect(met.status === "pass" && met.demand).toBe(0.6);
    expect(met.rule.at).toContain("rock under the turf");
    expect(met.rule.status).toBe("project");
  });
  test("no channel, nothing to hold; an unknown bed is not a pass", () => {
    expect(statusOf(check({}), "setback.bank")).toBe("not-applicable");
    const holes = ground((x) => (x >= 5 && x <= 7 ? NaN : 1));
    const found = check({ site: { zones: creek, terrain: holes }, layout: at(2.7) });
    expect(statusOf(found, "setback.bank")).toContain("cannot-check");
  });
});

describe("tipping", () => {
  test("by hand: 95 kg at the edge of a 24 in deck 0.49 m up, on a crate, one 12 ft module", () => {
    const W = 95 * 9.80665;
    const edge = (9 + 5.5 / 2) * IN;
    const tips = W * (0.3048 - edge) + 0.1 * W * 0.49;
    const rho = ((62.4 * 0.55) / (1 + 0.009 * 0.55 * 19)) * 1.19 * 16.018463;
    const dead = (0.024 * 3.6576 * rho + 1.9 * 3.6576) / 2 + 0.03 * rho;
    const holds = (dead * 9.80665 * edge) / 1.5;
    const found = byId(check({ layout: straightLayout([3.6576]) }), "tipping.edge.met")!;
    expect(found.status === "pass" && found.demand).toBeCloseTo(tips, 6);
    expect(found.status === "pass" && found.capacity / holds).toBeCloseTo(1, 3);
  });
  test("a taller support tips sooner; far stakes hold it, and without their ground's strength it cannot be checked", () => {
    const tall = straightLayout([3.6576]);
    const layout = { ...tall, joints: tall.joints.map((j) => ({ ...j, deck_m: 2.4 })) };
    const found = byId(check({ layout }), "tipping.edge.met")!;
    expect(found.status === "pass" && found.backwards.carries).toContain("far stakes");
    const ground = { su_kpa: null, source: "not measured", readings: [], safety: 2 };
    expect(statusOf(check({ layout, plan: { ground } }), "tipping.edge")).toBe("cannot-check");
    const loose: Kit = { ...stoutKit, supports: stoutKit.supports.map((k) => ({ ...k, anchor: null })) };
    expect(statusOf(check({ layout, plan: { kit: loose } }), "tipping.edge")).toBe("fail");
  });
});

describe("metals and preservatives", () => {
  const coated = (coating: "plain-zinc" | "hot-dip-zinc" | "stainless-304" | "stainless-316") =>
    tables.fasteners.map((f) => ({ ...f, coating }));
  const pairing = (
    id: string,
    preservative: string | null,
    fasteners: typeof tables.fasteners,
    exposure: Plan["water"]["exposure"] = "fresh",
  ): string => {
    const kit: Kit = { ...stoutKit, lumber: { ...stoutKit.lumber, preservative, treatment: "treated" } };
    const plan = checkedPlan({ kit, water: { exposure, series: null } });
    return statusOf(runChecks(checksInput({ plan, tables: { ...tables, fasteners } })), `pairing.${id}`);
  };

  test("zinc plate in copper-treated lumber is not met; hot-dip zinc is", () => {
    expect(pairing("treatment", "ca-c", coated("plain-zinc"))).toBe("fail");
    expect(pairing("treatment", "ca-c", coated("hot-dip-zinc"))).toBe("pass");
    expect(pairing("treatment", null, coated("plain-zinc"))).toBe("cannot-check");
  });
  test("near salt: stainless 316 is met, 304 and zinc plate are not", () => {
    expect(pairing("salt", "cca", coated("stainless-316"), "salt")).toBe("pass");
    expect(pairing("salt", "cca", coated("stainless-304"), "brackish")).toBe("fail");
    expect(pairing("salt", "cca", coated("plain-zinc"), "salt")).toBe("fail");
    expect(pairing("salt", "cca", coated("plain-zinc"))).toBe("not-applicable");
  });
  test("stainless beside zinc plate is not met", () => {
    const mixed = tables.fasteners.map((f) => ({
      ...f,
      coating: f.kind === "clip" ? ("stainless-304" as const) : ("plain-zinc" as const),
    }));
    expect(pairing("mixed", "ca-c", mixed)).toBe("fail");
    expect(pairing("mixed", "ca-c", coated("stainless-304"))).toBe("pass");
  });
  test.each(["creosote", "penta"])("%s is barred, and the reason is given", (id) => {
    expect(pairing("preservative", id, coated("hot-dip-zinc"))).toBe("fail");
    const kit: Kit = { ...stoutKit, lumber: { ...stoutKit.lumber, preservative: id } };
    const found = byId(check({ plan: { kit } }), "pairing.preservative.broken")!;
    expect(found.status === "fail" && found.backwards.carries).toContain("not for small docks");
  });
  test("copper azole is not barred in fresh water, and is in salt water", () => {
    expect(pairing("preservative", "ca-c", coated("hot-dip-zinc"))).toBe("pass");
    expect(pairing("preservative", "ca-c", coated("hot-dip-zinc"), "salt")).toBe("fail");
    expect(pairing("preservative", "acza", coated("stainless-316"), "salt")).toBe("cannot-check");
  });
});

describe("other rules", () => {
  test("a deck 4 ft wide at 3 ft wants 4 ft", () => {
    const kit: Kit = { ...stoutKit, deck: { ...stoutKit.deck, width_mm: 1219.2 } as Kit["deck"] };
    const found = byId(
      check({ profile: "coastal-pier", plan: { kit }, layout: decked(3 * FT) }),
      "deck-rule.height.broken",
    )!;
    expect(found.status === "fail" && found.demand / FT).toBeCloseTo(4, 4);
  });
  test("mean high water must be known for the rule that speaks of it", () => {
    expect(statusOf(check({ profile: "coastal-pier" }), "deck-rule.high-water")).toBe("cannot-check");
    const mhw = { ...levelSite().levels[0]!, id: "mhw", role: "mhw" as const, z_m: 0 };
    const over = (deck: number): string =>
      statusOf(
        check({
          profile: "coastal-pier",
          site: { levels: [...levelSite().levels, mhw] },
          layout: decked(deck),
        }),
        "deck-rule.high-water",
      );
    expect(over(5 * FT - 1 + 1e-6)).toBe("pass");
    expect(over(5 * FT - 1 - 0.001)).toBe("fail");
  });
  test("bridge rules from 20 ft, for the public only", () => {
    const span = (profile: string, ft: number): string =>
      statusOf(check({ profile, layout: straightLayout([ft * FT]) }), "public-span.bridge");
    expect([span("aba-trail", 20), span("aba-trail", 21), span("staff-access", 21)]).toEqual([
      "pass",
      "fail",
      "",
    ]);
  });
  test("an unknown profile, or an override without a rule, is said and never a pass", () => {
    expect(check({ profile: "none" }).find((r) => r.id === "edge.profile")?.status).toBe("cannot-check");
    const own = { rule: "aba.width", value: 1, reason: "r", by: "b", date: "2027-01-05" };
    expect(byId(check({ overrides: [own] }), "edge.profile")?.status).toBe("cannot-check");
  });
  test("every profile gives results with ids of their own, a rule, a way on, and no finite number missing", () => {
    for (const { id } of tables.rule_profiles) {
      const results = check({ profile: id, layout: withPlatform() });
      expect(new Set(results.map((r) => r.id)).size, id).toBe(results.length);
      for (const r of results) {
        expect(r.rule.title, r.id).not.toBe("");
        expect(r.parts.length, r.id).toBeGreaterThan(0);
        if (r.status === "fail") expect(r.backwards.change, r.id).toMatch(/Would pass|Needs|No /);
        if (r.status === "pass") expect(r.backwards.change, r.id).toBeNull();
        if ("working" in r) {
          expect(r.working.length, r.id).toBeGreaterThan(0);
          for (const step of r.working) expect(Number.isFinite(step.value), `${r.id} ${step.id}`).toBe(true);
        }
      }
      expect(JSON.stringify(results)).not.toMatch(/\bsafe\b|\bapproved\b/);
    }
  });
});

describe("when an engineer is needed", () => {
  const flags = (setup: Setup): string[] => {
    const plan = checkedPlan({
      rules: { profile: setup.profile ?? "staff-access", overrides: [] },
      ...setup.plan,
    });
    const layout = setup.layout ?? straightLayout([3, 3]);
    return engineerFlags(plan, layout, check({ ...setup, layout }), tables.rule_profiles).map((f) => f.id);
  };
  test("a low staff walkway on crates passes none of the limits", () => expect(flags({})).toEqual([]));
  test("height over 30 in and spans over 16 ft", () => {
    expect(flags({ layout: decked(30 * IN) })).toEqual([]);
    expect(flags({ layout: decked(30 * IN + 0.001) })).toEqual(["height"]);
    expect(flags({ layout: straightLayout([16 * FT]) })).toEqual([]);
    expect(flags({ layout: straightLayout([16 * FT + 0.001]) })).toEqual(["span"]);
  });
  test("a rail that is asked for, and the public", () => {
    expect(flags({ layout: decked(4 * FT) })).toEqual(["height", "rail"]);
    expect(flags({ profile: "aba-trail" })).toContain("public");
  });
  test("floats and screw piles always", () => {
    for (const form of ["float", "screw-pile"] as const) {
      const supports = stoutKit.supports.map((k) => ({ ...k, form }));
      const plan = checkedPlan({ kit: { ...stoutKit, supports } });
      expect(engineerFlags(plan, straightLayout([3]), [], tables.rule_profiles).map((f) => f.id)).toEqual([
        "support.open-crate",
      ]);
    }
  });
});

test("the kinds of check by rule are all reached by one profile or another", () => {
  const kinds = new Set<string>(
    tables.rule_profiles.flatMap(({ id }) => check({ profile: id }).map((r) => r.kind)),
  );
  const wanted: readonly RuleCheckKind[] = [
    "width",
    "cart",
    "opening",
    "edge",
    "grade",
    "deck-rule",
    "public-span",
    "setback",
    "tipping",
    "pairing",
  ];
  for (const kind of wanted) expect(kinds).toContain(kind);
});
