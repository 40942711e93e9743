import { inputProblem, type Json, type JsonObject, type Problem } from "../formula/index.ts";
import type { AcrossPlace, CrossRow, FrameCase, FrameRecipe, FrameState, Rest } from "./recipe.ts";
import { moduleRests } from "./stiffness.ts";

const MM = 1000;

const numbers = (v: Json | undefined): number[] | null =>
  Array.isArray(v) && v.length > 0 && v.every((x) => typeof x === "number" && Number.isFinite(x))
    ? [...(v as number[])]
    : null;

const isRising = (v: readonly number[]): boolean => v.every((x, i) => i === 0 || x > v[i - 1]!);

const wrong = (input: JsonObject, key: string, message: string, mend: string): Problem =>
  inputProblem(key, input[key], message, mend);

/** A module, its state and its loads as `module.envelope` is asked for them. */
export interface Asked {
  readonly recipe: FrameRecipe;
  readonly state: FrameState;
  readonly load: FrameCase;
  readonly place: AcrossPlace;
}

function readRests(input: JsonObject, stringers: number, length_m: number): Rest[] | Problem {
  const given = input["rests_mm"];
  if (given === undefined) return moduleRests(stringers, length_m);
  const rests = (given as readonly Json[]).map((r) => numbers(r));
  const isFine = (r: readonly number[] | null): r is number[] =>
    r?.length === 2 &&
    r[0]! >= 0 &&
    r[0]! <= length_m * MM &&
    Number.isInteger(r[1]) &&
    r[1]! >= 0 &&
    r[1]! < stringers;
  if (rests.length === 0 || !rests.every(isFine))
    return wrong(
      input,
      "rests_mm",
      "holds a bearing that is not on the module",
      "Give each as [along_mm, stringer].",
    );
  return rests.map(([x, s]) => ({ x_m: x! / MM, stringer: s! }));
}

/** Reads the inputs, or says everything that is wrong with them. */
export function readAsked(input: JsonObject): Asked | Problem[] {
  const y = numbers(input["stringers_mm"]);
  const rows =
    Array.isArray(input["rows_mm"]) && input["rows_mm"].length === 0 ? [] : numbers(input["rows_mm"]);
  const weights = numbers(input["loads_n"]);
  const at = numbers(input["at_mm"]);
  const length_m = (input["length_mm"] as number) / MM;
  const problems: Problem[] = [];
  if (!y || y.length < 2 || !isRising(y))
    problems.push(wrong(input, "stringers_mm", "must be two or more rising places", "Give them in order."));
  if (!rows || !isRising(rows) || rows.some((x) => x < 0 || x > length_m * MM))
    problems.push(
      wrong(input, "rows_mm", "must be rising places on the module", "Give them from the start."),
    );
  if (!weights || weights.some((w) => w < 0))
    problems.push(wrong(input, "loads_n", "must be one or more loads >= 0", "Loads act down."));
  if (!at || at.length !== weights?.length)
    problems.push(wrong(input, "at_mm", "has not one place per load", "Give as many as loads_n."));
  const rests = readRests(input, y?.length ?? 0, length_m);
  if (!Array.isArray(rests)) problems.push(rests);
  const lost = input["lost_row"] as number | undefined;
  if (lost !== undefined && rows && lost >= rows.length)
    problems.push(wrong(input, "lost_row", "is not a row of the module", "Count rows from 0."));
  const settled = input["settled_rest"] as number | undefined;
  if (settled !== undefined && Array.isArray(rests) && settled >= rests.length)
    problems.push(wrong(input, "settled_rest", "is not a bearing of the module", "Count bearings from 0."));
  if (problems.length > 0 || !y || !rows || !weights || !at || !Array.isArray(rests)) return problems;
  return { ...frameOf(input, y, rows, rests), load: trainOf(weights, at), place: placeOf(input) };
}

function frameOf(
  input: JsonObject,
  y: readonly number[],
  rows: readonly number[],
  rests: readonly Rest[],
): Pick<Asked, "recipe" | "state"> {
  const n = (key: string): number => input[key] as number;
  const row = { ei: n("row_ei_n_m2"), ga: n("row_ga_n"), gj: n("row_gj_n_m2") };
  const settled = input["settled_rest"] as number | undefined;
  const lost = input["lost_row"] as number | undefined;
  return {
    recipe: {
      length_m: n("length_mm") / MM,
      stringers_y_m: y.map((v) => v / MM),
      pieces: y.map(() => 1),
      stringer: { ei: n("stringer_ei_n_m2"), ga: n("stringer_ga_n"), gj: n("stringer_gj_n_m2") },
      rows: rows.map((x): CrossRow => ({ x_m: x / MM, ...row })),
      boards: [],
      rests,
      deck: input["deck"] as FrameRecipe["deck"],
      own_n_m: n("own_n_per_m"),
      division_m: ((input["division_mm"] as number | undefined) ?? 50) / MM,
    },
    state: {
      name: "as asked",
      ends: input["ends"] as FrameState["ends"],
      ...(settled === undefined
        ? {}
        : { settled: { rest: settled, by_m: ((input["settled_mm"] as number | undefined) ?? 0) / MM } }),
      ...(lost === undefined ? {} : { lost_row: lost }),
    },
  };
}

const trainOf = (weights: readonly number[], at: readonly number[]): FrameCase => ({
  name: "the loads asked",
  loads: weights.map((weight_n, i) => ({ at_m: at[i]! / MM, weight_n, kind: "asked" })),
});

function placeOf(input: JsonObject): AcrossPlace {
  const off_m = (input["offset_mm"] as number) / MM;
  const half = ((input["track_mm"] as number | undefined) ?? 0) / 2 / MM;
  const parts =
    half > 0
      ? [
          { y_m: off_m - half, part: 0.5 },
          { y_m: off_m + half, part: 0.5 },
        ]
      : [{ y_m: off_m, part: 1 }];
  return { kind: "asked", off_m, parts };
}
