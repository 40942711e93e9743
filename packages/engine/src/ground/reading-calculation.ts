import type { Json, JsonObject, Problem } from "../formula/index.ts";
import { inputProblem } from "../formula/index.ts";
import {
  correctReading,
  groundMaterials,
  instruments,
  readingUnits,
  type RawReading,
} from "./corrected-reading.ts";
import { groundMethod, output, refused } from "./method-fields.ts";
import { bjerrum, coneFactor, peatVane } from "./sources.ts";

const numbers = ["value", "depth_m", "plasticity_index", "cone_factor", "unit_weight_n_m3"] as const;
const texts = ["unit", "instrument", "material"] as const;

/** One row as it stands: what is not of its kind counts as not written down. */
function rawFrom(row: JsonObject): RawReading {
  const number = (key: string): number | null => (typeof row[key] === "number" ? row[key] : null);
  const text = (key: string): string | null => (typeof row[key] === "string" ? row[key] : null);
  const [value, depth_m, plasticity_index, cone_factor, unit_weight_n_m3] = numbers.map(number);
  const [unit, instrument, material] = texts.map(text);
  return {
    value: value!,
    depth_m: depth_m!,
    plasticity_index: plasticity_index!,
    cone_factor: cone_factor!,
    unit_weight_n_m3: unit_weight_n_m3!,
    unit: unit!,
    instrument: instrument!,
    material: material!,
  };
}

/** Keys that no reading has, and values of the wrong kind where leaving one out would change the answer. */
function strayProblems(row: JsonObject, place: string): Problem[] {
  const known: readonly string[] = [...numbers, ...texts];
  return Object.keys(row).flatMap((key) => {
    if (!known.includes(key))
      return [
        inputProblem(
          `${place}.${key}`,
          row[key],
          "is no part of a reading",
          `Remove it. A reading has ${known.join(", ")}.`,
        ),
      ];
    const kind = (numbers as readonly string[]).includes(key) ? "number" : "string";
    if (row[key] === null || typeof row[key] === kind) return [];
    return [
      inputProblem(
        `${place}.${key}`,
        row[key],
        `must be a ${kind === "number" ? "number" : "text"}`,
        `Give ${place}.${key} so.`,
      ),
    ];
  });
}

export const readingCalculation = groundMethod(
  {
    id: "ground.vane-correction",
    title: "Strength from vane, cone and laboratory readings, what each was and what it became",
    inputs: [{ key: "readings", title: `Readings: { ${[...numbers, ...texts].join(", ")} }`, type: "array" }],
    outputs: [
      output("readings", "Each reading: was, became (su_pa, low_pa, high_pa), factor, note", "array"),
    ],
    validity: `Instruments ${instruments.join(", ")}; ground ${groundMaterials.join(", ")}; units ${readingUnits.join(", ")}. A reading without unit, instrument, depth or ground is refused.`,
    sources: [peatVane, bjerrum, coneFactor],
  },
  (input, _context, trace) => {
    const list = input["readings"] as readonly Json[];
    if (list.length === 0)
      return refused(inputProblem("readings", 0, "no reading is given", "Give one at least."));
    if (list.length > 5000)
      return refused(inputProblem("readings", list.length, "are more than 5000", "Give fewer."));
    const problems: Problem[] = [];
    const readings = list.flatMap((row, i) => {
      const place = `readings[${i}]`;
      if (typeof row !== "object" || row === null || Array.isArray(row)) {
        problems.push(
          inputProblem(
            place,
            row,
            "must be an object",
            "Give value, unit, instrument, depth_m and material.",
          ),
        );
        return [];
      }
      const stray = strayProblems(row as JsonObject, place);
      const found = correctReading(rawFrom(row as JsonObject), place, trace);
      problems.push(
        ...stray,
        ...(found.ok ? [] : found.problems.filter((p) => !stray.some((s) => s.place === p.place))),
      );
      return found.ok ? [found.value] : [];
    });
    if (problems.length > 0) return { problems };
    return {
      readings: readings.map(({ was, su_pa, low_pa, high_pa, ...rest }) => ({
        ...rest,
        was: { ...was },
        became: { su_pa, low_pa, high_pa },
      })),
    };
  },
);
