import type { HoleRow } from "@causey/engine/materials";

const hole = (id: string, name: string, lateral: number, withdrawal: number): HoleRow => ({
  id,
  name,
  lateral,
  withdrawal,
  source: "causey-holes",
  status: "project",
});

/** Modules are taken apart and put together again: what a used screw hole still holds. */
export const holes: readonly HoleRow[] = [
  hole("fresh", "Fresh hole", 1, 1),
  hole("reused", "Screw driven again into its own hole", 0.8, 0.5),
  hole("stripped", "Hole in which the screw turns freely", 0.5, 0),
];
