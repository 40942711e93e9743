// Eurocode 5 examples of a public finite-element library's verification (xcfem/xc, verif/tests/materials/ec5), and a
// joist worked on a public sheet (C24 80 x 240 mm).
import { tables } from "@causey/data/tables";
import { describe } from "vitest";
import {
  bearingDesign,
  bendingDesign,
  codeCalculations,
  compressionDesign,
  kdef,
  kmod,
  shearDesign,
} from "../../src/codes/index.ts";
import type { JsonObject } from "../../src/formula/index.ts";
import {
  rectangleArea,
  rectangleInertia,
  uniformDeflection,
  uniformMoment,
  uniformShearDeflection,
} from "../../src/structure/index.ts";
import { metres, millimetres, qty, type Qty } from "../../src/units/index.ts";
import { publishedRow, within } from "../support/published-row.ts";

function run(id: string, input: JsonObject): Readonly<Record<string, number>> {
  const outcome = codeCalculations.find((c) => c.id === id)!.run(input, { tables });
  if (!outcome.ok) throw new Error(outcome.problems.map((p) => p.message).join("; "));
  return outcome.outputs as Readonly<Record<string, number>>;
}

const classOf = (grade: string) => tables.strength_classes.find((c) => c.grade === grade)!;
const mpa = (v: number): Qty<"Pa"> => qty(v * 1e6, "Pa");
const one = qty(1, "1");
const gM = qty(1.3, "1");

/** One figure with a share of it as tolerance. */
const row = (
  id: string,
  source: string,
  what: string,
  expected: number,
  unit: string,
  share: number,
  got: () => number,
): void => publishedRow({ id, source, what, expected, unit, tolerance: within(share, expected) }, got);

describe("C24 joist 75 x 200 mm, 4.5 m, 0.5 m apart", () => {
  const xc = "xcfem/xc verification, Eurocode 5 example 2.3.1";
  const bending = () =>
    run("ec5.bending", {
      class: "C24",
      b_mm: 75,
      h_mm: 200,
      service_class: 1,
      duration: "medium-term",
      load_sharing: true,
      depth_factor: true,
      span_mm: 4500,
      spacing_mm: 500,
      dead_pa: 500,
      live_pa: 1500,
    });
  row("S40", xc, "design bending strength", 16.25, "N/mm2", 0.001, () => bending()["fm_d_pa"]! / 1e6);
  row(
    "S40",
    xc,
    "bending used, 1.35 x 0.5 and 1.5 x 1.5 kN/m2",
    0.4557,
    "",
    0.001,
    () => bending()["utilisation"]!,
  );

  /** Deflection at once with its shear part, from the class's own stiffness [mm]. */
  const deflection = (kn_m: number): number => {
    const c24 = classOf("c24");
    const section = { b: millimetres(75), d: millimetres(200) };
    const args = { w: qty(kn_m * 1000, "N/m"), L: metres(4.5) };
    const I = rectangleInertia(section);
    const A = rectangleArea(section);
    const bent = uniformDeflection({ ...args, E: mpa(c24.e0_mean_mpa.value), I });
    return 1000 * (bent + uniformShearDeflection({ ...args, G: mpa(c24.g_mean_mpa.value), A }));
  };
  row("S41", xc, "deflection with its shear part under 1 kN/m", 10.0, "mm", 0.001, () => deflection(1));
  row("S41", xc, "deflection with its shear part under 0.75 kN/m", 7.5, "mm", 0.001, () => deflection(0.75));
  row(
    "S42",
    xc,
    "creep of (0.57 + 0.45) x 0.5 kN/m, kdef 0.6",
    3.06,
    "mm",
    0.001,
    () => kdef[1]({}) * deflection((0.57 + 0.45) * 0.5),
  );
});

row(
  "S43",
  "xcfem/xc verification, EN 338:2003 C24 75 x 225 mm, fv,k 2.5, no kcr",
  "shear used by 3.656 kN",
  0.2112,
  "",
  0.001,
  () => {
    const fv_d = shearDesign({ fv_k: mpa(2.5), kcr: one, kmod: kmod[1]["medium-term"]({}), kinc: one, gM });
    return (1.5 * 3656) / (0.075 * 0.225) / fv_d;
  },
);

describe("design strengths", () => {
  const xc = "xcfem/xc verification, Eurocode 5 strengths";
  row("S44", xc, "C18 across the grain, permanent, service class 3", 0.846, "N/mm2", 0.001, () => {
    const fc90_k = mpa(classOf("c18").fc90_k_mpa.value);
    return bearingDesign({ fc90_k, kmod: kmod[3].permanent({}), gM }) / 1e6;
  });
  row("S44", xc, "C24 along the grain, short-term, service class 2", 14.54, "N/mm2", 0.001, () => {
    const fc0_k = mpa(classOf("c24").fc0_k_mpa.value);
    const k = { kc: one, kmod: kmod[2]["short-term"]({}), kinc: one, gM };
    return compressionDesign({ fc0_k, ...k }) / 1e6;
  });
  row("S44", xc, "C24 bending, medium-term, service class 1", 14.77, "N/mm2", 0.001, () => {
    const fm_k = mpa(classOf("c24").fm_k_mpa.value);
    const k = { kmod: kmod[1]["medium-term"]({}), kh: one, ksys: one, kinc: one, kcrit: one, gM };
    return bendingDesign({ fm_k, ...k }) / 1e6;
  });
});

describe("C24 joist 80 x 240 mm, 6.3 m, 1.55 kN/m", () => {
  const sheet = "Eurocode 5 joist sheet (pdfcookie.com), lef 6.15 m, E0,05 7333";
  const M = uniformMoment({ w: qty(1550, "N/m"), L: metres(6.3) });
  const section = { class: "c24", b_mm: 80, h_mm: 240 };
  const bending = () =>
    run("ec5.bending", {
      ...section,
      service_class: 2,
      duration: "medium-term",
      load_sharing: true,
      depth_factor: true,
      moment_n_m: M,
    });
  const buckling = () =>
    run("ec5.lateral-buckling", {
      ...section,
      free_length_mm: 6150 / 0.9,
      load: "uniform",
      load_on_top: false,
      e_0_05_mpa: 7333,
    });
  row("S45", sheet, "moment", 7.69, "kN m", 0.02, () => M / 1000);
  row("S45", sheet, "bending stress", 10.01, "N/mm2", 0.02, () => bending()["stress_pa"]! / 1e6);
  row("S45", sheet, "critical bending stress", 24.8, "N/mm2", 0.02, () => buckling()["sigma_crit_pa"]! / 1e6);
  row("S45", sheet, "relative slenderness", 0.99, "", 0.02, () => buckling()["lambda_rel"]!);
  row("S45", sheet, "factor kcrit", 0.81, "", 0.02, () => buckling()["kcrit"]!);
  row("S45", sheet, "design bending strength with kcrit", 13.15, "N/mm2", 0.02, () => {
    return (bending()["fm_d_pa"]! * buckling()["kcrit"]!) / 1e6;
  });
  row("S45", sheet, "bending used", 0.76, "", 0.02, () => bending()["utilisation"]! / buckling()["kcrit"]!);
});
