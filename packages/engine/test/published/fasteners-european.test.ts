// Nails by Eurocode 5 (EN 1995-1-1:2004, 8.2 and 8.3), worked from memory: no printed example was at hand.
import { describe } from "vitest";
import { ec5Fasteners, type FastenerJoint } from "../../src/codes/index.ts";
import type { Trace } from "../../src/formula/index.ts";
import type { Fastener } from "../../src/materials/index.ts";
import { jointOf } from "../support/fastener-joint.ts";
import { publishedRow, within } from "../support/published-row.ts";

describe("Eurocode 5 nails in C24, from memory", () => {
  const euroNail = (diameter_mm: number, length_mm: number): Fastener => ({
    id: "asked",
    name: "nail",
    kind: "nail",
    diameter_mm,
    length_mm,
    coating: "none",
    fu_mpa: 600,
    source: "asked",
    status: "project",
  });
  const joint = (d: number, t1: number, t2: number): FastenerJoint =>
    jointOf(euroNail(d, t1 + t2), { gravity: 0.42, density_k: 350 }, t1 / 25.4, 20);
  const step = (j: FastenerJoint, id: string): number => {
    const trace: Trace = [];
    ec5Fasteners.lateral(j, trace);
    return trace.find((s) => s.id === id)!.value;
  };
  const characteristic = (j: FastenerJoint): number => {
    const found = ec5Fasteners.lateral(j);
    if (!found.ok) throw new Error("no value");
    return found.value.one;
  };
  const rows = [
    ["S61", 3, 35, 40, 20.64, 3132, 716],
    ["S62", 4, 45, 55, 18.93, 6617, 1151],
  ] as const;
  for (const [id, d, t1, t2, fh, My, F] of rows) {
    const row = (what: string, expected: number, unit: string) =>
      ({
        id,
        source: "from memory, EN 1995-1-1 8.2.2",
        what: `nail ${d} mm, ${what}`,
        expected,
        unit,
        tolerance: within(0.005, expected),
      }) as const;
    const j = joint(d, t1, t2);
    publishedRow(row("embedding", fh, "N/mm2"), () => step(j, "ec5-2004.fastener.bearing-driven") / 1e6);
    publishedRow(row("yield moment", My, "N mm"), () => step(j, "ec5-2004.fastener.yield-moment") * 1000);
    publishedRow(row("one shear plane, mode f, no rope", F, "N"), () => characteristic(j));
  }
});
