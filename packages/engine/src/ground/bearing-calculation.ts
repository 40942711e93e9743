import { inputProblem, type Json, type JsonObject, type Problem, type Trace } from "../formula/index.ts";
import { metres, pascals, qty, type Qty } from "../units/index.ts";
import {
  allowedOf,
  bearingModes,
  bearingSafety,
  buoyantWeight,
  leastUnmeasured,
  oneDaySafety,
  type GroundBelow,
} from "./bearing-modes.ts";
import { bearingPart, type Contact, type ContactShape } from "./contact.ts";
import { edgePressure } from "./edge-pressure.ts";
import { footPressure } from "./foot-pressure.ts";
import {
  isRefusal,
  metresOf,
  groundMethod,
  number,
  numberOf,
  optional,
  output,
  refused,
  side,
  strength,
  type Answer,
  type Refusal,
} from "./method-fields.ts";
import { shareBetweenFeet } from "./several-feet.ts";
import { bearingRule, meyerhof, skempton, twoToOne } from "./sources.ts";

const shapes = ["strip", "rectangle", "square", "circle"] as const;

const inputs = [
  { key: "shape", title: "Shape of the foot", type: "string", choices: shapes },
  side("width_mm", "Side, or diameter"),
  optional(side("length_mm", "Other side; of a strip the length that is pressed")),
  strength("su_pa", "Undrained strength of what the foot touches"),
  number("depth_mm", "Depth of the foot below ground", 0, 10_000),
  number("load_n", "Load on the foot, or on all feet of the support", 0.1, 1e7),
  optional(number("safety", "Ratio of capacity to pressure asked for", 1, 10)),
  { key: "one_day", title: "A load of one day only", type: "boolean", optional: true },
  { key: "measured", title: "The strength was measured at this place", type: "boolean", optional: true },
  optional(number("off_width_mm", "Load off the middle, along the width", 0, 10_000)),
  optional(number("off_length_mm", "Load off the middle, along the length", 0, 10_000)),
  {
    key: "offsets_mm",
    title: "Several equal feet: how far each lies from the middle",
    type: "array",
    optional: true,
  },
  optional(number("moment_n_m", "Moment on the support about its middle", -1e7, 1e7)),
  optional(number("mat_mm", "Thickness of a stiff root mat under the foot", 1, 5000)),
  optional(strength("mud_su_pa", "Undrained strength of the mud under the mat")),
  optional(number("under_water_m3", "Volume of the support that lies under water", 0, 100)),
  optional(number("water_kg_m3", "Density of the water", 900, 1100)),
] as const;

/** What an input leaves open, with both halves of each pair. */
function pairProblems(input: JsonObject): Problem[] {
  const has = (key: string): boolean => input[key] !== undefined;
  const lacks = (key: string, because: string): Problem[] => [
    inputProblem(key, undefined, `is needed: ${because}`, `Give "${key}".`),
  ];
  const round = input["shape"] === "square" || input["shape"] === "circle";
  return [
    ...(!round && !has("length_mm") ? lacks("length_mm", "a strip and a rectangle have two sides") : []),
    ...(round && has("length_mm") && input["length_mm"] !== input["width_mm"]
      ? [
          inputProblem(
            "length_mm",
            input["length_mm"],
            "differs from the width",
            "Leave it out, or call it a rectangle.",
          ),
        ]
      : []),
    ...(has("mat_mm") && !has("mud_su_pa") ? lacks("mud_su_pa", "a mat lies over mud") : []),
    ...(has("mud_su_pa") && !has("mat_mm") ? lacks("mat_mm", "mud lies under a mat of some thickness") : []),
    ...(has("under_water_m3") && !has("water_kg_m3") ? lacks("water_kg_m3", "volume lies under water") : []),
    ...(has("moment_n_m") && !has("offsets_mm") ? lacks("offsets_mm", "a moment acts on several feet") : []),
  ];
}

interface Pressed {
  readonly contact: Contact;
  readonly load: Qty<"N">;
  readonly words: readonly string[];
}

function contactFrom(input: JsonObject): Contact {
  const width_m = metresOf(input, "width_mm");
  const length_m = input["length_mm"] === undefined ? width_m : metresOf(input, "length_mm");
  return { shape: input["shape"] as ContactShape, width_m, length_m };
}

