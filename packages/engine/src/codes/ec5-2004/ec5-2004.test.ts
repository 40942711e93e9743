import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import type { JsonObject, Trace } from "../../formula/index.ts";
import { codeCalculations, ec52004, type Member, type Situation } from "../index.ts";

/** A member of C24, softwood. */
function c24(size: string): Member {
  const found = ec52004.member(tables, "softwood", "c24", size);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}
const overMarsh: Situation = {
  use: "edge",
  wet: true,
  incised: false,
  repetitive: false,
  duration: "ten-years",
};
const near = (value: number, expected: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(0.0005);

describe("C24 over a marsh, people on it (worked by hand from EN 1995-1-1, from memory)", () => {
  test("people are medium-term in service class 3: kmod 0.65; dry timber is class 2: 0.80", () => {
    expect(ec52004.strength(c24("45x195"), overMarsh).factors["kmod"]).toBe(0.65);
    expect(ec52004.strength(c24("45x195"), { ...overMarsh, wet: false }).factors["kmod"]).toBe(0.8);
  });

  test("bending 45x195: 0.65 x 24 / 1.3 = 12 N/mm2, kh 1; shared by three under boards 13.2", () => {
    near(ec52004.strength(c24("45x195"), overMarsh).fb / 1e6, 12);
    near(ec52004.strength(c24("45x195"), { ...overMarsh, repetitive: true }).fb / 1e6, 13.2);
  });

  test("kh goes by the depth as it stands: 1.0957 for 95 mm, 1.2723 for 45 mm, at most 1.3 for 28 mm", () => {
    near(ec52004.strength(c24("45x95"), overMarsh).factors["kh"]!, 1.0957);
    near(ec52004.strength(c24("45x95"), { ...overMarsh, use: "flat" }).factors["kh"]!, 1.2723);
    expect(ec52004.strength(c24("28x145"), { ...overMarsh, use: "flat" }).factors["kh"]).toBe(1.3);
  });

  test("shear on the full breadth, cracks inside: 0.67 x 0.65 x 4.0 / 1.3 = 1.34 N/mm2", () =>
    near(ec52004.strength(c24("45x195"), overMarsh).fv / 1e6, 1.34));

  test("45x195 held each 1.2 m: lef 1.47 m, critical 40.78 N/mm2, slenderness 0.767, kcrit 0.9846", () => {
    const trace: Trace = [];
    const { factors } = ec52004.strength(c24("45x195"), { ...overMarsh, unbraced_m: 1.2 }, trace, ["fb"]);
    near(factors["kcrit"]!, 0.98461);
    const value = (id: string): number => trace.find((s) => s.id === id)!.value;
    near(value("ec5-2004.effective-length"), 1.47);
    near(value("ec5-2004.critical-bending") / 1e6, 40.776);
    near(value("ec5-2004.relative-slenderness"), 0.76719);
  });

  test("a board laid flat does not lean sideways", () =>
    expect(
      ec52004.strength(c24("28x145"), { ...overMarsh, use: "flat", unbraced_m: 3 }).factors["kcrit"],
    ).toBe(1));

  test("end notched to 150 of 195 mm, reaction 60 mm from the corner: kv 0.5697, 3435 N", () => {
    const trace: Trace = [];
    const notch = { left_m: 0.15, reaction_to_corner_m: 0.06 };
    near(ec52004.notchedShear(c24("45x195"), overMarsh, notch, trace), 3435.4);
    near(trace.find((s) => s.id === "ec5-2004.kv")!.value, 0.569715);
  });

  test("an end without a notch carries what the whole section does", () => {
    const { fv } = ec52004.strength(c24("45x195"), overMarsh);
    const whole = ec52004.notchedShear(c24("45x195"), overMarsh, {
      left_m: 0.195,
      reaction_to_corner_m: 0.06,
    });
    near(whole, (2 / 3) * fv * 0.045 * 0.195);
    expect(() =>
      ec52004.notchedShear(c24("45x195"), overMarsh, { left_m: 0.2, reaction_to_corner_m: 0 }),
    ).toThrow("notch-outside-the-member");
  });

  test("seat of 60 mm: 90 mm count at an end, 120 mm inside, kc,90 1.5 only with contacts twice the depth apart", () => {
    const contact = { length_m: 0.06, to_end_m: 0, to_next_m: 3, support: "discrete" } as const;
    const end = ec52004.bearing(c24("45x195"), overMarsh, contact);
    near(end.length, 0.09);
    near(end.strength / 1e6, 1.5 * 1.25);
    near(ec52004.bearing(c24("45x195"), overMarsh, { ...contact, to_end_m: 1 }).length, 0.12);
    near(ec52004.bearing(c24("45x195"), overMarsh, { ...contact, to_next_m: 0.2 }).strength / 1e6, 1.25);
    near(
      ec52004.bearing(c24("45x195"), overMarsh, { ...contact, support: "continuous" }).strength / 1e6,
      1.5625,
    );
  });

  test("creep: 1 + 2.0 on what lasts, 1 + 0.6 x 2.0 on people; dry 1.8 and 1.48", () => {
    expect([ec52004.creep(true).dead, ec52004.creep(true).live]).toEqual([3, 2.2]);
    near(ec52004.creep(false).dead, 1.8);
    near(ec52004.creep(false).live, 1.48);
  });
});

describe("methods of this edition", () => {
  const run = (id: string, input: JsonObject) =>
    codeCalculations.find((c) => c.id === id)!.run(input, { tables });
  const outputs = (id: string, input: JsonObject): Readonly<Record<string, number>> => {
    const outcome = run(id, input);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    return outcome.outputs as Readonly<Record<string, number>>;
  };
  const places = (id: string, input: JsonObject): string[] => {
    const outcome = run(id, input);
    return outcome.ok ? [] : outcome.problems.map((p) => p.place);
  };
  const asked = {
    class: "c24",
    b_mm: 45,
    h_mm: 95,
    service_class: 3,
    duration: "medium-term",
    load_sharing: false,
    depth_factor: true,
  } as const;

  test("the depth factor is left out when it is not asked for", () => {
    near(outputs("ec5.bending", { ...asked, moment_n_m: 500 })["kh"]!, 1.0957);
    expect(outputs("ec5.bending", { ...asked, depth_factor: false, moment_n_m: 500 })["kh"]).toBe(1);
  });

  test("a moment or loads, never half of both; an unknown class lists the known ones", () => {
    expect(places("ec5.bending", asked)).toEqual(["span_mm", "spacing_mm", "dead_pa", "live_pa"]);
    expect(places("ec5.bending", { ...asked, span_mm: 2000 })).toEqual(["spacing_mm", "dead_pa", "live_pa"]);
    expect(places("ec5.bending", { ...asked, moment_n_m: 500, span_mm: 2000 })).toEqual(["moment_n_m"]);
    const odd = run("ec5.lateral-buckling", {
      class: "c99",
      b_mm: 45,
      h_mm: 195,
      free_length_mm: 1200,
      load: "uniform",
      load_on_top: true,
    });
    expect(odd).toMatchObject({ ok: false, problems: [{ place: "class", value: "c99" }] });
    expect(odd.ok ? "" : odd.problems[0]!.mend).toContain("c24, c27");
  });

  test("load on the pressed edge adds twice the depth to the effective length", () => {
    const beam = { class: "c24", b_mm: 45, h_mm: 195, free_length_mm: 1200, load: "uniform" } as const;
    near(outputs("ec5.lateral-buckling", { ...beam, load_on_top: true })["effective_length_mm"]!, 1470);
    near(outputs("ec5.lateral-buckling", { ...beam, load_on_top: false })["effective_length_mm"]!, 1080);
  });

  test("post 95x95 of 2 m: slenderness 1.237, kc 0.5208, carries 49.35 kN (worked by hand, from memory)", () => {
    const post = outputs("timber.column", {
      code: "ec5-2004",
      species: "softwood",
      grade: "c24",
      size: "95x95",
      length_mm: 2000,
      wet: true,
      incised: false,
      load_duration: "ten-years",
      load_n: 20_000,
    });
    near(post["stability"]!, 0.5208);
    near(post["capacity_n"]! / 1000, 49.35);
    near(post["utilisation"]!, 20 / 49.35);
  });
});
