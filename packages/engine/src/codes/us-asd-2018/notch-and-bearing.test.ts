import { tables } from "@causey/data/tables";
import { describe, expect, test } from "vitest";
import type { Trace } from "../../formula/index.ts";
import { M_PER_IN, N_PER_LBF, PA_PER_PSI } from "../../units/index.ts";
import { codeCalculations, usAsd2018, type Member, type Situation } from "../index.ts";

function pine(size: string): Member {
  const found = usAsd2018.member(tables, "southern-pine", "no2", size);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.value;
}
const dry: Situation = {
  use: "edge",
  wet: false,
  incised: false,
  repetitive: false,
  duration: "ten-years",
};
const near = (value: number, expected: number): void =>
  expect(Math.abs(value / expected - 1), `${value} against ${expected}`).toBeLessThanOrEqual(0.001);

describe("Southern Pine No.2 (worked by hand from NDS 2018, from memory)", () => {
  test("2x8 notched at the end to 5.5 in: 554 lb; whole: 1269 lb", () => {
    const at = (left: number): number =>
      usAsd2018.notchedShear(pine("2x8"), dry, { left_m: left * M_PER_IN, reaction_to_corner_m: 0 }) /
      N_PER_LBF;
    near(at(5.5), 554);
    near(at(7.25), 1269);
  });

  test("a notch deeper than a quarter of the depth is not allowed: 0, with the reason in the working", () => {
    const trace: Trace = [];
    const notch = { left_m: 5.4 * M_PER_IN, reaction_to_corner_m: 0 };
    expect(usAsd2018.notchedShear(pine("2x8"), dry, notch, trace)).toBe(0);
    expect(trace.at(-1)).toMatchObject({ id: "us-asd-2018.notch-too-deep", value: 0 });
    expect(() => usAsd2018.notchedShear(pine("2x8"), dry, { ...notch, left_m: 8 * M_PER_IN })).toThrow(
      "notch-outside-the-member",
    );
  });

  test("1.5 in of bearing on a 1.5 in stringer, wet, away from the end: Cb 1.25, 1065 lb; at the end Cb 1", () => {
    const contact = {
      length_m: 1.5 * M_PER_IN,
      to_end_m: 3 * M_PER_IN,
      to_next_m: 2,
      support: "discrete",
    } as const;
    const load = (to_end_m: number): number => {
      const { strength, length } = usAsd2018.bearing(
        pine("2x8"),
        { ...dry, wet: true },
        { ...contact, to_end_m },
      );
      return (strength * length * 1.5 * M_PER_IN) / N_PER_LBF;
    };
    near(load(3 * M_PER_IN), 1065);
    near(load(0), 565 * 0.67 * 2.25);
  });

  test("creep: 2.0 on what lasts in the wet, 1.5 dry, people leave nothing behind", () => {
    expect(usAsd2018.creep(true)).toEqual({ dead: 2, live: 1 });
    expect(usAsd2018.creep(false).dead).toBe(1.5);
  });

  test("boards under 2 in say that they stand outside the tables; others say nothing", () => {
    expect(pine("5/4x6").caution).toMatch(/under 2 in nominal/);
    expect(pine("2x6").caution).toBeNull();
  });

  test("Spruce-Pine-Fir Select Structural keeps the safer 1150 psi of decision record 0003", () => {
    const row = tables.grades.find((g) => g.id === "spruce-pine-fir-ss")!;
    expect(row.fb_psi["all"]!.value).toBe(1150);
  });

  test("a post too slender for the code is a problem of its length, not a capacity of 0", () => {
    const outcome = codeCalculations
      .find((c) => c.id === "timber.column")!
      .run(
        {
          code: "us-asd-2018",
          species: "southern-pine",
          grade: "no2",
          size: "2x4",
          length_mm: 2000,
          wet: true,
          incised: false,
          load_duration: "ten-years",
        },
        { tables },
      );
    expect(outcome).toMatchObject({ ok: false, problems: [{ place: "length_mm", value: "2000" }] });
  });

  test("Fv' in the working of a notch is the tabulated 175 psi", () => {
    const trace: Trace = [];
    usAsd2018.notchedShear(pine("2x8"), dry, { left_m: 6 * M_PER_IN, reaction_to_corner_m: 0 }, trace);
    near(trace.find((s) => s.id === "us-asd-2018.adjusted.shear")!.value / PA_PER_PSI, 175);
  });
});
