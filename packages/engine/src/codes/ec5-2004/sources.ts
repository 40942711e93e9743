import type { Source, SourceStatus } from "../../formula/index.ts";

/** A place in Eurocode 5; the status says whether the value was seen, here mostly in a public library, or remembered. */
export const ec5 = (at: string, status: SourceStatus): Source => ({
  id: "en-1995-1-1",
  title: "EN 1995-1-1:2004 with A1:2008 and A2:2014, Eurocode 5, design of timber structures",
  at,
  status,
});

export const en1990 = (at: string): Source => ({
  id: "en-1990",
  title: "EN 1990:2002, Eurocode, basis of structural design",
  at,
  status: "memory",
});

export const en338 = (at: string, status: SourceStatus): Source => ({
  id: "en-338",
  title: "EN 338, Structural timber, strength classes (2009 and later)",
  at,
  status,
});

/** What this project chose where the code leaves a choice: decision record 0008. */
export const projectChoice = (at: string): Source => ({
  id: "causey-ec5",
  title: "Project decision 0008 on Eurocode 5",
  at,
  status: "project",
});
