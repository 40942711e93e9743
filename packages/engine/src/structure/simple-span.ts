import { defineFormula } from "../formula/index.ts";
import { beamFormulas } from "./sources.ts";

const validity =
  "One straight uniform member on two supports free to rotate, small deflection, load acting down. L > 0.";

/** Largest moment of a simple span under uniform load, at midspan. w [N/m] >= 0, L [m]; M [N*m], sagging positive. */
export const uniformMoment = defineFormula(
  {
    id: "beam.simple-span.moment.uniform",
    title: "Moment at midspan under uniform load",
    symbol: "M",
    unit: "N*m",
    text: "w * L^2 / 8",
    inputs: { w: "N/m", L: "m" },
    validity,
    source: beamFormulas("simple beam, uniformly distributed load", "seen"),
  },
  ({ w, L }) => (w * L ** 2) / 8,
);

/** End shear, equal to the reaction, under uniform load. w [N/m], L [m]; V [N]. */
export const uniformShear = defineFormula(
  {
    id: "beam.simple-span.shear.uniform",
    title: "Shear at the end under uniform load",
    symbol: "V",
    unit: "N",
    text: "w * L / 2",
    inputs: { w: "N/m", L: "m" },
    validity,
    source: beamFormulas("simple beam, uniformly distributed load", "seen"),
  },
  ({ w, L }) => (w * L) / 2,
);

/** Midspan deflection under uniform load, bending part only. E [Pa], I [m4]; delta [m], down positive. */
export const uniformDeflection = defineFormula(
  {
    id: "beam.simple-span.deflection.uniform",
    title: "Deflection at midspan under uniform load",
    symbol: "delta",
    unit: "m",
    text: "5 * w * L^4 / (384 * E * I)",
    inputs: { w: "N/m", L: "m", E: "Pa", I: "m4" },
    validity: `${validity} Bending part only.`,
    source: beamFormulas("simple beam, uniformly distributed load", "seen"),
  },
  ({ w, L, E, I }) => (5 * w * L ** 4) / (384 * E * I),
);

/**
 * Part of the deflection that comes from shear under uniform load, with the shear modulus of wood taken as E/16.
 * w [N/m], L [m], E [Pa], A [m2]; delta [m].
 */
export const uniformShearDeflection = defineFormula(
  {
    id: "beam.simple-span.shear-deflection.uniform",
    title: "Shear part of the deflection under uniform load",
    symbol: "delta_s",
    unit: "m",
    text: "1.2 * w * L^2 / (8 * G * A)",
    inputs: { w: "N/m", L: "m", G: "Pa", A: "m2" },
    validity: `${validity} Rectangular section.`,
    source: beamFormulas("shear deflection of a rectangular section"),
  },
  ({ w, L, G, A }) => (1.2 * w * L ** 2) / (8 * G * A),
);

/** Moment under one load at midspan. P [N] >= 0, L [m]; M [N*m]. Also the largest moment of one load moving over the span. */
export const midspanPointMoment = defineFormula(
  {
    id: "beam.simple-span.moment.point",
    title: "Moment under one load at midspan",
    symbol: "M",
    unit: "N*m",
    text: "P * L / 4",
    inputs: { P: "N", L: "m" },
    validity,
    source: beamFormulas("simple beam, concentrated load at center", "seen"),
  },
  ({ P, L }) => (P * L) / 4,
);

/** Moment at midspan of a load P spread evenly over a contact length c centred at midspan. 0 <= c <= L [m]. */
export const patchMoment = defineFormula(
  {
    id: "beam.simple-span.moment.patch",
    title: "Moment under a load on a contact length at midspan",
    symbol: "M",
    unit: "N*m",
    text: "P * (L / 4 - c / 8)",
    inputs: { P: "N", L: "m", c: "m" },
    validity: `${validity} Contact length from 0 to L.`,
    source: beamFormulas("simple beam, uniform load partially distributed"),
  },
  ({ P, L, c }) => P * (L / 4 - c / 8),
);

/** Midspan deflection under one load at midspan. P [N], L [m], E [Pa], I [m4]; delta [m]. */
export const midspanPointDeflection = defineFormula(
  {
    id: "beam.simple-span.deflection.point",
    title: "Deflection under one load at midspan",
    symbol: "delta",
    unit: "m",
    text: "P * L^3 / (48 * E * I)",
    inputs: { P: "N", L: "m", E: "Pa", I: "m4" },
    validity: `${validity} Bending part only.`,
    source: beamFormulas("simple beam, concentrated load at center", "seen"),
  },
  ({ P, L, E, I }) => (P * L ** 3) / (48 * E * I),
);

/** Moment at the outer support of an overhang under a load at its tip. P [N], a length of the overhang [m]; M [N*m]. */
export const overhangMoment = defineFormula(
  {
    id: "beam.overhang.moment.point",
    title: "Moment at the support of an overhang",
    symbol: "M",
    unit: "N*m",
    text: "P * a",
    inputs: { P: "N", a: "m" },
    validity: "Load at the tip of an overhang of length a >= 0; hogging.",
    source: beamFormulas("beam overhanging one support, concentrated load at end of overhang"),
  },
  ({ P, a }) => P * a,
);
