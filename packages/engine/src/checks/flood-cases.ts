import type { Setting } from "./setting.ts";

/** One water level that is checked, on the site's datum. */
export interface FloodCase {
  readonly id: string;
  readonly name: string;
  readonly z_m: number;
}

/** The levels of a plan that can be checked, and those that cannot, in words. */
export interface FloodCases {
  readonly cases: readonly FloodCase[];
  readonly lost: readonly { readonly id: string; readonly missing: string }[];
}

/** The plan's flood level, or one that is asked for besides: on the site's datum, or what is wrong with it. */
export function caseOf({ input }: Setting, id: string): FloodCase | { readonly missing: string } {
  const { plan, site } = input;
  const level = [...site.levels, ...plan.levels].find((l) => l.id === id);
  if (!level) return { missing: `a water level "${id}" in the plan's levels` };
  if (level.datum !== site.datum)
    return { missing: `the flood level on the site's datum "${site.datum}": it stands on "${level.datum}"` };
  return { id, name: level.name, z_m: level.z_m };
}

/** The plan's flood level first, then the other levels asked for, each once. */
export function floodCases(setting: Setting): FloodCases {
  const { plan } = setting.input;
  const ids = [...(plan.flood_level === null ? [] : [plan.flood_level]), ...plan.proof.flood.levels];
  const found = [...new Set(ids)].map((id) => ({ id, found: caseOf(setting, id) }));
  return {
    cases: found.flatMap((f) => ("missing" in f.found ? [] : [f.found])),
    lost: found.flatMap((f) => ("missing" in f.found ? [{ id: f.id, missing: f.found.missing }] : [])),
  };
}
