import {
  defineMethod,
  type Calculation,
  type Json,
  type JsonObject,
  type Problem,
} from "../formula/index.ts";
import {
  any,
  choice,
  given,
  list,
  metresOf,
  number,
  readList,
  refuse,
  text,
  whole,
  yes,
} from "../formula/fields.ts";
import { pascals } from "../units/index.ts";
import { stakeStates, type StakeState } from "./pull-out.ts";
import { sectionFaults, sectionFields, sectionFrom, shortFaults, strengthField } from "./read-stake.ts";
import {
  combinedUse,
  stakeSet,
  stakesNeeded,
  type StakeChoice,
  type StakeDemand,
  type StakeSet,
} from "./stakes-needed.ts";

const choiceFields = [
  text("name", "Name of the stake"),
  ...sectionFields,
  list("lengths_mm", "Lengths that it comes in"),
  number("bending_mpa", "Bending stress that the wood may carry, allowable", 0.1, 200),
];

function lengthFaults(entry: JsonObject, place: string, above_m: number): Problem[] {
  const lengths = entry["lengths_mm"] as readonly Json[];
  const good = lengths.length > 0 && lengths.every((v) => typeof v === "number" && v > 0 && v <= 20_000);
  if (!good)
    return [
      refuse(`${place}.lengths_mm`, lengths, "must be lengths", "Give one or more numbers up to 20000."),
    ];
  return lengths.flatMap((v, i) =>
    shortFaults(sectionFrom(entry), (v as number) / 1000, `${place}.lengths_mm[${i}]`, above_m),
  );
}

const readChoices = (input: JsonObject) =>
  readList<StakeChoice>(input, "stakes", choiceFields, (entry, place) => {
    const problems = [
      ...sectionFaults(entry, `${place}.`),
      ...lengthFaults(entry, place, metresOf(input, "above_mm")),
    ];
    if (problems.length > 0) return problems;
    return {
      name: entry["name"] as string,
      section: sectionFrom(entry),
      lengths_m: (entry["lengths_mm"] as readonly number[]).map((mm) => mm / 1000),
      bending_pa: pascals(given(entry, "bending_mpa") * 1e6),
    };
  });

const demandFrom = (input: JsonObject): StakeDemand => ({
  uplift_n: given(input, "uplift_n"),
  horizontal_n: given(input, "horizontal_n"),
  e_m: metresOf(input, "force_at_mm"),
  above_m: metresOf(input, "above_mm"),
  su: pascals(given(input, "su_kpa") * 1000),
  state: input["state"] as StakeState,
  sway: input["sway"] as boolean,
  safety_pull: given(input, "safety_pull"),
  safety_lateral: given(input, "safety_lateral"),
});

const shown = (set: StakeSet): JsonObject => ({
  name: set.name,
  length_mm: set.length_m * 1000,
  embedment_mm: set.embedment_m * 1000,
  count: set.count,
  timber_m3: set.timber_m3,
  pull: set.pull,
  lateral: set.lateral,
  bending: set.bending,
  combined: set.combined,
});

const neededMethod = defineMethod<unknown>(
  {
    id: "anchor.stakes-needed",
    title: "How many stakes of which length hold an uplift and a horizontal force",
    inputs: [
      number("uplift_n", "Uplift on all stakes together", 0, 1e7),
      number("horizontal_n", "Horizontal force on all stakes together", 0, 1e7),
      number("force_at_mm", "Height of the horizontal force over the ground", 0, 20_000),
      number("above_mm", "Length of a stake that stays over the ground", 0, 20_000),
      strengthField,
      choice("state", "Just driven, at rest for weeks, or worked loose by floods", stakeStates),
      yes("sway", "Whether waves or current rock them: half the strength sideways"),
      number("safety_pull", "Ratio of pull-out to uplift asked for", 1, 10),
      number("safety_lateral", "Ratio of side force held to side force asked for", 1, 10),
      whole("most", "Most stakes that fit", 1, 100),
      list("stakes", "Stakes to choose from: name, shape, size_mm, along_mm, lengths_mm, bending_mpa"),
    ],
    outputs: [
      list("sets", "Sets that hold, least timber first: name, length, count, utilisations"),
      any("nearest", "When none holds: the set that comes nearest; null otherwise"),
    ],
    validity: `Equal straight stakes that share alike, free heads, three widths apart or more. ${combinedUse.spec.validity}`,
    sources: [combinedUse.spec.source],
  },
  (input, _context, trace) => {
    const read = readChoices(input);
    if (!read.ok) return { problems: read.problems };
    const demand = demandFrom(input);
    const { sets, nearest } = stakesNeeded(read.value, demand, given(input, "most"));
    const best = sets[0] ?? nearest;
    const choice = read.value.find((c) => c.name === best?.name && c.lengths_m.includes(best.length_m));
    if (best && choice) stakeSet(choice, best.length_m, best.count, demand, trace);
    return { sets: sets.map(shown), nearest: nearest && shown(nearest) };
  },
);

/** Registered search for stakes. */
export const neededCalculations: readonly Calculation[] = [neededMethod];
