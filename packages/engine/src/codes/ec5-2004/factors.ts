import { defineConstant, defineFormula } from "../../formula/index.ts";
import { ec5, projectChoice } from "./sources.ts";

export const gammaM = defineConstant(
  "ec5-2004.gamma-m",
  "Partial factor of solid timber",
  "gM",
  1.3,
  "1",
  ec5("Table 2.3, solid timber", "seen"),
);

/** Depth factor of solid timber, on bending. h depth as it stands [m] > 0; kh [1], 1 from 150 mm on. */
export const depthFactor = defineFormula(
  {
    id: "ec5-2004.kh",
    title: "Depth factor of solid timber",
    symbol: "kh",
    unit: "1",
    text: "max(1, min((0.15 / h)^0.2, 1.3))",
    inputs: { h: "m" },
    validity: "Solid timber, rectangular section, characteristic density up to 700 kg/m3.",
    source: ec5("3.2(3)", "seen"),
  },
  ({ h }) => Math.max(1, Math.min((0.15 / h) ** 0.2, 1.3)),
);

export const sharingFactor = defineConstant(
  "ec5-2004.ksys",
  "System factor: members alike that share the load",
  "ksys",
  1.1,
  "1",
  ec5("6.6", "seen"),
);

export const crackFactor = defineConstant(
  "ec5-2004.kcr",
  "Part of the breadth that cracks leave for shear",
  "kcr",
  0.67,
  "1",
  ec5("6.1.7(2), solid timber", "memory"),
);

/** A factor that changes nothing, with the reason why. */
export const noFactor = defineConstant(
  "ec5-2004.no-factor",
  "Factor that does not apply",
  "k",
  1,
  "1",
  projectChoice("a factor that does not apply is 1"),
);

const incising = (name: string, what: string, value: number) =>
  defineConstant(
    `ec5-2004.incising.${name}`,
    `Incised for the preservative, ${what}`,
    "kinc",
    value,
    "1",
    projectChoice(
      "the code names no factor for incised timber; that of NDS Table 4.3.8 is taken as a caution",
    ),
  );

/** Holes pressed in for the preservative. None on bearing across the grain. */
export const incisingFactors = {
  strength: incising("strength", "bending, shear, compression", 0.8),
  stiffness: incising("stiffness", "stiffness", 0.95),
} as const;

/** Part of the live load that is there all the time. */
export const lastingLive = defineConstant(
  "ec5-2004.psi-2",
  "Part of the live load that lasts",
  "psi2",
  0.6,
  "1",
  projectChoice(
    "EN 1990 Table A1.1, category C, where people gather: the larger of the two that could be meant",
  ),
);
