import { defineFormula, type Trace } from "../formula/index.ts";
import { stakeGirth } from "../flood/index.ts";
import { rectangleArea, rectangleInertia, rectangleSectionModulus } from "../structure/index.ts";
import { DomainError, qty, type Qty } from "../units/index.ts";
import { geometry } from "./sources.ts";

/** Section of a straight stake: round by its diameter, or a rectangle by the side that faces the load and the side along it. */
export type StakeSection =
  | { readonly shape: "round"; readonly diameter: Qty<"m"> }
  | { readonly shape: "rectangle"; readonly facing: Qty<"m">; readonly along: Qty<"m"> };

const round = "Round section, D > 0.";
/** Girth of a round stake. D [m]; P [m]. */
export const roundGirth = defineFormula(
  {
    id: "anchor.section.girth",
    title: "Girth of the round stake",
    symbol: "P",
    unit: "m",
    text: "pi * D",
    inputs: { D: "m" },
    validity: round,
    source: geometry("circle"),
  },
  ({ D }) => Math.PI * D,
);
/** Area of a round stake's tip. D [m]; A [m2]. */
export const roundArea = defineFormula(
  {
    id: "anchor.section.area",
    title: "Area of the round stake",
    symbol: "A",
    unit: "m2",
    text: "pi / 4 * D^2",
    inputs: { D: "m" },
    validity: round,
    source: geometry("circle"),
  },
  ({ D }) => (Math.PI / 4) * D ** 2,
);
/** Section modulus of a round stake. D [m]; S [m3]. */
export const roundModulus = defineFormula(
  {
    id: "anchor.section.modulus",
    title: "Section modulus of the round stake",
    symbol: "S",
    unit: "m3",
    text: "pi / 32 * D^3",
    inputs: { D: "m" },
    validity: round,
    source: geometry("circle"),
  },
  ({ D }) => (Math.PI / 32) * D ** 3,
);
/** Second moment of area of a round stake. D [m]; I [m4]. */
export const roundInertia = defineFormula(
  {
    id: "anchor.section.inertia",
    title: "Second moment of area of the round stake",
    symbol: "I",
    unit: "m4",
    text: "pi / 64 * D^4",
    inputs: { D: "m" },
    validity: round,
    source: geometry("circle"),
  },
  ({ D }) => (Math.PI / 64) * D ** 4,
);

/** Throws `DomainError` when a side is not over zero. */
function held(section: StakeSection): void {
  const sides = section.shape === "round" ? [section.diameter] : [section.facing, section.along];
  if (!sides.every((s) => s > 0)) throw new DomainError("not-a-section", { ...section });
}

export function girthOf(section: StakeSection, trace?: Trace): Qty<"m"> {
  held(section);
  return section.shape === "round"
    ? roundGirth({ D: section.diameter }, trace)
    : stakeGirth({ b: section.facing, d: section.along }, trace);
}
export const areaOf = (section: StakeSection, trace?: Trace): Qty<"m2"> =>
  section.shape === "round"
    ? roundArea({ D: section.diameter }, trace)
    : rectangleArea({ b: section.facing, d: section.along }, trace);
/** Section modulus about the axis across the load. */
export const modulusOf = (section: StakeSection, trace?: Trace): Qty<"m3"> =>
  section.shape === "round"
    ? roundModulus({ D: section.diameter }, trace)
    : rectangleSectionModulus({ b: section.facing, d: section.along }, trace);
export const inertiaOf = (section: StakeSection, trace?: Trace): Qty<"m4"> =>
  section.shape === "round"
    ? roundInertia({ D: section.diameter }, trace)
    : rectangleInertia({ b: section.facing, d: section.along }, trace);
/** Width that the ground sees [m]. */
export const facingOf = (section: StakeSection): Qty<"m"> =>
  section.shape === "round" ? section.diameter : section.facing;
/** Wider side: what the ignored top is counted by [m]. */
export const widerOf = (section: StakeSection): Qty<"m"> =>
  section.shape === "round" ? section.diameter : qty(Math.max(section.facing, section.along), "m");

export const sectionFormulas = [roundGirth, roundArea, roundModulus, roundInertia] as const;
