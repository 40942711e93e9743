import { defineFormula } from "../formula/index.ts";
import { qty } from "../units/index.ts";
import type { Layout } from "./types.ts";

/** Spare modules of one length, before they are rounded up to whole ones. */
export const sparesWanted = defineFormula(
  {
    id: "layout.spares-wanted",
    title: "Spare modules of one length, before rounding up",
    symbol: "n_s",
    unit: "1",
    text: "n * s",
    inputs: { n: "1", s: "1" },
    validity:
      "n modules of one length in the layout; s share of spares, 0 to 1. Rounded up to whole modules.",
    source: {
      id: "trade-practice",
      title: "Common practice, no source: 2 to 4 % spare modules",
      status: "practice",
    },
  },
  ({ n, s }) => n * s,
);

export interface SpareModules {
  readonly length_m: number;
  readonly in_layout: number;
  readonly spares: number;
}

/** Spare modules of every length that lies in the layout: the share, rounded up to whole modules. `share` 0 to 1. */
export function spareModules(layout: Layout, share: number): SpareModules[] {
  const counts = new Map<number, number>();
  for (const p of layout.parts)
    if (p.kind === "module") counts.set(p.length_m, (counts.get(p.length_m) ?? 0) + 1);
  return [...counts]
    .sort(([a], [b]) => b - a)
    .map(([length_m, n]) => ({
      length_m,
      in_layout: n,
      spares: Math.max(0, Math.ceil(sparesWanted({ n: qty(n, "1"), s: qty(share, "1") }) - 1e-9)),
    }));
}
