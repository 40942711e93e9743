import { tables } from "@causey/data/tables";
import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkCalculations } from "../../src/checks/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";
import {
  loadedStrand,
  slackLength,
  strandSag,
  strandStress,
  strandTension,
} from "../../src/structure/index.ts";
import { metres, newtons, pascals, qty } from "../../src/units/index.ts";

const runs = { numRuns: 200, seed: 17 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const run = (id: string, input: JsonObject) =>
  checkCalculations.find((c) => c.id === id)!.run(input, { tables });
const outputs = (id: string, input: JsonObject): JsonObject => {
  const outcome = run(id, input);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  for (const value of Object.values(outcome.outputs))
    if (typeof value === "number") expect(Number.isFinite(value) && value >= 0).toBe(true);
  return outcome.outputs;
};
const places = (id: string, input: JsonObject): string[] => {
  const outcome = run(id, input);
  return outcome.ok ? [] : outcome.problems.map((p) => p.place);
};
const number = (id: string, input: JsonObject, key: string): number => outputs(id, input)[key] as number;
const MORE = 1 + 1e-9;

describe("deck.mesh-strand", () => {
  const strand = fc.record({
    wire_mm: real(1, 8),
    pitch_mm: real(10, 100),
    yield_mpa: real(200, 700),
    span_mm: real(100, 1200),
    load_n: real(20, 2000),
    contact_mm: real(0, 120),
  });
  const id = "deck.mesh-strand";

  test("without slack it is the printed formula of the stretched wire, as long as the sag is small", () => {
    fc.assert(
      fc.property(real(1e-6, 5e-5), real(0.1, 2), real(1, 400), (a, l, p) => {
        const wire = { P: newtons(p), A: qty(a, "m2"), E: pascals(2e11) };
        const L = metres(l);
        const { sag, pull } = loadedStrand({ ...wire, L, L_f: slackLength({ L, s: metres(0) }) }, wire.P);
        const steep = (2 * strandSag({ ...wire, L })) / l;
        fc.pre(steep < 0.05);
        expect(Math.abs(sag / strandSag({ ...wire, L }) - 1)).toBeLessThan(steep ** 2);
        expect(Math.abs(pull / strandTension(wire) - 1)).toBeLessThan(steep ** 2);
        expect(Math.abs(pull / a / strandStress(wire) - 1)).toBeLessThan(steep ** 2);
      }),
      runs,
    );
  });

  test("a thicker wire is never under more stress and never sags more; a longer span never helps; more load never helps", () => {
    fc.assert(
      fc.property(strand, real(0, 30), (base, initial_sag_mm) => {
        for (const input of [base, { ...base, initial_sag_mm }]) {
          const { stress_mpa, sag_mm, tension_n } = outputs(id, input);
          const thick = outputs(id, { ...input, wire_mm: base.wire_mm * 1.2 });
          expect(thick["stress_mpa"]).toBeLessThanOrEqual((stress_mpa as number) * MORE);
          expect(thick["sag_mm"]).toBeLessThanOrEqual((sag_mm as number) * MORE);
          const long = outputs(id, { ...input, span_mm: base.span_mm * 1.3 });
          expect(long["sag_mm"]).toBeGreaterThanOrEqual((sag_mm as number) / MORE);
          expect(long["stress_mpa"]).toBeGreaterThanOrEqual((stress_mpa as number) / MORE);
          const heavy = outputs(id, { ...input, load_n: base.load_n * 1.5 });
          expect(heavy["tension_n"]).toBeGreaterThanOrEqual((tension_n as number) / MORE);
        }
      }),
      runs,
    );
  });

  test("a first sag lowers the pull, a pull set in lowers the sag, and the sag is never under the first one", () => {
    fc.assert(
      fc.property(strand, real(1, 40), real(10, 2000), (base, initial_sag_mm, pretension_n) => {
        const taut = outputs(id, base);
        const slack = outputs(id, { ...base, initial_sag_mm });
        expect(slack["tension_n"]).toBeLessThanOrEqual((taut["tension_n"] as number) * MORE);
        expect(slack["sag_mm"]).toBeGreaterThanOrEqual(
          Math.max(initial_sag_mm, taut["sag_mm"] as number) / MORE,
        );
        const pulled = outputs(id, { ...base, pretension_n });
        expect(pulled["sag_mm"]).toBeLessThanOrEqual((taut["sag_mm"] as number) * MORE);
        expect(pulled["tension_n"]).toBeGreaterThanOrEqual(
          Math.max(pretension_n, taut["tension_n"] as number) / MORE,
        );
      }),
      runs,
    );
  });

  test("rust thins the wire: never less stress with the years, and a problem once the wire is gone", () => {
    const base = { mesh: "mesh-1x1-14", span_mm: 400, load_n: 100, contact_mm: 30, loss_mm_per_year: 0.05 };
    const at = (years: number): number => number(id, { ...base, years }, "stress_mpa");
    expect(at(0)).toBeLessThan(at(5));
    expect(number(id, { ...base, years: 5 }, "wire_left_mm")).toBeCloseTo(0.08 * 25.4 - 0.5, 9);
    expect(places(id, { ...base, years: 30 })).toEqual(["years"]);
    const { loss_mm_per_year: _l, ...new_ } = base;
    expect(places(id, { ...new_, years: 3 })).toEqual(["loss_mm_per_year"]);
  });

  test("a wheel stands on more strands than a heel; the line of staples holds, slips, or cannot be checked", () => {
    const base = { mesh: "mesh-1x2-12", span_mm: 400, load_n: 300 } as const;
    expect([0, 25, 60].map((contact_mm) => number(id, { ...base, contact_mm }, "strands"))).toEqual([
      1, 1, 3,
    ]);
    const heel = { ...base, contact_mm: 0 };
    expect(outputs(id, heel)).toMatchObject({
      status: "cannot-check",
      anchorage: expect.stringMatching(/missing/) as string,
    });
    const held = (fastener_capacity_n: number): JsonObject =>
      outputs(id, { ...heel, fastener_capacity_n, fastener_spacing_mm: 25.4 });
    expect(held(50_000)).toMatchObject({ status: "pass", anchorage: "holds" });
    expect(held(100)).toMatchObject({ status: "fail", anchorage: "slips" });
    const wide = outputs(id, {
      ...base,
      contact_mm: 60,
      fastener_capacity_n: 1000,
      fastener_spacing_mm: 50.8,
    });
    expect((wide["anchor_n"] as number) / (wide["tension_n"] as number)).toBeCloseTo(2, 9);
    expect(outputs(id, { ...heel, load_n: 20_000 })["strand"]).toMatch(/yields/);
    expect(outputs(id, { ...heel, sag_limit_mm: 1 })).toMatchObject({
      status: "fail",
      sag: "over the limit",
    });
  });

  test("sizes that clash, are missing, zero or unknown are problems with their field", () => {
    const base = { span_mm: 400, load_n: 300, contact_mm: 0 } as const;
    expect(places(id, base)).toEqual(["wire_mm", "pitch_mm", "yield_mpa"]);
    expect(places(id, { ...base, mesh: "mesh-9x9" })).toEqual(["mesh"]);
    expect(places(id, { ...base, wire: "wire-14", pitch_mm: 25, yield_mpa: 400, wire_mm: 2 })).toEqual([
      "wire_mm",
    ]);
    const mesh = { ...base, mesh: "mesh-1x1-14" };
    expect(places(id, { ...mesh, initial_sag_mm: 5, pretension_n: 100 })).toEqual(["pretension_n"]);
    expect(places(id, { ...mesh, span_mm: 0 })).toEqual(["span_mm"]);
    expect(places(id, { ...mesh, load_n: -5 })).toEqual(["load_n"]);
  });
});

describe("deck.bar-grating", () => {
  const id = "deck.bar-grating";
  const bars = fc.record({
    bar_thickness_mm: real(2, 8),
    bar_depth_mm: real(15, 60),
    bar_pitch_mm: real(20, 60),
    span_mm: real(300, 2500),
    pressure_pa: real(100, 10_000),
    load_n_per_m: real(100, 10_000),
  });
  test("a longer span, shallower or thinner bars or a wider pitch never carry more", () => {
    fc.assert(
      fc.property(bars, (base) => {
        const keys = ["uniform_pa", "line_n_per_m"] as const;
        const before = outputs(id, base);
        const worse = [
          { ...base, span_mm: base.span_mm * 1.2 },
          { ...base, bar_depth_mm: base.bar_depth_mm / 1.2 },
          { ...base, bar_thickness_mm: base.bar_thickness_mm / 1.2 },
          { ...base, bar_pitch_mm: base.bar_pitch_mm * 1.2 },
        ];
        for (const input of worse) {
          const after = outputs(id, input);
          for (const key of keys) expect(after[key]).toBeLessThanOrEqual((before[key] as number) * MORE);
          expect(after["use"]).toBeGreaterThanOrEqual((before["use"] as number) / MORE);
          expect(after["deflection_mm"]).toBeGreaterThanOrEqual((before["deflection_mm"] as number) / MORE);
        }
      }),
      runs,
    );
  });
  test("statuses, and bars that cannot be", () => {
    const base = { grating: "grating-1x3/16", span_mm: 900 };
    expect(outputs(id, base)).toMatchObject({ use: null, status: "no load asked" });
    expect(outputs(id, { ...base, pressure_pa: 4788 })["status"]).toBe("pass");
    expect(outputs(id, { ...base, span_mm: 1500, pressure_pa: 4788 })["status"]).toBe("bends too far");
    expect(outputs(id, { ...base, load_n_per_m: 50_000 })["status"]).toBe("fails in bending");
    expect(places(id, { ...base, grating: "grating-0" })).toEqual(["grating"]);
    expect(places(id, { ...base, bar_depth_mm: 20 })).toEqual(["bar_depth_mm"]);
    expect(places(id, { span_mm: 900 })).toEqual(["bar_thickness_mm", "bar_depth_mm", "bar_pitch_mm"]);
    const odd = { span_mm: 900, bar_thickness_mm: 30, bar_depth_mm: 25, bar_pitch_mm: 30 };
    expect(places(id, odd)).toEqual(["bar_thickness_mm"]);
  });
});

describe("deck.plywood", () => {
  const id = "deck.plywood";
  const panel = fc.record({
    panel: fc.constantFrom(...tables.plywood.map((p) => p.id)),
    spans: fc.constantFrom("1", "2", "3"),
    span_mm: real(200, 1200),
    support_mm: real(25, 90),
    deflection_limit: fc.constantFrom(180, 240, 360),
    wet: fc.boolean(),
    load_duration: fc.constantFrom("permanent", "ten-years", "two-months"),
  });
  test("a longer span, the wet, a stricter limit or a longer load never carry more", () => {
    fc.assert(
      fc.property(panel, (base) => {
        const before = number(id, base, "uniform_pa") * MORE;
        expect(number(id, { ...base, span_mm: base.span_mm * 1.1 }, "uniform_pa")).toBeLessThanOrEqual(
          before,
        );
        expect(number(id, { ...base, wet: true }, "uniform_pa")).toBeLessThanOrEqual(before);
        expect(number(id, { ...base, deflection_limit: 480 }, "uniform_pa")).toBeLessThanOrEqual(before);
        expect(number(id, { ...base, load_duration: "permanent" }, "uniform_pa")).toBeLessThanOrEqual(before);
      }),
      runs,
    );
  });
  test("wet takes 0.75 of bending and shear and 0.85 of stiffness; one span bends most", () => {
    const base = {
      panel: "plywood-32/16-example",
      spans: "3",
      span_mm: 610,
      support_mm: 38,
      deflection_limit: 240,
      wet: false,
      load_duration: "ten-years",
    };
    const [dry, wet] = [outputs(id, base), outputs(id, { ...base, wet: true })];
    const share = (key: string): number => (wet[key] as number) / (dry[key] as number);
    expect([share("bending_pa"), share("shear_pa"), share("deflection_pa")].map((v) => v.toFixed(6))).toEqual(
      ["0.750000", "0.750000", "0.850000"],
    );
    expect(number(id, { ...base, spans: "1" }, "deflection_pa")).toBeLessThan(dry["deflection_pa"] as number);
    const unknown = outputs(id, { ...base, panel: "plywood-48/24" });
    expect([unknown["shear_pa"], (unknown["not_checked"] as string[])[0]]).toEqual([
      null,
      "shear in the plies: missing shear_n_per_m",
    ]);
    expect(places(id, { ...base, support_mm: 700 }).length).toBeGreaterThan(0);
    expect(places(id, { ...base, panel: "gold" })).toEqual(["panel"]);
  });
});
