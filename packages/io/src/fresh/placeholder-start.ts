import type { Start } from "@causey/engine/site";

/** Name of the start that stands for one that is not known yet. */
export const PLACEHOLDER_START = "Start (to be moved to its place)";

/** Starts without the one that only stood in: whoever brings in a real start has no more use for it. */
export const withoutPlaceholder = <T extends Pick<Start, "name">>(starts: readonly T[]): readonly T[] =>
  starts.filter((s) => s.name !== PLACEHOLDER_START);
