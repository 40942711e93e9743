import { defineMethod, inputProblem, type Calculation } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { designCode } from "./registry.ts";
import { durationField, loadDuration } from "./timber-input.ts";
import { nds, usAsd2018 } from "./us-asd-2018/index.ts";
import { screwLateral } from "./us-asd-2018/screws.ts";

/** Lateral value of wood screws through a side piece into a main piece of the same wood. */
export const screwLateralValue: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "timber.screw-lateral",
    title: "Lateral value of wood screws",
    inputs: [
      { key: "code", title: "Design code (us-asd-2018)", type: "string" },
      { key: "screw", title: "Screw of the fastener table, for example screw-10x3", type: "string" },
      { key: "count", title: "Number of screws", type: "integer", min: 1, max: 100 },
      { key: "side_mm", title: "Thickness of the side piece", type: "number", min: 1, max: 200 },
      {
        key: "specific_gravity",
        title: "Specific gravity of both pieces",
        type: "number",
        min: 0.2,
        max: 0.9,
      },
      { key: "end_grain", title: "Driven into end grain", type: "boolean" },
      { key: "wet", title: "Wet service", type: "boolean" },
      durationField,
    ],
    outputs: [
      { key: "lateral_n", title: "Lateral value of all screws", type: "number" },
      { key: "mode", title: "Yield mode that governs", type: "string" },
    ],
    validity:
      "Wood screws under 1/4 in, single shear, both pieces of one species, at least 6 shank diameters in the main piece, spaced so that the wood does not split.",
    sources: [nds("12.3, yield limit equations", "seen"), nds("Table 11.3.3, wet service", "memory")],
  },
  (input, { tables }, trace) => {
    const code = designCode(input["code"] as string);
    const screw = tables.fasteners.find((f) => f.id === input["screw"]);
    const problems = code.ok ? [] : [...code.problems];
    if (!screw) {
      const known = tables.fasteners.filter((f) => f.kind === "wood-screw").map((f) => f.id);
      problems.push(
        inputProblem(
          "screw",
          input["screw"],
          "is not in the fastener table",
          `Use one of: ${known.join(", ")}.`,
        ),
      );
    }
    if (!code.ok || !screw) return { problems };
    if (code.value.id !== usAsd2018.id)
      return {
        problems: [
          inputProblem("code", code.value.id, "has wood screws elsewhere", 'Ask "fastener.lateral" instead.'),
        ],
      };
    const result = screwLateral(
      {
        screw,
        count: input["count"] as number,
        side_m: (input["side_mm"] as number) / 1000,
        gravity: input["specific_gravity"] as number,
        end_grain: input["end_grain"] as boolean,
        wet: input["wet"] as boolean,
        duration: loadDuration(input),
      },
      trace,
    );
    if (!result.ok) return { problems: result.problems };
    return { lateral_n: result.value.lateral, mode: result.value.mode };
  },
);
