import { readyKits } from "@causey/data/kits";
import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { runChecks, type CheckKind, type CheckResult } from "../../src/checks/index.ts";
import { validateKit, type Kit } from "../../src/kit/index.ts";
import { moduleMasses } from "../../src/materials/index.ts";
import type { Plan } from "../../src/plan/index.ts";
import { checkedPlan, fieldCart, levelSite, straightLayout, visitOf } from "../support/straight-walkway.ts";

/** As many as CAUSEY_FUZZ says, or the few that every test run can afford. */
const runs = Number(process.env["CAUSEY_FUZZ"] ?? 120);

const sizes = tables.sizes.map((s) => s.id);
const woods = [...tables.grades, ...tables.strength_classes].map(({ species, grade }) => ({
  species,
  grade,
}));
const metres = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** A ready kit with anything changed that a builder may change, sensible or not. */
const kits: fc.Arbitrary<Kit> = fc
  .record({
    base: fc.constantFrom(...readyKits),
    wood: fc.constantFrom(...woods),
    incised: fc.boolean(),
    stringer: fc.constantFrom(...sizes),
    keepSizes: fc.boolean(),
    count: fc.constantFrom(2 as const, 3 as const),
    cross: fc.constantFrom(...sizes),
    spacing: metres(150, 1500),
    lay: fc.constantFrom("flat" as const, "edge" as const),
    screw: fc.constantFrom(...tables.fasteners.map((f) => f.id)),
    screws: fc.integer({ min: 1, max: 6 }),
    sill: fc.constantFrom(...sizes),
    stakes: fc.integer({ min: 0, max: 6 }),
    stake: metres(150, 2500),
    foot: metres(50, 900),
  })
  .map((k): Kit => {
    const { base } = k;
    const stringer = k.keepSizes ? base.stringers.size : k.stringer;
    return {
      ...base,
      lumber: { ...base.lumber, ...k.wood, incised: k.incised },
      stringers: { ...base.stringers, size: stringer, count: k.count },
      cross_pieces: {
        ...base.cross_pieces,
        size: k.keepSizes ? base.cross_pieces.size : k.cross,
        spacing_mm: k.spacing,
        lay: k.lay,
        screw: k.screw,
        screws_per_end: k.screws,
      },
      platform: { ...base.platform, stringers: { ...base.platform.stringers, size: stringer } },
      supports: base.supports.map((s) => ({
        ...s,
        sill: { ...s.sill, size: k.keepSizes ? s.sill.size : k.sill },
        anchor:
          s.anchor && k.stakes > 0
            ? { ...s.anchor, count: k.stakes, length_mm: k.stake + 300, embedment_mm: k.stake }
            : null,
        feet: s.feet.map((f) => ({ ...f, along_mm: k.keepSizes ? f.along_mm : k.foot })),
      })),
    };
  });

const visits = fc
  .record({
    people: fc.integer({ min: 0, max: 8 }),
    person_kg: metres(30, 180),
    spacing_mm: metres(200, 4000),
    cart: fc.option(
      fc.record({
        load_kg: metres(0, 300),
        axles: fc.constantFrom(1 as const, 2 as const),
        axle_distance_mm: metres(0, 1200),
        track_mm: metres(200, 900),
      }),
      { nil: null },
    ),
  })
  .map(({ cart, ...rest }) => visitOf({ ...rest, cart: cart ? { ...fieldCart, ...cart } : null }));

