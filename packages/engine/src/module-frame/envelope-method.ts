import { defineMethod, recordValue, type Calculation, type JsonObject } from "../formula/index.ts";
import { envelopeInputs, envelopeOutputs } from "./envelope-fields.ts";
import { readAsked } from "./envelope-input.ts";
import { frameModel } from "./influence.ts";
import { peaksOf, type Peak, type Peaked, type Peaks } from "./peaks.ts";
import { runner } from "./stand.ts";

const MM = 1000;

const UNITS = {
  moment: ["N*m", 1, "_n_m"],
  shear: ["N", 1, "_n"],
  sag: ["m", MM, "_mm"],
  push: ["N", 1, "_n"],
  row_moment: ["N*m", 1, "_n_m"],
  row_shear: ["N", 1, "_n"],
} as const satisfies Record<Peaked, readonly [string, number, string]>;

function peakOutput(what: Peaked, peak: Peak | null): JsonObject {
  const [, times, suffix] = UNITS[what];
  if (!peak) return { [`value${suffix}`]: 0 };
  return {
    [`value${suffix}`]: peak.value * times,
    member: peak.member,
    at_mm: peak.at_m * MM,
    first_load_mm: peak.front_m * MM,
    way: peak.way,
    lifted: peak.lifted,
  };
}

const listsOf = (line: Float64Array, stations: number, times: number): number[][] =>
  Array.from({ length: line.length / stations }, (_, i) =>
    Array.from(line.subarray(i * stations, (i + 1) * stations), (v) => v * times),
  );

const outputsOf = (peaks: Peaks, stations_m: readonly number[]): JsonObject => {
  const { lines, largest } = peaks;
  const S = stations_m.length;
  return {
    stations_mm: stations_m.map((x) => x * MM),
    moment_most_n_m: listsOf(lines.moment.most, S, 1),
    moment_least_n_m: listsOf(lines.moment.least, S, 1),
    shear_most_n: listsOf(lines.shear.most, S, 1),
    shear_least_n: listsOf(lines.shear.least, S, 1),
    sag_most_mm: listsOf(lines.sag.most, S, MM),
    sag_least_mm: listsOf(lines.sag.least, S, MM),
    peaks: Object.fromEntries((Object.keys(UNITS) as Peaked[]).map((k) => [k, peakOutput(k, largest[k])])),
    tips: peaks.tipped !== null,
  };
};

/** Envelopes of a module under a moving train, with every bearing free to lift. */
export const moduleEnvelope: Calculation = defineMethod<unknown>(
  {
    id: "module.envelope",
    title: "Moment, shear, sag and bearing pushes of a module under loads that move along it",
    inputs: envelopeInputs,
    outputs: envelopeOutputs,
    validity:
      "Straight prismatic pieces, small deflections, bearings that push and never pull. The loads stand at one place across and are set over every station in turn, both ways round: moments are met within 1.6 (division/length)^2.",
    sources: [
      {
        id: "stiffness-method",
        title: "Stiffness method with Timoshenko beams; contact by letting go what pulls",
        at: "docs/methods/module-frame.md",
        status: "computed",
      },
    ],
  },
  (input, _context, trace) => {
    const asked = readAsked(input);
    if (Array.isArray(asked)) return { problems: asked };
    const { recipe, state, load, place } = asked;
    const placement = { stringer: 0, places: [place] };
    const model = frameModel(recipe, state, [placement]);
    const peaks = peaksOf([runner(model, placement, { own: 1, live: 1 })], [load]);
    for (const what of ["moment", "shear", "sag"] as const) {
      const peak = peaks.largest[what];
      if (peak)
        recordValue(trace, {
          id: "module.envelope",
          title: `Largest ${what}`,
          symbol: { moment: "M", shear: "V", sag: "d" }[what],
          value: peak.value,
          unit: UNITS[what][0],
          source: { id: "stiffness-method", title: "Stiffness method", status: "computed" },
          how: "largest over all places of the loads",
        });
    }
    return outputsOf(peaks, model.mesh.stations_m);
  },
);
