import type { Layout } from "@causey/engine/layout";
import type { StripCell } from "@causey/engine/plan";
import { showQuantity, type UnitSystem } from "@causey/engine/units";
import { showShare } from "../show/show.ts";

export const stateWords: Readonly<Record<StripCell["state"], string>> = {
  within: "no check fails",
  near: "no check fails, near the limit",
  over: "does not meet the chosen rules",
  broken: "does not meet the chosen rules",
  "not-checked": "cannot be checked",
};

export interface PartWords {
  readonly head: (cell: StripCell) => string;
  readonly line: (cell: StripCell) => string;
  readonly whole: (cell: StripCell) => string;
}

/** What is said of a part: its tag, length and distance, and what governs it. */
export function partWords(layout: Layout, units: UnitSystem): PartWords {
  const parts = new Map(layout.parts.map((p) => [p.id, p]));
  const head = (cell: StripCell): string => {
    const part = parts.get(cell.part);
    const kind =
      cell.kind === "platform" ? "turning platform" : `${showQuantity(cell.length_m, "m", units)} module`;
    const along = part ? ` · ${showQuantity(part.along_m, "m", units)} along ${cell.branch}` : "";
    return `${cell.part} · ${kind}${along}`;
  };
  const line = (cell: StripCell): string =>
    cell.utilisation === null || cell.state === "broken"
      ? cell.governs || stateWords[cell.state]
      : `${cell.governs}: ${showShare(cell.utilisation)} of the limit`;
  return {
    head,
    line,
    whole: (cell: StripCell) => `${head(cell)}. ${line(cell)}, ${stateWords[cell.state]}`,
  };
}
