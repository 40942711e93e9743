import type { Source, SourceStatus } from "../formula/index.ts";

export const broms = (at: string, status: SourceStatus = "seen"): Source => ({
  id: "broms-1964",
  title:
    "Broms, lateral resistance of piles in cohesive soils (Fundamentals of Foundation Engineering 6.24; scribd.com/document/339904414 appendix A)",
  at,
  status,
});
export const bromsStiffness = (at: string): Source => ({
  id: "fhwa-hi-97-013",
  title: "FHWA-HI-97-013, Design and construction of driven pile foundations (scribd.com/document/588985902)",
  at,
  status: "seen",
});
export const alphaMethod = (at: string, status: SourceStatus = "memory"): Source => ({
  id: "alpha-method",
  title: "Alpha method: shaft friction and tip of piles in clay",
  at,
  status,
});
export const anchorRule = (at: string): Source => ({
  id: "causey-anchors",
  title: "Project decision on anchors, docs/methods/flood-forces.md",
  at,
  status: "project",
});
export const geometry = (at: string): Source => ({
  id: "geometry",
  title: "Geometry",
  at,
  status: "computed",
});
export const statics = (at: string): Source => ({ id: "statics", title: "Statics", at, status: "computed" });