/** The worst foot with its load, buoyancy taken off. */
function pressedFoot(input: JsonObject, trace: Trace): Pressed | Refusal {
  const contact = contactFrom(input);
  let load = qty(input["load_n"] as number, "N");
  const V = numberOf(input, "under_water_m3");
  if (V !== null) {
    const rho = qty(input["water_kg_m3"] as number, "kg/m3");
    load = buoyantWeight({ W: load, rho, V: qty(V, "m3") }, trace);
    if (load <= 0)
      return refused(
        inputProblem(
          "under_water_m3",
          V,
          "the water lifts all of the load",
          "Check that the support stays put under water instead.",
        ),
      );
  }
  const offsets = input["offsets_mm"] as readonly Json[] | undefined;
  if (offsets === undefined) return { contact, load, words: [] };
  if (
    offsets.length === 0 ||
    offsets.length > 100 ||
    !offsets.every((o) => typeof o === "number" && Math.abs(o) <= 1e5)
  )
    return refused(
      inputProblem(
        "offsets_mm",
        offsets,
        "must be 1 to 100 numbers",
        "Give how far each foot lies from the middle, in mm.",
      ),
    );
  const area =
    contact.shape === "circle" ? (Math.PI / 4) * contact.width_m ** 2 : contact.width_m * contact.length_m;
  const feet = (offsets as readonly number[]).map((o) => ({ area_m2: area, offset_m: o / 1000 }));
  const shared = shareBetweenFeet(feet, load, numberOf(input, "moment_n_m") ?? 0, trace);
  if (!shared)
    return refused(
      inputProblem(
        "moment_n_m",
        input["moment_n_m"],
        "the support tips over: the load stands outside its feet",
        "Set the feet wider apart, or lessen the moment.",
      ),
    );
  const lifted = shared.lifted.length;
  const words = lifted > 0 ? [`${lifted} of ${feet.length} feet lift off the ground.`] : [];
  return { contact, load: qty(Math.max(...shared.loads_n), "N"), words };
}

function offsFrom(input: JsonObject, contact: Contact): readonly [number, number] | Refusal {
  const off = (key: string): number => (numberOf(input, key) ?? 0) / 1000;
  const [w, l] = [off("off_width_mm"), off("off_length_mm")];
  const round = contact.shape === "circle";
  const beside = (key: string): Refusal =>
    refused(
      inputProblem(key, input[key], "the load stands outside the foot", "Give less than half of that side."),
    );
  if (round && Math.hypot(w, l) >= contact.width_m / 2) return beside("off_width_mm");
  if (!round && w >= contact.width_m / 2) return beside("off_width_mm");
  if (!round && contact.shape !== "strip" && l >= contact.length_m / 2) return beside("off_length_mm");
  return [w, l];
}

function safetyFrom(input: JsonObject, trace: Trace): number {
  const own = numberOf(input, "safety");
  if (own !== null) return own;
  return input["one_day"] === true ? oneDaySafety({}, trace) : bearingSafety({}, trace);
}

function judge(input: JsonObject, trace: Trace): Answer {
  const problems = pairProblems(input);
  if (problems.length > 0) return { problems };
  const pressed = pressedFoot(input, trace);
  if (isRefusal(pressed)) return pressed;
  const { contact, load } = pressed;
  const offs = offsFrom(input, contact);
  if (isRefusal(offs)) return offs;
  const mud = numberOf(input, "mud_su_pa");
  const below: GroundBelow = {
    su: pascals(input["su_pa"] as number),
    mat: mud === null ? null : { thickness_m: metresOf(input, "mat_mm"), mud_su: pascals(mud) },
  };
  const part = bearingPart(contact, offs[0], offs[1], trace);
  const modes = bearingModes(part, below, metresOf(input, "depth_mm"), trace);
  const allowed = allowedOf(modes, safetyFrom(input, trace), trace);
  const pressure = footPressure({ F: load, a: metres(part.area / part.L), b: part.L }, trace);
  const least = Math.min(below.su!, mud ?? Infinity);
  const isStop = least < leastUnmeasured({}) && input["measured"] !== true;
  return {
    capacity_pa: modes[0]!.q,
    allowed_pa: allowed,
    pressure_pa: pressure,
    utilisation: isStop ? null : pressure / allowed,
    mode: isStop ? "stop" : modes[0]!.mode,
    modes: modes.map(({ mode, q }) => ({ mode, capacity_pa: q })),
    bearing_area_m2: part.area,
    edge_pressure_pa: edgePressure(contact, load, offs[0], offs[1], trace),
    words: [
      ...pressed.words,
      ...(isStop
        ? ["Under 3 kPa and not measured here: stop and measure before anything stands on it."]
        : []),
    ],
  };
}

export const bearingCalculation = groundMethod(
  {
    id: "ground.bearing",
    title: "What soft ground bears under a foot",
    inputs: [...inputs],
    outputs: [
      output("capacity_pa", "Net ultimate pressure of the weakest mode", "number"),
      output("allowed_pa", "Pressure allowed", "number"),
      output("pressure_pa", "Pressure on the part that bears", "number"),
      output("utilisation", "Pressure over pressure allowed; null where to stop and measure"),
      output("mode", "bearing, punching, or stop", "string"),
      output("modes", "Every mode with its capacity, the weakest first", "array"),
      output("bearing_area_m2", "Area that bears evenly", "number"),
      output("edge_pressure_pa", "Largest pressure under the edge; null where no closed form holds"),
      output("words", "What to know", "array"),
    ],
    validity:
      "Soft clay or peat, undrained, one even layer or a stiff mat over mud; load inside the foot; net pressure over that of the ground beside.",
    sources: [skempton, meyerhof, twoToOne, bearingRule],
  },
  (input, _context, trace) => judge(input, trace),
);
