import { defineMethod, type Json, type JsonObject } from "../formula/index.ts";
import { readKit, validateKit } from "../kit/index.ts";
import type { CalcContext } from "../materials/context.ts";
import { kitFigures } from "./kit-figures.ts";

const plain = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;

/** The figures of a kit for any shell; without prices, since a price list is a file of the plan. */
export const figuresMethod = defineMethod<CalcContext>(
  {
    id: "kit.figures",
    title: "Masses, open shares, pieces and screws of every part of a kit",
    inputs: [
      { key: "kit", title: "Kit recipe", type: "object" },
      { key: "carriers", title: "People who carry one part", type: "integer", min: 1, max: 20 },
    ],
    outputs: [
      { key: "modules", title: "Each module length", type: "array" },
      { key: "platform", title: "The platform", type: "object" },
      { key: "halves", title: "Its halves, where it is carried in two", type: "array" },
      { key: "ramps", title: "Each ramp", type: "array" },
      { key: "supports", title: "Each kind of support", type: "array" },
    ],
    validity:
      "Kits without faults; screws are left out of the masses; costs need a price list and stay empty.",
    sources: [
      {
        id: "causey-kit",
        title: "Project method: pieces placed as boxes from the kit's recipe (docs/methods/kit.md)",
        status: "project",
      },
    ],
  },
  (input: JsonObject, { tables }) => {
    const read = readKit(input["kit"] as Json);
    if ("problems" in read) return read;
    const faults = validateKit(read.kit, tables).filter((p) => p.severity === "error");
    if (faults.length > 0) return { problems: faults.map((p) => ({ ...p, file: "input" })) };
    const figures = kitFigures(read.kit, tables, [], input["carriers"] as number);
    return {
      modules: plain(figures.modules),
      platform: plain(figures.platform),
      halves: plain(figures.halves),
      ramps: plain(figures.ramps),
      supports: plain(figures.supports),
    };
  },
);
