import { inputProblem } from "../formula/index.ts";
import { pascals } from "../units/index.ts";
import { skempton, bekker, rigidPunch, walkingPressure } from "./sources.ts";
import { footBeside } from "./foot-beside.ts";
import {
  groundFrom,
  groundMethod,
  isRefusal,
  metresOf,
  number,
  output,
  refused,
  side,
  strength,
  terrainFields,
} from "./method-fields.ts";
import { plotMovement } from "./plot-movement.ts";

export const footBesideCalculation = groundMethod(
  {
    id: "ground.foot-beside",
    title: "Whether a foot beside the walkway breaks in",
    inputs: [strength("su_pa", "Undrained strength of the ground"), ...terrainFields],
    outputs: [
      output("capacity_pa", "Capacity under a foot", "number"),
      output("low_share", "Low walking pressure over capacity", "number"),
      output("high_share", "High walking pressure over capacity", "number"),
      output("sinks", "yes, at times, or no", "string"),
      output("depth_mm", "Depth by the sinkage law; null without one"),
      output("words", "In words", "string"),
    ],
    validity: "One step of a walking person on undisturbed ground; a trail of steps goes deeper.",
    sources: [walkingPressure, skempton, bekker],
  },
  (input, context, trace) => {
    const ground = groundFrom(input, context.tables.ground);
    if (isRefusal(ground)) return ground;
    const { depth_m, ...rest } = footBeside(pascals(input["su_pa"] as number), ground, trace);
    return { ...rest, depth_mm: depth_m === null ? null : depth_m * 1000 };
  },
);

export const plotMovementCalculation = groundMethod(
  {
    id: "ground.plot-movement",
    title: "How much the plot moves when someone steps on the last support",
    inputs: [
      side("width_mm", "Side of the foot"),
      side("length_mm", "Other side of the foot"),
      number("resting_pa", "Pressure under the foot without the person", 0, 1e7),
      number("loaded_pa", "Pressure with the person", 0, 1e7),
      number("distance_mm", "From the middle of the foot to the plot", 0, 100_000),
      ...terrainFields,
    ],
    outputs: [
      output("unloaded_mm", "Sinkage without the person", "number"),
      output("loaded_mm", "Sinkage with the person", "number"),
      output("foot_mm", "Movement of the foot", "number"),
      output("plot_mm", "Movement at the plot, at most", "number"),
    ],
    validity:
      "First step; the movement around the foot as of an elastic half-space, an upper bound for what yields.",
    sources: [bekker, rigidPunch],
  },
  (input, context, trace) => {
    const ground = groundFrom(input, context.tables.ground);
    if (isRefusal(ground)) return ground;
    if (ground === null)
      return refused(
        inputProblem(
          "terrain",
          undefined,
          "the kind of ground is needed",
          'Give "terrain", or kc, kphi and n.',
        ),
      );
    const [resting, loaded] = [pascals(input["resting_pa"] as number), pascals(input["loaded_pa"] as number)];
    if (loaded < resting)
      return refused(
        inputProblem("loaded_pa", loaded, "is less than without the person", "Give at least resting_pa."),
      );
    const foot = { width_m: metresOf(input, "width_mm"), length_m: metresOf(input, "length_mm") };
    const found = plotMovement(ground, foot, { resting, loaded }, metresOf(input, "distance_mm"), trace);
    if (!found)
      return refused(
        inputProblem(
          input["terrain"] === undefined ? "kc_n_per_m" : "terrain",
          input["terrain"] ?? input["kc_n_per_m"],
          "gives this foot no stiffness, or a sinkage over 10 m: it goes in",
          "Look at the units, or give values that hold for this size of foot.",
        ),
      );
    return {
      unloaded_mm: found.unloaded_m * 1000,
      loaded_mm: found.loaded_m * 1000,
      foot_mm: found.foot_m * 1000,
      plot_mm: found.plot_m * 1000,
    };
  },
);
