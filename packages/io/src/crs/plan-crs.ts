import type { Crs } from "@causey/engine/site";

/** The horizontal system as the plan document states it. */
export type PlanCrs = { readonly epsg: number } | { readonly local: string };

/** The system in words for a message. */
export const crsName = (crs: PlanCrs | Crs): string => {
  if ("epsg" in crs) return `EPSG:${crs.epsg}`;
  if ("local" in crs) return `the local grid "${crs.local}"`;
  return crs.kind === "epsg" ? `EPSG:${crs.code}` : `the local grid "${crs.name}"`;
};

/** Two local grids are one only when the plan gives them one name; an EPSG system only equals its own code. */
export const sameCrs = (a: PlanCrs, b: PlanCrs): boolean =>
  "epsg" in a ? "epsg" in b && a.epsg === b.epsg : "local" in b && a.local === b.local;

/** The system as the plan document states it. */
export const planCrsOf = (crs: Crs): PlanCrs =>
  crs.kind === "epsg" ? { epsg: crs.code } : { local: crs.name };
