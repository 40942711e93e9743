import type { Figure, Results } from "@causey/engine/plan";

/** The band on every height as a figure with its working; null while it is not known. */
export function bandFigure({ band_m, band_working, terrain }: Results["survey"]): Figure | null {
  if (band_m === null) return null;
  const sources = band_working.map((step) => step.source);
  return {
    id: "height-band",
    title: "Band on every height, 95 %",
    value: band_m,
    unit: "m",
    note: terrain?.note ?? "",
    working: band_working,
    sources: sources.filter((s, i) => sources.findIndex((other) => other.id === s.id) === i),
  };
}
