import {
  inputProblem,
  recordValue,
  type Json,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import {
  groundMethod,
  isRefusal,
  metresOf,
  number,
  numberOf,
  optional,
  output,
  rowsOf,
  side,
  type Answer,
  type Refusal,
} from "./method-fields.ts";
import { settlementOf, type SoilLayer } from "./settlement.ts";
import { consolidation, twoToOne } from "./sources.ts";
import type { CompressibleSoil, GroundContext } from "./types.ts";

const WATER_N_M3 = 9806.65;

const layerFields = [
  side("thickness_mm", "Thickness of the layer"),
  { key: "soil", title: "Soil of the table, by id", type: "string", optional: true },
  optional(number("cc", "Compression index", 0.01, 20)),
  optional(number("e0", "Void ratio", 0.2, 30)),
  optional(number("ca", "Secondary compression index", 0, 3)),
  optional(number("stress_pa", "Effective stress in the middle of the layer", 1, 1e6)),
  optional(number("unit_weight_n_m3", "Unit weight, to work the stress out from", 8000, 25_000)),
] as const;

/** Compressibility of one layer: typed values first, then the soil that the user named; nothing else. */
function valuesOf(row: JsonObject, place: string, context: GroundContext, trace: Trace) {
  const problems: Problem[] = [];
  const id = row["soil"] as string | undefined;
  const soils = context.tables.ground.compressible;
  const soil = id === undefined ? undefined : soils.find((s) => s.id === id);
  if (id !== undefined && !soil)
    problems.push(
      inputProblem(
        `${place}.soil`,
        id,
        "is not in the table",
        `Give one of ${soils.map((s) => s.id).join(", ")}.`,
      ),
    );
  const value = (key: string, table: number | undefined): number => {
    const v = numberOf(row, key) ?? table;
    if (v === undefined && (soil || id === undefined))
      problems.push(
        inputProblem(`${place}.${key}`, undefined, "is not known", `Give "${key}", or name the soil.`),
      );
    return v ?? NaN;
  };
  const cc = value("cc", soil?.cc);
  const e0 = value("e0", soil?.e0);
  const ca = value("ca", soil && soil.ca_over_cc * cc);
  if (soil) recordSoil(soil, { cc, e0, ca }, context, trace);
  return {
    problems,
    cc,
    e0,
    ca,
    weight: numberOf(row, "unit_weight_n_m3") ?? (soil ? soil.unit_weight_kn_m3 * 1000 : null),
  };
}

function recordSoil(
  soil: CompressibleSoil,
  values: { readonly cc: number; readonly e0: number; readonly ca: number },
  { tables }: GroundContext,
  trace: Trace,
): void {
  const known = tables.sources[soil.source];
  const source = { ...(known ?? { id: soil.source, title: soil.source }), status: soil.status };
  for (const [symbol, value] of Object.entries(values)) {
    const title = `${soil.name}: ${symbol}`;
    recordValue(trace, {
      id: `ground.soil.${symbol}`,
      title,
      symbol,
      value,
      unit: "1",
      source,
      how: "typical, or as given",
    });
  }
}

/** Layers from the top down with the stress in their middle; stress from weights counts the water as standing at ground. */
function layersFrom(
  rows: readonly JsonObject[],
  context: GroundContext,
  trace: Trace,
): readonly SoilLayer[] | Refusal {
  const problems: Problem[] = [];
  let above = 0;
  let isKnown = true;
  const layers = rows.map((row, i) => {
    const place = `layers[${i}]`;
    const { problems: found, cc, e0, ca, weight } = valuesOf(row, place, context, trace);
    problems.push(...found);
    const thickness_m = metresOf(row, "thickness_mm");
    const own = weight === null ? null : (weight - WATER_N_M3) * thickness_m;
    const stress = numberOf(row, "stress_pa") ?? (own === null || !isKnown ? null : above + own / 2);
    if (stress === null)
      problems.push(
        inputProblem(
          `${place}.stress_pa`,
          undefined,
          "the stress in the layer is not known",
          "Give it, or the unit weight of this layer and of those above.",
        ),
      );
    else if (stress <= 0)
      problems.push(
        inputProblem(
          `${place}.stress_pa`,
          stress,
          "the layer is as light as water: no stress can be worked out",
          "Give the effective stress in its middle.",
        ),
      );
    if (own === null) isKnown = false;
    else above += own;
    return { thickness_m, cc, e0, ca, stress_pa: stress ?? NaN };
  });
  return problems.length > 0 ? { problems } : layers;
}

function settle(input: JsonObject, context: GroundContext, trace: Trace): Answer {
  const rows = rowsOf("layers", input["layers"] as readonly Json[], layerFields, 50);
  if (isRefusal(rows)) return rows;
  if (rows.length === 0)
    return {
      problems: [
        inputProblem("layers", 0, "no layer is given", "Give the layers below the foot, from the top down."),
      ],
    };
  const layers = layersFrom(rows, context, trace);
  if (isRefusal(layers)) return layers;
  const foot = {
    width_m: metresOf(input, "width_mm"),
    length_m: metresOf(input, "length_mm"),
    pressure_pa: input["pressure_pa"] as number,
  };
  const found = settlementOf(foot, layers, input["days"] as number, input["primary_days"] as number, trace);
  return {
    primary_mm: found.primary_m * 1000,
    creep_mm: found.creep_m * 1000,
    total_mm: (found.primary_m + found.creep_m) * 1000,
    layers: found.layers.map((l) => ({
      added_pa: l.added_pa,
      primary_mm: l.primary_m * 1000,
      creep_mm: l.creep_m * 1000,
    })),
    words: found.words,
  };
}

export const settlementCalculation = groundMethod(
  {
    id: "ground.settlement",
    title: "Settlement and creep of soft ground over the life of a plan",
    inputs: [
      side("width_mm", "Side of the foot"),
      side("length_mm", "Other side of the foot"),
      number("pressure_pa", "Lasting pressure under the foot, soaked parts only", 0, 1e6),
      {
        key: "layers",
        title: `Layers below the foot, from the top: { ${layerFields.map((f) => f.key).join(", ")} }`,
        type: "array",
      },
      number("days", "Days that the walkway stands", 1, 36_500),
      number("primary_days", "Days until the water is pressed out and creep begins", 0.01, 36_500),
    ],
    outputs: [
      output("primary_mm", "Consolidation, in full", "number"),
      output("creep_mm", "Creep until the end", "number"),
      output("total_mm", "Both", "number"),
      output("layers", "Each layer", "array"),
      output("words", "What to know", "array"),
    ],
    validity:
      "Normally consolidated soft layers, load spread 2:1, one-dimensional; visits are too short to count; total under a quarter of the thickness.",
    sources: [consolidation, twoToOne],
  },
  settle,
);
