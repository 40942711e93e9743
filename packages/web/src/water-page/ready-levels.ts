import type { LevelBasis, LevelRole, WaterLevel } from "@causey/engine/water";
import { freeId } from "../fields/free-id.ts";

/** A level that most plans need; it has no height before somebody types it. */
export interface ReadyLevel {
  readonly name: string;
  readonly role: LevelRole;
  readonly basis: LevelBasis;
}

const READY: readonly ReadyLevel[] = [
  { name: "Mean high water", role: "mhw", basis: "mean" },
  { name: "Mean low water", role: "mlw", basis: "mean" },
  { name: "Highest predicted tide", role: "highest-predicted", basis: "predicted" },
];

/** Those of the levels that most plans need which a plan does not have yet. */
export const readyLevels = (levels: readonly WaterLevel[]): readonly ReadyLevel[] =>
  READY.filter((ready) => !levels.some((l) => l.role === ready.role));

/** A level of any other kind, called by the first number that is free. */
export function otherLevel(levels: readonly WaterLevel[]): ReadyLevel {
  const names = new Set(levels.map((l) => l.name));
  for (let n = 1; ; n++)
    if (!names.has(`Level ${n}`)) return { name: `Level ${n}`, role: "other", basis: "assumed" };
}

/** The level with its height on the plan's datum [m]; where it comes from is still to be told. */
export const withHeight = (
  { name, role, basis }: ReadyLevel,
  z_m: number,
  levels: readonly WaterLevel[],
  datum: string,
): WaterLevel => ({
  id: freeId("level-", levels),
  name,
  role,
  basis,
  z_m,
  datum,
  source: "not told yet",
  epoch: "",
});
