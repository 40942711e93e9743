import type { Cost } from "./types.ts";

/** "incomplete: 3 items without a price"; null when every item of the order has one. */
export const unpricedWords = ({ unpriced }: Pick<Cost, "unpriced">): string | null =>
  unpriced.length === 0
    ? null
    : `incomplete: ${unpriced.length} ${unpriced.length === 1 ? "item" : "items"} without a price`;
