import { inputProblem, type Field, type JsonObject, type Problem } from "../formula/index.ts";
import type { CalcContext } from "../materials/index.ts";
import { number, optional, text } from "./method-fields.ts";
import { namedRow, rowOrSizes, togetherOrNone } from "./row-input.ts";

const wireField = number("wire_mm", "Diameter of the wire, new", 0.3, 30);
const meshSizes: readonly Field[] = [
  number("pitch_mm", "Strands, middle to middle", 1, 500),
  number("yield_mpa", "Yield strength of the wire", 50, 3000),
];

/** Inputs of the mesh strand. */
export const meshStrandInputs: readonly Field[] = [
  optional(text("mesh", "Ready mesh of the table, instead of wire, pitch and yield")),
  optional(text("wire", "Wire of the table by gauge, instead of its diameter")),
  ...[wireField, ...meshSizes].map(optional),
  number("span_mm", "Clear span of the strands", 10, 20_000),
  number("load_n", "Load of one heel or wheel at midspan", 0.1, 1e6),
  number("contact_mm", "Width over which it stands, across the strands", 0, 2000),
  ...[
    number("initial_sag_mm", "Sag of the strand before it is loaded", 0, 1000),
    number("pretension_n", "Pull set into one strand", 0, 1e6),
    number("e_gpa", "Stiffness of the wire (steel, 29 000 000 psi, unless given)", 10, 400),
    number("loss_mm_per_year", "Loss of the wire's surface by rust in a year, on each side", 0, 5),
    number("years", "Years that the walkway stands", 0, 100),
    number("fastener_capacity_n", "What one staple or screw of the line holds, tested", 1, 1e6),
    number("fastener_spacing_mm", "Staples or screws of that line, middle to middle", 1, 5000),
    number("sag_limit_mm", "Largest sag that is wanted", 0.1, 1000),
  ].map(optional),
];

/** Wire, pitch and yield of a mesh, whichever way they were given. */
export interface Mesh {
  readonly wire_mm: number;
  readonly pitch_mm: number;
  readonly yield_mpa: number;
}

/** Reads a mesh by row, by gauge or by sizes; every problem at once. */
export function readMesh(
  input: JsonObject,
  { tables }: CalcContext,
): Mesh | { readonly problems: readonly Problem[] } {
  const mesh = namedRow(input, { key: "mesh", rows: tables.meshes });
  const wire = namedRow(input, { key: "wire", rows: tables.wires });
  const problems = [
    ...(mesh.ok ? [] : mesh.problems),
    ...(wire.ok ? [] : wire.problems),
    ...rowOrSizes(input, "mesh", input["wire"] === undefined ? [wireField, ...meshSizes] : meshSizes),
    ...(input["wire"] === undefined ? [] : besideWire(input)),
    ...togetherOrNone(input, ["loss_mm_per_year", "years"]),
    ...togetherOrNone(input, ["fastener_capacity_n", "fastener_spacing_mm"]),
    ...slackFaults(input),
  ];
  if (!mesh.ok || !wire.ok || problems.length > 0) return { problems };
  const given = (key: string): number => input[key] as number;
  return (
    mesh.value ?? {
      wire_mm: wire.value?.wire_mm ?? given("wire_mm"),
      pitch_mm: given("pitch_mm"),
      yield_mpa: given("yield_mpa"),
    }
  );
}

const besideWire = (input: JsonObject): Problem[] =>
  ["mesh", "wire_mm"]
    .filter((key) => input[key] !== undefined)
    .map((key) => inputProblem(key, input[key], 'stands beside "wire"', `Remove "${key}" or "wire".`));

const slackFaults = (input: JsonObject): Problem[] =>
  (input["initial_sag_mm"] ?? 0) !== 0 && (input["pretension_n"] ?? 0) !== 0
    ? [
        inputProblem(
          "pretension_n",
          input["pretension_n"],
          "a strand that hangs through is under no pull",
          'Give "initial_sag_mm" or "pretension_n".',
        ),
      ]
    : [];
