import { defineConstant, defineFormula, type AnyFormula, type Source } from "../formula/index.ts";

const geometry = (at: string): Source => ({ id: "geometry", title: "Geometry", at, status: "computed" });
const wood = (at: string): Source => ({
  id: "wood-handbook",
  title: "US Forest Products Laboratory, Wood Handbook, chapter on moisture relations",
  at,
  status: "memory",
});

export const shrinkAcross = defineConstant(
  "check.shrink-across",
  "Shrinkage across the grain, from wet to air-dry",
  "k_a",
  0.045,
  "1",
  wood("softwood, about 7.5 % tangential from 30 % moisture to none, of which 18 of 30 points to 12 %"),
  "0.075 * 18 / 30",
);

export const shrinkAlong = defineConstant(
  "check.shrink-along",
  "Shrinkage along the grain, from wet to air-dry",
  "k_l",
  0.0012,
  "1",
  wood("0.1 to 0.2 % from green to oven-dry, of which 18 of 30 points"),
  "0.002 * 18 / 30",
);

/** Seat lost where the sill dries: half of its width's loss. b width of the sill [m], k_a [1]; d_a [m]. */
export const sillShrinkage = defineFormula(
  {
    id: "check.sill-shrinkage",
    title: "Seat lost as the sill shrinks",
    symbol: "d_a",
    unit: "m",
    text: "b * k_a / 2",
    inputs: { b: "m", k_a: "1" },
    validity: "A sill that was laid wet and dries out in a summer; half of its loss on either side.",
    source: geometry("shrinkage across the grain, shared by two seats"),
  },
  ({ b, k_a }) => (b * k_a) / 2,
);

/** Seat lost where the catch board dries. p projection [m], k_a [1]; d_a [m]. */
export const catchBoardShrinkage = defineFormula(
  {
    id: "check.catch-board-shrinkage",
    title: "Seat lost as the catch board shrinks",
    symbol: "d_a",
    unit: "m",
    text: "p * k_a",
    inputs: { p: "m", k_a: "1" },
    validity: "The projecting part of its width, laid wet and dried out in a summer.",
    source: geometry("shrinkage across the grain"),
  },
  ({ p, k_a }) => p * k_a,
);

/** Seat lost as the module shrinks along: half at either end. L [m], k_l [1]; d_l [m]. */
export const moduleShrinkage = defineFormula(
  {
    id: "check.module-shrinkage",
    title: "Seat lost as the module shrinks along its length",
    symbol: "d_l",
    unit: "m",
    text: "L * k_l / 2",
    inputs: { L: "m", k_l: "1" },
    validity: "Half of the loss at either end.",
    source: geometry("shrinkage along the grain, shared by two ends"),
  },
  ({ L, k_l }) => (L * k_l) / 2,
);

/** Seat lost on a slope: the module covers less ground, half of it at either end. L [m], i rise over run [1]; d_s [m]. */
export const slopeShortening = defineFormula(
  {
    id: "check.slope-shortening",
    title: "Seat lost as the sloped module covers less ground",
    symbol: "d_s",
    unit: "m",
    text: "L * (1 - 1 / sqrt(1 + i^2)) / 2",
    inputs: { L: "m", i: "1" },
    validity: "Supports set out by level lengths; L (1 - cos), half of it at either end.",
    source: geometry("L (1 - cos) of a slope"),
  },
  ({ L, i }) => (L * (1 - 1 / Math.sqrt(1 + i ** 2))) / 2,
);

/** Rise between the two seats of a support that tilts along the walk. s_c [m], d seats apart, a length of the foot [m]; h [m]. */
export const tiltStep = defineFormula(
  {
    id: "check.tilt-step",
    title: "Step between two decks as the support tilts along the walk",
    symbol: "h",
    unit: "m",
    text: "s_c * d / a",
    inputs: { s_c: "m", d: "m", a: "m" },
    validity: "One end of a stiff foot settles, the other stays; decks tilt little over their length.",
    source: geometry("like triangles"),
  },
  ({ s_c, d, a }) => (s_c * d) / a,
);

/** Middles of the two seats of one joint apart. g gap, s seat [m]; d [m]. */
export const seatsApart = defineFormula(
  {
    id: "check.seats-apart",
    title: "Middles of the two seats apart",
    symbol: "d",
    unit: "m",
    text: "g + s",
    inputs: { g: "m", s: "m" },
    validity: "Two equal seats either side of the gap.",
    source: geometry("half a seat on either side of the gap"),
  },
  ({ g, s }) => g + s,
);

export const tripLimitIso = defineConstant(
  "check.trip-limit.iso",
  "Step between two floors that feet trip over",
  "h_t",
  0.004,
  "m",
  {
    id: "iso-14122-2",
    title: "ISO 14122-2, Working platforms and walkways (summary, vi.scribd.com 253189225)",
    at: "at most 4 mm between a loaded floor and the next",
    status: "seen",
  },
);

export const tripLimitAda = defineConstant(
  "check.trip-limit.ada",
  "Change of level that feet and wheels take when its edge is bevelled 1 in 2",
  "h_t",
  0.0127,
  "m",
  {
    id: "ada-2010",
    title: "2010 ADA Standards",
    at: "303.3: 1/2 in, bevelled over 1/4 in",
    status: "memory",
  },
  "0.5 * 0.0254",
);

export const seatFormulas: readonly AnyFormula[] = [
  shrinkAcross,
  shrinkAlong,
  sillShrinkage,
  catchBoardShrinkage,
  moduleShrinkage,
  slopeShortening,
  tiltStep,
  seatsApart,
  tripLimitIso,
  tripLimitAda,
];
