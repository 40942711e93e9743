import type { Source, SourceStatus } from "../formula/index.ts";

const source =
  (id: string, title: string, status: SourceStatus) =>
  (at: string, own: SourceStatus = status): Source => ({ id, title, at, status: own });

export const archimedes = source("archimedes", "Archimedes' principle", "computed");
export const geometry = source("geometry", "Geometry", "computed");
export const statics = source("statics", "Statics", "computed");
export const project = source(
  "causey-flood",
  "Project decision on flood forces, docs/methods/flood-forces.md",
  "project",
);
export const waterlogged = source(
  "waterlogged-wood",
  "Wood with all its cells full: cell wall of specific gravity 1.54",
  "memory",
);
export const femaDrag = source(
  "fema-p55",
  "FEMA P-55, Coastal Construction Manual, 4th edition, equation 8.8",
  "seen",
);
export const debris = source(
  "fhwa-hec9",
  "FHWA Hydraulic Engineering Circular 9, chapter 4, drag coefficient of debris",
  "seen",
);
export const meshDrag = source(
  "mesh-drag",
  "Drag of perforated plates and mesh on their solid area",
  "memory",
);
export const floodSpeed = source(
  "asce7-flood-speed",
  "ASCE 7-10 commentary C5-1 and C5-2 (bgstructuralengineering.com BGASCE7060702)",
  "seen",
);
export const lowVelocity = source(
  "asce7-low-velocity",
  "ASCE 7 section 5.4.3 (simivalley-ca.elaws.us code 7-5.703; seaintarchive.org 2004d msg00011)",
  "seen",
);
export const linearWave = source(
  "cem-linear-wave",
  "Linear waves (USACE EM 1110-2-1100, Coastal Engineering Manual, part II chapter 1)",
  "seen",
);
export const waveForce = source(
  "morison",
  "Drag and inertia on a slender body in waves (Coastal Engineering Manual, part VI chapter 5)",
  "memory",
);
export const deckUplift = source("bridge-deck-waves", "Practice of bridge decks in waves", "memory");
export const impactRule = source("asce7-debris-impact", "ASCE 7 commentary on flood-borne debris", "memory");
export const iceJacking = source(
  "zabilansky-1998",
  "Zabilansky, Vertical ice forces and aspect ratio of pile diameter vs ice thickness, IAHR 1998 (abstract)",
  "seen",
);
