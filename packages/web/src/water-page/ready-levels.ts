import type { LevelBasis, LevelRole, WaterLevel } from "@causey/engine/water";
import { freeId } from "../fields/free-id.ts";
import { roleWords } from "./level-words.ts";

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

/** How a level of a kind comes about, unless its table says otherwise. */
const BASIS: Partial<Record<LevelRole, LevelBasis>> = {
  "highest-predicted": "predicted",
  "lowest-predicted": "predicted",
  "highest-recorded": "recorded",
  "lowest-recorded": "recorded",
  "high-tide-line": "assumed",
  "ordinary-high-water": "assumed",
  groundwater: "recorded",
  flood: "recorded",
  other: "assumed",
};

/**
 * A level of a chosen kind, under the typed name; without one it is called by what it is, with the first number that
 * is free where the name is taken.
 */
export function levelOf(role: LevelRole, typed: string, levels: readonly WaterLevel[]): ReadyLevel {
  const words = roleWords[role];
  const name = typed.trim() || (role === "other" ? "Level" : words[0]!.toUpperCase() + words.slice(1));
  const names = new Set(levels.map((l) => l.name));
  let free = name;
  for (let n = 2; names.has(free); n++) free = `${name} ${n}`;
  return { name: free, role, basis: BASIS[role] ?? "mean" };
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
