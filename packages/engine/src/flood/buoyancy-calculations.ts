import {
  defineMethod,
  recordValue,
  type Calculation,
  type JsonObject,
  type Trace,
} from "../formula/index.ts";
import { metres, newtons, qty } from "../units/index.ts";
import {
  buoyantForce,
  floatingOrder,
  floatLevel,
  liftCurve,
  netLift,
  wettedShare,
  weightOfPieces,
  type FloodPart,
} from "./buoyancy.ts";
import {
  any,
  choice,
  figure,
  given,
  list,
  metresOf,
  number,
  readList,
  refuse,
  text,
} from "../formula/fields.ts";
import { waterField } from "./fields.ts";
import { readPieces } from "./read-pieces.ts";
import { archimedes } from "./sources.ts";
import { displacedWeight } from "./uplift.ts";
import { useRule, type Use } from "./wood-in-water.ts";

const MM = 1000;
const useField = choice("use", "Uplift takes the driest state of timber, carrying the wettest", [
  "uplift",
  "carrying",
]);
const pieceTitle =
  "Pieces: name, bottom_mm, top_mm, volume_m3 or length_mm and width_mm, density_kg_m3 or gravity, driest and wettest";
const validity =
  "Still water. A piece's volume is spread evenly over its height. Current, waves, wrack and ice come on top.";

function recordWeight(weight: number, trace: Trace): void {
  recordValue(trace, {
    id: "flood.buoyancy.weight",
    title: "Weight of the pieces",
    symbol: "W",
    value: weight,
    unit: "N",
    source: archimedes("volume times density times g"),
    how: "sum over the pieces",
  });
}

const buoyancyMethod = defineMethod<unknown>(
  {
    id: "flood.buoyancy",
    title: "Upward force of the water on a part at a level, and the level at which it floats",
    inputs: [
      list("pieces", pieceTitle),
      waterField,
      number("level_mm", "Level of the water, on the datum of the pieces", -1e7, 1e7),
      useField,
    ],
    outputs: [
      figure("lift_n", "Upward force of the water"),
      figure("weight_n", "Weight of the part"),
      figure("net_n", "Force less weight, negative while it rests"),
      any("floats_at_mm", "Lowest level at which it floats unheld; null when it never does"),
      list("curve", "Upward force at every bottom and top: level_mm, lift_n; straight between"),
    ],
    validity,
    sources: [wettedShare.spec.source, displacedWeight.spec.source, useRule],
  },
  (input, _context, trace) => {
    const read = readPieces(input, input["use"] as Use);
    if (!read.ok) return { problems: read.problems };
    const pieces = read.value;
    const rho_w = qty(given(input, "water_kg_m3"), "kg/m3");
    const lift = buoyantForce(pieces, metres(metresOf(input, "level_mm")), rho_w, trace);
    const weight = weightOfPieces(pieces);
    recordWeight(weight, trace);
    const level = floatLevel(pieces, rho_w);
    return {
      lift_n: lift,
      weight_n: weight,
      net_n: netLift({ B: lift, W: newtons(weight) }, trace),
      floats_at_mm: level === null ? null : level * MM,
      curve: liftCurve(pieces, rho_w).map((p) => ({ level_mm: p.level_m * MM, lift_n: p.lift_n })),
    };
  },
);

const partFields = [
  text("id", "Name of the part"),
  list("pieces", pieceTitle),
  number("weight_share", "Counted part of its weight: 1 = all, 0.9 by the rule on staying put", 0, 1),
  number("hold_n", "What anchors hold of it, 0 for none", 0, 1e9),
];

function readParts(input: JsonObject): ReturnType<typeof readList<FloodPart>> {
  return readList<FloodPart>(input, "parts", partFields, (entry, place) => {
    const read = readPieces(entry, "uplift");
    if (!read.ok) return read.problems.map((p) => ({ ...p, place: `${place}.${p.place}` }));
    return {
      id: entry["id"] as string,
      pieces: read.value,
      hold: { weight_share: given(entry, "weight_share"), hold_n: given(entry, "hold_n") },
    };
  });
}

const floatsFirst = defineMethod<unknown>(
  {
    id: "flood.floats-first",
    title: "What floats first in a rising flood, and at which level",
    inputs: [list("parts", "Parts: id, pieces as for flood.buoyancy, weight_share, hold_n"), waterField],
    outputs: [
      any("first", "The part that floats first; null when all stay"),
      any("first_level_mm", "Level at which it does; null when all stay"),
      list(
        "order",
        "Every part: id, floats_at_mm or null, ratio of force to hold (null when nothing holds it), missing_n to stay down",
      ),
    ],
    validity: `${validity} Every part rises by itself: parts tied to each other help the lightest, and drag the rest up. Timber at its driest.`,
    sources: [archimedes("level at which the force meets weight and hold"), useRule],
  },
  (input, _context, trace) => {
    const read = readParts(input);
    if (!read.ok) return { problems: read.problems };
    const ids = read.value.map((p) => p.id);
    const twice = ids.find((id, i) => ids.indexOf(id) !== i);
    if (twice !== undefined)
      return {
        problems: [refuse("parts", twice, "names two parts alike", "Give every part an id of its own.")],
      };
    const order = floatingOrder(read.value, qty(given(input, "water_kg_m3"), "kg/m3"));
    const first = order[0]!;
    for (const { id, level_m } of order)
      if (level_m !== null)
        recordValue(trace, {
          id: "flood.floats-first.level",
          title: "Level at which the part floats",
          symbol: "z_f",
          value: level_m,
          unit: "m",
          source: archimedes("force meets weight and hold"),
          how: "crossing of straight lines between bottoms and tops",
          note: id,
        });
    return {
      first: first.level_m === null ? null : first.id,
      first_level_mm: first.level_m === null ? null : first.level_m * MM,
      order: order.map(({ id, level_m, ratio, missing_n }) => ({
        id,
        floats_at_mm: level_m === null ? null : level_m * MM,
        ratio,
        missing_n,
      })),
    };
  },
);

/** Registered calculations of buoyancy. */
export const buoyancyCalculations: readonly Calculation[] = [buoyancyMethod, floatsFirst];
