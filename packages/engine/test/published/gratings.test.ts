// Steel bar grating load tables (scribd.com 332168136): bars at 1-3/16 in, 18 000 psi, E 29 000 000 psi, uniform load U
// in lb/ft2 and line load C in lb for one foot of width, with their deflections in inches. Panel capacities of a worked
// plywood example (32/16, three spans at 32 in), as repeated in a public test file. Stretched-wire problems at
// philoid.com and byjus.com.
import { describe } from "vitest";
import { M_PER_FT, M_PER_IN, N_PER_LBF, PA_PER_PSF } from "../../src/units/index.ts";
import { publishedRow, within } from "../support/published-row.ts";
import { runCheck } from "../support/run-check.ts";

const rows = [
  { id: "S46", grating: "grating-1x1/8", ft: 3, U: 281, dU: 0.168, C: 421, dC: 0.134 },
  { id: "S47", grating: "grating-1x3/16", ft: 4, U: 237, dU: 0.298, C: 474, dC: 0.238 },
  { id: "S48", grating: "grating-1-1/2x3/16", ft: 3, U: 947, dU: 0.112, C: 1421, dC: 0.089 },
] as const;

describe("steel bar grating", () => {
  for (const { id, grating, ft, U, dU, C, dC } of rows) {
    const found = (key: string): number =>
      runCheck("deck.bar-grating", { grating, span_mm: ft * 304.8 })[key] as number;
    const source = "published load table (scribd.com 332168136)";
    const row = (what: string, expected: number, unit: string, tolerance: number) =>
      ({ id, source, what: `${grating}, ${ft} ft, ${what}`, expected, unit, tolerance }) as const;
    publishedRow(row("uniform load", U, "psf", 1), () => found("uniform_pa") / PA_PER_PSF);
    publishedRow(row("its deflection", dU, "in", 0.001), () => found("uniform_deflection_mm") / 25.4);
    publishedRow(
      row("line load on a foot of width", C, "lb", 1),
      () => (found("line_n_per_m") * M_PER_FT) / N_PER_LBF,
    );
    publishedRow(
      row("its deflection under the line load", dC, "in", 0.001),
      () => found("line_deflection_mm") / 25.4,
    );
  }
});

describe("plywood", () => {
  const sheet = runCheck("deck.plywood", {
    panel: "plywood-32/16-example",
    spans: "3",
    span_mm: 32 * 25.4,
    support_mm: 38.1,
    deflection_limit: 240,
    wet: false,
    load_duration: "two-months",
  });
  const row = (what: string, expected: number) =>
    ({
      id: "S49",
      source: "worked plywood example (as asserted by xcfem/xc)",
      what: `32/16 over three spans of 32 in, ${what}`,
      expected,
      unit: "psf",
      tolerance: within(0.002, expected),
    }) as const;
  publishedRow(row("deflection L/240", 32.9), () => (sheet["deflection_pa"] as number) / PA_PER_PSF);
  publishedRow(row("bending, duration 1.15", 54.8), () => (sheet["bending_pa"] as number) / PA_PER_PSF);
});

describe("mesh strands", () => {
  const strand = (wire_mm: number, span_mm: number, load_n: number, e_gpa?: number) =>
    runCheck("deck.mesh-strand", {
      wire_mm,
      pitch_mm: 25,
      yield_mpa: 3000,
      span_mm,
      load_n,
      contact_mm: 0,
      ...(e_gpa === undefined ? {} : { e_gpa }),
    });
  const ofArea = (mm2: number): number => Math.sqrt((4 * mm2) / Math.PI);
  publishedRow(
    {
      id: "S50",
      source: "stretched wire, worked answer (philoid.com 133644)",
      what: "1 m of 4 mm2, 2.16 kg at midspan with g 10, 200 GPa, sag",
      expected: 15,
      unit: "mm",
      tolerance: within(0.005, 15),
    },
    () => strand(ofArea(4), 1000, 21.6, 200)["sag_mm"] as number,
  );
  publishedRow(
    {
      id: "S51",
      source: "stretched wire (method at byjus.com, figure from memory)",
      what: "1 m of 0.5 mm2, 100 g at midspan, 200 GPa, sag",
      expected: 10,
      unit: "mm",
      tolerance: within(0.1, 10),
    },
    () => strand(ofArea(0.5), 1000, 0.1 * 9.80665, 200)["sag_mm"] as number,
  );
  const memory = (what: string, expected: number, unit: string) =>
    ({
      id: "S56",
      source: "from memory",
      what: `strand 0.135 in, 12 in, 50 lb, ${what}`,
      expected,
      unit,
      tolerance: within(0.005, expected),
    }) as const;
  const steel = strand(0.135 * 25.4, 304.8, 50 * N_PER_LBF);
  publishedRow(memory("sag", 0.296, "in"), () => (steel["sag_mm"] as number) / 25.4);
  publishedRow(memory("pull", 506, "lb"), () => (steel["tension_n"] as number) / N_PER_LBF);
  publishedRow(
    memory("stress", 35.4, "ksi"),
    () => ((steel["stress_mpa"] as number) * 1e6) / (N_PER_LBF / M_PER_IN ** 2) / 1000,
  );
});
