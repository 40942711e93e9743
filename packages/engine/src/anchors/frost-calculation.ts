import { defineMethod, recordValue, type Calculation, type Trace } from "../formula/index.ts";
import { choice, figure, given, metresOf, number, text, yes } from "../formula/fields.ts";
import {
  adfreezeSteel,
  adfreezeWood,
  adhesionFactor,
  frostHeave,
  stakePullOut,
  underFrost,
} from "../flood/index.ts";
import { metres, newtons, pascals, type Qty } from "../units/index.ts";
import { embedmentField, sectionFaults, sectionFields, sectionFrom, strengthField } from "./read-stake.ts";
import { girthOf, type StakeSection } from "./section.ts";
import { statics } from "./sources.ts";

export interface FrostInput {
  readonly section: StakeSection;
  readonly embedment: Qty<"m">;
  /** Depth that the frost reaches at this site [m] > 0. */
  readonly frost: Qty<"m">;
  readonly su: Qty<"Pa">;
  /** Load that always stands on the stake [N] >= 0. */
  readonly load: Qty<"N">;
  readonly material: "wood" | "steel";
}
export interface FrostResult {
  readonly heave_n: number;
  readonly hold_n: number;
  readonly heaves: boolean;
  /** Its foot stands in the frost: nothing holds it but its load. */
  readonly ends_in_frost: boolean;
  readonly words: string;
}

/** Whether frozen ground jacks a stake out: grip of the frost against the shaft under it and the lasting load. */
export function frostOnStake(input: FrostInput, trace?: Trace): FrostResult {
  const { section, embedment: L, frost: z_f, su, load } = input;
  const P = girthOf(section, trace);
  const tau = (input.material === "wood" ? adfreezeWood : adfreezeSteel)({}, trace);
  const heave = frostHeave({ tau, P, z_f, L }, trace);
  const L_f = underFrost({ L, z_f }, trace);
  const shaft = stakePullOut({ alpha: adhesionFactor({ su }, trace), su, P, L_g: L_f }, trace);
  const hold = newtons(shaft + load);
  recordValue(trace, {
    id: "anchor.frost.hold",
    title: "What holds the stake against the frost",
    symbol: "R_f",
    value: hold,
    unit: "N",
    source: statics("shaft under the frost and the lasting load"),
    how: "shaft plus load",
  });
  const ends = L_f === 0;
  return {
    heave_n: heave,
    hold_n: hold,
    heaves: heave > hold,
    ends_in_frost: ends,
    words: wordsOf(ends, heave > hold),
  };
}

function wordsOf(ends: boolean, heaves: boolean): string {
  if (ends && heaves)
    return "Ends in the frost: heaves. Take it out before winter, or set it under the frost.";
  if (heaves)
    return "The frost lifts more than holds it: heaves. Set it deeper, or take it out before winter.";
  return "What holds it is more than the frost lifts.";
}

const frostMethod = defineMethod<unknown>(
  {
    id: "anchor.frost",
    title: "Whether frost jacks a stake or post out of the ground",
    inputs: [
      ...sectionFields,
      embedmentField,
      number("frost_mm", "Depth that the frost reaches at this site", 1, 5000),
      strengthField,
      number("load_n", "Load that always stands on it, 0 for none", 0, 1e7),
      choice("material", "What the stake is of", ["wood", "steel"]),
    ],
    outputs: [
      figure("heave_n", "Lift of the frozen ground"),
      figure("hold_n", "What holds the stake"),
      yes("heaves", "Whether it is lifted"),
      yes("ends_in_frost", "Whether its foot stands in the frost"),
      text("words", "The answer in words"),
    ],
    validity:
      "Fine wet ground that heaves. Peat and mud under standing water freeze late and little: the frost depth is that of the site.",
    sources: [frostHeave.spec.source, statics("heave against hold")],
  },
  (input, _context, trace) => {
    const problems = sectionFaults(input);
    if (problems.length > 0) return { problems };
    const found = frostOnStake(
      {
        section: sectionFrom(input),
        embedment: metres(metresOf(input, "embedment_mm")),
        frost: metres(metresOf(input, "frost_mm")),
        su: pascals(given(input, "su_kpa") * 1000),
        load: newtons(given(input, "load_n")),
        material: input["material"] as "wood" | "steel",
      },
      trace,
    );
    return { ...found };
  },
);

/** Registered calculation of frost on a stake. */
export const frostCalculations: readonly Calculation[] = [frostMethod];
