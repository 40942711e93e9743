import type { Source } from "../formula/index.ts";
import type { CheckBase } from "./types.ts";

/** Stands under every answer on how the ground settles. */
export const SETTLING =
  "Soft ground seldom does as a formula says: mark the deck's level at the first visit and read it again at every inspection.";

export const settlingBase = (
  id: string,
  title: string,
  parts: readonly string[],
  rule: Source,
): CheckBase => ({
  id: `settling.${id}`,
  kind: "settling",
  title,
  parts,
  rule,
  caution: SETTLING,
});
