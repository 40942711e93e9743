import type { Results } from "@causey/engine/plan";

export type PlotState = "reached" | "unreached" | "unknown";

export const stateWords: Readonly<Record<PlotState, string>> = {
  reached: "reached",
  unreached: "not reached",
  unknown: "not worked out yet",
};

/** Which plots the layout reaches, by id. */
export function plotStates(results: Results | null): (plot: string) => PlotState {
  const reached = new Set(results?.layout.reached.map((r) => r.plot));
  const unreached = new Set(results?.layout.unreached.map((u) => u.plot));
  return (plot) => (reached.has(plot) ? "reached" : unreached.has(plot) ? "unreached" : "unknown");
}
