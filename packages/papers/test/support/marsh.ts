import { tables } from "@causey/data/tables";
import type { Plan, Results } from "@causey/engine/plan";
import type { Site } from "@causey/engine/site";
import { planWithSecret, sampleResults, secret } from "../../../io/test/support/sample-results.ts";
import type { PaperContext } from "../../src/set/index.ts";

export { secret };

const levels: Plan["levels"] = [
  ["mlw", "Mean low water", "mlw", "mean", 0.2],
  ["mhw", "Mean high water", "mhw", "mean", 1.02],
  ["hp", "Highest predicted tide", "highest-predicted", "predicted", 1.31],
].map(([id, name, role, basis, z_m]) => ({
  id,
  name,
  role,
  basis,
  z_m,
  datum: "Gate bench mark",
  source: "Sluice gauge",
  epoch: "2002 to 2020",
})) as unknown as Plan["levels"];

/** The sample plan on falling ground, with tide levels, a parcel with its owner and a hidden zone. */
export const plan: Plan = {
  ...planWithSecret,
  levels,
  flood_level: "hp",
  zones: [
    ...planWithSecret.zones,
    {
      id: "glebe",
      name: "Glebe",
      use: "parcel",
      owner: "Parish of Sedge",
      polygons: [
        [
          [
            [0, 0],
            [40, 0],
            [40, 30],
            [0, 30],
          ],
        ],
      ],
      hidden: false,
      source: "register",
    },
  ],
  papers: {
    sheet: "a4",
    applicant: "Sedge Trust",
    prepared_by: "The warden",
    file_no: "SF-77",
    waterbody: "Sedge Water",
    date: "2027-02-15",
    adjoining: ["Widow Reed, Dyke Road"],
  },
};

const cols = 40;
const rows = 30;
const terrain = {
  cols,
  rows,
  x0: 0.5,
  y0: 0.5,
  dx: 1,
  dy: 1,
  values: Float32Array.from(
    { length: cols * rows },
    (_, i) => 1.6 - Math.floor(i / cols) / 30 - (i % cols) / 80,
  ),
};

const joints = new Map(sampleResults.layout.joints.map((j) => [j.id, j]));
const along = { A: 0, B: 5.4864 } as const;

/** The sample results with a strip that agrees with their layout. */
export const results: Results = {
  ...sampleResults,
  strip: {
    ...sampleResults.strip,
    branches: [
      { id: "A", from_m: 0, to_m: along.B, plot: "P1" },
      { id: "B", from_m: along.B, to_m: along.B + 3.6576, plot: "P2" },
    ],
    joints: [...joints.values()].map(({ id, branch, along_m, ground_m, deck_m }) => ({
      id,
      at_m: along[branch as "A" | "B"] + along_m,
      ground_m,
      deck_m,
    })),
    ground: Array.from({ length: 19 }, (_, i) => ({ at_m: i / 2, z_m: i === 3 ? null : 1.04 + i / 200 })),
    levels: levels.map(({ id, name, z_m }) => ({ id, name, z_m })),
    cells: sampleResults.layout.parts.map((part) => {
      const length_m = part.kind === "module" ? part.length_m : part.side_m;
      const from_m = part.id === "A-2" ? 3.6576 : along[part.branch as "A" | "B"];
      return {
        part: part.id,
        kind: part.kind,
        from_m,
        to_m: from_m + length_m + 0.0127,
        length_m,
        branch: part.branch,
        utilisation: 0.5,
        state: "within",
        governs: "Uplift",
      } as const;
    }),
  },
};

export const site: Site = {
  crs: { kind: "local", name: "Fen grid" },
  datum: "Gate bench mark",
  terrain,
  zones: plan.zones,
  starts: plan.starts,
  plots: plan.plots,
  levels,
  readings: [],
  height_band_m: null,
  ground: null,
  series: null,
};

/** Everything that the drawings are made of, in metres or in feet, on one of the two papers. */
export const contextOf = (units: Plan["units"], sheet: Plan["papers"]["sheet"]): PaperContext => ({
  plan: { ...plan, units, papers: { ...plan.papers, sheet } },
  results: { ...results, plan: { ...results.plan, units } },
  site,
  tables,
});
