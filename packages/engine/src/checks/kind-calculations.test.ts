import { expect, test } from "vitest";
import { tables } from "@causey/data/tables";
import { checkCalculations } from "./index.ts";

const run = (id: string, input: Record<string, unknown>) => {
  const found = checkCalculations
    .find((c) => c.id === id)!
    .run({ code: "us-asd-2018", people: 1, person_kg: 95, spacing_mm: 1500, ...input } as never, { tables });
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.outputs as unknown as {
    status: string;
    results: { id: string; status: string; demand_n?: number; capacity_m?: number; capacity_n?: number }[];
  };
};
const joint = { left_mm: 2400, right_mm: 2400, dead_kg: 120, clear_width_mm: 600 };

test("check.deck-panel: moment in a metre of width by hand; what is not tested leads over a pass", () => {
  const { status, results } = run("check.deck-panel", {
    kind: "moulded-grating",
    span_mm: 600,
    width_mm: 600,
    moment_n: 2000,
    stiffness_nm: 9500,
    creep: 1,
    mass_kg_m2: 18,
    soak_kg_m2: 0,
    strength_source: "asked",
  });
  const P = 1334.4664845;
  const own = (18 * 9.80665 * 0.36) / 8;
  expect(results[0]!.demand_n).toBeCloseTo((P * (0.15 - 0.0635 / 8)) / (0.0635 + 0.18) + own, 6);
  expect(results.map((r) => r.status)).toEqual(["pass", "pass", "cannot-check"]);
  expect(status).toBe("cannot-check");
});

test("check.screw-pile: two helices of 200 mm at 1.5 m in 10 kPa by hand", () => {
  const piles = { apart_mm: 600, shaft_mm: 60, helix_mm: 200, helices: 2, depth_mm: 1500, safety: 2 };
  const { results } = run("check.screw-pile", { ...joint, ...piles, su_kpa: 10 });
  const area = (Math.PI / 4) * (0.2 ** 2 - 0.06 ** 2);
  expect(results[0]!.capacity_n).toBeCloseTo((2 * 9 * 10_000 * area) / 2, 6);
  expect(run("check.screw-pile", { ...joint, ...piles }).results[0]!.status).toBe("cannot-check");
});

test("check.float: water that is deep enough or not, and the draught by hand", () => {
  const floats = {
    apart_mm: 1500,
    float_along_mm: 1000,
    float_across_mm: 750,
    float_height_mm: 500,
    freeboard_mm: 100,
    timber_mm: 130,
    module_mm: 150,
    water_kg_m3: 1000,
  };
  const aground = (water_depth_mm?: number): string =>
    run("check.float", { ...joint, ...floats, ...(water_depth_mm === undefined ? {} : { water_depth_mm }) })
      .results[2]!.status;
  const draught_mm = 120 / 1.5;
  expect(aground(draught_mm + 1)).toBe("pass");
  expect(aground(draught_mm - 1)).toBe("fail");
  expect(aground()).toBe("cannot-check");
  expect(run("check.float", { ...joint, ...floats }).results[0]!.capacity_m).toBeGreaterThan(0.1);
});
