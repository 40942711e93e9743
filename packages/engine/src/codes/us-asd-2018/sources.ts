import type { Source, SourceStatus } from "../../formula/index.ts";

/** A place in the 2018 standard; the status says whether the value was seen in print or only remembered. */
export const nds = (at: string, status: SourceStatus): Source => ({
  id: "awc-nds-2018",
  title: "AWC National Design Specification for Wood Construction, 2018 edition",
  at,
  status,
});

/** A place in its Supplement. */
export const supplement = (at: string, status: SourceStatus): Source => ({
  id: "awc-nds-s-2018",
  title: "AWC National Design Specification Supplement, 2018 edition",
  at,
  status,
});

export const projectRule = (at: string): Source => ({
  id: "causey-timber",
  title: "Project decision on timber",
  at,
  status: "project",
});
