import type { MeshRow, WireRow } from "@causey/engine/materials";

const wire = (gauge: string, inch: number): WireRow => ({
  id: `wire-${gauge}`,
  name: `Steel wire, ${gauge.replace("-", " ")} gauge, ${inch} in`,
  wire_mm: inch * 25.4,
  source: "steel-wire-gauge",
  status: "memory",
});

/** Round steel wire by gauge number. */
export const wires: readonly WireRow[] = [
  wire("16", 0.0625),
  wire("14", 0.08),
  wire("12", 0.106),
  wire("10.5", 0.128),
  wire("10", 0.135),
  wire("9", 0.148),
  { ...wire("1/4", 0.25), id: "wire-1/4in", name: "Steel wire, 1/4 in" },
];

const mesh = (id: string, name: string, pitch_in: number, wire_in: number): MeshRow => ({
  id,
  name,
  wire_mm: wire_in * 25.4,
  pitch_mm: pitch_in * 25.4,
  yield_mpa: 448,
  source: "welded-mesh",
  status: "memory",
});

/** Welded mesh as yards keep it; the pitch is that of the strands that run across the stringers. */
export const meshes: readonly MeshRow[] = [
  mesh("mesh-1x1-14", "Welded mesh 1 x 1 in, 14 gauge", 1, 0.08),
  mesh("mesh-1x2-14", "Welded mesh 1 x 2 in, 14 gauge, strands 1 in apart", 1, 0.08),
  mesh("mesh-1x2-12", "Welded mesh 1 x 2 in, 12 gauge, strands 1 in apart", 1, 0.106),
  mesh("mesh-2x2-10", "Welded mesh 2 x 2 in, 10 gauge", 2, 0.135),
  mesh("mesh-2x4-14", "Welded mesh 2 x 4 in, 14 gauge, strands 2 in apart", 2, 0.08),
];
