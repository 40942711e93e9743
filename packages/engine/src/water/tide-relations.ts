import { defineFormula } from "../formula/index.ts";

const datums = {
  id: "noaa-datums",
  title: "Tidal datum definitions, NOAA datum sheet",
  status: "seen",
} as const;
const rangeRatio = {
  id: "modified-range-ratio",
  title: "Modified-range ratio method, Tides and Currents glossary",
  at: "superglossary.com/Glossary/Science/Tides_and_Currents/Modified-Range_Ratio_Method.html",
  status: "seen",
} as const;
const oneEpoch = "All levels over the same epoch and on one datum.";

/** Mean range of tide. */
export const meanRange = defineFormula(
  {
    id: "water.mean-range",
    title: "Mean range of tide",
    symbol: "MN",
    unit: "m",
    text: "MHW - MLW",
    inputs: { MHW: "m", MLW: "m" },
    validity: oneEpoch,
    source: datums,
  },
  ({ MHW, MLW }) => MHW - MLW,
);

/** Mean tide level. */
export const meanTideLevel = defineFormula(
  {
    id: "water.mean-tide-level",
    title: "Mean tide level",
    symbol: "MTL",
    unit: "m",
    text: "(MHW + MLW) / 2",
    inputs: { MHW: "m", MLW: "m" },
    validity: oneEpoch,
    source: datums,
  },
  ({ MHW, MLW }) => (MHW + MLW) / 2,
);

/** Great diurnal range. */
export const greatRange = defineFormula(
  {
    id: "water.great-diurnal-range",
    title: "Great diurnal range",
    symbol: "GT",
    unit: "m",
    text: "MHHW - MLLW",
    inputs: { MHHW: "m", MLLW: "m" },
    validity: oneEpoch,
    source: datums,
  },
  ({ MHHW, MLLW }) => MHHW - MLLW,
);

/** Diurnal tide level. */
export const diurnalTideLevel = defineFormula(
  {
    id: "water.diurnal-tide-level",
    title: "Diurnal tide level",
    symbol: "DTL",
    unit: "m",
    text: "(MHHW + MLLW) / 2",
    inputs: { MHHW: "m", MLLW: "m" },
    validity: oneEpoch,
    source: datums,
  },
  ({ MHHW, MLLW }) => (MHHW + MLLW) / 2,
);

/** How much the higher high waters stand above all high waters. */
export const highInequality = defineFormula(
  {
    id: "water.high-inequality",
    title: "Diurnal high water inequality",
    symbol: "DHQ",
    unit: "m",
    text: "MHHW - MHW",
    inputs: { MHHW: "m", MHW: "m" },
    validity: oneEpoch,
    source: datums,
  },
  ({ MHHW, MHW }) => MHHW - MHW,
);

/** How much the lower low waters stand below all low waters. */
export const lowInequality = defineFormula(
  {
    id: "water.low-inequality",
    title: "Diurnal low water inequality",
    symbol: "DLQ",
    unit: "m",
    text: "MLW - MLLW",
    inputs: { MLW: "m", MLLW: "m" },
    validity: oneEpoch,
    source: datums,
  },
  ({ MLW, MLLW }) => MLW - MLLW,
);

/** A low level from the middle and the range: MLW from MTL and MN, MLLW from DTL and GT. */
export const lowFromRange = defineFormula(
  {
    id: "water.low-from-range",
    title: "Low water from the middle level and the range",
    symbol: "L",
    unit: "m",
    text: "M - R / 2",
    inputs: { M: "m", R: "m" },
    validity: "M and R either MTL and MN (gives MLW) or DTL and GT (gives MLLW), never one of each.",
    source: rangeRatio,
  },
  ({ M, R }) => M - R / 2,
);

/** A high level from the low one and the range: MHW from MLW and MN, MHHW from MLLW and GT. */
export const highFromRange = defineFormula(
  {
    id: "water.high-from-range",
    title: "High water from the low water and the range",
    symbol: "H",
    unit: "m",
    text: "L + R",
    inputs: { L: "m", R: "m" },
    validity: "L and R either MLW and MN (gives MHW) or MLLW and GT (gives MHHW), never one of each.",
    source: rangeRatio,
  },
  ({ L, R }) => L + R,
);

/** The height that a tide running as a pure sine keeps under water for a share of the time. */
export const sineLevel = defineFormula(
  {
    id: "water.sine-level",
    title: "Height under water for a share of a sine tide",
    symbol: "z",
    unit: "m",
    text: "M + A * cos(pi * s)",
    inputs: { M: "m", A: "m", s: "1" },
    validity:
      "M the mean level, A half the range, s the share of the time under water, 0 to 1. A first guess where only mean range is known: spring tides, wind and shallow water are not in it.",
    source: {
      id: "sine-exceedance",
      title: "Time that a sine spends above a level, worked out by this project",
      status: "computed",
    },
  },
  ({ M, A, s }) => M + A * Math.cos(Math.PI * s),
);

/** All relations of this file, for the list of calculations. */
export const tideRelations = [
  meanRange,
  meanTideLevel,
  greatRange,
  diurnalTideLevel,
  highInequality,
  lowInequality,
  lowFromRange,
  highFromRange,
  sineLevel,
] as const;
