import {
  defineMethod,
  formulaCalculation,
  inputProblem,
  type AnyFormula,
  type Calculation,
} from "../formula/index.ts";
import { metres } from "../units/index.ts";
import { gridPath } from "./grid-path.ts";
import { lineDeviation } from "./guided/line-deviation.ts";
import { rampGrade, rampLength } from "./ramps.ts";
import { ditchUnder } from "./route-facts.ts";
import { tapeAlong, tapeOffset, tapeTie } from "./setting-out-formulas.ts";
import { sparesWanted } from "./spares.ts";
import { seatSlack } from "./tolerance.ts";

const formulas: readonly AnyFormula[] = [
  ditchUnder,
  rampGrade,
  rampLength,
  seatSlack,
  sparesWanted,
  tapeAlong,
  tapeOffset,
  tapeTie,
];

const rampMethod = defineMethod(
  {
    id: "layout.entry-ramp",
    title: "Shortest of a kit's ramp bodies that keeps its grade on level ground",
    inputs: [
      { key: "rise_m", title: "Rise from the ground to the deck", type: "number", min: 0 },
      { key: "lengths_mm", title: "Lengths of the kit's ramp bodies", type: "array" },
      { key: "max_grade", title: "Largest rise over run", type: "number", min: 0.001, max: 1 },
    ],
    outputs: [
      { key: "length_m", title: "Length of the body; null when none keeps the grade", type: "any" },
      { key: "grade", title: "Rise over run as it lies; null likewise", type: "any" },
    ],
    validity: "Level ground: on a site the foot's own ground is read.",
    sources: [rampGrade.spec.source],
  },
  (input, _context, trace) => {
    const lengths = input["lengths_mm"] as readonly unknown[];
    const mm = lengths.filter((l): l is number => typeof l === "number" && Number.isFinite(l) && l > 0);
    if (mm.length < lengths.length || mm.length === 0)
      return {
        problems: [
          inputProblem("lengths_mm", lengths, "must hold lengths above zero only", "Give lengths in mm."),
        ],
      };
    const rise = input["rise_m"] as number;
    for (const length of [...mm].sort((a, b) => a - b)) {
      if (length / 1000 <= rise) continue;
      const lies = { r: metres(rise), L: metres(length / 1000) };
      if (rampGrade(lies) > (input["max_grade"] as number) + 1e-9) continue;
      return { length_m: length / 1000, grade: rampGrade(lies, trace) };
    }
    return { length_m: null, grade: null };
  },
);

/** Registered formulas and methods of the layout. */
export const layoutCalculations: readonly Calculation[] = [
  ...formulas.map(formulaCalculation),
  rampMethod,
  gridPath,
  lineDeviation,
];
