import { defineFormula, defineMethod, inputProblem, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { rectangleArea } from "../structure/index.ts";
import { inches, newtons } from "../units/index.ts";
import { clausesOf } from "./registry.ts";
import { durationField, loadDuration, memberFields, readMember } from "./timber-input.ts";

/** Load a post may carry. F strength along the grain, its lean inside [Pa], A [m2]; P [N]. */
export const columnCapacity = defineFormula(
  {
    id: "column.capacity",
    title: "Load that the post may carry",
    symbol: "P_r",
    unit: "N",
    text: "F * A",
    inputs: { F: "Pa", A: "m2" },
    validity: "Load in the middle of the section, no bending beside it.",
    source: { id: "statics", title: "Statics", at: "stress by area", status: "computed" },
  },
  ({ F, A }) => F * A,
);

/** A post under a load along its length, by either design code. */
export const timberColumn: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "timber.column",
    title: "Post under a load along its length",
    inputs: [
      ...memberFields,
      {
        key: "length_mm",
        title: "Free length of the post, ends free to turn",
        type: "number",
        min: 1,
        max: 1e5,
      },
      { key: "wet", title: "Wet service", type: "boolean" },
      { key: "incised", title: "Incised for the preservative", type: "boolean" },
      durationField,
      {
        key: "load_n",
        title: "Load to hold it against; under partial factors with the load factors inside",
        type: "number",
        min: 0,
        max: 1e7,
        optional: true,
      },
    ],
    outputs: [
      { key: "strength_pa", title: "Strength along the grain with its lean", type: "number" },
      { key: "stability", title: "What buckling leaves: CP or kc", type: "number" },
      { key: "capacity_n", title: "Load that the post may carry", type: "number" },
      { key: "utilisation", title: "Load over capacity", type: "number", optional: true },
    ],
    validity:
      "Solid rectangle, load in its middle, leaning over the thinner side. NDS: allowable stress, slenderness up to 50. Eurocode 5: design strength, slenderness as it comes.",
    sources: clausesOf("column"),
  },
  (input, { tables }, trace) => {
    const found = readMember(input, tables);
    if (!found.ok) return { problems: found.problems };
    const { code, member } = found.value;
    const { fc, factors } = code.strength(
      member,
      {
        use: "edge",
        wet: input["wet"] as boolean,
        incised: input["incised"] as boolean,
        repetitive: false,
        duration: loadDuration(input),
        column_m: (input["length_mm"] as number) / 1000,
      },
      trace,
      ["fc"],
    );
    if (fc <= 0)
      return {
        problems: [
          inputProblem(
            "length_mm",
            input["length_mm"],
            "the post is too slender for the code",
            "Shorten it, hold it at mid height, or choose a stouter size.",
          ),
        ],
      };
    const { thickness_in, width_in } = member.size;
    const A = rectangleArea({ b: inches(thickness_in), d: inches(width_in) }, trace);
    const capacity = columnCapacity({ F: fc, A }, trace);
    const load = input["load_n"] as number | undefined;
    return {
      strength_pa: fc,
      stability: (factors["cp"] ?? factors["kc"])!,
      capacity_n: capacity,
      ...(load === undefined ? {} : { utilisation: newtons(load) / capacity }),
    };
  },
);
