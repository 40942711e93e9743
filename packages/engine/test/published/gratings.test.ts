// Steel bar grating load tables (scribd.com 332168136): bars at 1-3/16 in, 18 000 psi, E 29 000 000 psi, uniform load U
// in lb/ft2 and line load C in lb for one foot of width, with their deflections in inches. Panel capacities of a worked
// plywood example (32/16, three spans at 32 in), as repeated in a public test file.
import { describe, expect, test } from "vitest";
import {
  barInertia,
  barModulus,
  panelLineLoad,
  panelMoment,
  panelStiffness,
  panelUniformLoad,
  panelUniformLoadOverThree,
} from "../../src/checks/panel-strength.ts";
import { panelLineDeflection, panelUniformDeflection } from "../../src/checks/panel-formulas.ts";
import { M_PER_FT, M_PER_IN, N_PER_LBF, PA_PER_PSF, inches, psi, qty } from "../../src/units/index.ts";

const rows = [
  { id: "1 x 1/8 at 3 ft", bar: 0.125, depth: 1, ft: 3, U: 281, dU: 0.168, C: 421, dC: 0.134 },
  { id: "1 x 3/16 at 4 ft", bar: 0.1875, depth: 1, ft: 4, U: 237, dU: 0.298, C: 474, dC: 0.238 },
  { id: "1-1/2 x 3/16 at 3 ft", bar: 0.1875, depth: 1.5, ft: 3, U: 947, dU: 0.112, C: 1421, dC: 0.089 },
] as const;

describe("steel bar grating, published load table (scribd.com 332168136)", () => {
  test.each(rows)("$id: U $U psf, deflection $dU in; C $C lb, deflection $dC in", (row) => {
    const bars = { b: inches(row.bar), d: inches(row.depth), p: inches(1.1875) };
    const m_r = panelMoment({ F: psi(18_000), S_1: barModulus(bars) });
    const k = panelStiffness({ E: psi(29e6), I_1: barInertia(bars) });
    const L = inches(row.ft * 12);
    const u = panelUniformLoad({ m_r, L });
    const c = panelLineLoad({ m_r, L });
    expect(Math.abs(u / PA_PER_PSF - row.U)).toBeLessThanOrEqual(1);
    expect(Math.abs((c * M_PER_FT) / N_PER_LBF - row.C)).toBeLessThanOrEqual(1);
    expect(Math.abs(panelUniformDeflection({ u, L, k }) / M_PER_IN - row.dU)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(panelLineDeflection({ c, L, k }) / M_PER_IN - row.dC)).toBeLessThanOrEqual(0.001);
  });
});

test("plywood 32/16 over three spans of 32 in, worked example: FbS 407 lb-in/ft, duration 1.15, carries 54.8 psf in bending", () => {
  const m_r = qty((407 * 1.15 * N_PER_LBF * M_PER_IN) / M_PER_FT, "N");
  const u = panelUniformLoadOverThree({ m_r, L: inches(32) });
  expect(Math.abs(u / PA_PER_PSF - 54.8) / 54.8).toBeLessThanOrEqual(0.002);
});
