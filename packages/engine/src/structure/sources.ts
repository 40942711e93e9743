import type { Source, SourceStatus } from "../formula/index.ts";

/** AWC Design Aid No. 6, beam formulas; those marked computed were derived and held against integration here. */
export const beamFormulas = (at: string, status: SourceStatus = "computed"): Source => ({
  id: "awc-da6-2007",
  title: "AWC Design Aid No. 6, Beam Design Formulas with Shear and Moment Diagrams (2007)",
  at,
  status,
});

export const movingLoads = (at: string, status: SourceStatus = "seen"): Source => ({
  id: "civil-engineering-formulas",
  title: "Civil Engineering Formulas, moving loads on a simple beam",
  at,
  status,
});

export const stretchedWire: Source = {
  id: "stretched-wire",
  title: "Stretched wire under a load at midspan (I. E. Irodov, Problems in General Physics, 1.294)",
  at: "elastic wire between fixed ends, sag small against the span",
  status: "seen",
};

export const woodDensity: Source = {
  id: "wood-density",
  title:
    "Wood density from specific gravity and moisture (NDS Supplement 3.1.3, engineeringtoolbox.com d_1616)",
  at: "rho = 62.4 G / (1 + 0.009 G M) (1 + M/100) lb/ft3",
  status: "seen",
};

export const lumberMeasure: Source = {
  id: "board-measure",
  title: "Board measure (lumber dimension charts, sawdustmaking.com)",
  at: "nominal inches x nominal inches x feet / 12",
  status: "seen",
};
