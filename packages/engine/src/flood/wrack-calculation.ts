import { defineMethod, type Calculation, type JsonObject, type Problem } from "../formula/index.ts";
import { metres, qty } from "../units/index.ts";
import { headLoss, MOST_DAMMED, wrackOnLine, type Obstacle, type WrackLoad } from "./dammed-line.ts";
import { isTabled } from "./debris.ts";
import { figure, given, list, metresOf, number, readList, refuse, text, whole } from "../formula/fields.ts";
import { depthField, speedField, waterField } from "./fields.ts";
import { debris } from "./sources.ts";

const obstacleFields = [
  text("name", "What it is"),
  whole("count", "How many", 1, 100_000),
  number("width_mm", "Solid width that the flow sees, one of them", 1, 1e6),
  number("bottom_mm", "Its bottom over the ground", 0, 20_000),
  number("top_mm", "Its top over the ground", 1, 20_000),
];

const readObstacles = (input: JsonObject) =>
  readList<Obstacle>(input, "obstacles", obstacleFields, (entry, place) => {
    const top = given(entry, "top_mm");
    if (top <= given(entry, "bottom_mm"))
      return [refuse(`${place}.top_mm`, top, "is not over the bottom", 'Give "top_mm" over "bottom_mm".')];
    return {
      name: entry["name"] as string,
      count: given(entry, "count"),
      width_m: metresOf(entry, "width_mm"),
      bottom_m: metresOf(entry, "bottom_mm"),
      top_m: metresOf(entry, "top_mm"),
    };
  });

const wrackMethod = defineMethod<unknown>(
  {
    id: "flood.wrack",
    title: "Share of the flow that the line dams with wrack, the force on it and the rise upstream",
    inputs: [
      list(
        "obstacles",
        "Supports, stringers, deck edge: name, count, width_mm, bottom_mm, top_mm over the ground",
      ),
      number("line_mm", "Length of the line across the flow", 100, 1e7),
      depthField,
      speedField,
      number("clogged_share", "Share of what is open that wrack clogs", 0, 1),
      waterField,
    ],
    outputs: [
      figure("solid_share", "Share dammed without wrack"),
      figure("dammed_share", "Share dammed with wrack"),
      figure("coefficient", "Drag coefficient by blockage and Froude number"),
      figure("force_n", "Force on the dammed area"),
      figure("rise_mm", "Rise of the water upstream"),
    ],
    validity:
      "Sheet flow square across the whole line, Froude number under 1, the speed that of the free flow upstream. Over 0.77 dammed the table's force falls to nothing and the head of the dammed water rules: a problem says so.",
    sources: [
      debris("drag coefficient by blockage and Froude number, the safer of two tables"),
      headLoss.spec.source,
    ],
  },
  (input, _context, trace) => {
    const read = readObstacles(input);
    if (!read.ok) return { problems: read.problems };
    const found = wrackOnLine(
      {
        obstacles: read.value,
        line: metres(metresOf(input, "line_mm")),
        clogged: qty(given(input, "clogged_share"), "1"),
        depth: metres(metresOf(input, "depth_mm")),
        speed: qty(given(input, "speed_m_s"), "m/s"),
        rho_w: qty(given(input, "water_kg_m3"), "kg/m3"),
      },
      trace,
    );
    if (!found.load) return { problems: faultsOf(found, given(input, "speed_m_s")) };
    return {
      solid_share: found.solid_share,
      dammed_share: found.dammed_share,
      coefficient: found.load.coefficient,
      force_n: found.load.force_n,
      rise_mm: found.load.rise_m * 1000,
    };
  },
);

function faultsOf({ froude: Fr, dammed_share: B }: WrackLoad, speed: number): Problem[] {
  const fast = refuse(
    "speed_m_s",
    speed,
    `the Froude number ${Fr.toFixed(2)} is 1 or more: the tables of debris end there`,
    "Give a slower or deeper flow; shallow rushing water needs an engineer.",
  );
  const dammed = refuse(
    "clogged_share",
    B,
    `${B.toFixed(2)} of the flow is dammed: over ${MOST_DAMMED} the line acts as a dam, for which no force is given here`,
    "Give fewer or narrower obstacles, or clear the wrack; a dammed line must break away or be taken up.",
  );
  return [...(isTabled(Fr) ? [] : [fast]), ...(B <= MOST_DAMMED ? [] : [dammed])];
}

/** Registered calculation of wrack on the line. */
export const wrackCalculations: readonly Calculation[] = [wrackMethod];
