import type { Field, JsonObject, Problem } from "../formula/index.ts";
import { qty } from "../units/index.ts";
import type { FloodPiece } from "./buoyancy.ts";
import {
  choice,
  given,
  metresOf,
  number,
  optional,
  readList,
  refuse,
  text,
  type Read,
} from "../formula/fields.ts";
import { moistureStates, stateFor, timberDensity, type MoistureState, type Use } from "./wood-in-water.ts";

const LEVEL = 1e7;
const pieceFields: readonly Field[] = [
  text("name", "Name of the piece"),
  number("bottom_mm", "Its lowest level, on the datum of the water", -LEVEL, LEVEL),
  number("top_mm", "Its highest level", -LEVEL, LEVEL),
  optional(number("volume_m3", "Solid volume", 1e-9, 1000)),
  optional(number("length_mm", "Length of a box", 1, 100_000)),
  optional(number("width_mm", "Width of a box", 1, 100_000)),
  optional(number("density_kg_m3", "Density, of what is no timber", 1, 25_000)),
  optional(number("gravity", "Specific gravity of the timber", 0.1, 1.2)),
  optional(choice("driest", "Driest state of the timber", moistureStates)),
  optional(choice("wettest", "Wettest state of the timber", moistureStates)),
];

/** Least height of a piece: thinner than any sheet of a deck. */
const THINNEST_M = 1e-4;

const has = (entry: JsonObject, key: string): boolean => entry[key] !== undefined;

function volumeOf(entry: JsonObject, place: string): number | Problem {
  const box = has(entry, "length_mm") && has(entry, "width_mm");
  const part = has(entry, "length_mm") || has(entry, "width_mm");
  if (has(entry, "volume_m3") ? part : !box)
    return refuse(
      `${place}.volume_m3`,
      entry["volume_m3"],
      "needs either a volume or a box",
      'Give "volume_m3", or "length_mm" and "width_mm".',
    );
  if (!box) return given(entry, "volume_m3");
  return (
    metresOf(entry, "length_mm") *
    metresOf(entry, "width_mm") *
    (metresOf(entry, "top_mm") - metresOf(entry, "bottom_mm"))
  );
}

function densityOf(entry: JsonObject, place: string, use: Use): number | Problem {
  const timber = ["gravity", "driest", "wettest"].filter((key) => has(entry, key));
  if (has(entry, "density_kg_m3") ? timber.length > 0 : timber.length < 3)
    return refuse(
      `${place}.density_kg_m3`,
      entry["density_kg_m3"],
      "needs either a density or a timber with its moisture",
      'Give "density_kg_m3", or "gravity", "driest" and "wettest".',
    );
  if (has(entry, "density_kg_m3")) return given(entry, "density_kg_m3");
  const states = [entry["driest"] as MoistureState, entry["wettest"] as MoistureState] as const;
  return timberDensity(qty(given(entry, "gravity"), "1"), stateFor(use, states));
}

function readPiece(entry: JsonObject, place: string, use: Use): FloodPiece | readonly Problem[] {
  const [bottom_m, top_m] = [metresOf(entry, "bottom_mm"), metresOf(entry, "top_mm")];
  if (top_m - bottom_m < THINNEST_M)
    return [
      refuse(
        `${place}.top_mm`,
        entry["top_mm"],
        "is not over the bottom",
        'Give "top_mm" 0.1 or more over "bottom_mm".',
      ),
    ];
  const [volume_m3, density_kg_m3] = [volumeOf(entry, place), densityOf(entry, place, use)];
  if (typeof volume_m3 !== "number" || typeof density_kg_m3 !== "number")
    return [volume_m3, density_kg_m3].filter((v) => typeof v !== "number");
  return {
    name: entry["name"] as string,
    bottom_m,
    top_m,
    volume_m3,
    density_kg_m3,
  };
}

/** Reads the pieces under `pieces` of an input, with the density for a use; every fault of every piece at once. */
export const readPieces = (input: JsonObject, use: Use): Read<readonly FloodPiece[]> =>
  readList(input, "pieces", pieceFields, (entry, place) => readPiece(entry, place, use));
