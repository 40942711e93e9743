import { defineConstant, defineFormula, inputProblem, recordValue, type Trace } from "../../formula/index.ts";
import { metres, millimetres, psi, qty, type Qty } from "../../units/index.ts";
import type { Found, ScrewCapacity, ScrewJoint } from "../contract.ts";
import { dowelBearingStrength, reductionTerm } from "./dowel.ts";
import { durationFactors } from "./duration.ts";
import { lateralValue } from "./lateral.ts";
import { noFactor } from "./service-factors.ts";
import { nds } from "./sources.ts";

export const endGrainFactor = defineConstant(
  "us-asd-2018.screw.end-grain",
  "End grain factor, lateral",
  "Ceg",
  0.67,
  "1",
  nds("12.5.2; two thirds also seen in Civil Engineering Formulas", "seen"),
);

export const wetConnectionFactor = defineConstant(
  "us-asd-2018.screw.wet",
  "Wet service factor of connections, lateral",
  "CM",
  0.7,
  "1",
  nds("Table 11.3.3", "memory"),
);

export const leastPenetration = defineConstant(
  "us-asd-2018.screw.least-penetration",
  "Least penetration of a screw, in shank diameters",
  "p_min",
  6,
  "1",
  nds("12.1.5", "seen"),
);

/** How far a screw reaches into the main piece. l length, s side thickness [m]; p [m]. */
export const screwPenetration = defineFormula(
  {
    id: "us-asd-2018.screw.penetration",
    title: "Penetration into the main piece",
    symbol: "p",
    unit: "m",
    text: "max(0, l - s)",
    inputs: { l: "m", s: "m" },
    validity: "Head flush with the side piece.",
    source: nds("12.1.5", "memory"),
  },
  ({ l, s }) => Math.max(0, l - s),
);

/** Length that counts in the yield modes: short screws lose half their tip. p [m], D shank [m]; lm [m]. */
export const screwBearingLength = defineFormula(
  {
    id: "us-asd-2018.screw.bearing-length",
    title: "Length of the screw that bears in the main piece",
    symbol: "lm",
    unit: "m",
    text: "p - D",
    inputs: { p: "m", D: "m" },
    validity: "6 D <= p < 10 D: half of a tip 2 D long is taken off; with p >= 10 D it is not.",
    source: nds("12.3.5", "memory"),
  },
  ({ p, D }) => p - D,
);

/** Lateral value of the whole joint. Z [N], n screws, factors [1]; Z' [N]. */
export const adjustedLateral = defineFormula(
  {
    id: "us-asd-2018.screw.adjusted",
    title: "Lateral value of the screws that may be used",
    symbol: "Z'",
    unit: "N",
    text: "n * Z * CD * CM * Ceg",
    inputs: { n: "1", Z: "N", CD: "1", CM: "1", Ceg: "1" },
    validity: "Screws under 1/4 in, spaced so that the wood does not split.",
    source: nds("Table 11.3.1", "seen"),
  },
  ({ n, Z, CD, CM, Ceg }) => n * Z * CD * CM * Ceg,
);

/**
 * Lateral value of screws through a side piece into a main piece of the same wood (NDS 2018, 12.3), on the root
 * diameter, with the reduction term on the shank diameter. 0 N when they reach in less than 6 shank diameters.
 */
export function screwLateral(joint: ScrewJoint, trace?: Trace): Found<ScrewCapacity> {
  const { screw } = joint;
  const shank = millimetres(screw.diameter_mm);
  if (screw.kind !== "wood-screw" || screw.root_mm === undefined || screw.fyb_psi === undefined)
    return { ok: false, problems: [notAScrew(screw.id)] };
  const penetration = screwPenetration({ l: millimetres(screw.length_mm), s: metres(joint.side_m) }, trace);
  if (penetration < leastPenetration({}, trace) * shank)
    return { ok: true, value: { lateral: qty(0, "N"), mode: "reaches in less than 6 shank diameters" } };
  const isLong = penetration >= 10 * shank;
  const lm = isLong ? penetration : screwBearingLength({ p: penetration, D: shank }, trace);
  const Fe = dowelBearingStrength({ G: qty(joint.gravity, "1") }, trace);
  const Rd = reductionTerm({ D: shank }, trace);
  const [D, Fyb] = rootAndYield(screw.root_mm, screw.fyb_psi, screw.status, trace);
  const { value, mode } = lateralValue({ D, lm, ls: metres(joint.side_m), Fem: Fe, Fes: Fe, Fyb, Rd }, trace);
  return { ok: true, value: { lateral: adjusted(joint, value, trace), mode: `yield mode ${mode}` } };
}

function rootAndYield(
  root_mm: number,
  fyb_psi: number,
  status: "seen" | "memory" | "computed" | "practice" | "project",
  trace?: Trace,
): readonly [Qty<"m">, Qty<"Pa">] {
  const source = nds("Table L3 and Table I1, wood screws", status);
  const D = millimetres(root_mm);
  const Fyb = psi(fyb_psi);
  const how = "as tabulated";
  recordValue(trace, {
    id: "screw.root",
    title: "Root diameter",
    symbol: "D",
    value: D,
    unit: "m",
    source,
    how,
  });
  recordValue(trace, {
    id: "screw.fyb",
    title: "Bending yield of the screw",
    symbol: "Fyb",
    value: Fyb,
    unit: "Pa",
    source,
    how,
  });
  return [D, Fyb];
}

const adjusted = (joint: ScrewJoint, Z: Qty<"N">, trace?: Trace): Qty<"N"> =>
  adjustedLateral(
    {
      n: qty(joint.count, "1"),
      Z,
      CD: durationFactors[joint.duration]({}, trace),
      CM: joint.wet ? wetConnectionFactor({}, trace) : noFactor({}),
      Ceg: joint.end_grain ? endGrainFactor({}, trace) : noFactor({}),
    },
    trace,
  );

const notAScrew = (id: string) =>
  inputProblem(
    "screw",
    id,
    "is not a wood screw with a known root diameter and bending yield",
    "Choose a wood screw of the fastener table, or ask the maker for a tested value.",
  );
