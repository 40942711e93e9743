import {
  defineMethod,
  type Calculation,
  type JsonObject,
  type Problem,
  type Trace,
} from "../formula/index.ts";
import { any, choice, figure, given, metresOf, number, optional, text, yes } from "../formula/fields.ts";
import { metres, pascals, qty, type Qty } from "../units/index.ts";
import {
  groundReaction,
  sideStiffness,
  strengthFactor,
  woodFactor,
  SHORT_FIXED,
  bendingLength,
  SHORT_FREE,
  stakeSlenderness,
  woodMoment,
} from "./broms.ts";
import { lateral } from "./lateral.ts";
import {
  pressed,
  pullOut,
  rakingPair,
  stakeStates,
  statePullOut,
  swayStrength,
  TAPER_NOTE,
  tipResistance,
  type StakeState,
} from "./pull-out.ts";
import {
  embedmentField,
  sectionFaults,
  sectionFields,
  sectionFrom,
  shortFaults,
  strengthField,
} from "./read-stake.ts";
import { facingOf, inertiaOf, modulusOf, type StakeSection } from "./section.ts";

const stakeFaults = (input: JsonObject): Problem[] => [
  ...sectionFaults(input),
  ...shortFaults(sectionFrom(input), metresOf(input, "embedment_mm"), "embedment_mm"),
];
const kpa = (input: JsonObject, key: string): number => given(input, key) * 1000;

const pullMethod = defineMethod<unknown>(
  {
    id: "anchor.pullout",
    title: "What one stake holds against pulling and pressing, and a raking pair against a side force",
    inputs: [
      ...sectionFields,
      embedmentField,
      strengthField,
      choice("state", "Just driven, at rest for weeks, or worked loose by floods", stakeStates),
      yes("tapered", "Whether the stake is tapered"),
      optional(number("rake_deg", "Lean of a raking pair from upright", 1, 60)),
    ],
    outputs: [
      figure("pull_n", "Ultimate pull-out, the stake's weight left out"),
      figure("press_n", "Ultimate load pressing down, with the tip"),
      any("pair_n", "Horizontal force of a raking pair"),
      any("note", "What a taper means; null for a straight stake"),
    ],
    validity: `One straight stake in even ground, driven without a hole. ${statePullOut.spec.validity}`,
    sources: [statePullOut.spec.source, tipResistance.spec.source, rakingPair.spec.source],
  },
  (input, _context, trace) => {
    const problems = stakeFaults(input);
    if (problems.length > 0) return { problems };
    const stake = {
      section: sectionFrom(input),
      embedment: metres(metresOf(input, "embedment_mm")),
      su: pascals(kpa(input, "su_kpa")),
      state: input["state"] as StakeState,
    };
    const press = pressed(stake, trace);
    const R = pullOut(stake);
    const rake = input["rake_deg"] as number | undefined;
    return {
      pull_n: R,
      press_n: press,
      ...(rake === undefined
        ? {}
        : { pair_n: rakingPair({ R, theta: qty((rake * Math.PI) / 180, "rad") }, trace) }),
      note: input["tapered"] === true ? TAPER_NOTE : null,
    };
  },
);

/** beta L of a wooden stake. E [Pa] > 0. */
function slenderness(section: StakeSection, L: Qty<"m">, su: Qty<"Pa">, E: number, trace: Trace): Qty<"1"> {
  const q_u = pascals(2 * su);
  const K = sideStiffness({ n_1: strengthFactor(q_u, trace), n_2: woodFactor({}, trace), q_u }, trace);
  return stakeSlenderness(
    { L, L_b: bendingLength({ E: pascals(E), I: inertiaOf(section), K }, trace) },
    trace,
  );
}

const LONG_NOTE =
  "This stake is long: its wood bends before it turns in the ground. Give the bending stress of the wood, or the force shown is too high.";

const lateralMethod = defineMethod<unknown>(
  {
    id: "anchor.lateral",
    title: "Horizontal force that one stake holds in soft ground",
    inputs: [
      ...sectionFields,
      embedmentField,
      strengthField,
      number("force_at_mm", "Height of the force over the ground", 0, 20_000),
      choice("head", "Whether the head can turn", ["free", "fixed"]),
      yes("sway", "Whether waves or current rock it: half the strength"),
      optional(number("bending_mpa", "Bending stress that the wood may carry", 0.1, 200)),
      optional(
        number("modulus_mpa", "Stiffness of the wood, to tell a short stake from a long one", 100, 300_000),
      ),
    ],
    outputs: [
      figure("force_n", "Ultimate horizontal force"),
      text("governs", "ground or wood"),
      figure("ground_n", "Force that the ground holds"),
      any("wood_n", "Force at which the wood reaches its stress"),
      figure("moment_n_m", "Largest moment in the stake at that force"),
      any("slenderness", "beta L; a free head is short up to 2.25"),
      any("short", "Whether the stake turns as a whole; null without the wood's stiffness"),
      any("note", "What is missing for a stake that bends before it turns; null otherwise"),
    ],
    validity:
      "Undrained soft clay or peat of one strength, a short stake that moves as a whole. Ultimate: a ratio of safety comes on top. Leaning and softening over months are not covered.",
    sources: [groundReaction.spec.source, swayStrength.spec.source, sideStiffness.spec.source],
  },
  (input, _context, trace) => {
    const problems = stakeFaults(input);
    if (problems.length > 0) return { problems };
    const section = sectionFrom(input);
    const calm = pascals(kpa(input, "su_kpa"));
    const su = input["sway"] === true ? swayStrength({ su: calm }, trace) : calm;
    const stress = input["bending_mpa"] as number | undefined;
    const wood =
      stress === undefined
        ? null
        : woodMoment({ S: modulusOf(section, trace), f_b: pascals(stress * 1e6) }, trace);
    const L = metres(metresOf(input, "embedment_mm"));
    const head = input["head"] as "free" | "fixed";
    const found = lateral(
      { b: facingOf(section), L, e: metres(metresOf(input, "force_at_mm")), su, head, wood },
      trace,
    );
    const E = input["modulus_mpa"] as number | undefined;
    const slender = E === undefined ? null : slenderness(section, L, su, E * 1e6, trace);
    const short = slender === null ? null : slender <= (head === "free" ? SHORT_FREE : SHORT_FIXED);
    return {
      force_n: found.force_n,
      governs: found.governs,
      ground_n: found.ground_n,
      wood_n: found.wood_n,
      moment_n_m: found.moment_n_m,
      slenderness: slender,
      short,
      note: short === false && wood === null ? LONG_NOTE : null,
    };
  },
);
/** Registered calculations of one stake. */
export const stakeCalculations: readonly Calculation[] = [pullMethod, lateralMethod];
