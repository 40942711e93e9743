import {
  defineMethod,
  inputProblem,
  recordValue,
  type Calculation,
  type JsonObject,
  type Trace,
} from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import {
  loadedStrand,
  pullStress,
  pulledLength,
  slackLength,
  wireArea,
  type Strand,
} from "../structure/index.ts";
import { metres, millimetres, newtons, qty, type Qty } from "../units/index.ts";
import { strandLoad, strandsUnder } from "./deck-mesh.ts";
import { pullOnFastener, wireLeft } from "./mesh-strand-formulas.ts";
import { meshStrandInputs, readMesh, type Mesh } from "./mesh-strand-input.ts";
import { number, text } from "./method-fields.ts";
import { steelStiffness } from "./rules.ts";

/** Wire after the years of rust; the new wire when none is asked for. */
function wireAfter(input: JsonObject, { wire_mm }: Mesh, trace: Trace): Qty<"m"> {
  const d = millimetres(wire_mm);
  if (input["years"] === undefined) return d;
  const r = millimetres(input["loss_mm_per_year"] as number);
  return wireLeft({ d, r, y: qty(input["years"] as number, "1") }, trace);
}

function strandOf(input: JsonObject, d: Qty<"m">, trace: Trace): Strand {
  const A = wireArea({ d }, trace);
  const e = input["e_gpa"] as number | undefined;
  const E = e === undefined ? steelStiffness({}, trace) : qty(e * 1e9, "Pa");
  const L = millimetres(input["span_mm"] as number);
  const T_0 = newtons((input["pretension_n"] as number | undefined) ?? 0);
  const s = millimetres((input["initial_sag_mm"] as number | undefined) ?? 0);
  const L_f = T_0 > 0 ? pulledLength({ L, T_0, A, E }, trace) : slackLength({ L, s }, trace);
  return { L, L_f, A, E };
}

/** What the staple or screw line does; its capacity is known only by test. */
function anchorage(input: JsonObject, pull: Qty<"N">, n: Qty<"1">, pitch_mm: number, trace: Trace) {
  const capacity = input["fastener_capacity_n"] as number | undefined;
  if (capacity === undefined)
    return {
      anchor_n: pull,
      anchorage: "cannot be checked: missing fastener_capacity_n and fastener_spacing_mm",
    };
  const k = qty((input["fastener_spacing_mm"] as number) / pitch_mm, "1");
  const anchor_n = pullOnFastener({ T: pull, n, k }, trace);
  return { anchor_n, anchorage: anchor_n <= capacity ? "holds" : "slips" };
}

function answer(input: JsonObject, mesh: Mesh, d: Qty<"m">, trace: Trace): JsonObject {
  const n = qty(strandsUnder((input["contact_mm"] as number) / 1000, mesh.pitch_mm / 1000), "1");
  recordValue(trace, {
    id: "mesh.strands",
    title: "Strands under the load",
    symbol: "n",
    value: n,
    unit: "1",
    source: strandLoad.spec.source,
    how: `one more than the pitches in ${input["contact_mm"] as number} mm`,
  });
  const P = strandLoad({ P: newtons(input["load_n"] as number), n }, trace);
  const strand = strandOf(input, d, trace);
  const { sag, pull } = loadedStrand(strand, P, trace);
  const sigma = pullStress({ T: pull, A: strand.A }, trace);
  const limit = input["sag_limit_mm"] as number | undefined;
  const use = sigma / (mesh.yield_mpa * 1e6);
  const held = anchorage(input, pull, n, mesh.pitch_mm, trace);
  const fails = use > 1 || held.anchorage === "slips" || (limit !== undefined && sag * 1000 > limit);
  const open = held.anchorage.startsWith("cannot");
  return {
    status: fails ? "fail" : open ? "cannot-check" : "pass",
    strands: n,
    load_per_strand_n: P,
    wire_left_mm: d * 1000,
    sag_mm: sag * 1000,
    sag: limit === undefined ? "no limit asked" : sag * 1000 <= limit ? "within the limit" : "over the limit",
    tension_n: pull,
    stress_mpa: sigma / 1e6,
    yield_use: use,
    strand:
      use <= 1
        ? "holds"
        : "yields: it stays longer than it was, and the figures beyond yield are only a warning",
    ...held,
  };
}

/** One strand of a mesh deck as a cable under a heel or a wheel, new or rusted, with what holds its ends. */
export const meshStrand: Calculation<CalcContext> = defineMethod<CalcContext>(
  {
    id: "deck.mesh-strand",
    title: "Strand of a mesh deck as a cable under a heel or a wheel",
    inputs: meshStrandInputs,
    outputs: [
      text("status", "pass, fail, or cannot-check where the line of staples was not tested"),
      number("strands", "Strands that share the load"),
      number("load_per_strand_n", "Load of one strand"),
      number("wire_left_mm", "Wire after the years"),
      number("sag_mm", "Sag under the load, the first sag in it"),
      text("sag", "Sag against its limit"),
      number("tension_n", "Pull in the strand"),
      number("stress_mpa", "Stress in the strand"),
      number("yield_use", "Stress over yield"),
      text("strand", "Whether the strand holds"),
      number("anchor_n", "Pull on one staple or screw, or of one strand where their spacing is not given"),
      text("anchorage", "Whether the line of staples or screws holds"),
    ],
    validity:
      "Strands one way only, elastic, ends that do not slip, load at midspan shared evenly by the strands under it. Staples usually slip long before the strand yields: test one on the kit.",
    sources: [strandLoad.spec.source, wireArea.spec.source],
  },
  (input, context, trace) => {
    const mesh = readMesh(input, context);
    if ("problems" in mesh) return mesh;
    const d = wireAfter(input, mesh, trace);
    if (d <= 0)
      return {
        problems: [
          inputProblem(
            "years",
            input["years"],
            "the wire has rusted away before",
            "Give fewer years, a thicker wire, or a smaller loss.",
          ),
        ],
      };
    return answer(input, mesh, metres(d), trace);
  },
);
