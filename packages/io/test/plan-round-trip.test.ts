import type { Plan } from "@causey/engine/plan";
import * as fc from "fast-check";
import { expect, test } from "vitest";
import { readPlan, writePlan } from "../src/plan/index.ts";
import { isHelpful } from "./support/problems.ts";
import { planJson, sampleFiles, sampleKit, samplePlan } from "./support/sample-plan.ts";

const read = (files: Map<string, Uint8Array>) => readPlan(files, { readyKits: [sampleKit] });

const text = fc
  .string({ minLength: 1, maxLength: 30 })
  .map((s) => s.replaceAll(/\p{Cc}/gu, "").trim())
  .filter((s) => s !== "");
const size = fc.double({ min: 0.001, max: 1e6, noNaN: true });
const inside = fc.record({
  x: fc.double({ min: 1, max: 35, noNaN: true }),
  y: fc.double({ min: 1, max: 25, noNaN: true }),
});

const anyPlan: fc.Arbitrary<Plan> = fc
  .record({
    name: text,
    site_name: text,
    units: fc.constantFrom("us" as const, "metric" as const),
    vertical_datum: text,
    spots: fc.array(inside, { maxLength: 5 }),
    water: size,
    su: fc.option(size, { nil: null }),
    cart: fc.boolean(),
    flood: fc.boolean(),
    confirmed: fc.option(fc.boolean(), { nil: undefined }),
    weights: fc.record({ money: size, shade_per_m2: size, contact_per_m2: size, crossing: size }),
    step: fc.double({ min: 0.01, max: 90, noNaN: true }),
    heading: fc.double({ min: -360, max: 360, noNaN: true }).map((v) => v + 0),
    mesh: fc.boolean(),
  })
  .map((r): Plan => {
    const plots = r.spots.map((s, i) => ({
      id: `P${i}`,
      name: `${r.name} ${i}`,
      ...s,
      keep_off_m: 1,
      reach_m: i + 0.1,
    }));
    const visit = samplePlan.visits[0]!;
    return {
      ...samplePlan,
      name: r.name,
      site_name: r.site_name,
      units: r.units,
      vertical_datum: r.vertical_datum,
      terrain: {
        ...samplePlan.terrain,
        datum: r.vertical_datum,
        ...(r.confirmed === undefined ? {} : { crs_confirmed: r.confirmed }),
      },
      starts: [],
      plots,
      zones: [],
      levels: samplePlan.levels.map((l) => ({ ...l, datum: r.vertical_datum })),
      flood_level: r.flood ? "flood" : null,
      water_kg_m3: r.water,
      ground: {
        ...samplePlan.ground,
        su_kpa: r.su,
        readings: plots.map((p) => ({ x: p.x, y: p.y, depth_m: 0.5, su_kpa: 3, source: r.name })),
      },
      visits:
        plots.length === 0
          ? []
          : [{ ...visit, plots: plots.map((p) => p.id), cart: r.cart ? visit.cart : null }],
      kit: {
        ...sampleKit,
        ...(r.mesh
          ? {
              end: { kind: "plain" },
              curb: { size: "2x2", screw: "screw-10x3", screw_spacing_mm: 600 },
              deck: {
                kind: "mesh",
                name: r.name,
                wire_mm: 3,
                pitch_mm: 25,
                panel_length_mm: 1200,
                width_mm: 900,
                upturn_mm: 25,
                clip: "mesh-clip",
                clips_per_panel: 12,
                mass_kg_m2: 4,
                open_share: 0.8,
                yield_mpa: 400,
              },
            }
          : {}),
      },
      layout: {
        ...samplePlan.layout,
        weights: r.weights,
        heading_step_deg: r.step,
        first_heading_deg: r.heading,
      },
    };
  });

test("property: a written plan is read back the same, to the last digit", async () => {
  await fc.assert(
    fc.asyncProperty(anyPlan, async (given) => {
      const answer = await read(sampleFiles({}, given));
      if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
      expect(answer.plan).toEqual(given);
      expect(writePlan(answer.plan)).toEqual(writePlan(given));
    }),
    { numRuns: 60 },
  );
});

test("property: any JSON under any entry is a value or a problem, never an exception", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...Object.keys(JSON.parse(planJson(() => undefined)) as object)),
      fc.jsonValue({ maxDepth: 4 }),
      async (key, value) => {
        const answer = await read(sampleFiles({ "plan.json": planJson((d) => (d[key] = value)) }));
        if (!answer.ok) expect(answer.problems.every(isHelpful)).toBe(true);
      },
    ),
    { numRuns: 300 },
  );
});
