// Load over an area and liveliness, worked out from the formulas of the codes as remembered; no print at hand.
import { tables } from "@causey/data/tables";
import { firstFrequency } from "../../src/checks/index.ts";
import { ruleCase } from "../../src/checks/rule-loads.ts";
import { stringerModel } from "../../src/checks/stringer-model.ts";
import { governing } from "../../src/checks/stringer-demand.ts";
import type { Frame } from "../../src/checks/frame.ts";
import { usAsd2018 } from "../../src/codes/index.ts";
import { rectangleInertia, rectangleSectionModulus } from "../../src/structure/index.ts";
import {
  KG_PER_LB,
  M_PER_FT,
  M_PER_IN,
  N_PER_LBF,
  PA_PER_PSI,
  feet,
  inches,
  psi,
  qty,
} from "../../src/units/index.ts";
import { publishedRow, within } from "../support/published-row.ts";

/** Three 2x8 at 18 in under 54 in of clear boards: each carries 18 in of deck; 10 psf of 3 ft between the outer two. */
const frame: Frame = {
  name: "10 ft module",
  span_m: 10 * M_PER_FT,
  positions_m: [-18, 0, 18].map((v) => v * M_PER_IN),
  size: "2x8",
  lumber: { species: "southern-pine", grade: "no2", incised: false },
  clear_width_m: 54 * M_PER_IN,
  brace_m: 0.001,
  has_boards: true,
  dead_kg_m: (30 * KG_PER_LB) / M_PER_FT,
};
const context = { tables, code: usAsd2018, units: "us" } as const;
const walkway = ruleCase(
  tables.load_rules.find((r) => r.id === "asce-walkway")!,
  tables,
);
const size = { b: inches(1.5), d: inches(7.25) };

function modelOf(of: Frame) {
  const model = stringerModel(of, context);
  if (!model.ok) throw new Error(JSON.stringify(model.problems));
  return model.value;
}

const MEMORY = "from memory of NDS 2018 and ASCE 7-16";

publishedRow(
  {
    id: "S58 moment",
    source: MEMORY,
    what: "stringer 2x8 of 10 ft, 18 in of deck, 60 psf and 10 psf own: moment",
    expected: 1312.5,
    unit: "lb ft",
    tolerance: within(0.005, 1312.5),
  },
  () => {
    const { dead, live } = governing("bending", modelOf(frame), [walkway]);
    return (dead + live) / N_PER_LBF / M_PER_FT;
  },
);

publishedRow(
  {
    id: "S58 stress",
    source: MEMORY,
    what: "the same: bending stress",
    expected: 1199,
    unit: "psi",
    tolerance: within(0.005, 1199),
  },
  () => {
    const { dead, live } = governing("bending", modelOf(frame), [walkway]);
    return (dead + live) / rectangleSectionModulus(size) / PA_PER_PSI;
  },
);

for (const [id, words, of, expected] of [
  ["S58 repetitive", "three stringers under boards, Cr 1.15", frame, 1064],
  ["S58 single", "two stringers, Cr 1.0", { ...frame, positions_m: [-0.2286, 0.2286] }, 925],
] as const)
  publishedRow(
    {
      id,
      source: MEMORY,
      what: `the same: bending strength of ${words}`,
      expected,
      unit: "psi",
      tolerance: within(0.005, expected),
    },
    () => modelOf(of).held.find((h) => h.combination.live > 0)!.strengths.fb / PA_PER_PSI,
  );

publishedRow(
  {
    id: "S57",
    source: "from memory, pi / 2 L^2 sqrt(EI g / w)",
    what: "first beat of a Southern Pine 2x8 of 10 ft, 15 lb/ft, E 1.26e6 psi",
    expected: 14.9,
    unit: "Hz",
    tolerance: within(0.01, 14.9),
  },
  () =>
    firstFrequency({
      L: feet(10),
      E: psi(1.26e6),
      I: rectangleInertia(size),
      w: qty((15 * N_PER_LBF) / M_PER_FT, "N/m"),
    }),
);