const plans = fc
  .record({
    kit: kits,
    visit: visits,
    code: fc.constantFrom("us-asd-2018" as const, "ec5-2004" as const),
    su: fc.option(metres(0, 60), { nil: null }),
    readings: fc.array(
      fc.record({ x: metres(-5, 15), y: metres(-5, 5), depth_m: metres(0, 3), su_kpa: metres(0, 60) }),
      { maxLength: 6 },
    ),
    safety: metres(1, 4),
    flood: fc.option(metres(0.5, 4), { nil: null }),
    water: metres(990, 1030),
    carriers: fc.integer({ min: 1, max: 8 }),
    units: fc.constantFrom("us" as const, "metric" as const),
    height: metres(0, 1),
    soft: fc.boolean(),
    speed: fc.option(metres(0, 3), { nil: null }),
    wave: fc.option(fc.record({ height_m: metres(0.01, 0.6), period_s: metres(0.5, 6) }), { nil: null }),
  })
  .map((p) => {
    const plan: Plan = checkedPlan({
      kit: p.kit,
      visits: [p.visit],
      code: p.code,
      units: p.units,
      water_kg_m3: p.water,
      flood_level: p.flood === null ? null : "storm",
      laying: { from: "2027-04-05", to: "2027-04-16", carry_m: 60, carriers: p.carriers },
      ground: {
        su_kpa: p.su,
        source: "random",
        readings: p.readings.map((r) => ({ ...r, source: "random vane" })),
        safety: p.safety,
      },
    });
    const { flood, ground } = plan.proof;
    return {
      plan: {
        ...plan,
        proof: {
          ...plan.proof,
          flood: { ...flood, speed_m_s: p.speed, wave: p.wave },
          ground: { ...ground, root_mat_m: p.soft ? 0.2 : null },
        },
      },
      flood_z: p.flood ?? 2,
      height: p.height,
    };
  });

/** Every number of a result, however deep. */
function numbersOf(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (Array.isArray(value)) return value.flatMap(numbersOf);
  if (value !== null && typeof value === "object") return Object.values(value).flatMap(numbersOf);
  return [];
}

const ALWAYS: readonly CheckKind[] = [
  "stringer-bending",
  "stringer-shear",
  "stringer-deflection",
  "cross-piece",
  "deck",
  "seat",
  "lifting",
  "damage",
];

function expectSound(result: CheckResult): void {
  expect(result.title).not.toBe("");
  expect(result.parts.length, result.id).toBeGreaterThan(0);
  if (result.status === "cannot-check") expect(result.missing.join(""), result.id).not.toBe("");
  else if (result.status === "not-applicable") expect(result.because, result.id).not.toBe("");
  else {
    expect(result.governs, result.id).not.toBe("");
    expect(result.backwards.carries, result.id).not.toBe("");
    expect(result.backwards.change === null, result.id).toBe(result.status === "pass");
  }
  for (const n of numbersOf(result)) expect(Number.isFinite(n), `${result.id}: ${n}`).toBe(true);
  expect(JSON.stringify(result)).not.toMatch(/NaN|Infinity|undefined/);
}

test(`${runs} random kits, soils, floods and visits: every check answers, or says what is missing; no NaN, no fault`, () => {
  let built = 0;
  fc.assert(
    fc.property(plans, ({ plan, flood_z, height }) => {
      const { kit } = plan;
      const faults = validateKit(kit, tables).filter((p) => p.severity === "error");
      if (faults.length > 0) {
        // A kit that cannot be built is refused by name and mend, never handed on.
        for (const fault of faults) expect(`${fault.place} ${fault.mend}`).toMatch(/kit\..+ .+/);
        return;
      }
      built++;
      const site = levelSite();
      const [support] = kit.supports;
      const reach = support!.height_max_mm - support!.height_min_mm;
      const layout = straightLayout(kit.lengths_mm.map((l) => l / 1000));
      const support_height_m = (support!.height_min_mm + height * reach) / 1000;
      const results = runChecks({
        plan,
        site: { ...site, levels: site.levels.map((l) => ({ ...l, z_m: flood_z })) },
        layout: {
          ...layout,
          joints: layout.joints.map((j) => ({ ...j, support: support!.id, support_height_m })),
        },
        tables,
        masses: moduleMasses(kit, tables.sizes),
      });
      results.forEach(expectSound);
      expect(new Set(results.map((r) => r.id)).size).toBe(results.length);
      const kinds = new Set(results.map((r) => r.kind));
      for (const kind of ALWAYS) expect(kinds.has(kind), kind).toBe(true);
    }),
    { numRuns: runs },
  );
  expect(built).toBeGreaterThan(runs / 20);
}, 900_000);
