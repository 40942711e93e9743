import { defineConstant } from "../../formula/index.ts";
import { PA_PER_PSI } from "../../units/index.ts";
import { nds, projectRule, supplement } from "./sources.ts";

const wet = (name: string, what: string, value: number) =>
  defineConstant(
    `us-asd-2018.wet.${name}`,
    `Wet service factor, ${what}`,
    `CM_${name}`,
    value,
    "1",
    supplement("Tables 4A and 4B, wet service factors", "seen"),
  );

/** Moisture above 19 % for long: always true over a wetland. The low-stress exceptions are separate rows. */
export const wetFactors = {
  fb: wet("fb", "bending", 0.85),
  fb_low: wet("fb_low", "bending where Fb CF is at most 1150 psi", 1),
  fv: wet("fv", "shear", 0.97),
  fcp: wet("fcp", "bearing across the grain", 0.67),
  fc: wet("fc", "compression", 0.8),
  fc_low: wet("fc_low", "compression where Fc CF is at most 750 psi", 1),
  e: wet("e", "stiffness", 0.9),
} as const;

const trigger = (name: string, psi: number) =>
  defineConstant(
    `us-asd-2018.wet.trigger.${name}`,
    "Stress up to which wet service takes nothing off",
    `F_${name}`,
    psi * PA_PER_PSI,
    "Pa",
    supplement("Tables 4A and 4B, wet service factors", "seen"),
    `${psi} * ${PA_PER_PSI}`,
  );
export const wetTriggers = { fb: trigger("fb", 1150), fc: trigger("fc", 750) } as const;

const incising = (name: string, what: string, value: number) =>
  defineConstant(
    `us-asd-2018.incising.${name}`,
    `Incising factor, ${what}`,
    `Ci_${name}`,
    value,
    "1",
    nds("Table 4.3.8; confirmed by the spans of AWC DCA 6 (2015 IRC edition), Table 2", "memory"),
  );

/** Holes pressed in for the preservative. None on bearing across the grain. */
export const incisingFactors = {
  strength: incising("strength", "bending, shear, compression", 0.8),
  stiffness: incising("stiffness", "E and Emin", 0.95),
} as const;

export const repetitiveFactor = defineConstant(
  "us-asd-2018.repetitive",
  "Repetitive member factor",
  "Cr",
  1.15,
  "1",
  nds("4.3.9", "seen"),
);

/** A factor that changes nothing, with the reason why. */
export const noFactor = defineConstant(
  "us-asd-2018.no-factor",
  "Factor that does not apply",
  "C",
  1,
  "1",
  projectRule("a factor that does not apply is 1"),
);

export const thinBoardFactor = defineConstant(
  "us-asd-2018.thin-board",
  "Size and flat-use factor of boards under 2 in nominal",
  "CF",
  1,
  "1",
  projectRule(
    "boards under 2 in nominal stand outside Tables 4A and 4B: the grade's values without gain of size or flat use",
  ),
);
