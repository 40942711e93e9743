import type { Source, SourceStatus } from "../../../formula/index.ts";

/** A clause of the timber standard; the fastener clauses are from memory unless said. */
export const clause = (at: string, status: SourceStatus = "memory"): Source => ({
  id: "en-1995-1-1",
  title: "EN 1995-1-1:2004 with A1:2008, Design of timber structures",
  at,
  status,
});

export const projectRule = (at: string): Source => ({
  id: "causey-fasteners",
  title: "Project decision on fasteners",
  at,
  status: "project",
});
